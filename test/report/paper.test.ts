import type { Element } from 'hast';
import { describe, expect, it } from 'vitest';
import { forPaper, isOff, paperNote, words, type PagePart } from '../../src/report/paper.js';

const el = (tagName: string, ...children: readonly (Element | string)[]): Element => ({
  type: 'element', tagName, properties: {}, children: children.map((child) => (typeof child === 'string' ? { type: 'text', value: child } : child)),
});
const list = (...lines: readonly string[]): Element => el('ul', ...lines.map((line) => el('li', el('p', line))));
const image = (src: string): Element => el('p', { ...el('img'), properties: { src } });
const part = (name: string, ...blocks: readonly Element[]): PagePart => ({ id: name, name, children: [el('h2', name), ...blocks] });
const sentence = (word: string): PagePart => part('Verdict', el('blockquote', el('p', `${word}: so it is.`)));

/** The lines of text that go on paper, in order. */
function printed(parts: readonly PagePart[]): readonly string[] {
  const leaves = (node: Element): readonly string[] => {
    if (isOff(node)) return [];
    const inner = node.children.filter((child): child is Element => child.type === 'element');
    return inner.length === 0 ? [words(node)] : inner.flatMap(leaves);
  };
  return forPaper(parts).flatMap(({ children }) => children.flatMap(leaves)).filter((line) => line !== '');
}

describe('what goes on paper', () => {
  const advice = part('What to change', list('Stop, top bar: It bends: far too much. Take a thicker bar.'));

  it('keeps a check that is not clear unless the advice says the same sentence', () => {
    const checks = part('The checks', el('p', 'How to read them.'), el('h3', 'Bars'), list('Stop, 200 % ■: It bends: far too much. (top bar)', 'Unknown: Nobody can say. (left bar)', 'Caution, 110 % ■: It leans.', 'Clear, 50 % ■: It holds.'), el('h3', 'Cloth'), list('Clear: Fine.'));
    const lines = printed([sentence('Unknown'), advice, checks]);
    expect(lines).toContain('Unknown: Nobody can say. (left bar)');
    expect(lines).toContain('Caution, 110 % ■: It leans.');
    expect(lines).toContain('Bars');
    expect(lines.filter((line) => line.includes('It bends'))).toEqual(['Stop, top bar: It bends: far too much. Take a thicker bar.']);
    for (const left of ['Clear, 50 % ■: It holds.', 'Clear: Fine.', 'Cloth']) expect(lines).not.toContain(left);
  });

  it('leaves off the heading of the checks when nothing of them is left, but says it when no rule spoke', () => {
    expect(printed([advice, part('The checks', list('Clear: Fine.'))])).not.toContain('The checks');
    expect(printed([advice, part('The checks', el('p', 'No rule had anything to say.'))])).toEqual(expect.arrayContaining(['The checks', 'No rule had anything to say.']));
  });

  it('says how to cut, unless the plan must not be cut', () => {
    const rest = [part('What to buy and cut', el('h3', 'Cut list'), el('p', 'T 900 mm'), image('boards.svg'), el('h3', 'At the saw, in this order'), el('ol', el('li', 'Cut T.'))), part('Order of work', el('ol', el('li', 'Glue.')))];
    for (const word of ['Clear', 'Caution', 'Unknown']) expect(printed([sentence(word), ...rest])).toEqual(expect.arrayContaining(['T 900 mm', 'At the saw, in this order', 'Cut T.', 'Order of work', 'Glue.']));
    const stopped = printed([sentence('Stop'), ...rest]);
    expect(stopped).toContain('T 900 mm');
    for (const left of ['At the saw, in this order', 'Cut T.', 'Order of work', 'Glue.']) expect(stopped).not.toContain(left);
    const pictures = (verdict: string): boolean => isOff(forPaper([sentence(verdict), ...rest])[1]?.children[3] ?? el('p'));
    expect([pictures('Clear'), pictures('Stop')]).toEqual([false, true]);
  });

  it('names every part that is shortened, counts the clear checks, and says nothing when nothing is left off', () => {
    const short = forPaper([sentence('Stop'), part('The checks', list('Clear: Fine.', 'Clear, 9 % □: Good.', 'Stop: No.')), part('The cloth', image('roll.svg'), el('p', 'Cut it.'))]);
    expect(paperNote(short)).toMatch(/the 2 that are clear .*must not be cut.*under “The checks” and “The cloth”\.$/u);
    expect(paperNote(forPaper([sentence('Clear'), part('The cloth', el('p', 'Cut it.'))]))).toBeNull();
  });

  it('prints a paragraph that stands in two parts once, in the later one', () => {
    const twice = forPaper([part('Hanging', el('p', 'Ask somebody.'), el('p', 'Two hooks.')), part('Work safely', el('p', 'Ask somebody.'))]);
    expect(twice.map(({ children }) => children.map(isOff))).toEqual([[false, true, false], [false, false]]);
  });
});
