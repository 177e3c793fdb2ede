import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cutBoards } from '../../src/cutting/boards/pack.js';
import type { CutResult } from '../../src/cutting/boards/problem.js';
import { bruteForce, fault, fresh, smallProblem } from './problems.js';

const costOf = (result: CutResult): number => (result.ok ? result.cost : Infinity);
const pieceCount = (items: readonly { count: number }[]): number => items.reduce((sum, { count }) => sum + count, 0);

describe('choosing boards', () => {
  it('cuts every piece exactly once, with kerf between pieces, on boards long enough, and adds up right', () => {
    fc.assert(fc.property(smallProblem, (problem) => {
      const result = cutBoards(fresh(problem));
      expect(fault(problem, result)).toBeNull();
      if (result.ok) expect(result.proven && result.tiesProven).toBe(true);
    }), { numRuns: 300 });
  });

  it('finds what trying every way finds: cost, then waste, then number of boards', () => {
    const few = smallProblem.filter(({ items }) => pieceCount(items) <= 6);
    let found = 0;
    fc.assert(fc.property(few, (problem) => {
      const result = cutBoards(fresh(problem));
      const best = bruteForce(problem);
      if (result.ok) found++;
      expect(result.ok ? { cost: result.cost, waste: result.waste, boards: result.boards.length } : null).toEqual(best);
    }), { numRuns: 250 });
    expect(found).toBeGreaterThan(100);
  });

  it('never costs more with one more board length on offer', () => {
    const more = fc.record({ length: fc.integer({ min: 250, max: 1200 }), price: fc.integer({ min: 0, max: 600 }) });
    fc.assert(fc.property(smallProblem, more, (problem, extra) => {
      expect(costOf(cutBoards(fresh({ ...problem, stock: [...problem.stock, extra] })))).toBeLessThanOrEqual(costOf(cutBoards(fresh(problem))));
    }), { numRuns: 200 });
  });

  it('never costs less with a wider saw, or with one piece more', () => {
    const piece = fc.record({ length: fc.integer({ min: 40, max: 500 }), count: fc.constant(1) });
    fc.assert(fc.property(smallProblem, piece, (problem, extra) => {
      const cost = costOf(cutBoards(fresh(problem)));
      expect(costOf(cutBoards(fresh({ ...problem, kerf: problem.kerf + 3 })))).toBeGreaterThanOrEqual(cost);
      expect(costOf(cutBoards(fresh({ ...problem, items: [...problem.items, extra] })))).toBeGreaterThanOrEqual(cost);
    }), { numRuns: 150 });
  });

  it('does not care in which order pieces and boards are listed', () => {
    fc.assert(fc.property(smallProblem, fc.infiniteStream(fc.nat()), (problem, keys) => {
      const shuffle = <T>(list: readonly T[]): T[] => list.map((value) => ({ value, key: keys.next().value as number })).sort((p, q) => p.key - q.key).map(({ value }) => value);
      const one = cutBoards(fresh(problem));
      const other = cutBoards(fresh({ ...problem, items: shuffle(problem.items), stock: shuffle(problem.stock) }));
      const merit = (result: CutResult): unknown => (result.ok ? [result.cost, result.waste, result.boards.length] : result.reason);
      expect(merit(other)).toEqual(merit(one));
    }), { numRuns: 150 });
  });

  it('gives the same answer twice', () => {
    fc.assert(fc.property(smallProblem, (problem) => {
      expect(cutBoards(fresh(problem))).toEqual(cutBoards(fresh(problem)));
    }), { numRuns: 50 });
  });

  it('does not care for the units: ten-thousandths of a millimetre and of a coin give the same boards', () => {
    const fine = 10_000;
    fc.assert(fc.property(smallProblem, (problem) => {
      const coarse = cutBoards(fresh(problem));
      const scaled = cutBoards(fresh({
        kerf: problem.kerf * fine,
        stock: problem.stock.map((stock) => ({ ...stock, length: stock.length * fine, price: stock.price * fine, ...(stock.alone === undefined ? {} : { alone: stock.alone * fine }) })),
        items: problem.items.map((item) => ({ ...item, length: item.length * fine })),
        setups: (problem.setups ?? []).map((setup) => setup * fine),
      }));
      const merit = (result: CutResult, unit: number): unknown => (result.ok ? [result.cost / unit, result.waste / unit, result.boards.length, result.proven] : result.reason);
      expect(merit(scaled, fine)).toEqual(merit(coarse, 1));
    }), { numRuns: 150 });
  });
});
