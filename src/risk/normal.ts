/** The normal distribution and its folded form (the size of a normal quantity, whatever its sign). */

import { rememberedBy } from '../base/remembered.js';

const root_2pi = Math.sqrt(2 * Math.PI);

/** Density of the standard normal at z. */
export function normalDensity(z: number): number {
  return Math.exp(-0.5 * z * z) / root_2pi;
}

/**
 * Chance that a standard normal exceeds z; relative error below 1e-13 far into the upper tail. `density` is that at z,
 * for who has it.
 */
export function normalTail(z: number, density = normalDensity(z)): number {
  if (z < 0) return 1 - normalTail(-z, density);
  return z < 3 ? 0.5 - centralSum(z) * density : density / tailFraction(z);
}

/** Chance that a standard normal stays at or below z. */
export function normalCdf(z: number): number {
  return normalTail(-z);
}

/** Chance between 0 and z over φ(z) by the power series z + z³/3 + z⁵/15 + …, all terms of one sign. */
function centralSum(z: number): number {
  let term = z;
  let sum = z;
  for (let k = 3; term > sum * 1e-17; k += 2) {
    term *= (z * z) / k;
    sum += term;
  }
  return sum;
}

/** φ(z) over the tail by Laplace's continued fraction z + 1/(z + 2/(z + 3/…)), evaluated from its far end; for z ≥ 3. */
function tailFraction(z: number): number {
  let below = z;
  for (let k = 90; k >= 1; k--) below = z + k / below;
  return below;
}

/** P(|X| > limit) for X normal with this mean and sd (sd ≥ 0, limit ≥ 0, all in one unit). */
export function chanceBeyond(mean: number, sd: number, limit: number): number {
  if (sd === 0) return Math.abs(mean) > limit ? 1 : 0;
  return normalTail((limit - mean) / sd) + normalTail((limit + mean) / sd);
}

/** How likely a size is passed, and the density there. */
export interface Exceeding {
  readonly chance: number;
  readonly density: number;
}

/**
 * The size that is passed with the chance `beyond`, the chance falling as the size grows. Newton steps from `first`, of
 * at most `step`, kept inside a bracket that begins at `least`; ends where a step is below `near` of the size.
 */
export function passedSize(
  beyond: number,
  at: (size: number) => Exceeding,
  { least, first, step, near }: Readonly<Record<'least' | 'first' | 'step' | 'near', number>>,
): number {
  let low = least;
  let high = Infinity;
  let size = first;
  for (let tries = 0; tries < 200; tries++) {
    const { chance, density } = at(size);
    const miss = chance - beyond;
    if (miss > 0) low = size;
    else high = size;
    const next = size + Math.min(miss / density, step);
    if (Math.abs(next - size) <= near * size) return Math.max(next, least);
    if (high - low <= near * size) return high;
    size = next > low && next < high ? next : high < Infinity ? (low + high) / 2 : size + step;
  }
  return size;
}

/**
 * The size that |X| stays below with probability `share`, X normal with this mean and sd: the quantile of the folded
 * normal; relative error below 1e-12. Throws when `share` is not inside (0, 1).
 */
export function foldedQuantile(mean: number, sd: number, share: number): number {
  if (!(share > 0 && share < 1)) throw new Error('a quantile needs a share between 0 and 1');
  const m = Math.abs(mean);
  if (m === 0) return sd * evenQuantile(share);
  if (sd === 0) return m;
  return quantile(m, sd, share);
}

/** Shares kept. */
const most_shares = 100;

/** The same of a standard normal: of any other without a mean it is that many standard deviations. */
const evenQuantile = rememberedBy(String, (share: number) => quantile(0, 1, share), most_shares);

function quantile(m: number, sd: number, share: number): number {
  const beyond = (q: number): Exceeding => {
    const near = normalDensity((q - m) / sd);
    const chance = normalTail((q - m) / sd, near);
    const far = normalDensity((q + m) / sd);
    return { chance: chance + normalTail((q + m) / sd, far), density: (near + far) / sd };
  };
  return passedSize(1 - share, beyond, { least: 0, first: m + sd, step: sd, near: 1e-13 });
}
