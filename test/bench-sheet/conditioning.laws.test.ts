import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { expectedParts, type Part } from '../../src/bench-sheet/conditioning.js';

const part = fc.record({ mean: fc.double({ min: -5, max: 5, noNaN: true }), variance: fc.double({ min: 1e-3, max: 9, noNaN: true }) });
const total = (numbers: readonly number[]): number => numbers.reduce((sum, n) => sum + n, 0);

describe('expected parts of a known sum', () => {
  test('add up to the sum', () => {
    fc.assert(fc.property(fc.array(part, { minLength: 1, maxLength: 12 }), fc.double({ min: -50, max: 50, noNaN: true }), (parts, sum) => {
      expect(total(expectedParts(parts, sum))).toBeCloseTo(sum, 9);
    }));
  });

  test('are the means when the sum is as expected, and move away from them by their share of the variance', () => {
    fc.assert(fc.property(fc.array(part, { minLength: 2, maxLength: 8 }), fc.double({ min: 0.1, max: 20, noNaN: true }), (parts, more) => {
      const mean = total(parts.map((p) => p.mean));
      const all = total(parts.map((p) => p.variance));
      expectedParts(parts, mean).forEach((value, i) => expect(value).toBeCloseTo(parts[i]!.mean, 9));
      expectedParts(parts, mean + more).forEach((value, i) => expect((value - parts[i]!.mean) / more).toBeCloseTo(parts[i]!.variance / all, 8));
    }));
  });

  test('do not depend on whether two parts are told together', () => {
    fc.assert(fc.property(fc.tuple(part, part, part), fc.double({ min: -20, max: 20, noNaN: true }), ([a, b, c], sum) => {
      const [one, two, three] = expectedParts([a, b, c], sum) as [number, number, number];
      const together: Part = { mean: a.mean + b.mean, variance: a.variance + b.variance };
      const [both, alone] = expectedParts([together, c], sum) as [number, number];
      expect(both).toBeCloseTo(one + two, 9);
      expect(alone).toBeCloseTo(three, 9);
    }));
  });

  test('are what drawing shows: mean of a part among draws whose sum comes near', () => {
    let state = 12345;
    const even = (): number => {
      state = (state + 0x6d2b79f5) | 0;
      let t = Math.imul(state ^ (state >>> 15), 1 | state);
      t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
      return (((t ^ (t >>> 14)) >>> 0) + 0.5) / 4294967296;
    };
    const normal = (): number => Math.sqrt(-2 * Math.log(even())) * Math.cos(2 * Math.PI * even());
    const parts = [{ mean: 1, variance: 4 }, { mean: -0.5, variance: 1 }, { mean: 0, variance: 0.25 }];
    const near: number[][] = [];
    while (near.length < 4000) {
      const draw = parts.map(({ mean, variance }) => mean + Math.sqrt(variance) * normal());
      if (Math.abs(total(draw) - 3) < 0.1) near.push(draw);
    }
    expectedParts(parts, 3).forEach((value, i) => expect(Math.abs(total(near.map((draw) => draw[i]!)) / near.length - value)).toBeLessThan(0.08));
  });

  test('nothing that varies: nothing can be shared out', () => {
    expect(() => expectedParts([{ mean: 1, variance: 0 }], 2)).toThrow(RangeError);
  });
});
