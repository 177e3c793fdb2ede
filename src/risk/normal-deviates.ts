import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { cutStrips, tail_from } from './normal-strips.js';

/** Fills an array with independent standard normal deviates. */
export type FillNormals = (into: Float64Array) => void;

/** Leaves the topmost seven bits of a 32-bit draw: one of 128 strips. */
const strip_shift = 25;
/** Scales a signed 32-bit integer to −1 ≤ u < 1. */
const to_unit = 2 ** -31;
/** Numbers thrown away first: neighbouring seeds start alike and part within a few dozen steps. */
const warm_up = 64;

/**
 * Normal deviates by the strip method of Marsaglia and Tsang from a seeded generator: the same seed gives the same
 * stream.
 * A strip is drawn, then a place in it; nearly always the place lies under the curve for certain, else it is compared
 * with the curve.
 * `seed` is used as a 32-bit integer. Strip and place come from different draws, so they are independent.
 */
export function normalDeviates(seed: number): FillNormals {
  const { edges, heights } = cutStrips(tail_from);
  const generator = xoroshiro128plus(seed | 0);
  for (let i = 0; i < warm_up; i++) generator.next();
  const unit = (): number => ((generator.next() >>> 0) + 0.5) / 2 ** 32;

  const beyondTail = (): number => {
    for (;;) {
      const x = -Math.log(unit()) / tail_from;
      const y = -Math.log(unit());
      if (2 * y > x * x) return tail_from + x;
    }
  };

  /** Near the curve: the tail, or a comparison with the curve itself; NaN when the place lies above it. */
  const nearCurve = (strip: number, x: number): number => {
    if (strip === 0) return x < 0 ? -beyondTail() : beyondTail();
    const low = heights[strip] as number;
    const high = heights[strip + 1] as number;
    return low + unit() * (high - low) < Math.exp(-0.5 * x * x) ? x : NaN;
  };

  return (into) => {
    for (let i = 0; i < into.length;) {
      const strip = generator.next() >>> strip_shift;
      const x = generator.next() * to_unit * (edges[strip] as number);
      if (Math.abs(x) < (edges[strip + 1] as number)) {
        into[i++] = x;
        continue;
      }
      const found = nearCurve(strip, x);
      if (!Number.isNaN(found)) into[i++] = found;
    }
  };
}
