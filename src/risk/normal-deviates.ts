import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { normalTail } from './normal.js';

/** Fills an array with independent standard normal deviates. */
export type FillNormals = (into: Float64Array) => void;

/** Number of horizontal strips of equal area under the half density exp(−x²/2); the lowest also holds the tail. */
const strips = 128;
/** Leaves the topmost seven bits of a 32-bit draw: a strip. */
const strip_shift = 25;
const { tail_from, edges, heights } = cutIntoStrips();

/** Scales a signed 32-bit integer to −1 ≤ u < 1. */
const to_unit = 2 ** -31;
/** Numbers thrown away first: neighbouring seeds start alike and part within a few dozen steps. */
const warm_up = 64;

/**
 * Normal deviates by the strip method of Marsaglia and Tsang from a seeded generator: the same seed gives the same stream on every machine.
 * A strip is drawn, then a place in it; nearly always the place lies under the curve for certain, else it is compared with the curve.
 * `seed` is used as a 32-bit integer. Strip and place come from different draws, so they are independent.
 */
export function normalDeviates(seed: number): FillNormals {
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

  const slow = (strip: number, x: number): number | null => {
    if (strip === 0) return x < 0 ? -beyondTail() : beyondTail();
    const low = heights[strip] as number;
    const high = heights[strip + 1] as number;
    return low + unit() * (high - low) < Math.exp(-0.5 * x * x) ? x : null;
  };

  return (into) => {
    for (let i = 0; i < into.length; ) {
      const strip = generator.next() >>> strip_shift;
      const x = generator.next() * to_unit * (edges[strip] as number);
      if (Math.abs(x) < (edges[strip + 1] as number)) {
        into[i++] = x;
        continue;
      }
      const found = slow(strip, x);
      if (found !== null) into[i++] = found;
    }
  };
}

/**
 * Strip 0 spans the whole tail as a box of width area / height; strip i ≥ 1 reaches from edges[i + 1] certain to edges[i] possible.
 * The place where the tail begins is found by bisection: too far out and the strips run past the top, too near and they fall short.
 */
function cutIntoStrips(): { tail_from: number; edges: Float64Array; heights: Float64Array } {
  const density = (x: number): number => Math.exp(-0.5 * x * x);
  const cut = (from: number): { edges: Float64Array; heights: Float64Array; past_top: boolean } => {
    const edges = new Float64Array(strips + 1);
    const heights = new Float64Array(strips + 1);
    const area = from * density(from) + Math.sqrt(2 * Math.PI) * normalTail(from);
    edges[0] = area / density(from);
    edges[1] = from;
    heights[0] = 0;
    heights[1] = density(from);
    for (let i = 1; i < strips; i++) {
      const top = (heights[i] as number) + area / (edges[i] as number);
      if (top >= 1) {
        heights[i + 1] = 1;
        edges[i + 1] = 0;
        return { edges, heights, past_top: i < strips - 1 || top > 1 };
      }
      heights[i + 1] = top;
      edges[i + 1] = Math.sqrt(-2 * Math.log(top));
    }
    return { edges, heights, past_top: false };
  };
  let low = 2;
  let high = 5;
  for (let step = 0; step < 60; step++) {
    const middle = (low + high) / 2;
    if (cut(middle).past_top) low = middle;
    else high = middle;
  }
  const { edges, heights } = cut(high);
  edges[strips] = 0;
  heights[strips] = 1;
  return { tail_from: high, edges, heights };
}
