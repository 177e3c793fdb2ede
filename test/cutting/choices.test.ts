/** Which choices of boards are looked at, and how many points of the search that takes: counted here a second way. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { choicesBetween, makeChoice, within } from '../../src/cutting/boards/choices.js';
import { makeReady, type ReadyProblem } from '../../src/cutting/boards/ready-problem.js';
import { meets, plainWeights, type Weight } from '../../src/cutting/boards/weights.js';
import { runs } from '../effort.js';
import { readyProblem } from './every-load.js';
import { fresh } from './problems.js';

type Stock = { readonly length: number; readonly alone?: number; readonly price: number; readonly available?: number };
const benchOf = (stock: readonly Stock[], items: readonly { length: number; count: number }[]): ReadyProblem => makeReady(fresh({ kerf: 0, stock, items }));
const never = (): boolean => false;

/** Whether what is chosen, with the best that the kinds still to come can add for the money left, may yet reach every weight. */
function mayReach(bench: ReadyProblem, weights: readonly Weight[], high: number, start: readonly number[]): boolean {
  const money = high - start.reduce((sum, n, s) => sum + n * bench.bins[s]!.price, 0);
  return weights.every(({ capacity, demand }) => {
    const has = start.reduce((sum, n, s) => sum + n * capacity[s]!, 0);
    const later = bench.bins.flatMap(({ price, most }, s) => (s < start.length ? [] : [{ price, most, carries: capacity[s]! }]));
    const free = later.reduce((sum, { price, most, carries }) => sum + (price === 0 ? most * carries : 0), 0);
    const dearest = Math.max(0, ...later.map(({ price, carries }) => (price === 0 ? 0 : carries / price)));
    return has + free + money * dearest > demand - 1e-9 * (1 + demand);
  });
}

/** Points of the search, by their meaning: the beginnings of choices that are dear enough to be had and may still carry everything. */
function pointsBetween(bench: ReadyProblem, weights: readonly Weight[], high: number): number {
  let points = 0;
  const visit = (start: readonly number[]): void => {
    points++;
    if (start.length === bench.bins.length || !mayReach(bench, weights, high, start)) return;
    const s = start.length;
    const [bin, before] = [bench.bins[s]!, bench.bins[s - 1]];
    const onlyAfter = before !== undefined && before.size === bin.size && before.alone === bin.alone && start[s - 1]! < before.most;
    for (let n = 0; n <= (onlyAfter ? 0 : bin.most); n++) {
      const boards = [...start, n];
      const cost = boards.reduce((sum, m, t) => sum + m * bench.bins[t]!.price, 0);
      if (cost <= high && boards.reduce((sum, m) => sum + m, 0) <= bench.pieces) visit(boards);
    }
  };
  visit([]);
  return points;
}

function looked(bench: ReadyProblem, weights: readonly Weight[], low: number, high: number): { points: number; found: readonly (readonly number[])[] } {
  let points = 0;
  const found = choicesBetween(bench, weights, low, high, 1e6, () => (points++, false));
  return { points, found: found!.map(({ boards }) => boards) };
}

