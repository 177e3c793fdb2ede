import type { BarName } from '../base/names.js';
import { influenceSteps } from '../solve/mesh-influence.js';
import type { WarpTerm } from '../risk/terms.js';

/** What a term moves per unit of its warp, mm. */
export type Response = (term: WarpTerm) => number;

/** The middle of a bar, out of the plane (`bow`) or in it (`crook`). */
export const middleStation =
  (way: 'bow' | 'crook', bar: BarName): Response =>
  (term) =>
    term[way][bar][influenceSteps / 2]!;

/** Mean and variance of a movement. */
export function momentsOf(
  terms: readonly WarpTerm[],
  of: Response,
): { readonly mean: number; readonly variance: number } {
  let mean = 0;
  let variance = 0;
  for (const term of terms) {
    const each = of(term);
    mean += each * term.mean_per_m;
    variance += (each * term.sd_per_m) ** 2;
  }
  return { mean, variance };
}

/** Covariance of one movement of the same boards in two states of the frame; the terms stand in the same order. */
export const together = (one: readonly WarpTerm[], other: readonly WarpTerm[], of: Response): number =>
  one.reduce((sum, term, i) => sum + of(term) * of(other[i]!) * term.sd_per_m ** 2, 0);
