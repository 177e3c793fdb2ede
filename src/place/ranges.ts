import type { Option } from './problem.js';

/** One option with its effects on the measures that matter, close together. */
export interface Quick {
  readonly option: Option;
  readonly mean: Float64Array;
  readonly variance: Float64Array;
}

/** Means and variances added up. */
export interface Sums {
  readonly mean: Float64Array;
  readonly variance: Float64Array;
}

/** Means and variances between which something lies, for each measure. */
export interface Range {
  readonly low: Float64Array;
  readonly high: Float64Array;
  readonly least: Float64Array;
  readonly most: Float64Array;
}

/** A range of the given width, nothing in it yet. */
export const emptyRange = (width: number): Range => ({
  low: new Float64Array(width),
  high: new Float64Array(width),
  least: new Float64Array(width),
  most: new Float64Array(width),
});

/** Adds two ranges up. */
export function addRange(a: Range, b: Range, into: Range): void {
  for (let j = 0; j < a.low.length; j++) {
    into.low[j] = (a.low[j] as number) + (b.low[j] as number);
    into.high[j] = (a.high[j] as number) + (b.high[j] as number);
    into.least[j] = (a.least[j] as number) + (b.least[j] as number);
    into.most[j] = (a.most[j] as number) + (b.most[j] as number);
  }
}

/** The range of all that a slot may take out of a list. */
export function rangeOf(options: readonly Quick[], width: number): Range {
  const from = (of: (one: Quick) => Float64Array, pick: (...all: number[]) => number): Float64Array =>
    Float64Array.from({ length: width }, (_, j) => pick(...options.map((one) => of(one)[j] as number)));
  return {
    low: from(({ mean }) => mean, Math.min),
    high: from(({ mean }) => mean, Math.max),
    least: from(({ variance }) => variance, Math.min),
    most: from(({ variance }) => variance, Math.max),
  };
}

/** Ranges of the slots from each one on, added up; the last is empty. */
export function fromEachOn(ranges: readonly Range[], width: number): readonly Range[] {
  const sums = Array.from({ length: ranges.length + 1 }, () => emptyRange(width));
  for (let k = ranges.length - 1; k >= 0; k--) addRange(ranges[k] as Range, sums[k + 1] as Range, sums[k] as Range);
  return sums;
}
