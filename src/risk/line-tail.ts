/**
 * The law of a place on a line through the middle of two standard normals, the line's direction being even: its size is
 * the length of the two, its sign either.
 */

/** Chance of a place beyond the size of t. */
export const lineTip = (t: number): number => 0.5 * Math.exp(-0.5 * t * t);

/** Chance of a place beyond t; `tip` is that beyond its size, for who has it. */
export function lineTail(t: number, tip = lineTip(t)): number {
  return t < 0 ? 1 - tip : tip;
}

/** The place with this chance beyond it, between 0 and 1. */
export function lineTailPlace(chance: number): number {
  return chance < 0.5 ? Math.sqrt(-2 * Math.log(2 * chance)) : -Math.sqrt(-2 * Math.log(2 * (1 - chance)));
}

/** Density at t, likewise. */
export function lineDensity(t: number, tip = lineTip(t)): number {
  return Number.isFinite(t) ? Math.abs(t) * tip : 0;
}
