import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { grownLift, liftChance } from '../../src/risk/closed-form.js';
import { grownDensity, grownMoments, liftFrom, settledLift, unpulledFor, type LiftCurve } from '../../src/risk/lift-curve.js';
import { normalDeviates } from '../../src/risk/normal-deviates.js';

const share = fc.double({ min: 0, max: 3, noNaN: true });
const curves: fc.Arbitrary<LiftCurve> = fc.record({ pull_share: share, beta_per_mm2: fc.double({ min: 1e-7, max: 1e-4, noNaN: true }) });
const lifts = fc.double({ min: -60, max: 60, noNaN: true });

describe('how a lift grows with the pull', () => {
  it('solves its cubic, on the side the frame leans to, on the outermost root', () => {
    fc.assert(fc.property(curves, lifts, (curve, unpulled) => {
      const y = liftFrom(curve, unpulled);
      expect(Math.abs(unpulledFor(curve, y) - unpulled)).toBeLessThan(1e-9 * (1 + Math.abs(unpulled)) + 1e-9 * Math.abs(y));
      expect(y * unpulled).toBeGreaterThanOrEqual(0);
      expect(Math.abs(y)).toBeGreaterThanOrEqual(settledLift(curve) * (1 - 1e-9));
    }));
  });

  it('more pull, or more lift at no pull, never lifts less; the straight line below the critical pull is on the safe side', () => {
    fc.assert(fc.property(curves, share, fc.tuple(lifts, lifts), (curve, more, [a, b]) => {
      const [small, large] = [Math.min(Math.abs(a), Math.abs(b)), Math.max(Math.abs(a), Math.abs(b))];
      expect(liftFrom(curve, large)).toBeGreaterThanOrEqual(liftFrom(curve, small) * (1 - 1e-12));
      expect(liftFrom({ ...curve, pull_share: curve.pull_share + more }, large)).toBeGreaterThanOrEqual(liftFrom(curve, large) * (1 - 1e-12));
      if (curve.pull_share < 1) expect(liftFrom(curve, large)).toBeLessThanOrEqual((large / (1 - curve.pull_share)) * (1 + 1e-12));
    }));
  });

  it('at the critical pull the lift is the cube root', () => {
    expect(liftFrom({ pull_share: 1, beta_per_mm2: 5e-6 }, 0.5)).toBeCloseTo(Math.cbrt(0.5 / 5e-6), 9);
    expect(liftFrom({ pull_share: 0.5, beta_per_mm2: 0 }, 3)).toBeCloseTo(6, 12);
  });

  it('past it straight boards turn as far as the frame settles: y² = (f − 1)/β', () => {
    const curve = { pull_share: 1.18, beta_per_mm2: 2e-4 };
    expect(liftFrom(curve, 0)).toBeCloseTo(30, 9);
    expect(settledLift(curve)).toBeCloseTo(30, 9);
  });
});

