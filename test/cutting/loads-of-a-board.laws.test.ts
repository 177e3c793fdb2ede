import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bestBoardLoad, bestLoad } from '../../src/cutting/boards/knapsack.js';
import { patternsWith } from '../../src/cutting/boards/patterns.js';
import { makeReady, onlyAlone, type ReadyProblem } from '../../src/cutting/boards/ready-problem.js';
import { costBound, makeWeight, plainWeights, type Weight } from '../../src/cutting/boards/weights.js';
import { runs } from '../effort.js';
import { everyLoad, holds, readyProblem, takes } from './every-load.js';
import { fresh } from './problems.js';

const sum = (counts: readonly number[]): number => counts.reduce((all, c) => all + c, 0);
const with_ = (counts: readonly number[], change: Readonly<Record<number, number>>): number[] => counts.map((c, k) => c + (change[k] ?? 0));

/** Whether some longer piece left over could take the place of one or two shorter ones of its group, tried by putting it there. */
function beaten(bench: ReadyProblem, bin: number, load: readonly number[], left: readonly number[], first: number): boolean {
  const { size, group } = bench;
  const fits = (counts: readonly number[]): boolean => takes(bench, counts) <= bench.bins[bin]!.size;
  return size.some((long, q) => {
    if (q < first || load[q]! >= left[q]!) return false;
    const shorter = size.flatMap((s, j) => (j > q && s < long && load[j]! > 0 && group[j] === group[q] ? [j] : []));
    if (shorter.some((j) => fits(with_(load, { [j]: -1, [q]: 1 })))) return true;
    if (bench.bins.some((board) => onlyAlone(bench, q, board))) return false;
    return shorter.some((i) => shorter.some((j) => {
      const without = i === j ? with_(load, { [i]: -2 }) : with_(load, { [i]: -1, [j]: -1 });
      return without.every((c) => c >= 0) && size[i]! + size[j]! <= long && fits(with_(without, { [q]: 1 }));
    }));
  });
}

/** The loads worth trying, by trying every load there is. */
function worthTrying(bench: ReadyProblem, first: number, bin: number, left: readonly number[], spare: readonly number[], weights: readonly Weight[]): number[][] {
  return everyLoad(bench, bin, left).filter((load) => {
    if (load[first] === 0 || load.some((c, k) => k < first && c > 0)) return false;
    const alone = takes(bench, load) > bench.bins[bin]!.size;
    const roomFor = (k: number): boolean => k >= first && load[k]! < left[k]! && takes(bench, with_(load, { [k]: 1 })) <= bench.bins[bin]!.size;
    if (!alone && load.some((_, k) => roomFor(k))) return false;
    if (weights.some(({ capacity, value }, w) => capacity[bin]! - load.reduce((all, c, k) => all + c * value[k]!, 0) > spare[w]!)) return false;
    return alone || !beaten(bench, bin, load, left, first);
  });
}

