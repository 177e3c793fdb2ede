import { describe, expect, it } from 'vitest';
import { anyBowChance, type BarAtLimit } from '../../src/risk/any-bow.js';
import { barLines, type BarLines } from '../../src/risk/bar-lines.js';
import { bowBeyond, bowP90 } from '../../src/risk/bow-chance.js';
import { lineTail, lineTailPlace } from '../../src/risk/line-tail.js';
import type { WarpTerm } from '../../src/risk/terms.js';

/** A bar of made-up stations that two normals move, each its mean and two heights; the normals are the two draws. */
const bar = (...stations: readonly (readonly [number, number, number])[]): BarLines => ({
  rank: 2,
  heights: Float64Array.from(stations.flat()),
  still_mm: 0,
  mixing: Float64Array.of(1, 0, 0, 1),
});

/** Stations so many and so even about the middle that the bar passes just where the two normals are longer than r. */
const round = (r: number): BarLines =>
  bar(
    ...Array.from({ length: 90 }, (_, s): [number, number, number] => {
      const turn = (Math.PI * s) / 90;
      return [0, Math.cos(turn) / r, Math.sin(turn) / r];
    }),
  );

describe('bars that always bow together', () => {
  // Two normals are longer than r with the chance exp(−r²/2).
  const chance = 0.029;
  const lines = round(Math.sqrt(-2 * Math.log(chance)));
  const ten = Array.from({ length: 10 }, (): BarAtLimit => ({ lines, limit_mm: 1, chance }));

  it('bow as often as one of them, however few frames are drawn, each of which says the same', () => {
    // Every frame drawn has ten bowed bars where one would do: nine of ten parts of the sum are too much.
    for (const samples of [2, 4, 16]) {
      const { value, se } = anyBowChance(ten, { seed: 5, samples });
      expect(Math.abs(value / chance - 1)).toBeLessThan(4e-3);
      // Frames that say all the same leave the doubt of one frame more with two bowed bars: half the sum, over n.
      expect(se / ((10 * chance) / 2 / samples)).toBeCloseTo(1, 2);
    }
  });

  it('of frames as they come, the doubt of one frame more, asked every 64 frames', () => {
    // Three bars that never pass, said to do so now and then: no frame differs from another.
    const never = (chance: number, samples: number) => {
      const one = { lines: bar([0, 1e-9, 0]), limit_mm: 1, chance };
      return anyBowChance([one, { ...one }, { ...one }], { seed: 5, samples });
    };
    for (const chance of [0.105, 0.2]) {
      const { value, se } = never(chance, 3);
      expect(se).toBeCloseTo(1 / 3, 9);
      // What the mean of bowed bars is below its known one is put back by the best share if bars bow apart.
      expect(value).toBeCloseTo(3 * chance * (1 - chance) ** 2, 9);
    }
    // Counting ten thousand frames leaves 0.0049 of doubt at 0.384; 1 of 192 is more than that, 1 of 256 is less.
    expect(never(0.2, 10_000).se).toBeCloseTo(1 / 256, 9);
  });
});

describe('the chance that a bar bows past its limit, and its density', () => {
  /** The chance that a standard normal is larger, by Simpson’s rule on its density. */
  const above = (z: number): number => {
    const [to, steps] = [z + 12, 600];
    const h = (to - z) / steps;
    const at = (n: number): number => Math.exp(-((z + n * h) ** 2) / 2) * (n === 0 || n === steps ? 1 : n % 2 ? 4 : 2);
    return (
      (Array.from({ length: steps + 1 }, (_, n) => at(n)).reduce((sum, y) => sum + y, 0) * h) /
      3 /
      Math.sqrt(2 * Math.PI)
    );
  };
  const beyond = (mean: number, sd: number, limit: number): number =>
    above((limit - mean) / sd) + above((limit + mean) / sd);

  it('of one station: that of a normal whose variance is the sum of the squares of its heights', () => {
    for (const [mean, a, b, limit] of [
      [0.4, 1.2, 0.9, 2],
      [-1.1, 0.3, -1.6, 3.5],
      [0, 2, 0.1, 1.1],
    ] as const) {
      const found = bowBeyond(bar([mean, a, b]), limit, 4096);
      expect(found.chance).toBeCloseTo(beyond(mean, Math.hypot(a, b), limit), 6);
      const slope =
        (beyond(mean, Math.hypot(a, b), limit - 1e-3) - beyond(mean, Math.hypot(a, b), limit + 1e-3)) / 2e-3;
      expect(found.density).toBeCloseTo(slope, 5);
    }
  });

  it('of two stations that bow apart: the one or the other, less both; nine in ten as that says', () => {
    const lines = bar([0.5, 1.5, 0], [-0.8, 0, 0.9]);
    const any = (limit: number): number => 1 - (1 - beyond(0.5, 1.5, limit)) * (1 - beyond(-0.8, 0.9, limit));
    for (const limit of [0.9, 2, 3.3]) {
      const found = bowBeyond(lines, limit, 4096);
      expect(found.chance).toBeCloseTo(any(limit), 6);
      // Where the station that decides changes, the density along a line jumps: as good as the directions are many.
      expect(Math.abs(found.density - (any(limit - 1e-3) - any(limit + 1e-3)) / 2e-3)).toBeLessThan(5e-4);
    }
    const p90 = bowP90(lines, { station: 0, mean: 0.5, sd: 1.5, p90_mm: 0.7 }, 4096);
    expect(any(p90)).toBeCloseTo(0.1, 6);
    // Never below what the one station says.
    expect(bowP90(lines, { station: 0, mean: 0.5, sd: 1.5, p90_mm: p90 + 1 }, 4096)).toBe(p90 + 1);
  });

  it('of two that go together half the way: by T. Sheppard’s quarter, the signs of two normals', () => {
    // Limits of nought are passed always; a mean as large as the limit is passed when its normal is on its side.
    // Both stations rise from their limit with normals that correlate by 0.6: one of them passes above with the chance 3/4 − asin(0.6)/2π.
    const limit = 1000;
    const found = bowBeyond(bar([limit, 1, 0], [limit, 0.6, 0.8]), limit, 4096);
    expect(found.chance).toBeCloseTo(0.75 - Math.asin(0.6) / (2 * Math.PI), 3);
  });
});

describe('what stands still', () => {
  it('passes a limit surely or never, and its chance does not change with the limit', () => {
    const still = { ...bar([0, 1, 0]), still_mm: 3 };
    expect(bowBeyond(still, 2.9)).toEqual({ chance: 1, density: 0 });
    expect(bowBeyond(still, 3).chance).toBeLessThan(0.01);
  });

  it('is no more than the means of stations that nothing moves: none at the ends of a bar', () => {
    const line = Float64Array.of(0, 0.4, 0.7, 0.2, 0);
    const term = (sd_per_m: number) =>
      ({
        mean_per_m: -0.5,
        sd_per_m,
        bow: { top: line, bottom: line, left: line, right: line },
      }) as unknown as WarpTerm;
    expect([barLines([term(2)], 'left').still_mm, barLines([term(0)], 'left').still_mm]).toEqual([0, 0.35]);
  });

  it('a place on a line has its chance beyond it, on either side of the middle', () => {
    for (const chance of [0.03, 0.47, 0.5, 0.52, 0.9]) expect(lineTail(lineTailPlace(chance))).toBeCloseTo(chance, 12);
  });
});
