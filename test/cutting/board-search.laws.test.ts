import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { better, choicesBetween, makeChoice, within } from '../../src/cutting/boards/choices.js';
import { diveFreely, diveInto } from '../../src/cutting/boards/dive.js';
import { fillBoards } from '../../src/cutting/boards/fill.js';
import { loadSize, quickCutting, type Filled } from '../../src/cutting/boards/greedy.js';
import { bestBoardLoad } from '../../src/cutting/boards/knapsack.js';
import { fullLoads } from '../../src/cutting/boards/pack-fallback.js';
import { makeReady, needAlone, onlyAlone, type ReadyProblem } from '../../src/cutting/boards/ready-problem.js';
import { shadowPrices, wholePrices } from '../../src/cutting/boards/shadow-prices.js';
import { costBound, makeWeight, meets, plainWeights } from '../../src/cutting/boards/weights.js';
import { runs } from '../effort.js';
import { canHold, everyCount, everyLoad, holds, readyProblem, takes } from './every-load.js';
import { fresh, smallProblem } from './problems.js';

const worth = (value: readonly number[], counts: ArrayLike<number>): number => value.reduce((sum, v, k) => sum + v * counts[k]!, 0);
const never = (): boolean => false;
const patient = { steps: 1e7, outOfTime: never };
const values = (max: number): fc.Arbitrary<number[]> => fc.array(fc.integer({ min: 0, max }), { minLength: 6, maxLength: 6 });
const valueFor = (bench: ReadyProblem, drawn: readonly number[]): number[] => bench.size.map((_, k) => drawn[k % drawn.length]!);

/** Whether loads cut every piece once, each on a board that holds it, with no more boards of a kind than there are. */
function isCutting(bench: ReadyProblem, filled: readonly Filled[], most: readonly number[] = bench.bins.map((bin) => bin.most)): boolean {
  return (
    bench.count.every((c, k) => filled.reduce((sum, { counts }) => sum + counts[k]!, 0) === c) &&
    filled.every(({ bin, counts }) => holds(bench, bin, counts)) &&
    most.every((n, s) => filled.filter(({ bin }) => bin === s).length <= n)
  );
}

