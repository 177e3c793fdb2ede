/** Small parts of the cutting, each alone: held against every load there is, or by hand. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { better, makeChoice, within } from '../../src/cutting/boards/choices.js';
import { diveFreely, diveInto } from '../../src/cutting/boards/dive.js';
import { loadSize, quickCutting, type Filled } from '../../src/cutting/boards/greedy.js';
import { bestLoad } from '../../src/cutting/boards/knapsack.js';
import { loadCeiling } from '../../src/cutting/boards/load-ceiling.js';
import { cutBoards } from '../../src/cutting/boards/pack.js';
import { makeReady, needAlone, onlyAlone, type ReadyProblem } from '../../src/cutting/boards/ready-problem.js';
import { wholePrices } from '../../src/cutting/boards/shadow-prices.js';
import { meets } from '../../src/cutting/boards/weights.js';
import { placeAcross } from '../../src/cutting/roll/across.js';
import { fillableLengths, fillableWidths, leastLength_mm, usableOf } from '../../src/cutting/roll/bounds.js';
import { lengthOf, liesOf, place, type Lie, type RollPiece } from '../../src/cutting/roll/piece.js';
import { packRoll } from '../../src/cutting/roll/roll.js';
import { packInRows } from '../../src/cutting/roll/shelves.js';
import { packAlongSkyline } from '../../src/cutting/roll/skyline.js';
import { runs } from '../effort.js';
import { everyLoad, holds, readyProblem, takes } from './every-load.js';
import { fresh } from './problems.js';

const never = (): boolean => false;
const ready = (stock: readonly object[], items: readonly { length: number; count: number; group?: number }[], setups: readonly number[] = [], kerf = 0): ReadyProblem => makeReady(fresh({ kerf, stock: stock as never, items, setups }));

/** What is wrong with filled boards: every piece once, no board over its length, none beyond those there are. */
function wrong(bench: ReadyProblem, filled: readonly Filled[], most: readonly number[]): string | null {
  const cut = bench.count.map((_, k) => filled.reduce((sum, { counts }) => sum + counts[k]!, 0));
  if (cut.some((c, k) => c !== bench.count[k])) return `pieces ${cut}`;
  if (filled.some(({ bin, counts }) => !holds(bench, bin, counts))) return 'overfull';
  return most.some((n, s) => filled.filter(({ bin }) => bin === s).length > n) ? 'too many boards' : null;
}

