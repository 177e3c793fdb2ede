import type { Normal } from '../shelf/shelf.js';
import { normalDensity } from './normal.js';

/**
 * How the lift of a corner grows with the pull: y (1 − f) + β y³ = y₀, y₀ the lift at no pull. Below f = 1 and for
 * small lifts this is
 * y₀/(1 − f); past it a frame turns to one side by itself. Source: physics section 13.
 */
export interface LiftCurve {
  /** f, the pull over the critical pull. */
  readonly pull_share: number;
  readonly beta_per_mm2: number;
}

/**
 * Lift (mm) under pull of a frame that lifts by `unpulled_mm` without: on the side it leans to already, the one it
 * settles on.
 */
export function liftFrom(curve: LiftCurve, unpulled_mm: number): number {
  const size = Math.abs(unpulled_mm);
  const { beta_per_mm2: beta } = curve;
  if (beta === 0) return unpulled_mm / (1 - curve.pull_share);
  // From above the curve is convex, so that Newton's steps come down onto the largest root and never pass it.
  let y = Math.max(settledLift(curve) + Math.cbrt(size / beta), 0);
  for (let step = 0; step < 100; step++) {
    const slope = 1 - curve.pull_share + 3 * beta * y * y;
    if (!(slope > 0)) break;
    const next = y - (unpulledFor(curve, y) - size) / slope;
    if (!(next < y)) break;
    y = next;
  }
  return unpulled_mm < 0 ? -y : y;
}

/**
 * The lift at no pull that grows into `lift_mm`; negative where a frame past its critical pull goes beyond that lift
 * whatever its boards.
 */
export function unpulledFor({ pull_share, beta_per_mm2 }: LiftCurve, lift_mm: number): number {
  return lift_mm * (1 - pull_share) + beta_per_mm2 * lift_mm ** 3;
}

/** How far a frame of straight boards turns past its critical pull, mm; 0 below it. */
export function settledLift({ pull_share, beta_per_mm2 }: LiftCurve): number {
  return pull_share > 1 ? Math.sqrt((pull_share - 1) / beta_per_mm2) : 0;
}

/** Steps (even) and reach, in standard deviations, of the sum over the spread of boards. */
const steps = 256;
const reach_sds = 8;

/**
 * Mean and standard deviation of the lift under pull, from those at no pull (normal): a sum over lifts under pull, each
 * weighed by the density of what grows into it (T. Simpson's rule), the two sides of a frame past its critical pull
 * apart.
 */
export function grownMoments(curve: LiftCurve, { mean, sd }: Normal): Normal {
  if (curve.beta_per_mm2 === 0) return { mean: mean / (1 - curve.pull_share), sd: sd / (1 - curve.pull_share) };
  if (!(sd > 0) || !Number.isFinite(mean + sd)) return { mean: liftFrom(curve, mean), sd };
  const [least, most] = [liftFrom(curve, mean - reach_sds * sd), liftFrom(curve, mean + reach_sds * sd)];
  const settled = settledLift(curve);
  const sides: (readonly [from: number, to: number])[] =
    settled === 0
      ? [[least, most]]
      : [
          [least, Math.min(most, -settled)],
          [Math.max(least, settled), most],
        ];
  let weight = 0;
  let first = 0;
  let second = 0;
  for (const [from, to] of sides) {
    const step = (to - from) / steps;
    for (let n = 0; step > 0 && n <= steps; n++) {
      // The last is the edge of the gap itself, not what rounding makes of it, which may lie inside.
      const lift = n === steps ? to : from + n * step;
      const end = n === 0 || n === steps;
      const w = grownDensity(curve, { mean, sd }, lift) * (end ? 1 : n % 2 === 1 ? 4 : 2) * step;
      weight += w;
      first += w * lift;
      second += w * lift * lift;
    }
  }
  const average = first / weight;
  return { mean: average, sd: Math.sqrt(Math.max(0, second / weight - average * average)) };
}

/**
 * Density per mm of the lift under pull, from the spread at no pull. Nothing lies between the two sides a frame turns
 * to past its critical pull.
 */
export function grownDensity(curve: LiftCurve, { mean, sd }: Normal, lift_mm: number): number {
  const slope = 1 - curve.pull_share + 3 * curve.beta_per_mm2 * lift_mm ** 2;
  if (Math.abs(lift_mm) < settledLift(curve)) return 0;
  return (normalDensity((unpulledFor(curve, lift_mm) - mean) / sd) / sd) * slope;
}