describe('a problem made ready', () => {
  it('has every piece once, longest first, and leaves out only boards that no cutting needs', () => {
    fc.assert(
      fc.property(smallProblem, (problem) => {
        const bench = makeReady(fresh(problem));
        const byItem = problem.items.map((_, i) => bench.members.flat().filter((one) => one === i).length);
        expect(byItem).toEqual(problem.items.map(({ count }) => count));
        bench.members.forEach((items, k) => {
          expect(items).toHaveLength(bench.count[k]!);
          for (const i of items) {
            const { length, group } = problem.items[i]!;
            expect([bench.size[k], bench.group[k], bench.setup[k]]).toEqual([length + problem.kerf, group ?? -1, group === undefined ? 0 : problem.setups![group]]);
          }
        });
        expect(bench.size.every((size, k) => k === 0 || size <= bench.size[k - 1]!)).toBe(true);
        expect(bench.pieces).toBe(bench.count.reduce((sum, c) => sum + c, 0));
        const needs = bench.size.map((_, k) => needAlone(bench, k));
        problem.stock.forEach((stock, s) => {
          const alone = (stock.alone ?? stock.length) + problem.kerf;
          const kept = bench.bins.find((bin) => bin.stock === s);
          if (kept !== undefined) {
            expect(kept).toEqual({ size: stock.length + problem.kerf, alone, length: stock.length, price: stock.price, most: Math.min(stock.available ?? Infinity, bench.pieces), stock: s });
            expect(needs.some((need) => need <= alone)).toBe(true);
          }
          const beaten = problem.stock.some(
            (other) => (other.available ?? Infinity) >= bench.pieces && other.price < stock.price && other.length >= stock.length && (other.alone ?? other.length) >= (stock.alone ?? stock.length),
          );
          if (needs.some((need) => need <= alone) && !beaten && (stock.available ?? bench.pieces) < bench.pieces) expect(kept).toBeDefined();
        });
        expect(bench.bins.every((bin, s) => s === 0 || bin.size < bench.bins[s - 1]!.size || (bin.size === bench.bins[s - 1]!.size && bin.alone <= bench.bins[s - 1]!.alone))).toBe(true);
      }),
      { numRuns: runs(800) },
    );
  });

  it('lets a cheaper board stand for a dearer one only where it is endless and at least as long both ways', () => {
    const stocks = (cheap: { length: number; alone?: number; price: number; available: number | null }) => {
      const bench = makeReady(fresh({ kerf: 3, stock: [{ length: 500, alone: 600, price: 90, available: null }, cheap], items: [{ length: 200, count: 4 }] }));
      return bench.bins.map(({ stock }) => stock).sort();
    };
    expect(stocks({ length: 500, alone: 600, price: 89, available: null })).toEqual([1]);
    expect(stocks({ length: 500, alone: 600, price: 90, available: null })).toEqual([0, 1]);
    expect(stocks({ length: 499, alone: 600, price: 89, available: null })).toEqual([0, 1]);
    expect(stocks({ length: 500, alone: 599, price: 89, available: null })).toEqual([0, 1]);
    expect(stocks({ length: 500, alone: 600, price: 89, available: 3 })).toEqual([0, 1]);
    expect(stocks({ length: 196, alone: 199, price: 10, available: null })).toEqual([0]);
    expect(stocks({ length: 196, alone: 200, price: 10, available: null })).toEqual([0, 1]);
    const twins = makeReady(fresh({ kerf: 0, stock: [{ length: 500, price: 9, available: 1 }, { length: 500, alone: 520, price: 12, available: 1 }, { length: 500, price: 7, available: 1 }, { length: 500, price: 7, available: 1 }], items: [{ length: 200, count: 4 }] }));
    expect(twins.bins.map(({ stock }) => stock)).toEqual([1, 2, 3, 0]);
  });

  it('knows which piece goes on a board only by itself', () => {
    const bench = makeReady(fresh({ kerf: 2, stock: [{ length: 300, alone: 340, price: 5 }], setups: [30], items: [{ length: 311, count: 1 }, { length: 310, count: 1, group: 0 }, { length: 300, count: 1 }, { length: 270, count: 1, group: 0 }, { length: 271, count: 1, group: 0 }] }));
    expect(bench.size.map((_, k) => [needAlone(bench, k) - 2, onlyAlone(bench, k, bench.bins[0]!)])).toEqual([[311, true], [340, true], [300, false], [301, true], [300, false]]);
  });
});

