/** One independent part of a sum, normal. */
export interface Part {
  readonly mean: number;
  readonly variance: number;
}

/**
 * What each of independent normal parts is expected to be, once their sum is known: mean + variance/total variance ×
 * (sum − total mean).
 * The expected parts add up to the sum. Throws RangeError when nothing varies, because then no part can give way.
 */
export function expectedParts(parts: readonly Part[], sum: number): readonly number[] {
  const variance = parts.reduce((total, part) => total + part.variance, 0);
  if (!(variance > 0)) throw new RangeError('a sum of parts that do not vary cannot be shared out');
  const surplus = sum - parts.reduce((total, part) => total + part.mean, 0);
  return parts.map((part) => part.mean + (part.variance / variance) * surplus);
}