describe('the spread of a lift that grows', () => {
  const beta_per_mm2 = 5.2e-6;
  const samples = 60_000;
  it.each([[0.4, 0.8, 3], [0.92, -2, 1.5], [1, 0.7, 2], [1.15, 0.4, 1.1], [1.6, 0, 4]])('at %d of the critical pull sampling agrees: mean, spread, nine in ten, chance', (pull_share, mean, sd) => {
    const curve = { pull_share, beta_per_mm2 };
    const draws = new Float64Array(samples);
    normalDeviates(20)(draws);
    const lifted = draws.map((z) => liftFrom(curve, mean + sd * z));
    const average = lifted.reduce((sum, y) => sum + y, 0) / samples;
    const spread = Math.sqrt(lifted.reduce((sum, y) => sum + (y - average) ** 2, 0) / samples);
    const risk = grownLift({ mean, sd }, curve);
    expect(Math.abs(risk.mean - average)).toBeLessThan((4 * spread) / Math.sqrt(samples));
    expect(risk.sd / spread).toBeCloseTo(1, 1);
    const sizes = lifted.map(Math.abs).sort();
    expect(Math.abs(sizes[0.9 * samples]! / risk.p90_mm - 1)).toBeLessThan(0.02);
    for (const limit of [settledLift(curve) * 0.99, risk.p90_mm * 0.8, risk.p90_mm * 1.2]) {
      const over = sizes.filter((y) => y > limit).length / samples;
      expect(Math.abs(liftChance(risk, limit) - over)).toBeLessThan(4 * Math.sqrt((over * (1 - over)) / samples) + 1e-4);
    }
  });

  it('a frame past its critical pull goes beyond every lesser lift, whatever its boards', () => {
    const curve = { pull_share: 1.3, beta_per_mm2 };
    expect(liftChance(grownLift({ mean: 0, sd: 0.01 }, curve), settledLift(curve) * 0.999)).toBe(1);
    expect(liftChance(grownLift({ mean: 0, sd: 0.01 }, curve), settledLift(curve) * 1.1)).toBeLessThan(1e-6);
  });

  it('the moments do not hang on how fine the sum is, and the density has area one', () => {
    for (const pull_share of [0.5, 1.2]) {
      const curve = { pull_share, beta_per_mm2 };
      const unpulled = { mean: 0.6, sd: 2 };
      const { mean, sd } = grownMoments(curve, unpulled);
      // The same by the density of the lift itself.
      const [reach, n] = [liftFrom(curve, 17), 400_000];
      const step = (2 * reach) / n;
      let [area, first, second] = [0, 0, 0];
      for (let i = 0; i < n; i++) {
        const y = -reach + (i + 0.5) * step;
        const p = grownDensity(curve, unpulled, y) * step;
        area += p;
        first += p * y;
        second += p * y * y;
      }
      expect(area).toBeCloseTo(1, 3);
      expect(first).toBeCloseTo(mean, pull_share > 1 ? 1 : 4);
      expect(Math.sqrt(second - first ** 2) / sd).toBeCloseTo(1, 3);
    }
  });
});

describe('where the curve has nothing to spread or to bend', () => {
  it('a straight curve scales mean and spread; no spread stays none; a mean out of reach stays as it is', () => {
    expect(grownMoments({ pull_share: 0.6, beta_per_mm2: 0 }, { mean: 2, sd: 0.5 })).toEqual({ mean: 5, sd: 1.25 });
    const curve = { pull_share: 0.7, beta_per_mm2: 4e-6 };
    expect(grownMoments(curve, { mean: 3, sd: 0 })).toEqual({ mean: liftFrom(curve, 3), sd: 0 });
    expect(grownMoments(curve, { mean: 1, sd: Infinity }).sd).toBe(Infinity);
    expect(grownMoments(curve, { mean: -Infinity, sd: 1 }).mean).not.toBeNaN();
  });
  it('the moments of a nearly straight curve are those of the straight one', () => {
    const grown = grownMoments({ pull_share: 0.6, beta_per_mm2: 1e-12 }, { mean: -2, sd: 0.5 });
    expect([grown.mean, grown.sd]).toEqual([expect.closeTo(-5, 6), expect.closeTo(1.25, 6)]);
  });
  it('past the critical pull a frame without lean turns as far one way as the other: the lift of straight boards is its spread', () => {
    const curve = { pull_share: 1.2, beta_per_mm2: 5e-6 };
    const grown = grownMoments(curve, { mean: 0, sd: 1e-6 });
    expect(grown.mean).toBeCloseTo(0, 6);
    expect(grown.sd / settledLift(curve)).toBeCloseTo(1, 6);
    expect(settledLift(curve)).toBeCloseTo(200, 9);
    expect([settledLift({ ...curve, pull_share: 1 }), settledLift({ ...curve, pull_share: 0.9 })]).toEqual([0, 0]);
  });
});
