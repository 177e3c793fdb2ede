import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cutMany } from '../../src/cutting/boards/cut-many.js';
import { bestBoardLoad } from '../../src/cutting/boards/knapsack.js';
import { loadCeiling } from '../../src/cutting/boards/load-ceiling.js';
import { cutBoards } from '../../src/cutting/boards/pack.js';
import type { CutProblem, Cutting } from '../../src/cutting/boards/problem.js';
import { makeReady } from '../../src/cutting/boards/ready-problem.js';
import { workClock } from '../../src/cutting/cut-plan.js';
import { runs } from '../effort.js';
import { fault, fresh, smallProblem } from './problems.js';

type Problem = Omit<CutProblem, 'now' | 'timeLimit_ms'>;

/** A pool of a class: `kinds` different lengths in two nesting groups and none, each `times` over, on two boards of which `there` of the shorter are to be had. */
function pool(kinds: number, times: number, there: number | null = null): Problem {
  const items = Array.from({ length: kinds }, (_, i) => ({ length: 210 + ((i * 7919) % 1190), count: times, ...(i % 3 === 0 ? {} : { group: (i % 3) - 1 }) }));
  return { kerf: 3, stock: [{ length: 1800, price: 250, available: there }, { length: 2400, price: 320, alone: 2430 }], setups: [19, 38], items };
}

const cut = (problem: Problem, timeLimit_ms = 400): { readonly found: Cutting; readonly readings: number } => {
  const now = workClock();
  const found = cutMany({ ...problem, timeLimit_ms, now });
  if (!found.ok) throw new Error(found.reason);
  return { found, readings: now() };
};

describe('many pieces', () => {
  it.each([[130, 4, 9], [80, 1, null], [64, 60, 3], [20, 160, 0]] as const)('%i lengths, each %i times: every piece once, on boards that hold it and are there; within three hundredths of what no cutting goes below', (kinds, times, there) => {
    const problem = pool(kinds, times, there);
    const { found } = cut(problem);
    expect(fault(problem, found)).toBeNull();
    expect(found.gap).toBeGreaterThanOrEqual(0);
    expect(found.gap).toBeLessThan(0.03);
    expect(found.bound).toBeCloseTo(found.cost * (1 - found.gap), 6);
    expect(cut(problem).found).toEqual(found);
  });

  it('cut from whole boards cost what those do, at least and by the bound; hardly more is found', () => {
    fc.assert(
      fc.property(fc.array(fc.array(fc.integer({ min: 150, max: 900 }), { minLength: 2, maxLength: 5 }), { minLength: 20, maxLength: 26 }), (drawn) => {
        // Boards of 3,000, sawn up with a kerf of 5 until nothing is left of them.
        const boards = drawn.map((lengths) => lengths.reduce<number[]>((all, one) => (all.reduce((sum, n) => sum + n + 5, 0) + one + 105 > 3000 ? all : [...all, one]), []));
        const pieces = boards.flatMap((some) => [...some, 3000 - some.reduce((sum, n) => sum + n + 5, 0)]);
        fc.pre(new Set(pieces).size > 60);
        const { found } = cut({ kerf: 5, stock: [{ length: 3000, price: 70 }], items: pieces.map((length) => ({ length, count: 1 })) });
        const least = 70 * boards.length;
        expect(found.bound).toBe(least);
        expect(found.cost).toBeGreaterThanOrEqual(least);
        expect(found.cost).toBeLessThanOrEqual(least * 1.08);
        expect(found.proven).toBe(found.cost === least);
      }),
      { numRuns: runs(12) },
    );
  });

  it('never say that none costs less than one that the search finds', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 100, max: 1500 }), { minLength: 62, maxLength: 70 }), (lengths) => {
        const problem = { ...pool(0, 0), items: [...new Set(lengths)].map((length, i) => ({ length, count: 1 + (i % 2), ...(i % 2 ? { group: 1 } : {}) })) };
        fc.pre(problem.items.length > 60);
        const searched = cutBoards({ ...problem, timeLimit_ms: 400, now: workClock() });
        const { found } = cut(problem);
        expect(fault(problem, found)).toBeNull();
        expect(searched.ok && found.bound <= searched.cost).toBe(true);
      }),
      { numRuns: runs(4) },
    );
  });

  it('take work by how many lengths there are, not by how many pieces: ten times as many of each take no more of it', () => {
    const [few, many] = [pool(80, 3), pool(80, 30)].map((problem) => cut(problem).readings);
    expect(many).toBeLessThan(1.3 * few!);
    // Twice the lengths are one and a half times as many portions, of a third more lengths each.
    expect(cut(pool(160, 3)).readings).toBeLessThan(2.6 * few!);
    // Two portions, each with its own time, and a look or two at the clock beyond.
    expect(cut(pool(80, 3), 20).readings).toBeLessThan(2 * 20 + 40);
    expect(fault(pool(80, 3), cut(pool(80, 3), 0).found)).toBeNull();
  });

  it('that boards do not suffice for, or that fit none, are told as the search tells them', () => {
    const none = (problem: Problem) => cutMany({ ...problem, timeLimit_ms: 400, now: workClock() });
    const short = { ...pool(70, 2), stock: [{ length: 2400, price: 320, available: 20 }] };
    expect(none(short)).toEqual({ ok: false, reason: 'not-enough' });
    const long = { ...pool(70, 2), items: [...pool(70, 2).items, { length: 2500, count: 1 }] };
    expect(none(long)).toEqual({ ok: false, reason: 'too-long', items: [70] });
  });
});

