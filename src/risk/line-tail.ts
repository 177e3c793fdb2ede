/**
 * The law of a place on a line through the middle of two standard normals, the line's direction being even: its size is
 * the length of the two, its sign either.
 */

/** Chance of a place beyond t. */
export function lineTail(t: number): number {
  const half = 0.5 * Math.exp(-0.5 * t * t);
  return t < 0 ? 1 - half : half;
}

/** The place with this chance beyond it, between 0 and 1. */
export function lineTailPlace(chance: number): number {
  return chance < 0.5 ? Math.sqrt(-2 * Math.log(2 * chance)) : -Math.sqrt(-2 * Math.log(2 * (1 - chance)));
}

/** Density at t. */
export function lineDensity(t: number): number {
  return Number.isFinite(t) ? 0.5 * Math.abs(t) * Math.exp(-0.5 * t * t) : 0;
}