describe('what one board carries', () => {
  it('is what trying every load finds, with any limit, and never less when the search is cut short', () => {
    fc.assert(
      fc.property(readyProblem, values(40), fc.boolean(), fc.integer({ min: 1, max: 6 }), (bench, drawn, halves, steps) => {
        const value = valueFor(bench, drawn).map((v) => (halves ? v / 7 : v));
        const limit = bench.count.map((c, k) => Math.max(0, c - (k % 2)));
        bench.bins.forEach((bin, s) => {
          for (const most of [bench.count, limit]) {
            const best = Math.max(...everyLoad(bench, s, most).map((counts) => worth(value, counts)));
            const load = bestBoardLoad(bench, value, bin, most);
            expect(load.exact).toBe(true);
            expect(load.value).toBeCloseTo(best, 9);
            expect(worth(value, load.counts)).toBeCloseTo(load.value, 9);
            expect(load.counts.every((c, k) => c <= most[k]!) && (load.value === 0 || holds(bench, s, load.counts))).toBe(true);
            const hasty = bestBoardLoad(bench, value, bin, most, steps);
            expect(hasty.value).toBeGreaterThanOrEqual(best - 1e-9);
            if (!halves) expect(Number.isInteger(hasty.value)).toBe(true);
            if (hasty.exact) expect(hasty.value).toBeCloseTo(best, 9);
          }
        });
      }),
      { numRuns: runs(400, 1 / 4) },
    );
  });

  it('says of a search cut short that it is', () => {
    const bench = makeReady(fresh({ kerf: 0, stock: [{ length: 1000, price: 5 }], items: [{ length: 301, count: 2 }, { length: 269, count: 3 }, { length: 177, count: 3 }, { length: 143, count: 2 }] }));
    const exact = bestBoardLoad(bench, bench.size, bench.bins[0]!);
    const hasty = bestBoardLoad(bench, bench.size, bench.bins[0]!, bench.count, 3);
    expect([exact.exact, exact.value]).toEqual([true, Math.max(...everyLoad(bench, 0).map((counts) => takes(bench, counts)))]);
    expect([hasty.exact, hasty.value]).toEqual([false, 1000]);
  });

  it('full loads are those to which nothing can be added', () => {
    fc.assert(
      fc.property(readyProblem, (bench) => {
        const expected = bench.bins.flatMap((_, s) => {
          const all = everyLoad(bench, s).filter((counts) => counts.some((c) => c > 0));
          const roomy = (counts: readonly number[]): boolean =>
            counts.some((c, k) => c < bench.count[k]! && takes(bench, counts.map((n, i) => (i === k ? n + 1 : n))) <= bench.bins[s]!.size);
          return all.filter((counts) => !roomy(counts)).map((counts) => `${s}: ${counts}`);
        });
        expect(fullLoads(bench, 1e6)!.map(({ bin, counts }) => `${bin}: ${counts}`).sort()).toEqual(expected.sort());
        if (bench.bins.every((bin) => bin.alone === bin.size)) expect(fullLoads(bench, expected.length - 1)).toBeNull();
      }),
      { numRuns: runs(300, 1 / 4) },
    );
  });

  it('takes up its pieces and one setup for each group', () => {
    fc.assert(
      fc.property(readyProblem, (bench) => {
        for (const counts of everyCount(bench.count.map((c) => Math.min(c, 2))).slice(0, 200)) expect(loadSize(bench, counts)).toBe(takes(bench, counts));
      }),
      { numRuns: runs(100, 1 / 4) },
    );
  });
});