describe('loads worth trying', () => {
  it('are those that hold the longest piece left, leave no room, stay within the spare and are not beaten by a longer piece left over', () => {
    let found = 0;
    fc.assert(
      fc.property(readyProblem, fc.array(fc.nat(3), { minLength: 6, maxLength: 6 }), fc.array(fc.integer({ min: 0, max: 400 }), { minLength: 8, maxLength: 8 }), fc.array(fc.nat(9), { minLength: 6, maxLength: 6 }), (bench, cut, spares, drawn) => {
        const left = bench.count.map((c, k) => Math.max(0, c - Math.max(0, cut[k % 6]! - 1)));
        const first = left.findIndex((c) => c > 0);
        if (first < 0) return;
        const weights = [makeWeight(bench, bench.size), makeWeight(bench, bench.size.map((_, k) => drawn[k % 6]!))];
        bench.bins.forEach((_, bin) => {
          for (const spare of [[1e9, 1e9], [spares[0]!, 1e9], [1e9, spares[1]! / 20], [spares[2]!, spares[3]! / 20]]) {
            const patterns = patternsWith(bench, first, bin, { counts: Uint16Array.from(left), spare }, weights, () => false);
            const wanted = worthTrying(bench, first, bin, left, spare, weights);
            found += wanted.length;
            expect(patterns.map(({ bin: b, counts }) => `${b}: ${counts}`).sort()).toEqual(wanted.map((load) => `${bin}: ${load}`).sort());
            // Fuller boards come first, where length alone counts.
            const bare = patternsWith(bench, first, bin, { counts: Uint16Array.from(left), spare: [spare[0]!] }, weights.slice(0, 1), () => false).sort((p, q) => p.loss - q.loss);
            bare.slice(1).forEach(({ counts }, i) => expect(counts.reduce((all, c, k) => all + c * bench.size[k]!, 0)).toBeLessThanOrEqual(bare[i]!.counts.reduce((all, c, k) => all + c * bench.size[k]!, 0)));
          }
        });
      }),
      { numRuns: runs(800, 1 / 4) },
    );
    expect(found).toBeGreaterThan(100);
  });

  it('of loads as full, the one that wastes least of what else is scarce is tried first', () => {
    // Two loads fill a board of 100: 60 + 40 and 60 + 2 × 20. Pieces of 40 weigh 3, those of 20 nothing: the first wastes nothing.
    const bench = makeReady(fresh({ kerf: 0, stock: [{ length: 100, price: 5 }], items: [{ length: 60, count: 2 }, { length: 40, count: 1 }, { length: 20, count: 2 }] }));
    const weights = [makeWeight(bench, bench.size), makeWeight(bench, [0, 3, 0])];
    const loads = patternsWith(bench, 0, 0, { counts: Uint16Array.from(bench.count), spare: [1000, 1000] }, weights, () => false);
    expect(weights[1]!.capacity).toEqual([3]);
    expect(loads.map(({ counts, loss }) => [...counts, loss])).toEqual([[1, 1, 0, 0]]);
    // With no piece of 40 in the way of the swap, the other is left: it wastes all of the second weight.
    const other = patternsWith(bench, 0, 0, { counts: Uint16Array.from([2, 0, 2]), spare: [1000, 1000] }, weights, () => false);
    expect(other.map(({ counts, loss }) => [...counts, loss])).toEqual([[1, 0, 2, 1]]);
    // A tenth of the board left over counts a ten-thousandth.
    const short = patternsWith(bench, 0, 0, { counts: Uint16Array.from([1, 0, 1]), spare: [1000, 1000] }, weights.slice(0, 1), () => false);
    expect(short.map(({ counts, loss }) => [...counts, loss])).toEqual([[1, 0, 1, expect.closeTo(1e-3 * 0.2, 12)]]);
  });

  it('stops when told to, and gives what was found until then', () => {
    const bench = makeReady(fresh({ kerf: 0, stock: [{ length: 1000, price: 5 }], items: [90, 80, 70, 60, 50, 41, 33].map((length) => ({ length, count: 9 })) }));
    let left = 40;
    expect(patternsWith(bench, 0, 0, { counts: Uint16Array.from(bench.count), spare: [1e9] }, [makeWeight(bench, bench.size)], () => left-- <= 0).length).toBeLessThan(40);
    expect(left).toBe(-1);
  });
});

