import { gammaQuantile, studentQuantile } from './chances.js';
import { lnGamma } from './special.js';

/**
 * What is believed of the mean μ and spread σ of something normal, before or after readings: the normal–inverse-gamma
 * distribution.
 * σ² is inverse gamma (shape α, scale β); given σ, μ is normal about `mean` with variance σ²/`worth`. Source: any text
 * on Bayesian statistics (from memory).
 */
export interface Nig {
  readonly mean: number;
  /** How many readings the mean is worth. */
  readonly worth: number;
  readonly shape: number;
  readonly scale: number;
}

/** A number that is not known exactly: expected value, standard deviation, and the ends of the middle nine tenths. */
export interface Known {
  readonly mean: number;
  readonly sd: number;
  readonly low: number;
  readonly high: number;
}

/** How many boards (corners, frames) a number of the shelf that nobody measured counts as (`proposal`). */
export const proposal_worth = 4;

/** Mean of 1/√X, X gamma with this shape and scale 1: what σ is expected to be is √scale times this. */
const meanOfRoot = (shape: number): number => Math.exp(lnGamma(shape - 0.5) - lnGamma(shape));

/**
 * The shelf's mean and spread as a belief worth so many readings: μ and σ are expected to be just these. Throws
 * RangeError for a spread not above zero or a worth not above 2.
 */
export function believe(mean: number, sd: number, worth: number = proposal_worth): Nig {
  if (!(sd > 0 && worth > 2)) throw new RangeError('a belief needs a spread above zero and a worth above two readings');
  const shape = worth / 2;
  return { mean, worth, shape, scale: (sd / meanOfRoot(shape)) ** 2 };
}

/**
 * The belief after readings; closed form. With `fixedMean` the mean is known and stays, and only the spread is learned.
 */
export function learnFrom(prior: Nig, readings: readonly number[], fixedMean = false): Nig {
  const n = readings.length;
  if (n === 0) return prior;
  if (fixedMean)
    return {
      ...prior,
      shape: prior.shape + n / 2,
      scale: prior.scale + readings.reduce((sum, x) => sum + (x - prior.mean) ** 2, 0) / 2,
    };
  const middle = readings.reduce((sum, x) => sum + x, 0) / n;
  const around = readings.reduce((sum, x) => sum + (x - middle) ** 2, 0);
  const worth = prior.worth + n;
  return {
    mean: (prior.worth * prior.mean + n * middle) / worth,
    worth,
    shape: prior.shape + n / 2,
    scale: prior.scale + around / 2 + (prior.worth * n * (middle - prior.mean) ** 2) / (2 * worth),
  };
}

/** Ends of the middle share that is told as the band. */
export const bandEnds = [0.05, 0.95] as const;

/** What is known of the spread σ. */
export function knownSpread({ shape, scale }: Nig): Known {
  const mean = Math.sqrt(scale) * meanOfRoot(shape);
  const [low, high] = bandEnds.map((share) => Math.sqrt(scale / gammaQuantile(shape, 1 - share))) as [number, number];
  return { mean, sd: Math.sqrt(Math.max(0, scale / (shape - 1) - mean ** 2)), low, high };
}

/** What is known of the mean μ: Student's t. */
export function knownMean({ mean, worth, shape, scale }: Nig): Known {
  const df = 2 * shape;
  const width = Math.sqrt(scale / (shape * worth));
  const reach = studentQuantile(df, bandEnds[1]) * width;
  return { mean, sd: width * Math.sqrt(df / (df - 2)), low: mean - reach, high: mean + reach };
}

/** Logarithm of the density over (μ, ln σ), but for a constant; with a fixed mean over ln σ alone. */
export function lnDensity({ mean, worth, shape, scale }: Nig, mu: number, sigma: number, fixedMean: boolean): number {
  const variance = sigma ** 2;
  const spread = -shape * Math.log(variance) - scale / variance;
  return fixedMean ? spread : spread - Math.log(sigma) - (worth * (mu - mean) ** 2) / (2 * variance);
}