describe('bounds on what boards must cost', () => {
  it('shadow prices are those of the relaxation: where boards are endless, the loads cost exactly what the pieces are worth', () => {
    fc.assert(
      fc.property(readyProblem, fc.boolean(), (bench, limited) => {
        const price = bench.bins.map((bin) => bin.price);
        const most = bench.bins.map((bin) => (limited && bin.most < bench.pieces ? bin.most : null));
        const { prices, loads } = shadowPrices(bench, { price, most, penalty: bench.size.map((size, k) => 3000 + size + 10 * k) }, never);
        for (const { bin, counts, share } of loads) expect(share > 0 && holds(bench, bin, counts)).toBe(true);
        most.forEach((n, s) => {
          if (n !== null) expect(loads.reduce((sum, { bin, share }) => sum + (bin === s ? share : 0), 0)).toBeLessThan(n + 1e-6);
        });
        if (most.some((n) => n !== null) || !bench.size.every((_, k) => bench.bins.some((bin) => needAlone(bench, k) <= bin.alone))) return;
        // Prices that no load of a board exceeds bound the cost from below; loads that cut every piece bound it from above; where both meet, both are best.
        bench.count.forEach((c, k) => expect(loads.reduce((sum, { counts, share }) => sum + counts[k]! * share, 0)).toBeGreaterThan(c - 1e-6));
        price.forEach((p, s) => expect(Math.max(...everyLoad(bench, s).map((counts) => worth(prices, counts)))).toBeLessThan(p + 1e-3));
        expect(loads.reduce((sum, { bin, share }) => sum + price[bin]! * share, 0)).toBeCloseTo(worth(prices, bench.count), 3);
      }),
      { numRuns: runs(400, 1 / 4) },
    );
  });

  it('shadow prices made whole keep their proportions, the greatest a million', () => {
    expect(wholePrices([2, 0.5, -1, 1])).toEqual([1e6, 250000, 0, 500000]);
    expect(wholePrices([0, -3])).toEqual([0, 0]);
    expect(wholePrices([3, 1])).toEqual([1e6, 333333]);
  });

  it('a weight gives each board what it carries at most, and all pieces what they weigh', () => {
    fc.assert(
      fc.property(readyProblem, values(30), (bench, drawn) => {
        const value = valueFor(bench, drawn);
        const weight = makeWeight(bench, value);
        expect(weight.capacity).toEqual(bench.bins.map((_, s) => Math.max(...everyLoad(bench, s).map((counts) => worth(value, counts)))));
        expect(weight.demand).toBe(worth(value, bench.count));
        weight.rate.forEach((rate, k) => expect(rate).toBe(Math.max(0, ...value.slice(k).map((v, i) => v / bench.size[k + i]!))));
        for (const plain of plainWeights(bench)) {
          const carried = bench.bins.map((_, s) => Math.max(...everyLoad(bench, s).map((counts) => worth(plain.value, counts))));
          carried.forEach((most, s) => expect(plain.capacity[s]).toBeGreaterThanOrEqual(most));
          if (bench.setup.every((setup) => setup === 0) && bench.bins.every((bin) => bin.alone === bin.size)) expect(plain.capacity).toEqual(carried);
          expect(plain.demand).toBe(worth(plain.value, bench.count));
        }
      }),
      { numRuns: runs(300, 1 / 4) },
    );
  });

  it('one weight for each length besides length itself', () => {
    const bench = makeReady(fresh({ kerf: 1, stock: [{ length: 400, price: 5 }], setups: [9, 9], items: [{ length: 99, count: 2 }, { length: 99, count: 1, group: 0 }, { length: 60, count: 4, group: 1 }, { length: 30, count: 3 }] }));
    expect(plainWeights(bench).map(({ value, demand }) => [value, demand])).toEqual([
      [[100, 100, 61, 31], 637], [[1, 1, 0, 0], 3], [[1, 1, 1, 0], 7], [[1, 1, 1, 1], 10],
    ]);
    expect(plainWeights(bench).slice(1).map(({ capacity }) => capacity)).toEqual([[3], [5], [7]]);
  });

  it('the cost a weight demands is the least that divisible boards cost, by its dual', () => {
    fc.assert(
      fc.property(readyProblem, values(30), (bench, drawn) => {
        const weight = makeWeight(bench, valueFor(bench, drawn));
        const reach = bench.bins.reduce((sum, bin, s) => sum + bin.most * weight.capacity[s]!, 0);
        const rates = [0, ...bench.bins.flatMap((bin, s) => (weight.capacity[s]! > 0 ? [bin.price / weight.capacity[s]!] : []))];
        const dual = Math.max(...rates.map((rate) => rate * weight.demand - bench.bins.reduce((sum, bin, s) => sum + bin.most * Math.max(0, rate * weight.capacity[s]! - bin.price), 0)));
        const bound = costBound(bench, weight);
        if (reach < weight.demand) expect(bound).toBe(Infinity);
        else expect(bound - Math.ceil(dual - 1e-6)).toBeCloseTo(0, 9);
      }),
      { numRuns: runs(400, 1 / 4) },
    );
  });
});

