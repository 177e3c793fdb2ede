import { describe, expect, it } from 'vitest';
import { chanceBeyond, foldedQuantile, normalCdf, normalDensity, normalTail, passedSize } from '../../src/risk/normal.js';

/** Simpson's rule on the density: a second way to the same areas. */
function area(from: number, to: number, steps = 20_000): number {
  const h = (to - from) / steps;
  let sum = normalDensity(from) + normalDensity(to);
  for (let i = 1; i < steps; i++) sum += (i % 2 === 1 ? 4 : 2) * normalDensity(from + i * h);
  return (sum * h) / 3;
}

describe('normal distribution', () => {
  it('agrees with the quantiles every table prints (memory)', () => {
    expect(normalTail(1.6448536269514722)).toBeCloseTo(0.05, 13);
    expect(normalTail(1.2815515655446004)).toBeCloseTo(0.1, 13);
    expect(normalTail(1.959963984540054)).toBeCloseTo(0.025, 13);
    expect(normalTail(6) / 9.865876450376946e-10).toBeCloseTo(1, 10);
    expect(normalCdf(0)).toBe(0.5);
  });

  it.each([-4.2, -1.1, 0.3, 1.7, 2.9999, 3.0001, 4.4, 7])('agrees with the area under the density beyond %f', (z) => {
    expect(normalTail(z) / area(z, z + 14)).toBeCloseTo(1, 9);
  });

  it('gives the folded chance and its quantile back', () => {
    for (const [mean, sd] of [[0, 1], [3.1, 2], [-0.4, 5], [40, 0.5]] as const) {
      for (const share of [0.5, 0.9, 0.99]) expect(1 - chanceBeyond(mean, sd, foldedQuantile(mean, sd, share))).toBeCloseTo(share, 12);
    }
    expect(foldedQuantile(0, 2, 0.9)).toBeCloseTo(2 * 1.6448536269514722, 12);
    expect(foldedQuantile(-7, 0, 0.9)).toBe(7);
    expect(() => foldedQuantile(0, 1, 1)).toThrow();
  });

  it('is certain when nothing varies', () => {
    expect(chanceBeyond(-3, 0, 2.9)).toBe(1);
    expect(chanceBeyond(-3, 0, 3)).toBe(0);
  });
});

it('the size that is passed with some chance: by few looks, from wherever it begins, and never below the least', () => {
  const looked = (beyond: number, more: Partial<Record<'least' | 'first' | 'step' | 'near', number>> = {}) => {
    let looks = 0;
    // exp(−x²/2): passed with chance c at √(−2 ln c).
    const size = passedSize(beyond, (x) => { looks++; return { chance: Math.exp((-x * x) / 2), density: x * Math.exp((-x * x) / 2) }; }, { least: 0, first: 1, step: 1, near: 1e-10, ...more });
    return { size, looks };
  };
  for (const beyond of [0.5, 0.1, 1e-3]) for (const first of [0.3, 1, 3]) {
    const { size, looks } = looked(beyond, { first });
    expect(size).toBeCloseTo(Math.sqrt(-2 * Math.log(beyond)), 8);
    expect(looks).toBeLessThanOrEqual(16);
  }
  expect(looked(0.5, { least: 2, first: 2 }).size).toBe(2);
});

it('the size at a jump is found between two looks as near as asked, large or small, by halving what is left', () => {
  for (const jump of [0.0123, 0.7, 431]) for (const near of [1e-4, 1e-9]) {
    let looks = 0;
    const size = passedSize(0.5, (x) => { looks++; return { chance: x < jump ? 0.9 : 0.1, density: 1e-12 }; }, { least: 0, first: 3 * jump, step: jump, near });
    expect(size).toBeGreaterThanOrEqual(jump);
    expect(size / jump - 1).toBeLessThan(1.01 * near);
    // From 3 jumps down to one part in so many: a halving for every look, and the first ones.
    expect(looks).toBeLessThanOrEqual(Math.ceil(Math.log2(3 / near)) + 2);
  }
});

it('a size is as near as asked for its own length, be it a thousandth or a million', () => {
  for (const unit of [1e-3, 1e6]) {
    let looks = 0;
    const at = (x: number) => { looks++; const chance = Math.exp(-((x / unit) ** 2) / 2); return { chance, density: (x / unit ** 2) * chance }; };
    const size = passedSize(0.1, at, { least: 0, first: 0.3 * unit, step: unit, near: 1e-4 });
    expect(Math.abs(size / (unit * Math.sqrt(-2 * Math.log(0.1))) - 1)).toBeLessThan(1e-4);
    // Newton's steps: two of a unit at most, then each twice as many digits.
    expect(looks).toBeLessThanOrEqual(6);
  }
});
