import type { Element } from 'hast';
import { describe, expect, it } from 'vitest';
import { keepTogether } from '../../src/report/no-break.js';
import { forPaper, isOff, paperNote, words, type PagePart } from '../../src/report/paper.js';

const el = (tagName: string, ...children: readonly (Element | string)[]): Element => ({
  type: 'element', tagName, properties: {}, children: children.map((child) => (typeof child === 'string' ? { type: 'text', value: child } : child)),
});
const image = (src: string): Element => el('p', { ...el('img'), properties: { src } });
const part = (name: string, folded: boolean, ...blocks: readonly Element[]): PagePart => ({ id: name, name, folded, children: [el('h2', name), ...blocks] });

/** The lines of text and the pictures that go on paper, in order. */
function printed(parts: readonly PagePart[], onCard: readonly string[] = [], said: readonly string[] = []): readonly string[] {
  const leaves = (node: Element): readonly string[] => {
    if (isOff(node)) return [];
    const inner = node.children.filter((child): child is Element => child.type === 'element');
    return node.tagName === 'img' ? [String(node.properties['src'])] : inner.length === 0 ? [words(node)] : inner.flatMap(leaves);
  };
  return forPaper(parts, { pictures: new Set(onCard), said: new Set(said) }).flatMap(({ children }) => children.flatMap(leaves)).filter((line) => line !== '');
}

describe('what goes on paper', () => {
  it('leaves off what a screen keeps folded, and nothing else', () => {
    const lines = printed([part('What to change', false, el('ul', el('li', el('p', 'Stop: take a thicker bar.')))), part('The checks', true, el('h3', 'Bars'), el('ul', el('li', 'Clear: Fine.')))]);
    expect(lines).toEqual(['What to change', 'Stop: take a thicker bar.']);
  });

  it('names every part that it leaves off, and says nothing when it leaves off none', () => {
    const open = part('The cloth', false, el('p', 'Cut it.'));
    expect(paperNote([open, part('The checks', true), part('What this rests on', true)])).toMatch(/“The checks” and “What this rests on” stand on the screen only\./u);
    expect(paperNote([open, part('The checks', true)])).toMatch(/“The checks” stands on the screen only\./u);
    expect(paperNote([open])).toBeNull();
  });

  it('prints a picture of the card once, unless it stands there to be compared with the changed one', () => {
    const cloth = part('The cloth', false, image('cloth.svg'), image('roll.svg'));
    expect(printed([cloth], ['cloth.svg'])).toEqual(['The cloth', 'roll.svg']);
    expect(printed([part('Verdict', false, image('front.svg'), image('front-changed.svg'))], ['front.svg'])).toEqual(['Verdict', 'front.svg', 'front-changed.svg']);
  });

  it('prints what the first sheet says instead of the report there alone, with both pictures of a pair', () => {
    const verdict = part('Verdict', false, el('ul', el('li', 'It twists.')), el('p', '3 more.'), image('front.svg'), image('front-changed.svg'), el('p', 'Judged by the baseline.'));
    expect(printed([verdict], ['front.svg', 'front-changed.svg'], ['It twists.', '3 more.', 'Verdict'])).toEqual(['Verdict', 'Judged by the baseline.']);
  });

  it('prints a paragraph that stands in two parts once, in the later one; one that is folded does not count', () => {
    const twice = forPaper([part('Hanging', false, el('p', 'Ask somebody.'), el('p', 'Two hooks.')), part('Work safely', false, el('p', 'Ask somebody.')), part('The checks', true, el('p', 'Ask somebody.'))], { pictures: new Set(), said: new Set() });
    expect(twice.map(({ children }) => children.map(isOff))).toEqual([[false, true, false], [false, false], [true, true]]);
  });

  it('prints the line over a list wherever it stands', () => {
    const twice = forPaper([part('First evening', false, el('p', 'Who waits'), el('ul', el('li', 'Ines.')), el('p', 'Sweep.')), part('Second evening', false, el('p', 'Who waits'), el('ul', el('li', 'Tomas.')), el('p', 'Sweep.'))], { pictures: new Set(), said: new Set() });
    expect(twice.map(({ children }) => children.map(isOff))).toEqual([[false, false, false, true], [false, false, false, false]]);
  });
});

describe('numbers and their units', () => {
  it('stay on one line', () => {
    const joined = (text: string): string => keepTogether(text).replaceAll('\u00A0', '~');
    expect(joined('cut to 1200 mm, 10-3/4 in or 35 %')).toBe('cut to 1200~mm, 10-\u20603/4~in or 35~%');
    expect(joined('two 19 × 38 mm strips')).toBe('two 19~×~38~mm strips');
    expect(joined('4-R2, 12-lip B')).toBe('4-\u2060R2, 12-\u2060lip B');
    expect(joined('about 1 in 6 frames')).toBe('about 1~in~6 frames');
    expect(joined('0.4 deg/m at 200 N/m and 3.5 lbf/in')).toBe('0.4~deg/m at 200~N/m and 3.5~lbf/in');
  });

  it('leave words alone that only begin like a unit', () => {
    for (const text of ['2 makers', '3 inches', '4 gluings', 'in 6 hands', '5 more']) expect(keepTogether(text), text).toBe(text);
  });
});
