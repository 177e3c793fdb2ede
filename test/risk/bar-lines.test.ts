import { describe, expect, it } from 'vitest';
import { anyBowChance } from '../../src/risk/any-bow.js';
import { crossLine, passes, type BarLines, type Crossing } from '../../src/risk/bar-lines.js';
import { bowBeyond } from '../../src/risk/bow-chance.js';

/** A bar of made-up stations, each its mean and its heights in the normals. */
const bar = (...stations: readonly (readonly number[])[]): BarLines => ({
  rank: stations[0]!.length - 1,
  heights: Float64Array.from(stations.flat()),
  still_mm: 0,
  mixing: new Float64Array(),
});

describe('where a line leaves the frames whose bar stays within its limit', () => {
  const lines = bar([0.5, 2, 1, 4, -2], [-1, 1, -3, 0.5, 1]);
  const limit_mm = 6;
  /** The line stands behind two numbers that are not its own: its direction, then where it lies in the third and fourth. */
  const line = Float64Array.of(7, -8, 0.6, 0.8, 0.25, -0.5);
  const found: Crossing = { low: 0, high: 0, low_mm: 0, high_mm: 0 };
  crossLine(lines, limit_mm, line, 2, found);

  it('by hand: middles 0.5 + 1 + 1 = 2.5 and −1 + 0.125 − 0.5 = −1.375, slopes 1.2 + 0.8 and 0.6 − 2.4', () => {
    expect(found.high).toBeCloseTo((6 - 2.5) / 2, 12);
    expect(found.high_mm).toBeCloseTo(2, 12);
    // The second station falls along the line, so that its upper limit lies behind: (6 + 1.375) / −1.8 = −4.097.
    expect(found.low).toBeCloseTo(Math.max((-6 - 2.5) / 2, (6 + 1.375) / -1.8), 12);
    expect(found.low_mm).toBeCloseTo(1.8, 12);
  });
  it('as the frames on it do: within between the ends, past the limit outside', () => {
    const at = (t: number): Float64Array => Float64Array.of(0.6 * t, 0.8 * t, 0.25, -0.5);
    const off = (t: number): boolean => passes(lines, at(t), limit_mm);
    expect([found.low - 1e-6, found.low + 1e-6, found.high - 1e-6, found.high + 1e-6].map(off)).toEqual([
      true,
      false,
      false,
      true,
    ]);
  });
});

it('a station that hardly moves along a line may yet be the one that decides', () => {
  const found: Crossing = { low: 0, high: 0, low_mm: 0, high_mm: 0 };
  crossLine(bar([0.5, 2, 1], [5.6, 0.5, 0.25]), 6, Float64Array.of(0.6, 0.8), 0, found);
  expect([found.high, found.high_mm]).toEqual([expect.closeTo((6 - 5.6) / 0.5, 12), expect.closeTo(0.5, 12)]);
  expect([found.low, found.low_mm]).toEqual([expect.closeTo((-6 - 0.5) / 2, 12), expect.closeTo(2, 12)]);
});

describe('the chance that a bar bows past its limit', () => {
  it('is the same for a bar whose second shape is turned over, however few directions are looked at', () => {
    const beyond = (turned: number, count: number) =>
      bowBeyond(bar([0.3, 2, 1.5 * turned], [-0.2, 0.5, -1.8 * turned]), 2.5, count);
    for (const count of [1, 2, 3, 8]) {
      const [as_is, turned] = [beyond(1, count), beyond(-1, count)];
      expect(as_is.chance).toBeGreaterThan(0.01);
      expect(turned.chance).toBeCloseTo(as_is.chance, 12);
      expect(turned.density).toBeCloseTo(as_is.density, 12);
    }
  });
});

describe('the normals beside the two that are followed', () => {
  /** The chance that a standard normal is larger, by its series (M. Abramowitz and I. Stegun 26.2.10). */
  const above = (x: number): number => {
    let [term, sum] = [x, x];
    for (let n = 1; n < 80; n++) {
      term *= -(x * x) / (2 * n);
      sum += term / (2 * n + 1);
    }
    return 0.5 - sum / Math.sqrt(2 * Math.PI);
  };
  it.each([-1.2, -0.06, 0.06, 0.5, 1.4])('are spread as a normal is: above %d', (x) => {
    // One station that the third alone moves, four sizes off the middle: it passes 4 + x where that is above x.
    const found = bowBeyond(bar([4, 0, 0, 1]), 4 + x, 4096).chance;
    expect(Math.abs(found - above(x))).toBeLessThan(2e-3);
  });
  it('go apart: of fifteen stations that each move by themselves none passes as often as by chance', () => {
    const stations = Array.from({ length: 15 }, (_, s) => [
      0,
      ...Array.from({ length: 15 }, (_n, k) => (k === s ? 1 : 0)),
    ]);
    const found = bowBeyond(bar(...stations), 2, 4096).chance;
    expect(Math.abs(found - (1 - (1 - 2 * above(2)) ** 15))).toBeLessThan(0.01);
  });
});

describe('the chance that any of several bars bows past its limit', () => {
  it('is that of one where all bow as it does, whichever of its two shapes brings it there', () => {
    // Rows of `mixing` stand upright on each other: each normal is its own mix of the four draws.
    const lines: BarLines = {
      ...bar([0.1, 2, 0], [-0.1, 0.9, 1.8], [0, 0.7, -1.7]),
      mixing: Float64Array.of(0.5, 0.5, 0.5, 0.5, 0.7, -0.7, 0.1, -0.1),
    };
    const limit_mm = 4.4;
    const { chance } = bowBeyond(lines, limit_mm);
    const one = { lines, limit_mm, chance };
    expect(chance).toBeGreaterThan(0.03);
    expect(3 * chance).toBeLessThan(0.3);
    const { value, se } = anyBowChance([one, { ...one }, { ...one }], { seed: 3, samples: 4000 });
    expect(value - chance).toBeLessThan(4 * se);
    expect(se).toBeLessThan(chance / 10);
  });
});
