import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { quickCutting } from '../../src/cutting/boards/greedy.js';
import { cutBoards } from '../../src/cutting/boards/pack.js';
import { makeReady } from '../../src/cutting/boards/ready-problem.js';
import { workClock } from '../../src/cutting/cut-plan.js';
import { problemOf, wrongCutting, type OneLengthCase } from '../tools/cases-cutting.js';
import { fresh } from './problems.js';

describe('choosing boards: the edges', () => {
  it('counts n − 1 kerfs: two pieces and one cut fill a board exactly, one unit less does not do', () => {
    const cut = (length: number): unknown => cutBoards(fresh({ kerf: 3, stock: [{ length, price: 7 }], items: [{ length: 50, count: 2 }] }));
    expect(cut(103)).toMatchObject({ ok: true, cost: 7, waste: 3 });
    expect(cut(102)).toMatchObject({ ok: true, cost: 14 });
  });

  it('names the pieces longer than every board', () => {
    expect(cutBoards(fresh({ kerf: 2, stock: [{ length: 80, price: 1 }, { length: 120, price: 2, available: 0 }], items: [{ length: 60, count: 1 }, { length: 81, count: 2 }] }))).toEqual({ ok: false, reason: 'too-long', items: [1] });
  });

  it('says when there are not enough boards', () => {
    expect(cutBoards(fresh({ kerf: 0, stock: [{ length: 100, price: 1, available: 2 }], items: [{ length: 60, count: 3 }] }))).toEqual({ ok: false, reason: 'not-enough' });
  });

  it('has nothing to buy for nothing to cut', () => {
    expect(cutBoards(fresh({ kerf: 1, stock: [], items: [{ length: 5, count: 0 }] }))).toMatchObject({ ok: true, cost: 0, boards: [], proven: true });
  });

  it('takes the shorter of two boards of the same price, and a leftover before either', () => {
    const items = [{ length: 70, count: 1 }];
    expect(cutBoards(fresh({ kerf: 2, stock: [{ length: 200, price: 9 }, { length: 90, price: 9 }], items }))).toMatchObject({ boards: [{ stock: 1 }], waste: 20 });
    expect(cutBoards(fresh({ kerf: 2, stock: [{ length: 200, price: 0, available: 1 }, { length: 90, price: 9 }], items }))).toMatchObject({ cost: 0, boards: [{ stock: 0 }] });
  });

  it('pays a setup once per board and group', () => {
    const stock = [{ length: 100, price: 1 }];
    const nested = (length: number): unknown => cutBoards(fresh({ kerf: 0, stock, setups: [10], items: [{ length, count: 2, group: 0 }] }));
    expect(nested(45)).toMatchObject({ cost: 1 });
    expect(nested(46)).toMatchObject({ cost: 2 });
  });

  it('refuses numbers that are not whole', () => {
    const bad = (part: object): (() => unknown) => () => cutBoards(fresh({ kerf: 1, stock: [{ length: 10, price: 1 }], items: [{ length: 5, count: 1 }], ...part }));
    expect(bad({ kerf: 0.5 })).toThrow(RangeError);
    expect(bad({ items: [{ length: Number.NaN, count: 1 }] })).toThrow(RangeError);
    expect(bad({ stock: [{ length: 10, price: -1 }] })).toThrow(RangeError);
    expect(bad({ items: [{ length: 5, count: 1, group: 0 }] })).toThrow(RangeError);
  });

  it('out of time at once, is no dearer than quick cuttings of one kind of board beside what is in hand', () => {
    // Three boards in hand are free; all kinds mixed cost 738, the longer alone with what is in hand 711, boards to buy alone 744.
    const lengths = '182 182 221 264 264 303 303 451 235 433 256 256 212 212 349 349 354 401 401 366 380 380 397 397 331 331 281 281 407 184'.split(' ').map(Number);
    const problem = { kerf: 0, stock: [{ length: 1000, price: 93 }, { length: 646, price: 60 }, { length: 642, price: 0, available: 3 }], items: lengths.map((length) => ({ length, count: 1 })), timeLimit_ms: 0, now: () => 0 };
    const bench = makeReady(problem);
    const quick = (...prices: readonly number[]): number => quickCutting(bench, (s) => prices.includes(bench.bins[s]!.price))!.reduce((sum, { bin }) => sum + bench.bins[bin]!.price, 0);
    expect([quick(93, 60, 0), quick(93, 0), quick(60, 0), quick(93, 60)]).toEqual([738, 711, 720, 744]);
    expect(cutBoards(problem)).toMatchObject({ ok: true, cost: 711, proven: false });
  });

  it('owns up when the time is too short: a whole cutting, not proven, with a bound below it', () => {
    const own = JSON.parse(readFileSync(new URL('../data/binpacking-own.json', import.meta.url), 'utf8')) as OneLengthCase[];
    const hard = own.find(({ name }) => name === 'own_narrow_80_6') as OneLengthCase;
    const problem = problemOf(hard, 3, workClock());
    const result = cutBoards(problem);
    expect(wrongCutting(problem, result)).toBeNull();
    expect(result).toMatchObject({ ok: true, proven: false, tiesProven: false });
    if (!result.ok) return;
    expect(result.bound).toBeLessThan(result.cost);
    expect(result.bound).toBeGreaterThanOrEqual(14);
    expect(result.gap).toBeCloseTo((result.cost - result.bound) / result.cost, 12);
  });
});
