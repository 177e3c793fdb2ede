import { expect, test } from 'vitest';
import { factInput, factsWanted } from '../../src/facts/fact-source.js';
import type { Fact } from '../../src/facts/fact.js';
import type { Shelf, StockLength } from '../../src/shelf/shelf.js';
import { demoModel, demoShelf } from '../mechanics/fasteners/demo-model.js';

/** What cutting comes to, by the last word of each path, on a shelf whose strips are these; words where it is unknown. */
function told(lengths: readonly StockLength[] | null, more: object = {}): Readonly<Record<string, Fact['value'] | undefined>> {
  const from = demoShelf();
  const shelf: Shelf = { ...from, lumber: { ...from.lumber, 'strip-19x38': { ...from.lumber['strip-19x38']!, lengths } }, cutting: { kerf_mm: 3, end_trim_mm: 0, knot_waste_share: { none: 0, few: 0, many: 0 } } };
  const model = demoModel({ face: { width: '900 mm', height: '620 mm' }, bars: { stock: 'strip-19x38', lay: 'flat' }, corners: { cut: 'butt' }, ...more }, shelf);
  const input = factInput(model, undefined as never, undefined as never, shelf);
  const facts = factsWanted(input, (_, path) => path.startsWith('cutting.'));
  expect(facts.find(({ path }) => path === 'cutting.pieces_too_long')?.value).toBe(input.cut.too_long.length);
  return Object.fromEntries(facts.map(({ path, value, reason }) => [path.slice('cutting.'.length), reason ?? value]));
}
const endless = (length_mm: number, price: number, available: number | null = null): StockLength => ({ length_mm, price, available });

test('what is bought: a board of 1700 mm holds two pieces of 824, another two of 620', () => {
  const facts = told([endless(1700, 3)]);
  expect(facts).toMatchObject({ boards: 2, cost: 6, pieces_too_long: 0, spend_set: 'no' });
  expect(facts['waste_share']).toBeCloseTo(1 - (2 * 824 + 2 * 620) / 3400, 9);
  expect(facts['used_cost'] as number).toBeLessThan(facts['total_cost'] as number);
  expect(facts['used_cost'] as number).toBeGreaterThan(6);
  expect(facts).not.toHaveProperty('spend_limit_cost');
});

test('one board short, of one kind or of two: what it costs is unknown, and so is the waste', () => {
  for (const lengths of [[endless(1700, 3, 1)], [endless(1700, 3, 1), endless(1250, 2, 0)]]) {
    const facts = told(lengths);
    for (const path of ['boards', 'cost', 'waste_share', 'total_cost', 'used_cost']) expect(typeof facts[path], path).toBe('string');
    expect(facts).toMatchObject({ pieces_too_long: 0 });
  }
  expect(told([endless(1700, 3, 2)])).toMatchObject({ boards: 2, cost: 6 });
});

test('a shelf that gives no lengths, and pieces that are too long', () => {
  const none = told(null);
  for (const path of ['boards', 'cost', 'waste_share']) expect(none[path]).toBe('The shelf gives no lengths and prices for strip-19x38.');
  expect(told([endless(800, 3)])).toMatchObject({ pieces_too_long: 2, boards: '2 pieces are longer than any board of strip-19x38.' });
  // Bars of another stock: the strips are one level crossbar of 900 − 2 × 38 mm.
  const crossbar = { bars: { stock: 'square-38x38', lay: 'flat' }, crossbars: [{ runs: 'level', at: 0.4, stock: 'strip-19x38', lay: 'flat' }] };
  const one = 'A piece is longer than any board of strip-19x38.';
  expect(told([endless(800, 3)], crossbar)).toMatchObject({ pieces_too_long: 1, boards: one });
  expect(told([endless(830, 3)], crossbar)).toMatchObject({ pieces_too_long: 0 });
});

test('a spending limit, nought too', () => {
  expect(told([endless(1700, 3)], { spend: { limit: 45.5 } })).toMatchObject({ spend_set: 'yes', spend_limit_cost: 45.5 });
  expect(told([endless(1700, 3)], { spend: { limit: 0 } })).toMatchObject({ spend_set: 'yes', spend_limit_cost: 0 });
});
