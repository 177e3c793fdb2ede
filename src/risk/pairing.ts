import type { Normal } from '../shelf/shelf.js';

/**
 * Correlation of curvature between any two of `plies` boards in one bar, given the correlation between two of them
 * (−1..1).
 * Three or four boards cannot all oppose each other by 0.8 (a valid correlation is never below −1/(n−1)), so a negative
 * one is
 * shared out as ρ/(n−1): the same fraction of the variance of their sum is left as with two boards.
 */
export function plyCorrelation(ofTwo: number, plies: number): number {
  return ofTwo < 0 && plies > 1 ? ofTwo / (plies - 1) : ofTwo;
}

/** The natural warp of a bar's boards added up: mean, and variance by where it comes from. Independent parts. */
export interface PlySum {
  readonly mean: number;
  /** From not knowing which boards will be chosen. */
  readonly chosen_var: number;
  /** From the reading error of measured boards. */
  readonly reading_var: number;
  /** From drying after they were chosen. */
  readonly drying_var: number;
}

/** What is known of the boards of one bar for one kind of warp; all numbers in the unit of that warp. */
export interface PlyKnowledge {
  /** Spread of one board as chosen. */
  readonly chosen: Normal;
  /** What drying adds to each board, independent of what it was. */
  readonly drying: Normal;
  /** One entry per ply: the reading, or null when it was not measured. */
  readonly readings: readonly (number | null)[];
  readonly reading_sd: number;
  /** Between any two boards as chosen, see `plyCorrelation`. */
  readonly correlation: number;
}

/**
 * Mean and variance of the sum over the plies. A measured board is its reading ± reading error; the boards paired to it
 * follow
 * the pairing (a board chosen to oppose a measured one is expected to oppose it): the linear regression of equally
 * correlated normals.
 */
export function sumPlies(known: PlyKnowledge): PlySum {
  const { chosen, drying, readings, reading_sd, correlation: rho } = known;
  const n = readings.length;
  let k = 0;
  let measured_sum = 0;
  for (const reading of readings) {
    if (reading === null) continue;
    k += 1;
    measured_sum += reading;
  }
  const rest = n - k;
  const follows = k === 0 || rest === 0 ? 0 : rho / (1 + (k - 1) * rho);
  const rest_rho = rho * (1 - k * follows);
  const pull = 1 + rest * follows;
  return {
    mean: measured_sum * pull + rest * chosen.mean * (1 - k * follows) + n * drying.mean,
    chosen_var: chosen.sd ** 2 * (rest * (1 - rho) + rest ** 2 * rest_rho),
    reading_var: k * (reading_sd * pull) ** 2,
    drying_var: n * drying.sd ** 2,
  };
}
