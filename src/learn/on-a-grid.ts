import { knownMean, knownSpread, lnDensity, bandEnds, type Known, type Nig } from './nig.js';

/** How likely some readings are if the mean is μ and the spread σ: a logarithm, but for a constant. */
export type Likelihood = (mu: number, sigma: number) => number;

/**
 * What is believed of a mean and a spread: closed form, and readings that have none, kept as they are so that later
 * readings can join them.
 */
export interface Belief {
  readonly nig: Nig;
  readonly fixed_mean: boolean;
  readonly evidence: readonly Likelihood[];
}

/** Mean and spread as known, and the mean's natural powers where it is a logarithm. */
export interface KnownBoth {
  readonly mean: Known;
  readonly spread: Known;
  /** Of e to the power of the mean. */
  readonly exp_mean: Known;
  /** How much of the belief lies below a mean or a spread, 0 to 1. */
  readonly below: (which: 'mean' | 'spread', value: number) => number;
}

const coarse = 41;
const fine = 61;
/** What lies outside the fine grid on each side weighs less than this. */
const left_out = 2e-4;

/**
 * Mean and spread from a belief: closed form where there is nothing else, else added up on a grid that is laid twice,
 * the second time where the weight lies.
 */
export function knownOf({ nig, fixed_mean, evidence }: Belief): KnownBoth {
  const lnWeight: Likelihood = (mu, sigma) =>
    lnDensity(nig, mu, sigma, fixed_mean) + evidence.reduce((sum, one) => sum + one(mu, sigma), 0);
  const [mean, spread] = [knownMean(nig), knownSpread(nig)];
  const wide = fixed_mean ? [nig.mean] : steps(nig.mean - 12 * mean.sd, nig.mean + 12 * mean.sd, coarse);
  const first = weigh(lnWeight, wide, steps(Math.log(spread.low) - 3, Math.log(spread.high) + 3, coarse));
  const mus = fixed_mean ? wide : refined(first.mus, first.byMu, fine);
  const second = weigh(lnWeight, mus, refined(first.lnSigmas, first.bySigma, fine));
  const exp_mean = summary(second.mus, second.byMu, Math.exp);
  const below = (which: 'mean' | 'spread', value: number): number =>
    which === 'mean'
      ? shareBelow(second.mus, second.byMu, value)
      : shareBelow(second.lnSigmas, second.bySigma, Math.log(value));
  if (evidence.length === 0)
    return { mean: fixed_mean ? { ...mean, sd: 0, low: nig.mean, high: nig.mean } : mean, spread, exp_mean, below };
  return {
    mean: summary(second.mus, second.byMu, (mu) => mu),
    spread: summary(second.lnSigmas, second.bySigma, Math.exp),
    exp_mean,
    below,
  };
}

const steps = (from: number, to: number, count: number): readonly number[] =>
  Array.from({ length: count }, (_, i) => from + ((to - from) * i) / (count - 1));

interface Weighed {
  readonly mus: readonly number[];
  readonly lnSigmas: readonly number[];
  /** Weights that add up to one. */
  readonly byMu: readonly number[];
  readonly bySigma: readonly number[];
}

function weigh(lnWeight: Likelihood, mus: readonly number[], lnSigmas: readonly number[]): Weighed {
  const table = lnSigmas.map((lnSigma) => {
    const sigma = Math.exp(lnSigma);
    return mus.map((mu) => lnWeight(mu, sigma));
  });
  const most = Math.max(...table.map((row) => Math.max(...row)));
  const weights = table.map((row) => row.map((value) => Math.exp(value - most)));
  const total = weights.reduce((sum, row) => sum + row.reduce((a, b) => a + b, 0), 0);
  return {
    mus,
    lnSigmas,
    byMu: mus.map((_, i) => weights.reduce((sum, row) => sum + row[i]!, 0) / total),
    bySigma: weights.map((row) => row.reduce((a, b) => a + b, 0) / total),
  };
}

/** Even steps over the part of a coarse grid that carries weight, one coarse step wider on each side. */
function refined(at: readonly number[], weights: readonly number[], count: number): readonly number[] {
  const step = at[1]! - at[0]!;
  const first = weights.findIndex((weight) => weight > left_out);
  const last = weights.length - 1 - [...weights].reverse().findIndex((weight) => weight > left_out);
  return steps(at[first]! - step, at[last]! + step, count);
}

/**
 * Mean, sd and band of a function of what the grid runs over; the share below grows evenly from the middle of one cell
 * to the next.
 */
function summary(at: readonly number[], weights: readonly number[], of: (x: number) => number): Known {
  const values = at.map(of);
  const mean = values.reduce((sum, value, i) => sum + value * weights[i]!, 0);
  const sd = Math.sqrt(values.reduce((sum, value, i) => sum + (value - mean) ** 2 * weights[i]!, 0));
  if (at.length === 1) return { mean, sd: 0, low: mean, high: mean };
  const [low, high] = bandEnds.map((share) => of(shareOnGrid(at, weights, share))) as [number, number];
  return { mean, sd, low, high };
}

/** Where the weights reach a share. */
function shareOnGrid(at: readonly number[], weights: readonly number[], share: number): number {
  const step = at[1]! - at[0]!;
  let below = 0;
  for (let i = 0; i < at.length; i++) {
    const weight = weights[i]!;
    if (below + weight >= share) return at[i]! - step / 2 + (step * (share - below)) / weight;
    below += weight;
  }
  return at.at(-1)! + step / 2;
}

/** Share of the weights below a value. */
function shareBelow(at: readonly number[], weights: readonly number[], value: number): number {
  if (at.length === 1) return value < at[0]! ? 0 : 1;
  const step = at[1]! - at[0]!;
  return weights.reduce((sum, weight, i) => sum + weight * Math.min(1, Math.max(0, (value - at[i]!) / step + 0.5)), 0);
}
