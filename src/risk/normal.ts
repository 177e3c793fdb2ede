/** The normal distribution and its folded form (the size of a normal quantity, whatever its sign). */

const root_2pi = Math.sqrt(2 * Math.PI);

/** Density of the standard normal at z. */
export function normalDensity(z: number): number {
  return Math.exp(-0.5 * z * z) / root_2pi;
}

/** Chance that a standard normal exceeds z; relative error below 1e-13 far into the upper tail. */
export function normalTail(z: number): number {
  if (z < 0) return 1 - normalTail(-z);
  return z < 3 ? 0.5 - centralPart(z) : tailFraction(z);
}

/** Chance that a standard normal stays at or below z. */
export function normalCdf(z: number): number {
  return normalTail(-z);
}

/** Chance between 0 and z by the power series φ(z)·(z + z³/3 + z⁵/15 + …), all terms of one sign. */
function centralPart(z: number): number {
  let term = z;
  let sum = z;
  for (let k = 3; term > sum * 1e-17; k += 2) {
    term *= (z * z) / k;
    sum += term;
  }
  return sum * normalDensity(z);
}

/** Laplace's continued fraction φ(z)/(z + 1/(z + 2/(z + 3/…))), evaluated from its far end; for z ≥ 3. */
function tailFraction(z: number): number {
  let below = z;
  for (let k = 90; k >= 1; k--) below = z + k / below;
  return normalDensity(z) / below;
}

/** P(|X| > limit) for X normal with this mean and sd (sd ≥ 0, limit ≥ 0, all in one unit). */
export function chanceBeyond(mean: number, sd: number, limit: number): number {
  if (sd === 0) return Math.abs(mean) > limit ? 1 : 0;
  return normalTail((limit - mean) / sd) + normalTail((limit + mean) / sd);
}

/**
 * The size that |X| stays below with probability `share`, X normal with this mean and sd: the quantile of the folded
 * normal.
 * Newton steps kept inside a bracket; relative error below 1e-12. Throws when `share` is not inside (0, 1).
 */
export function foldedQuantile(mean: number, sd: number, share: number): number {
  if (!(share > 0 && share < 1)) throw new Error('a quantile needs a share between 0 and 1');
  const m = Math.abs(mean);
  if (sd === 0) return m;
  const beyond = 1 - share;
  let low = 0;
  let high = m + sd;
  while (chanceBeyond(m, sd, high) > beyond) high += sd;
  let q = high;
  for (let step = 0; step < 100 && high - low > 1e-14 * high; step++) {
    const miss = chanceBeyond(m, sd, q) - beyond;
    if (miss > 0) low = q;
    else high = q;
    const slope = (normalDensity((q - m) / sd) + normalDensity((q + m) / sd)) / sd;
    const next = q + miss / slope;
    if (Math.abs(next - q) < 1e-13 * q) return next;
    q = next > low && next < high ? next : (low + high) / 2;
  }
  return q;
}
