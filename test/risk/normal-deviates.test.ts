import { describe, expect, it } from 'vitest';
import { normalCdf } from '../../src/risk/normal.js';
import { normalDeviates } from '../../src/risk/normal-deviates.js';
import { cutStrips, strip_count, tail_from } from '../../src/risk/normal-strips.js';

function deviates(seed: number, count: number): Float64Array {
  const values = new Float64Array(count);
  normalDeviates(seed)(values);
  return values;
}

describe('normal deviates', () => {
  it('cuts strips that end exactly at the top of the curve', () => {
    const { heights, edges } = cutStrips(tail_from);
    expect(heights[strip_count]).toBeCloseTo(1, 9);
    expect(cutStrips(tail_from * 1.0001).heights[strip_count]).toBeLessThan(0.9999);
    for (let i = 1; i < strip_count; i++) expect(edges[i + 1]).toBeLessThan(edges[i] as number);
  });

  it.each([1, 2, 77, -5])('follows the normal distribution everywhere (seed %i)', (seed) => {
    const n = 400_000;
    const sorted = deviates(seed, n).sort();
    let farthest = 0;
    sorted.forEach((z, i) => (farthest = Math.max(farthest, Math.abs(normalCdf(z) - (i + 0.5) / n))));
    expect(farthest * Math.sqrt(n)).toBeLessThan(1.95); // Kolmogorov: passed by chance 999 times in 1000
  });

  it('has the tail right, where the strips end', () => {
    const n = 2_000_000;
    const values = deviates(9, n);
    for (const z of [3, tail_from, 4]) {
      const expected = 2 * n * normalCdf(-z);
      const found = values.reduce((count, value) => count + (Math.abs(value) > z ? 1 : 0), 0);
      expect(Math.abs(found - expected)).toBeLessThan(4 * Math.sqrt(expected));
    }
  });

  it('has independent neighbours, and neighbouring seeds have nothing in common', () => {
    const n = 200_000;
    const a = deviates(41, n);
    const b = deviates(42, n);
    const product = (x: Float64Array, y: Float64Array, shift: number): number => {
      let sum = 0;
      for (let i = shift; i < n; i++) sum += (x[i] as number) * (y[i - shift] as number);
      return sum / Math.sqrt(n);
    };
    for (const shift of [1, 2, 8]) expect(Math.abs(product(a, a, shift))).toBeLessThan(4);
    for (const shift of [0, 1, 2]) expect(Math.abs(product(a, b, shift))).toBeLessThan(4);
  });

  it('repeats itself for a seed, whatever the portions', () => {
    const whole = deviates(5, 30);
    const fill = normalDeviates(5);
    const parts = [7, 12, 11].flatMap((length) => {
      const part = new Float64Array(length);
      fill(part);
      return [...part];
    });
    expect(parts).toEqual([...whole]);
  });
});