describe('the most that a board carries', () => {
  const bench = makeReady(fresh({ kerf: 0, stock: [{ length: 100, alone: 130, price: 5 }], items: [{ length: 120, count: 1 }, { length: 50, count: 2 }, { length: 30, count: 3 }] }));

  it('as a whole number where the values are, never less than there is', () => {
    expect(bestLoad(bench, [9, 5, 3], 100)).toEqual({ value: 10, counts: [0, 2, 0], exact: true });
    expect(bestLoad(bench, [9, 5, 3], 99)).toEqual({ value: 9, counts: [0, 0, 3], exact: true });
    expect(bestLoad(bench, [9, 0.5, 0.25], 80).value).toBeCloseTo(0.75, 12);
    expect(bestLoad(bench, [0, 0, 0], 100)).toEqual({ value: 0, counts: [0, 0, 0], exact: true });
    expect(bestLoad(bench, [9, 5, 3], 29)).toEqual({ value: 0, counts: [0, 0, 0], exact: true });
    expect(bestLoad(bench, [9, 5, 3], 30)).toEqual({ value: 3, counts: [0, 0, 1], exact: true });
  });

  it('a single piece by itself counts where it is worth more than all that fits together', () => {
    const on = (value: readonly number[], limit?: readonly number[]) => bestBoardLoad(bench, value, bench.bins[0]!, limit);
    expect(on([11, 5, 3])).toEqual({ value: 11, counts: [1, 0, 0], exact: true });
    expect(on([10, 5, 3])).toEqual({ value: 10, counts: [0, 2, 0], exact: true });
    expect(on([11, 5, 3], [0, 2, 3])).toEqual({ value: 10, counts: [0, 2, 0], exact: true });
  });

  it('cut short it is exact all the same where the first way down meets the bound; else the bound stands', () => {
    expect(bestLoad(bench, [0, 5, 3], 100, bench.count, 2)).toMatchObject({ value: 10, exact: true });
    expect(bestLoad(bench, [0, 5, 3], 99, bench.count, 1)).toMatchObject({ value: 9, exact: false });
  });
});

describe('the number of pieces of a length that a board carries at most', () => {
  const capacities = (stock: readonly object[], items: readonly { length: number; count: number; group?: number }[], setups: readonly number[] = []) =>
    plainWeights(makeReady(fresh({ kerf: 0, stock: stock as never, items, setups }))).slice(1).map(({ capacity }) => capacity);

  it('a piece alone counts as one; a setup that no longer fits lets none on', () => {
    expect(capacities([{ length: 100, alone: 120, price: 1 }], [{ length: 110, count: 2 }, { length: 50, count: 3 }])).toEqual([[1], [2]]);
    expect(capacities([{ length: 100, alone: 110, price: 1 }, { length: 130, price: 2 }], [{ length: 95, count: 2, group: 0 }], [10])).toEqual([[1, 1]]);
    expect(capacities([{ length: 100, price: 1, available: 1 }, { length: 130, price: 2 }], [{ length: 95, count: 2, group: 0 }, { length: 20, count: 1 }], [10])).toEqual([[1, 0], [2, 1]]);
  });
});

describe('what boards must cost', () => {
  it('takes the cheapest for what they carry first, so many as there are, and rounds up to whole coins', () => {
    const bench = makeReady(fresh({ kerf: 0, stock: [{ length: 100, price: 10, available: 2 }, { length: 60, price: 9 }, { length: 50, price: 4, available: 1 }], items: [{ length: 50, count: 6 }] }));
    const weight = { value: [1], capacity: [2, 1, 1], demand: 6, rate: [1, 0] };
    expect(bench.bins.map(({ length, price, most }) => [length, price, most])).toEqual([[100, 10, 2], [60, 9, 6], [50, 4, 1]]);
    const cost = (demand: number) => costBound(bench, { ...weight, demand });
    // 4 for one, 5 each for the next four, 9 each for the rest.
    expect([0, 1, 2, 5, 6, 7, 11, 12].map(cost)).toEqual([0, 4, 9, 24, 33, 42, 78, Infinity]);
    expect(costBound(bench, { value: [1], capacity: [3, 0, 0], demand: 4, rate: [1, 0] })).toBe(14);
  });

  it('a load that a board holds never weighs more than the board’s capacity', () => {
    fc.assert(fc.property(readyProblem, (one) => {
      for (const { capacity, value } of plainWeights(one)) one.bins.forEach((_, s) => everyLoad(one, s).forEach((load) => {
        expect(load.reduce((all, c, k) => all + c * value[k]!, 0)).toBeLessThanOrEqual(capacity[s]!);
        if (sum(load) > 0) expect(holds(one, s, load)).toBe(true);
      }));
    }), { numRuns: runs(200) });
  });
});