describe('choices of boards', () => {
  const merit = (bench: ReadyProblem, boards: readonly number[]): string => {
    const { cost, length, number } = makeChoice(bench, boards);
    return `${cost}/${length}/${number}`;
  };

  it('adds up price, length and number', () => {
    fc.assert(
      fc.property(readyProblem, (bench) => {
        const boards = bench.bins.map((bin, s) => Math.min(bin.most, s + 1));
        const sum = (of: (bin: ReadyProblem['bins'][number]) => number): number => bench.bins.reduce((all, bin, s) => all + of(bin) * boards[s]!, 0);
        expect(makeChoice(bench, boards)).toEqual({ boards, cost: sum(({ price }) => price), length: sum(({ length }) => length), number: sum(() => 1) });
      }),
      { numRuns: runs(100, 1 / 4) },
    );
  });

  it('are all that cost so much, meet every weight and leave no board empty, best first', () => {
    fc.assert(
      fc.property(readyProblem, fc.integer({ min: 0, max: 900 }), fc.integer({ min: 0, max: 600 }), (bench, low, width) => {
        const weights = plainWeights(bench);
        const high = low + width;
        const all = everyCount(bench.bins.map(({ most }) => most)).filter((boards) => {
          const { cost, number } = makeChoice(bench, boards);
          return cost >= low && cost <= high && number <= bench.pieces && weights.every((weight) => meets(weight, boards));
        });
        const found = choicesBetween(bench, weights, low, high, 1e6, never)!;
        // Of boards alike but for their price, the dearer ones are taken only after the cheaper.
        const same = (s: number): boolean => bench.bins[s]!.size === bench.bins[s - 1]?.size && bench.bins[s]!.alone === bench.bins[s - 1]?.alone;
        const usual = all.filter((boards) => boards.every((n, s) => n === 0 || !same(s) || boards[s - 1] === bench.bins[s - 1]!.most));
        expect(found.map(({ boards }) => `${boards}`).sort()).toEqual(usual.map((boards) => `${boards}`).sort());
        found.forEach((choice, i) => {
          if (i > 0) expect(better(found[i - 1]!, choice)).toBeLessThanOrEqual(0);
          expect(merit(bench, choice.boards)).toBe(`${choice.cost}/${choice.length}/${choice.number}`);
        });
        if (found.length > 0) expect(choicesBetween(bench, weights, low, high, found.length - 1, never)).toBeNull();
        expect(choicesBetween(bench, weights, low, high, found.length, never)).toHaveLength(found.length);
      }),
      { numRuns: runs(300, 1 / 4) },
    );
  });

  it('rank by cost, then length, then number', () => {
    const choice = (cost: number, length: number, number: number) => ({ boards: [], cost, length, number });
    expect(better(choice(5, 9, 9), choice(6, 1, 1))).toBeLessThan(0);
    expect(better(choice(5, 9, 1), choice(5, 8, 9))).toBeGreaterThan(0);
    expect(better(choice(5, 9, 1), choice(5, 9, 2))).toBeLessThan(0);
  });

  it('one within another packs nothing that the other cannot', () => {
    fc.assert(
      fc.property(readyProblem, fc.array(fc.nat(3), { minLength: 8, maxLength: 8 }), (bench, drawn) => {
        const [small, large] = [0, 4].map((from) => makeChoice(bench, bench.bins.map((bin, s) => Math.min(bin.most, drawn[from + (s % 4)]!))));
        const matched = bench.bins.every((_, s) => drawn.length > s && small!.boards.slice(0, s + 1).reduce((sum, n) => sum + n, 0) <= large!.boards.slice(0, s + 1).reduce((sum, n) => sum + n, 0));
        const inStep = bench.bins.every((bin, s) => s === 0 || bin.alone <= bench.bins[s - 1]!.alone);
        expect(within(bench, small!, large!)).toBe(inStep ? matched : small!.boards.every((n, s) => n <= large!.boards[s]!));
        if (within(bench, small!, large!) && canHold(bench, small!.boards)) expect(canHold(bench, large!.boards)).toBe(true);
      }),
      { numRuns: runs(200, 1 / 4) },
    );
  });
});

