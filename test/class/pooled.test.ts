import { describe, expect, it } from 'vitest';
import { poolPlans } from '../../src/class/pooled.js';
import { chalkBlocks } from '../../src/class/plan-sheet.js';
import { buyingBlocks, cutListBlocks, sawBlocks } from '../../src/class/pooled-blocks.js';
import { markingOrder } from '../../src/cutting/marking.js';
import { suppliesOf } from '../../src/cost/supplies.js';
import { buildModel } from '../../src/model/build-model.js';
import type { Plan } from '../../src/plan/plan.js';
import { readPlanWith } from '../../src/plan/read-plan.js';
import { shippedShelf } from '../plan/shelf-for-tests.js';

const shelf = shippedShelf();

function planOf(name: string, face: string, more = ''): Plan {
  const result = readPlanWith(`plan: 1\nname: ${name}\nface: ${face}\nbars: { stock: strip-19x38, lay: flat }\n${more}`, `${name}.yaml`, shelf);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}

const wide = planOf('Wide', '{ width: 660 mm, height: 400 mm }');
const tall = planOf('Tall', '{ width: 14 in, height: 21 in }', 'count: 3\n');

describe('the strips of lips in a pool', () => {
  const lipped = planOf('Lipped', '{ width: 513 mm, height: 377 mm }', 'count: 2\n');
  const withLip: Plan = { ...lipped, bars: { ...lipped.bars, lip_mm: 6 } };
  const pooled = poolPlans([wide, withLip], shelf);
  const tags = (blocks: readonly unknown[]): readonly string[] => [...new Set(JSON.stringify(blocks).match(/[\d.]+-lip [TBLR]/gu) ?? [])].sort();

  it('are named alike on the list, at the saw and on the sheet of their plan', () => {
    const all = ['2.1-lip B', '2.1-lip L', '2.1-lip R', '2.1-lip T', '2.2-lip B', '2.2-lip L', '2.2-lip R', '2.2-lip T'];
    expect(tags(cutListBlocks(pooled))).toEqual(all);
    expect(tags(sawBlocks(pooled))).toEqual(all);
    expect(tags(chalkBlocks(pooled, 1))).toEqual(all);
    expect(tags(chalkBlocks(pooled, 0))).toEqual([]);
  });

  it('at the saw the longest comes first; what is 38.1 mm wide does not nest with 38 mm and comes after it, as on the boards', () => {
    const metric = markingOrder(poolPlans([wide, withLip], shelf).cut).steps.filter(({ ends }) => ends === 'mitre').map(({ stop_mm }) => stop_mm);
    const both = markingOrder(poolPlans([wide, tall, withLip], shelf).cut).steps.filter(({ ends }) => ends === 'mitre').map(({ stop_mm }) => stop_mm);
    const inches = both.slice(metric.length);
    expect(both.slice(0, metric.length)).toEqual(metric);
    for (const order of [metric, inches]) {
      expect(order.length).toBeGreaterThan(1);
      expect(order).toEqual([...order].sort((a, b) => b - a));
    }
  });
});