describe('a cutting that is known', () => {
  it('of many pieces is not searched anew: it stands, with what no cutting goes below', () => {
    const problem = pool(70, 2);
    const { found } = cut(problem);
    const [dear, price] = [problem.stock[1]!, 999];
    const dearer = { ...problem, stock: [problem.stock[0]!, { ...dear, price }], known: found.boards };
    const { found: again, readings } = cut(dearer);
    expect(again.boards).toBe(found.boards);
    expect(again.cost).toBe(found.boards.reduce((sum, { stock }) => sum + dearer.stock[stock]!.price, 0));
    expect(fault(dearer, again)).toBeNull();
    expect(readings).toBe(0);
  });

  it('of few is taken where the search finds none as cheap', () => {
    const problem: Problem = { kerf: 0, stock: [{ length: 10, price: 1, available: 2 }], items: [{ length: 6, count: 1 }, { length: 5, count: 1 }, { length: 4, count: 1 }, { length: 3, count: 1 }, { length: 2, count: 1 }] };
    const found = cutMany(fresh(problem)) as Cutting;
    expect(found.proven).toBe(true);
    expect(cutMany({ ...fresh(problem), known: [{ stock: 0, pieces: [0, 2] }, { stock: 0, pieces: [1, 3, 4] }] })).toEqual(found);
    const out = { ...problem, timeLimit_ms: 0, now: () => 0 };
    const known = [{ stock: 0, pieces: [0, 2] }, { stock: 0, pieces: [1, 3, 4] }];
    const taken = cutMany({ ...out, known });
    expect(taken).toMatchObject({ ok: true, cost: 2 });
    expect(fault(problem, taken)).toBeNull();
  });
});

it('no load is worth more than its ceiling, which few kinds reach to within a cell of the board', () => {
  fc.assert(
    fc.property(smallProblem, fc.array(fc.integer({ min: 0, max: 50 }), { minLength: 6, maxLength: 6 }), (problem, drawn) => {
      const bench = makeReady(fresh(problem));
      const value = bench.size.map((_, k) => drawn[k]!);
      for (const bin of bench.bins) {
        const best = bestBoardLoad(bench, value, bin, bench.count, 1e6);
        expect(best.exact).toBe(true);
        // Boards so short are told in cells of one unit: nothing is rounded.
        expect(loadCeiling(bench, value, bin)).toBe(best.value);
        const large = { ...bench, size: bench.size.map((size) => size * 1000), setup: bench.setup.map((setup) => setup * 1000) };
        expect(loadCeiling(large, value, { ...bin, size: bin.size * 1000, alone: bin.alone * 1000 })).toBeGreaterThanOrEqual(best.value);
      }
    }),
    { numRuns: runs(200) },
  );
});
