import fc from 'fast-check';
import { expect, it } from 'vitest';
import { sampleQuantile, sampleShare } from '../../src/risk/order-statistics.js';
import { runs } from '../effort.js';

/** The same from a sorted copy: the value at rank share · n − ½, and half the way between those one binomial standard deviation to either side. */
function bySorting(values: readonly number[], share: number): { value: number; se: number } {
  const sorted = [...values].sort((p, q) => p - q);
  const at = (rank: number): number => sorted[Math.min(sorted.length - 1, Math.max(0, Math.round(rank)))]!;
  const [rank, aside] = [share * values.length - 0.5, Math.sqrt(values.length * share * (1 - share))];
  return { value: at(rank), se: (at(rank + aside) - at(rank - aside)) / 2 + 0 };
}

const sample = fc.array(fc.double({ min: -5, max: 5, noNaN: true }), { minLength: 1, maxLength: 60 });

it('a quantile by selection is the one by sorting, equal values among them', () => {
  fc.assert(
    fc.property(sample, fc.constantFrom(0.05, 0.5, 0.9, 0.975), fc.boolean(), (values, share, coarse) => {
      const list = values.map((v) => (coarse ? Math.round(v) : v) + 0);
      expect(sampleQuantile(Float64Array.from(list), share)).toEqual(bySorting(list, share));
    }),
    { numRuns: runs(1600) },
  );
});

it('values that are left out for being smaller only move the ranks', () => {
  fc.assert(
    fc.property(sample, (values) => {
      const all = values.map((v) => Math.round(8 * v) / 8 + 0);
      const sorted = [...all].sort((p, q) => p - q);
      // All below the first rank that is looked at.
      const smaller = Math.max(0, Math.floor(0.9 * all.length - 0.5 - Math.sqrt(all.length * 0.09)));
      expect(sampleQuantile(Float64Array.from(sorted.slice(smaller).reverse()), 0.9, smaller)).toEqual(bySorting(all, 0.9));
    }),
    { numRuns: runs(800) },
  );
});

it('nine in ten of the whole numbers to a thousand: 899.5 from below, give or take the ten beside it', () => {
  const thousand = Float64Array.from({ length: 1000 }, (_, i) => ((i * 387) % 1000) + 1);
  expect(sampleQuantile(thousand, 0.9)).toEqual({ value: 901, se: 9.5 });
});

it('a share has its binomial standard error', () => {
  expect(sampleShare(30, 120)).toEqual({ value: 0.25, se: Math.sqrt((0.25 * 0.75) / 120) });
  expect(sampleShare(0, 7)).toEqual({ value: 0, se: 0 });
});