describe('what several plans take together', () => {
  it('is, but for boards and cloth, the sum of what each takes alone, in shared packs', () => {
    const pooled = poolPlans([wide, tall], shelf);
    const alone = [wide, tall].flatMap((plan) => suppliesOf(buildModel(plan, shelf), shelf).lines);
    expect(pooled.others.map(({ entry }) => entry).sort()).toEqual([...new Set(alone.map(({ entry }) => entry))].sort());
    for (const { entry, for_all, cost, packs } of pooled.others) {
      const own = alone.filter((line) => line.entry === entry);
      expect(for_all, `${entry}`).toBeCloseTo(own.reduce((sum, line) => sum + line.for_all, 0), 9);
      // What is cut off a roll goes up to steps of the pool's own units.
      if (packs.length > 0) expect(cost, `${entry}`).toBeLessThanOrEqual(own.reduce((sum, line) => sum + (line.cost ?? Number.NaN), 0) + 1e-9);
    }
    const lines = [...pooled.supplies.boards.map(({ cost }) => cost), ...pooled.rolls.map(({ bought_cost }) => bought_cost), ...pooled.others.map(({ cost }) => cost)];
    expect(pooled.total_cost).toBeCloseTo(lines.reduce<number>((sum, cost) => sum + (cost ?? Number.NaN), 0), 9);
  });

  it('never costs more than each alone: boards and cloth are shared', () => {
    const total = (plans: readonly Plan[]): number => poolPlans(plans, shelf).total_cost ?? Number.NaN;
    expect(total([wide, tall])).toBeLessThanOrEqual(total([wide]) + total([tall]) + 1e-9);
  });

  it('a length in inches is told in millimetres beside metric plans, in inches among its own kind', () => {
    expect(poolPlans([tall, wide], shelf).cut.units).toBe('metric');
    expect(poolPlans([tall], shelf).cut.units).toBe('inch');
  });

  it('where the shelf has too few boards, says how many are missing and lays out the rest as if they were there', () => {
    const many = planOf('Many', '{ width: 900 mm, height: 700 mm }', 'count: 40\n');
    const { cut, short, total_cost } = poolPlans([many], shelf);
    // 40 frames of 3.2 m each need at least 128 m; the shelf has 20 boards of 1.8 m and 20 of 2.4 m: 84 m
    expect(cut.cost).not.toBeNull();
    expect(total_cost).not.toBeNull();
    expect(short.length).toBeGreaterThan(0);
    for (const { needed, available } of short) expect(needed).toBeGreaterThan(available);
    expect(cut.stocks[0]?.boards.reduce((sum, { length_mm }) => sum + length_mm, 0)).toBeGreaterThan(128_000 * 0.95);
  });

  it('enough boards: nothing is short', () => {
    expect(poolPlans([wide, tall], shelf).short).toEqual([]);
  });

  it('a cloth wider than its roll makes the cost unknown, with the reason', () => {
    const { total_cost, reason } = poolPlans([planOf('Huge', '{ width: 1750 mm, height: 1700 mm }')], shelf);
    expect(total_cost).toBeNull();
    expect(reason).toContain('too narrow');
  });
});

describe('an inch plan among metric ones', () => {
  const inch = planOf('Inches', '{ width: 27 in, height: 41 in }', 'hang: { by: wire }\n');
  it('buys everything by one rule, and the page says which', () => {
    const mixed = poolPlans([inch, wide], shelf);
    expect(mixed.rolls.map(({ layout }) => layout.roll_mm)).toEqual([1500]);
    expect(mixed.others.find(({ kind }) => kind === 'wire')!.bought! % 500).toBe(0);
    expect(mixed.others.find(({ kind }) => kind === 'backing')).toMatchObject({ cut_from_mm: [700, 1000], sheets: { pieces: 3 } });
    expect(JSON.stringify(buyingBlocks(mixed))).toContain('as a shop that sells in millimetres has them');
    expect(poolPlans([inch], shelf).others.find(({ kind }) => kind === 'backing')?.cut_from_mm).toEqual([711.2, 1016]);
    expect(JSON.stringify(buyingBlocks(poolPlans([inch], shelf)))).not.toContain('as a shop that sells in millimetres has them');
  });
});

describe('what each pays of the whole', () => {
  it('goes by what it uses: of two plans one of which takes all the wood of a stock, that one pays for it', () => {
    const thick = planOf('Thick', '{ width: 660 mm, height: 400 mm }', 'crossbars: [ { runs: upright, stock: square-38x38, lay: flat } ]\n');
    const pooled = poolPlans([thick, wide], shelf);
    const square = pooled.supplies.boards.filter(({ stock }) => stock === 'square-38x38').reduce((sum, { cost }) => sum + cost, 0);
    const screws = pooled.others.filter(({ entry }) => entry === 'screws.screw-6x32' || (entry?.startsWith('screws.') ?? false)).reduce((sum, { cost }) => sum + (cost ?? 0), 0);
    const [a, b] = pooled.shares as readonly [number, number];
    expect(square).toBeGreaterThan(0);
    expect(a + b).toBeCloseTo(pooled.total_cost!, 9);
    expect(a - b).toBeGreaterThanOrEqual(square + screws - 0.9); // glue and the hanging of the heavier frame apart
  });
  it('frames that are alike pay alike, per frame', () => {
    const two = planOf('Two', '{ width: 660 mm, height: 400 mm }', 'count: 2\n');
    const [one, both] = poolPlans([wide, two], shelf).shares as readonly [number, number];
    expect(Math.abs(both - 2 * one)).toBeLessThan(0.021);
  });
});