describe('parts of the search for boards', () => {
  it('the ceiling of a board is the most that any load of it is worth, where the length is told to the unit', () => {
    fc.assert(fc.property(readyProblem, fc.array(fc.nat(9), { minLength: 6, maxLength: 6 }), (bench, drawn) => {
      const value = bench.size.map((_, k) => drawn[k % 6]!);
      bench.bins.forEach((bin, s) => {
        const worth = everyLoad(bench, s).map((load) => load.reduce((sum, c, k) => sum + c * value[k]!, 0));
        expect(loadCeiling(bench, value, bin)).toBe(Math.max(...worth));
      });
    }), { numRuns: runs(120) });
  });

  it('told in cells of more than a unit it is never less, and little more', () => {
    // A board of 72,030 in cells of 3: 24,010 of them. Pieces of 24,011 take 8,003 cells (24,009), so three go in, though really two do.
    const bench = ready([{ length: 72_030, price: 1 }], [{ length: 24_011, count: 5 }, { length: 24_009, count: 1, group: 0 }], [2]);
    expect(loadCeiling(bench, [7, 5], bench.bins[0]!)).toBe(21);
    expect(bestLoad(bench, [7, 5], 72_030).value).toBe(14);
    expect(loadCeiling(bench, [0, 0], bench.bins[0]!)).toBe(0);
    // In cells of 4, pieces of 3 take none: all forty count.
    const small = ready([{ length: 100_000, price: 1 }], [{ length: 3, count: 40 }]);
    expect(loadCeiling(small, [7], small.bins[0]!)).toBe(280);
    const many = ready([{ length: 100, price: 1 }], [{ length: 9, count: 7 }]);
    expect([1, 7].map((count) => loadCeiling({ ...many, count: [count] }, [3], many.bins[0]!))).toEqual([3, 21]);
    expect(loadCeiling({ ...many, count: [40] }, [3], many.bins[0]!)).toBe(33);
  });

  it('the length of a load is its pieces and each setup once', () => {
    fc.assert(fc.property(readyProblem, (bench) => {
      for (const load of everyLoad(bench, 0)) expect(loadSize(bench, load)).toBe(takes(bench, load));
      bench.size.forEach((size, k) => expect(needAlone(bench, k)).toBe(size + bench.setup[k]!));
    }), { numRuns: runs(60) });
  });

  it('a first cutting holds every piece once, the longest first, each load on the cheapest board that holds it', () => {
    fc.assert(fc.property(readyProblem, (bench) => {
      const filled = quickCutting(bench);
      if (filled === null) return;
      expect(wrong(bench, filled, bench.bins.map(({ most }) => most))).toBeNull();
      expect(filled[0]!.counts[0]).toBeGreaterThan(0);
      const merit = (s: number): number => bench.bins[s]!.price + 1e-9 * bench.bins[s]!.size;
      for (const { bin, counts } of filled) bench.bins.forEach(({ most }, s) => {
        if (most === bench.pieces && filled.length < bench.pieces && holds(bench, s, counts)) expect(merit(s)).toBeGreaterThanOrEqual(merit(bin));
      });
    }), { numRuns: runs(200) });
  });

  it('… by hand: what a board costs for the length it carries; of like ones the shorter; a piece alone on the longest it may lie on', () => {
    const bench = ready([{ length: 100, price: 10 }, { length: 60, price: 5 }, { length: 30, price: 3 }], [{ length: 55, count: 1 }, { length: 40, count: 1 }, { length: 25, count: 1 }]);
    // 55 on 60 costs 5/55, with 40 on 100 it would 10/95; then 40 alone on 60 at 5/40, with 25 on 100 at 10/65; last 25 on 30.
    expect(quickCutting(bench)).toEqual([{ bin: 1, counts: [1, 0, 0] }, { bin: 1, counts: [0, 1, 0] }, { bin: 2, counts: [0, 0, 1] }]);
    expect(quickCutting(bench, (s) => s === 0)).toEqual([{ bin: 0, counts: [1, 1, 0] }, { bin: 2, counts: [0, 0, 1] }]);
    expect(quickCutting(bench, (s) => s === 2)).toBeNull();
    const alike = ready([{ length: 90, price: 5 }, { length: 70, price: 5 }], [{ length: 60, count: 1 }]);
    expect(quickCutting(alike)).toEqual([{ bin: 1, counts: [1] }]);
    const few = ready([{ length: 60, price: 1, available: 1 }, { length: 80, price: 9 }], [{ length: 55, count: 3 }]);
    expect(quickCutting(few)!.map(({ bin }) => few.bins[bin]!.price).sort()).toEqual([1, 9, 9]);
    const alone = ready([{ length: 60, alone: 70, price: 4 }, { length: 90, price: 9 }], [{ length: 68, count: 2 }, { length: 20, count: 1 }]);
    expect(quickCutting(alone)!.map(({ bin, counts }) => [alone.bins[bin]!.price, ...counts])).toEqual([[4, 1, 0], [4, 1, 0], [4, 0, 1]]);
    // From the longer boards only, the second 68 lies by itself: a board of 60 that lets a lone piece be 70 long holds it for less.
    expect(quickCutting(alone, (s) => alone.bins[s]!.price === 9)!.map(({ bin, counts }) => [alone.bins[bin]!.price, ...counts])).toEqual([[9, 1, 1], [4, 1, 0]]);
  });

  it('diving gives cuttings that hold every piece once, on the boards there are; freely, no dearer than the first one', () => {
    let [into, free] = [0, 0];
    fc.assert(fc.property(readyProblem, fc.constantFrom(0.3, 0.5, 0.75, 0.9), (bench, sure) => {
      const most = bench.bins.map((bin) => bin.most);
      const cost = (filled: readonly Filled[]): number => filled.reduce((sum, { bin }) => sum + bench.bins[bin]!.price, 0);
      const [quick, freely] = [quickCutting(bench), diveFreely(bench, sure, never)];
      if (freely !== null) {
        free++;
        expect(wrong(bench, freely, most)).toBeNull();
        if (quick !== null) expect(cost(freely)).toBeLessThanOrEqual(cost(quick));
      } else expect(quick).toBeNull();
      if (quick === null) return;
      const choice = bench.bins.map((_, s) => quick.filter(({ bin }) => bin === s).length);
      const found = diveInto(bench, choice, sure, never);
      if (found === null) return;
      into++;
      expect(wrong(bench, found, choice)).toBeNull();
    }), { numRuns: runs(200) });
    expect(Math.min(into, free)).toBeGreaterThan(5);
    const bench = ready([{ length: 100, price: 1 }], [{ length: 60, count: 2 }]);
    expect([diveInto(bench, [2], 0.5, never), diveInto(bench, [1], 0.5, never), diveInto(bench, [2], 0.5, () => true), diveFreely(bench, 0.5, () => true)]).toEqual([[{ bin: 0, counts: [1] }, { bin: 0, counts: [1] }], null, null, null]);
  });

  it('boards that would do by length and number, but hold no cutting, are too few once all is searched, and undecided before', () => {
    // Beside each 51 there is room for 49: for the one, or for a 25; one 25 is left. 277 of 300 by length, and one load is full.
    const problem = { kerf: 0, stock: [{ length: 100, price: 3, available: 3 }], items: [51, 51, 51, 49, 25, 25, 25].map((length) => ({ length, count: 1 })) };
    expect(cutBoards(fresh(problem))).toEqual({ ok: false, reason: 'not-enough' });
    let now = 0;
    expect(cutBoards({ ...problem, timeLimit_ms: 1, now: () => now++ })).toEqual({ ok: false, reason: 'undecided' });
    expect(cutBoards(fresh({ ...problem, stock: [{ length: 101, price: 3, available: 3 }] }))).toMatchObject({ ok: true, cost: 9, waste: 303 - 277, proven: true, tiesProven: true, bound: 9, gap: 0 });
  });

  it('choices by cost, then length, then number; one within another where its boards are matched by as long ones', () => {
    const bench = ready([{ length: 100, price: 7 }, { length: 60, price: 4 }, { length: 30, price: 3 }], [{ length: 20, count: 9 }]);
    const [p, q, r] = [[1, 2, 0], [0, 1, 2], [2, 0, 1]].map((boards) => makeChoice(bench, boards)) as [ReturnType<typeof makeChoice>, ReturnType<typeof makeChoice>, ReturnType<typeof makeChoice>];
    expect([p, q, r].map(({ cost, length, number }) => [cost, length, number])).toEqual([[15, 220, 3], [10, 120, 3], [17, 230, 3]]);
    const like = (cost: number, length: number, number: number) => ({ boards: [], cost, length, number });
    expect([better(p, q), better(q, p), better(like(1, 5, 9), like(1, 6, 2)), better(like(1, 6, 3), like(1, 6, 2)), better(p, p)].map(Math.sign)).toEqual([1, -1, -1, 1, 0]);
    expect([within(bench, q, p), within(bench, p, r), within(bench, r, p), within(bench, p, p), within(bench, makeChoice(bench, [0, 3, 0]), p), within(bench, makeChoice(bench, [0, 0, 4]), p)]).toEqual([true, false, false, true, true, false]);
    const weight = { value: [1], capacity: [5, 3, 1], demand: 11, rate: [1, 0] };
    expect([[1, 2, 0], [1, 1, 3], [1, 1, 2], [3, 0, 0]].map((boards) => meets(weight, boards))).toEqual([true, true, false, true]);
    expect([wholePrices([0, 0]), wholePrices([2, 1, -1, 0.5]), wholePrices([3, 1])]).toEqual([[0, 0], [1e6, 5e5, 0, 250_000], [1e6, 333_333]]);
  });

  it('alone is what is longer than a board carries beside others, up to what it may be alone', () => {
    const bench = ready([{ length: 100, alone: 120, price: 1 }], [{ length: 121, count: 1 }, { length: 120, count: 1 }, { length: 101, count: 1 }, { length: 100, count: 1 }, { length: 95, count: 1, group: 0 }], [6]);
    expect(bench.size.map((_, k) => onlyAlone(bench, k, bench.bins[0]!))).toEqual([false, true, true, false, true]);
  });

  it('a problem made ready: like pieces together, longest first, the kerf in every size; boards that none fits or a cheaper beats drop out', () => {
    const bench = ready([{ length: 50, price: 3 }, { length: 100, price: 9 }, { length: 120, price: 8 }, { length: 39, price: 1 }, { length: 120, price: 20, alone: 130 }, { length: 70, price: 2, available: 1 }], [{ length: 40, count: 2 }, { length: 60, count: 1, group: 0 }, { length: 40, count: 1 }, { length: 40, count: 1, group: 0 }, { length: 9, count: 0 }], [8], 2);
    expect([bench.size, bench.count, bench.group, bench.setup, bench.members, bench.pieces]).toEqual([[62, 42, 42], [1, 3, 1], [0, -1, 0], [8, 0, 8], [[1], [0, 0, 2], [3]], 5]);
    expect(bench.bins.map(({ size, alone, length, price, most, stock }) => [size, alone, length, price, most, stock])).toEqual([[122, 132, 120, 20, 5, 4], [122, 122, 120, 8, 5, 2], [72, 72, 70, 2, 1, 5], [52, 52, 50, 3, 5, 0]]);
  });
});

