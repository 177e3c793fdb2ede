import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { usualChoices } from '../../src/class/choices.js';
import { marksOf, pointsOf } from '../../src/class/marks.js';
import { costShares } from '../../src/cost/shares.js';
import { spreadOf } from '../../src/class/spread.js';
import type { Finding, Verdict } from '../../src/findings/finding.js';

const finding = (rule: string, verdict: Verdict, actual: number | null, used: number | null = null): Finding =>
  ({ rule, title: '', about: 'top', verdict, fact: 'bar.dish_mm', actual, limit: 3, unit: 'mm', used, say: '', do: [], cautions: [], source: 'practice' });

describe('marks and points', () => {
  const marks = marksOf([finding('a', 'clear', 1), finding('b', 'clear', 2, 0.4), finding('b', 'caution', 4, 1.3), finding('b', 'caution', 5, 1.6), finding('c', 'unknown', null), finding('d', 'stop', 9, 3)], 'metric');

  it('the gravest finding of a rule stands for it, of equals the one that uses most', () => {
    expect([...marks]).toEqual([['d', { verdict: 'stop', value: '9 mm' }], ['c', { verdict: 'unknown', value: '' }], ['b', { verdict: 'caution', value: '5 mm' }], ['a', { verdict: 'clear', value: '1 mm' }]]);
  });

  it('all points for clear, half for a caution, none for unknown or stop; a rule that was not asked counts for nothing', () => {
    expect(pointsOf(marks, new Map([['a', 3], ['b', 5], ['c', 7], ['d', 11], ['e', 100]]))).toEqual({ earned: 3 + 2.5, of: 3 + 5 + 7 + 11 });
    expect(pointsOf(marks, new Map())).toBeNull();
  });
});

describe('shares of what all pay together', () => {
  it('are in proportion to each part, and add up to the cent', () => {
    expect(costShares(100, [30, 50, 70])).toEqual([20, 33.33, 46.67]);
    fc.assert(fc.property(fc.integer({ min: 1, max: 1_000_000 }), fc.array(fc.double({ min: 0.01, max: 500, noNaN: true }), { minLength: 1, maxLength: 30 }), (cents, alone) => {
      const shares = costShares(cents / 100, alone) as readonly number[];
      expect(Math.round(shares.reduce((sum, one) => sum + one, 0) * 100)).toBe(cents);
      const all = alone.reduce((sum, one) => sum + one, 0);
      shares.forEach((share, i) => expect(Math.abs(share - (cents / 100) * (alone[i]! / all))).toBeLessThan(0.0101));
    }));
  });

  it('are unknown for all where one cost, or the whole, is', () => {
    expect(costShares(10, [3, null])).toEqual([null, null]);
    expect(costShares(null, [3, 4])).toEqual([null, null]);
  });
});

describe('how a class lies', () => {
  it('median and quartiles between neighbours, least and most with whose they are; unknown values are counted out', () => {
    expect(spreadOf([7, null, 1, 4, 10])).toEqual({ known: 4, median: 5.5, low: 3.25, high: 7.75, least: { value: 1, at: 2 }, most: { value: 10, at: 4 } });
    expect(spreadOf([null, Number.NaN])).toBeNull();
  });

  it('a choice is usual when more than half made it, and told when some did not', () => {
    const rows = ['pva', 'pva', 'none', 'pva', 'hide'].map((glue, i) => ({ choices: new Map([['Corner glue', glue], ['Cloth', 'duck'], ['Bars', i < 2 ? 'strip' : i < 4 ? 'board' : 'stud']]) }));
    expect(usualChoices(rows)).toEqual([{ what: 'Corner glue', usual: 'pva', plans: 3, others: [{ row: 2, chose: 'none' }, { row: 4, chose: 'hide' }] }]);
  });
});