describe('choices of boards', () => {
  it('takes none of a length at its dearer price while there are cheaper boards of it', () => {
    const stock = [{ length: 1200, price: 9, available: 1 }, { length: 1000, price: 5, available: 2 }, { length: 1000, price: 7, available: 2 }, { length: 600, price: 4, available: 1 }];
    const bench = benchOf(stock, [{ length: 390, count: 3 }]);
    expect(bench.bins.map(({ price }) => price)).toEqual([9, 5, 7, 4]);
    const { found } = looked(bench, plainWeights(bench), 0, 40);
    // Three pieces of 390 in boards of 1200, 1000 and 600 mm that are together long enough: counted one by one.
    const every = [0, 1].flatMap((x) => [0, 1, 2].flatMap((a) => [0, 1, 2].flatMap((b) => [0, 1].map((c) => [x, a, b, c] as const))));
    const wanted = every.filter(([x, a, b, c]) => (b === 0 || a === 2) && x + a + b + c <= 3 && plainWeights(bench).every((w) => meets(w, [x, a, b, c])));
    expect(found.map(String).toSorted()).toEqual(wanted.map(String).toSorted());
    expect(wanted.length).toBeGreaterThan(3);
  });
  it('looks at no more beginnings than may still carry everything for the money', () => {
    const bench = benchOf([{ length: 1000, price: 11 }, { length: 700, price: 8 }, { length: 500, price: 0, available: 2 }, { length: 400, price: 3 }], [{ length: 390, count: 3 }, { length: 280, count: 4 }]);
    for (const high of [5, 12, 19, 26, 33]) {
      const { points, found } = looked(bench, plainWeights(bench), 0, high);
      expect(points).toBe(pointsBetween(bench, plainWeights(bench), high));
      expect(found.every((boards) => plainWeights(bench).every((weight) => meets(weight, boards)))).toBe(true);
    }
    fc.assert(
      fc.property(readyProblem, fc.integer({ min: 0, max: 900 }), (one, high) => {
        expect(looked(one, plainWeights(one), 0, high).points).toBe(pointsBetween(one, plainWeights(one), high));
      }),
      { numRuns: runs(320) },
    );
  });

  it('stops at once when told to, and says so', () => {
    const bench = benchOf([{ length: 1000, price: 11 }, { length: 700, price: 8 }], [{ length: 390, count: 5 }]);
    let asked = 0;
    expect(choicesBetween(bench, plainWeights(bench), 0, 60, 1e6, () => ++asked >= 4)).toBeNull();
    expect(asked).toBe(4);
  });

  it('takes the dearer of two boards alike only when there are no more of the cheaper', () => {
    const weigh = (bench: ReadyProblem): Weight[] => [{ value: [1], capacity: bench.bins.map(() => 1), demand: 3, rate: [1, 0] }];
    const taken = (stock: readonly Stock[]): string[] => {
      const bench = benchOf(stock, [{ length: 60, count: 3 }]);
      return choicesBetween(bench, weigh(bench), 0, 99, 1e6, never)!.map(({ boards }) => boards.join('+')).sort();
    };
    // Kinds stand longest first, and of equal ones the cheaper first.
    expect(taken([{ length: 100, price: 4, available: 1 }, { length: 100, price: 5, available: 2 }])).toEqual(['1+2']);
    expect(taken([{ length: 100, price: 4, available: 2 }, { length: 100, price: 5, available: 3 }])).toEqual(['2+1']);
    const freely = ['0+3', '1+2', '2+1'];
    expect(taken([{ length: 101, price: 4, available: 2 }, { length: 100, alone: 101, price: 5, available: 3 }])).toEqual(freely);
    expect(taken([{ length: 100, alone: 120, price: 4, available: 2 }, { length: 100, price: 5, available: 3 }])).toEqual(freely);
    expect(taken([{ length: 100, price: 4, available: 1 }, { length: 100, price: 5, available: 1 }, { length: 100, price: 6, available: 2 }])).toEqual(['1+1+1']);
  });

  it('keeps to the money with boards of one coin, and to all that are there of those that cost none', () => {
    const bench = benchOf([{ length: 100, price: 1, available: 5 }, { length: 90, price: 0, available: 2 }], [{ length: 60, count: 5 }]);
    const found = choicesBetween(bench, plainWeights(bench), 0, 3, 1e6, never)!;
    expect(found.map(({ boards, cost }) => [boards, cost])).toEqual([[[3, 2], 3]]);
  });

  it('keeps a choice whose money just suffices, whatever rounding says: 49 times a forty-ninth falls short of one', () => {
    expect(49 * (1 / 49)).toBeLessThan(1);
    const bench = benchOf([{ length: 100, price: 49 }], [{ length: 60, count: 1 }]);
    expect(choicesBetween(bench, [{ value: [1], capacity: [1], demand: 1, rate: [1, 0] }], 49, 49, 9, never)).toHaveLength(1);
  });

  it('one lies within another where each of its boards has one as long of its own', () => {
    const choices = (bench: ReadyProblem, small: readonly number[], large: readonly number[]) => within(bench, makeChoice(bench, small), makeChoice(bench, large));
    const inStep = benchOf([{ length: 100, alone: 110, price: 4 }, { length: 90, alone: 110, price: 3 }, { length: 80, price: 2 }], [{ length: 20, count: 9 }]);
    expect([choices(inStep, [0, 2, 1], [1, 1, 1]), choices(inStep, [1, 1, 1], [0, 2, 1]), choices(inStep, [0, 0, 3], [3, 0, 0]), choices(inStep, [1, 0, 2], [1, 1, 0])]).toEqual([true, false, true, false]);
    const crossed = benchOf([{ length: 100, price: 4 }, { length: 90, alone: 110, price: 3 }], [{ length: 20, count: 9 }]);
    expect([choices(crossed, [0, 1], [1, 0]), choices(crossed, [0, 1], [1, 1]), choices(crossed, [1, 1], [1, 1])]).toEqual([false, true, true]);
  });
});
