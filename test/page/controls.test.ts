import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { sourceKeys } from '../../src/cli/load.js';
import { fileShape, type FileShape } from '../../src/index.js';
import { leavesOf } from '../../src/page/controls/schema.js';
import { controlsOf } from '../../src/page/controls/table.js';
import { History } from '../../src/page/state/history.js';
import { offer, placeOf } from '../../src/page/view/offer.js';
import { readFileSync } from 'node:fs';

const sources = [...sourceKeys()];
const shape = fileShape('plan', sources);
const leaves = leavesOf(shape);
const paths = leaves.flatMap(({ path, items }) => [path, ...items.map((item) => `${path}.*.${item.path}`)]);

/** Every way into a plan that says everything, lists as `*`. */
function waysIn(value: unknown, path = ''): readonly string[] {
  if (Array.isArray(value)) return value.flatMap((item) => waysIn(item, `${path}.*`));
  if (typeof value === 'object' && value !== null) return Object.entries(value).flatMap(([key, inner]) => waysIn(inner, path === '' ? key : `${path}.${key}`));
  return [path];
}

describe('the controls', () => {
  test.each(['test/plans/everything.yaml', 'test/plans/inches.yaml', 'reports/reading-nook/plan.yaml', 'reports/spare-boards/placed.yaml'])('ask for everything that %s says', (file) => {
    const said = waysIn(parse(readFileSync(new URL(`../../${file}`, import.meta.url), 'utf8'))).filter((path) => path !== 'plan');
    expect(said.filter((path) => !paths.includes(path))).toEqual([]);
  });

  test('have one for everything the schema has, and no two for the same', () => {
    const asked = controlsOf(shape).map(({ leaf }) => leaf.path);
    expect([...asked].sort()).toEqual(leaves.map(({ path }) => path).sort());
    expect(new Set(asked).size).toBe(asked.length);
    expect(asked.length).toBeGreaterThan(50);
  });

  test('take up what is new by themselves, under its own description', () => {
    const grown: FileShape = { ...shape, properties: { ...shape.properties, easel: { type: 'string', enum: ['box', 'mast'], description: 'What it stands on' } } };
    const control = controlsOf(grown).find(({ leaf }) => leaf.path === 'easel');
    expect(control).toMatchObject({ group: 'More', label: 'What it stands on', rare: true, leaf: { type: 'choice', choices: ['box', 'mast'] } });
  });
});

describe('what the text offers', () => {
  const keys = (): readonly string[] => ['strip-19x38', 'stud-38x64'];
  const offeredBy = (kind: Parameters<typeof fileShape>[0]) => (before: string): readonly string[] => offer({ before, lineBefore: before.split('\n').at(-1) as string, pos: before.length, explicit: true }, { shape: fileShape(kind, sources), keys })?.options.map(({ label }) => label) ?? [];
  const offered = offeredBy('plan');

  test('are the keys of the block one stands in', () => {
    expect(offered('plan: 1\nba')).toContain('bars');
    expect(offered('bars:\n  la')).toEqual(['stock', 'lay', 'lip', 'plies', 'stack', 'bond', 'pairing']);
    expect(offered('bars: { stock: strip-19x38, ')).toContain('plies');
    expect(offered('crossbars:\n  - { ru')).toContain('runs');
    expect(offered('corners: { nails: { ')).toEqual(['use', 'each']);
  });

  test('and what a key may be', () => {
    expect(offered('bars:\n  lay: ')).toEqual(['flat', 'edge']);
    expect(offered('bars: { stock: ')).toEqual(keys());
    expect(offered('crossbars:\n  - runs: ')).toEqual(['upright', 'level']);
    expect(offered('# bars: ')).toEqual([]);
  });

  test('in a shelf of one’s own: parts, what an entry says, its lists, sources', () => {
    const inShelf = offeredBy('shelf');
    expect(inShelf('lu')).toContain('lumber');
    expect(inShelf('lumber:\n  strip-20x40:\n    si')).toEqual(expect.arrayContaining(['size', 'lengths', 'spread', 'source']));
    expect(inShelf('lumber:\n  strip-20x40:\n    lengths: [ { le')).toEqual(expect.arrayContaining(['length', 'price', 'available']));
    expect(inShelf('lumber:\n  strip-20x40:\n    lengths:\n      - { length: 2400 mm, ')).toContain('price');
    expect(inShelf('lumber:\n  strip-20x40:\n    spread:\n      picked: { ')).toEqual(expect.arrayContaining(['twist', 'bow', 'crook']));
    expect(inShelf('lumber:\n  strip-20x40:\n    source: ')).toEqual(expect.arrayContaining(['measured', 'practice', ...sources]));
  });

  test('in a ruleset: limits, rules, facts by name', () => {
    const inRules = offeredBy('ruleset');
    expect(inRules('li')).toEqual(expect.arrayContaining(['limits', 'rules', 'builds-on']));
    expect(inRules('limits:\n  twist-reserve: { ')).toEqual(expect.arrayContaining(['stop', 'caution', 'source']));
    expect(inRules('rules:\n  - id: x\n    ea')).toEqual(expect.arrayContaining(['each', 'require', 'say']));
    expect(inRules('rules:\n  - id: x\n    each: ')).toEqual(expect.arrayContaining(['frame', 'bar', 'crossbar']));
    expect(inRules('rules:\n  - id: x\n    require: { fact: ')).toEqual(expect.arrayContaining(['bar.span_mm', 'frame.twist_reserve']));
  });

  test('in a pile: what a board says, its kind, the hand of its twist', () => {
    const inPile = offeredBy('pile');
    expect(inPile('boards:\n  - { ma')).toEqual(expect.arrayContaining(['mark', 'stock', 'length', 'twist', 'knots']));
    expect(inPile('boards:\n  - { mark: A, stock: ')).toEqual(keys());
    expect(inPile('boards:\n  - mark: A\n    twist: { rise: 3 mm, for: ')).toEqual(['right', 'left']);
  });

  test.each([['a:\n  b:\n    c', ['a', 'b']], ['a:\n  b: 1\nd', []], ['- x: ', ['*', 'x']], ['a: { b: 1, c: { d: ', ['a', 'c', 'd']]])('%j stands at %j', (before, place) => expect(placeOf(before)).toEqual(place));
});

test('a history leads back through every text and forth again, in little room', () => {
  const history = new History();
  const texts = Array.from({ length: 300 }, (_, i) => `plan: 1\nname: ${'x'.repeat(i % 7)}\nwidth: ${(i * 7919) % 613} mm\n${'y'.repeat(500)}`);
  texts.slice(1).forEach((text, i) => history.note(texts[i] as string, text));
  let at = texts.at(-1) as string;
  for (const text of texts.slice(0, -1).reverse()) expect((at = history.back(at) as string)).toBe(text);
  expect(history.back(at)).toBeNull();
  for (const text of texts.slice(1)) expect((at = history.forth(at) as string)).toBe(text);
  expect(JSON.stringify(history).length).toBeLessThan(60_000);
});

test('what is typed on in one place is one step, until it rests', () => {
  const history = new History();
  history.note('a', 'ab', 'k');
  history.note('ab', 'abc', 'k');
  history.rest();
  history.note('abc', 'abcd', 'k');
  expect(history.back('abcd')).toBe('abc');
  expect(history.back('abc')).toBe('a');
  expect(history.canBack).toBe(false);
});