describe('packing a choice of boards', () => {
  const choiceOf = (bench: ReadyProblem, drawn: readonly number[]): number[] => bench.bins.map((bin, s) => Math.min(bin.most, drawn[s % drawn.length]!));
  const fewBoards = fc.array(fc.nat(2), { minLength: 4, maxLength: 4 });

  it('fits exactly where trying everything fits, with any weights beside length', () => {
    fc.assert(
      fc.property(readyProblem, fewBoards, values(20), (bench, drawn, more) => {
        const choice = choiceOf(bench, drawn);
        const weights = [makeWeight(bench, bench.size), ...plainWeights(bench).slice(1), makeWeight(bench, valueFor(bench, more))];
        const filling = fillBoards(bench, choice, weights, patient);
        expect(filling.verdict).toBe(canHold(bench, choice) ? 'fits' : 'cannot');
        if (filling.verdict === 'fits') expect(isCutting(bench, filling.loads.map(({ bin, counts }) => ({ bin, counts: [...counts] })), choice)).toBe(true);
      }),
      { numRuns: runs(600, 1 / 4) },
    );
  });

  it('says that it ran out only where it did', () => {
    const bench = makeReady(fresh({ kerf: 0, stock: [{ length: 100, price: 5 }], items: [51, 50, 49, 34, 33, 33, 26, 24].map((length) => ({ length, count: 1 })) }));
    const weights = [makeWeight(bench, bench.size)];
    expect(canHold(bench, [3])).toBe(true);
    expect(fillBoards(bench, [3], weights, { steps: 2, outOfTime: never }).verdict).toBe('ran-out');
    expect(fillBoards(bench, [3], weights, patient).verdict).toBe('fits');
    expect(fillBoards(bench, [2], weights, { steps: 2, outOfTime: never }).verdict).toBe('cannot');
  });

  it('a quick cutting and a dive are whole cuttings on boards that there are', () => {
    fc.assert(
      fc.property(readyProblem, fewBoards, fc.constantFrom(0.5, 0.75, 0.9), (bench, drawn, sure) => {
        const choice = choiceOf(bench, drawn);
        const into = diveInto(bench, choice, sure, never);
        if (into !== null) expect(isCutting(bench, into, choice)).toBe(true);
        for (const filled of [quickCutting(bench), diveFreely(bench, sure, never)]) if (filled !== null) expect(isCutting(bench, filled)).toBe(true);
        const first = quickCutting(bench, (bin) => bin === 0);
        if (first !== null) expect(isCutting(bench, first)).toBe(true);
      }),
      { numRuns: runs(300, 1 / 4) },
    );
  });

  it('a quick cutting takes the longest piece first, on the board that costs least for what it carries, then the cheapest that holds the load', () => {
    const quick = (stock: readonly { length: number; price: number; available?: number }[], items: readonly { length: number; count: number }[]) => {
      const bench = makeReady(fresh({ kerf: 0, stock, items }));
      return quickCutting(bench)!.map(({ bin, counts }) => [bench.bins[bin]!.length, ...counts]);
    };
    expect(quick([{ length: 1000, price: 10 }, { length: 600, price: 7 }], [{ length: 500, count: 2 }, { length: 400, count: 1 }])).toEqual([[1000, 2, 0], [600, 0, 1]]);
    expect(quick([{ length: 1000, price: 10 }, { length: 600, price: 5 }], [{ length: 600, count: 1 }, { length: 400, count: 1 }])).toEqual([[600, 1, 0], [600, 0, 1]]);
    expect(quick([{ length: 900, price: 0, available: 1 }, { length: 1000, price: 10 }], [{ length: 600, count: 1 }, { length: 500, count: 1 }])).toEqual([[900, 1, 0], [1000, 0, 1]]);
    expect(quick([{ length: 1000, price: 10 }, { length: 700, price: 10 }], [{ length: 650, count: 1 }])).toEqual([[700, 1]]);
  });

  it('a dive finds a cutting where boards are filled to the last', () => {
    const bench = makeReady(fresh({ kerf: 0, stock: [{ length: 100, price: 5 }], items: [{ length: 60, count: 6 }, { length: 40, count: 6 }, { length: 25, count: 8 }] }));
    expect(diveInto(bench, [8], 0.75, never)).toHaveLength(8);
    expect(diveInto(bench, [7], 0.75, never)).toBeNull();
    expect(diveFreely(bench, 0.9, never)).toHaveLength(8);
    expect(diveInto(bench, [8], 0.75, () => true)).toBeNull();
  });
});