describe('parts of the search for a roll', () => {
  const lie = (across: number, along: number, turned = false): Lie => ({ across, along, turned });
  const cloth = (name: string, along_mm: number, across_mm: number, turnable = false): RollPiece => ({ name, along_mm, across_mm, turnable });
  const laid = (...sizes: readonly (readonly [number, number])[]) => sizes.map(([across, along], i) => ({ piece: cloth(`c${i}`, along, across), lie: lie(across, along) }));
  const spots = (placed: readonly { name: string; x_mm: number; y_mm: number }[]) => placed.map(({ name, x_mm, y_mm }) => `${name} ${x_mm},${y_mm}`);

  it('sums that pieces fill, up to the limit itself; a free stretch is worth the largest that it holds', () => {
    const waiting = [[lie(30, 50)], [lie(40, 20), lie(20, 40)]];
    expect([fillableWidths(waiting, 70), fillableWidths(waiting, 69), fillableLengths(waiting, 90), fillableLengths(waiting, 49)]).toEqual([[0, 20, 30, 40, 50, 70], [0, 20, 30, 40, 50], [0, 20, 40, 50, 70, 90], [0, 20, 40]]);
    expect([-1, 0, 19.9, 20, 20.1, 35, 70, 500].map((free) => usableOf([0, 20, 30, 70], free))).toEqual([0, 0, 0, 20, 20, 30, 70, 70]);
    expect([usableOf(null, 33), usableOf(null, -3)]).toEqual([33, 0]);
    const doubling = (n: number) => Array.from({ length: n }, (_, i) => [lie(2 ** i, 1)]);
    expect([fillableWidths(doubling(12), 1e9)?.length, fillableWidths(doubling(13), 1e9)]).toEqual([4096, null]);
  });

  it('no finish is shorter than area, a single piece, or pieces too wide for each other ask', () => {
    const least = (levels: readonly (readonly [number, number])[], waiting: readonly (readonly Lie[])[], roll = 100) => leastLength_mm(levels.map(([y, used]) => ({ y, used })), waiting, null, roll);
    // Area: 50 × 60 + 40 × 30 = 4200 on 100.
    expect(least([[0, 0]], [[lie(50, 60)], [lie(40, 30)]])).toBe(60);
    expect(least([[0, 0]], [[lie(50, 30)], [lie(50, 30)], [lie(50, 30)]])).toBe(45);
    expect(least([[0, 0]], [[lie(60, 30)], [lie(55, 20)]])).toBe(50);
    expect(least([[0, 0]], [[lie(60, 30)], [lie(40, 20)]])).toBe(30);
    // 80 of 100 are taken up to 25: a piece of 30 begins there, one of 20 at once.
    expect([least([[0, 80], [25, 0]], [[lie(30, 10)]]), least([[0, 80], [25, 0]], [[lie(20, 10)]]), least([[0, 80], [25, 0]], [[lie(30, 10), lie(10, 30, true)]])]).toEqual([35, 10, 30]);
    // By area behind a level: 20 × 25 of room first, then (5000 − 500)/100.
    expect(least([[0, 80], [25, 0]], [[lie(50, 50)], [lie(50, 50)]])).toBe(75);
    expect(least([[3, 100], [5, 0]], [])).toBe(0);
    expect([least([[7, 0]], []), least([[0, 100]], [[lie(10, 10)]])]).toEqual([7, Infinity]);
  });

  it('ways of lying: as given, turned where that is allowed and another, none too wide', () => {
    expect([liesOf(cloth('a', 70, 50), 60), liesOf(cloth('a', 70, 50), 50), liesOf(cloth('a', 70, 50), 49.9), liesOf(cloth('a', 70, 50, true), 70), liesOf(cloth('a', 70, 50, true), 69), liesOf(cloth('a', 50, 70, true), 60), liesOf(cloth('a', 50, 50, true), 60)]).toEqual([
      [lie(50, 70)], [lie(50, 70)], [], [lie(50, 70), lie(70, 50, true)], [lie(50, 70)], [lie(50, 70, true)], [lie(50, 50)],
    ]);
    expect([lengthOf([]), lengthOf([place(cloth('a', 70, 50), lie(50, 70), 3, 5), place(cloth('b', 20, 20), lie(20, 20), 0, 40)])]).toEqual([0, 75]);
  });

  it('rows: in the last one only, the first or the fullest with room; a row begins where the one before ends', () => {
    const pieces = laid([60, 40], [70, 30], [40, 20], [25, 10], [30, 9]);
    expect(spots(packInRows(pieces, 100, 'next'))).toEqual(['c0 0,0', 'c1 0,40', 'c2 0,70', 'c3 40,70', 'c4 65,70']);
    expect(spots(packInRows(pieces, 100, 'first'))).toEqual(['c0 0,0', 'c1 0,40', 'c2 60,0', 'c3 70,40', 'c4 0,70']);
    expect(spots(packInRows(laid([60, 40], [70, 30], [25, 10], [35, 9]), 100, 'best'))).toEqual(['c0 0,0', 'c1 0,40', 'c2 70,40', 'c3 60,0']);
    expect(spots(packInRows(laid([20, 30], [50, 30], [50, 40]), 100, 'first'))).toEqual(['c2 0,0', 'c1 50,0', 'c0 0,40']);
  });

  it('along the front: nearest the end first, then farthest left, over whatever lies beneath', () => {
    const put = (...sizes: readonly (readonly [number, number])[]) => spots(packAlongSkyline(laid(...sizes).map(({ piece, lie: one }) => ({ piece, lies: [one] })), 100));
    expect(put([60, 40], [40, 25], [40, 10], [50, 5], [100, 1])).toEqual(['c0 0,0', 'c1 60,0', 'c2 60,25', 'c3 0,40', 'c4 0,45']);
    expect(put([30, 20], [30, 10], [40, 20], [30, 5], [30, 15])).toEqual(['c0 0,0', 'c1 30,0', 'c2 60,0', 'c3 30,10', 'c4 30,15']);
    const turning = packAlongSkyline([{ piece: cloth('a', 80, 50, true), lies: [lie(50, 80), lie(80, 50, true)] }], 100);
    expect(turning[0]).toMatchObject({ turned: true, along_mm: 50, across_mm: 80 });
  });

  it('places across: strips that share a level lie side by side, others over each other; too wide have none; what was put down is counted', () => {
    const strip = (from: number, to: number, across: number) => ({ from, to, across });
    expect(placeAcross([strip(0, 10, 60), strip(0, 10, 40)], 100, 99)).toEqual({ places: [0, 60], finished: true, steps: 2 });
    expect(placeAcross([strip(0, 10, 60), strip(10, 20, 60)], 60, 99)).toEqual({ places: [0, 0], finished: true, steps: 2 });
    expect(placeAcross([strip(0, 10, 60), strip(9, 20, 41)], 100, 99)).toMatchObject({ places: null, finished: true });
    expect(placeAcross([strip(0, 10, 60), strip(0, 10, 40)], 100, 1)).toMatchObject({ places: null, finished: false });
    expect(placeAcross([strip(0, 10, 60), strip(0, 10, 40)], 100, 2)).toMatchObject({ places: [0, 60], finished: true });
  });

  it('a roll is told in reading order, with the share that ends as cloth, and its least length', () => {
    const layout = packRoll([cloth('c', 20, 30), cloth('a', 50, 60), cloth('b', 50, 40), cloth('d', 20, 65)], 100);
    expect(layout).toMatchObject({ length_mm: 70, proven: true, least_mm: 70, too_wide: [] });
    expect(layout.used_share).toBeCloseTo((20 * 30 + 50 * 60 + 50 * 40 + 20 * 65) / 7000, 12);
    const order = layout.placed.map(({ x_mm, y_mm }) => y_mm * 1000 + x_mm);
    expect(order).toEqual([...order].sort((p, q) => p - q));
    // Seven alike, three abreast: three rows.
    expect(packRoll(Array.from({ length: 7 }, (_, i) => cloth(`s${i}`, 40, 33)), 100)).toMatchObject({ length_mm: 120, least_mm: 120, proven: true });
    expect(packRoll(Array.from({ length: 32 }, (_, i) => cloth(`s${i}`, 40, 25)), 100)).toMatchObject({ length_mm: 320, proven: true });
  });
});
