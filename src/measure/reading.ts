/** What a bench reading says: the number, its band, how it was got and the lines to paste. */
export interface Reading {
  /** The formula in words, with the numbers put in. */
  readonly words: string;
  readonly value: number;
  /** Lowest and highest value the reading errors allow. */
  readonly low: number;
  readonly high: number;
  readonly unit: string;
  /** YAML to paste into the plan or the shelf. */
  readonly paste: string;
  /** What to keep in mind, most useful first; may be empty. */
  readonly notes: readonly string[];
}

/**
 * A number written with a given count of significant digits, never in powers of ten, without trailing zeros after the
 * point.
 */
export function digits(value: number, count = 3): string {
  if (value === 0) return '0';
  const decimals = Math.max(0, count - 1 - Math.floor(Math.log10(Math.abs(value))));
  const text = value.toFixed(Math.min(decimals, 12));
  return text.includes('.') ? text.replace(/0+$/, '').replace(/\.$/, '') : text;
}

/**
 * Combines independent errors: the value's change when each input moves by its own error, as the root of the sum of
 * squares.
 */
export function combinedError(value: number, moved: readonly number[]): number {
  return Math.sqrt(moved.reduce((sum, other) => sum + (other - value) ** 2, 0));
}
