import { normalTail } from '../risk/normal.js';
import { betaShare, gammaShare, lnGamma, solveRising } from './special.js';

/** Chance that exactly k of n things happen, each by itself with chance p. */
export function binomial(n: number, k: number, p: number): number {
  if (p <= 0) return k === 0 ? 1 : 0;
  if (p >= 1) return k === n ? 1 : 0;
  return Math.exp(lnGamma(n + 1) - lnGamma(k + 1) - lnGamma(n - k + 1) + k * Math.log(p) + (n - k) * Math.log1p(-p));
}

/** Chance of at least k of n, each by itself with chance p; exact. */
export function chanceOfAtLeast(n: number, k: number, p: number): number {
  let sum = 0;
  for (let i = Math.max(0, k); i <= n; i++) sum += binomial(n, i, p);
  return Math.min(1, sum);
}

/**
 * Chance of a count at least as unlikely as k, on either side: all outcomes no likelier than k added up (the exact
 * two-sided binomial test).
 */
export function chanceAsOdd(n: number, k: number, p: number): number {
  const own = binomial(n, k, p) * (1 + 1e-9);
  let sum = 0;
  for (let i = 0; i <= n; i++) if (binomial(n, i, p) <= own) sum += binomial(n, i, p);
  return Math.min(1, sum);
}

/**
 * Fewest and most of n that luck allows in nineteen of twenty cases, each by itself with chance p: at most a fortieth
 * lies beyond on either side.
 */
export function luckBand(n: number, p: number, share = 0.95): readonly [number, number] {
  const beyond = (1 - share) / 2;
  let low = 0;
  while (low < n && 1 - chanceOfAtLeast(n, low + 1, p) <= beyond) low++;
  let high = n;
  while (high > 0 && chanceOfAtLeast(n, high, p) <= beyond) high--;
  return [low, high];
}

/** Share of Student's t with `df` degrees of freedom below t. */
export function studentShare(df: number, t: number): number {
  const tail = betaShare(df / 2, 0.5, df / (df + t * t)) / 2;
  return t > 0 ? 1 - tail : tail;
}

/** Where Student's t reaches a share. */
export function studentQuantile(df: number, share: number): number {
  if (share < 0.5) return -studentQuantile(df, 1 - share);
  let high = 2;
  while (studentShare(df, high) < share) high *= 2;
  return solveRising((t) => studentShare(df, t), share, 0, high);
}

/** Share of chi-square with `df` degrees of freedom below x. */
export const chiSquareShare = (df: number, x: number): number => gammaShare(df / 2, x / 2);

/** Where a gamma distribution of shape `a` and scale 1 reaches a share. */
export function gammaQuantile(a: number, share: number): number {
  let high = a + 1;
  while (gammaShare(a, high) < share) high *= 2;
  return solveRising((x) => gammaShare(a, x), share, 0, high);
}

/**
 * How far from the middle a standard normal lies when a share of it lies below; shares are kept within 1e-12 of the
 * ends.
 */
export function normalQuantile(share: number): number {
  const kept = Math.min(1 - 1e-12, Math.max(1e-12, share));
  return solveRising((z) => 1 - normalTail(z), kept, -8, 8);
}

/**
 * Holm's steps (1979, from memory): which of several comparisons count as alarms so that the chance of any false one
 * stays at most `level`, however the
 * comparisons hang together. Takes the chance of each, gives the same chances made fit for that: below `level` is an
 * alarm.
 */
export function holm(chances: readonly number[]): readonly number[] {
  const order = chances.map((chance, i) => ({ chance, i })).sort((a, b) => a.chance - b.chance);
  const fit: number[] = new Array<number>(chances.length).fill(1);
  let most = 0;
  order.forEach(({ chance, i }, rank) => {
    most = Math.max(most, Math.min(1, chance * (chances.length - rank)));
    fit[i] = most;
  });
  return fit;
}
