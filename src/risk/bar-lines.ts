import type { BarName } from '../base/names.js';
import { fewShapes } from './few-shapes.js';
import type { WarpTerm } from './terms.js';

/**
 * A bar's out-of-plane departure along its stations, ready for many draws: the mean line plus few shapes, each times a
 * mix of the draws.
 */
export interface BarLines {
  readonly stations: number;
  readonly rank: number;
  /** Even: one draw too many does no harm (its mixing is zero), and pairs are quicker. */
  readonly columns: number;
  /** rank × columns, row by row: how much of each shape each draw brings. */
  readonly mixing: Float64Array;
  /** Numbers per station in `heights`. */
  readonly row: number;
  /** Per station: its mean, then its height in each shape. */
  readonly heights: Float64Array;
  /** Largest magnitude along the bar of the mean and of each shape. */
  readonly peaks: Float64Array;
  /** The draws that bring most of the leading shape, and how much of it each brings. */
  readonly few: Int32Array;
  readonly shares: Float64Array;
  /** The most that all other draws and shapes can add, per length of the draw (as a vector). */
  readonly rest: number;
  /** Scratch: how much of each shape the present draw brings. */
  readonly much: Float64Array;
}

/** Rows hold at least so many shapes (missing ones are flat), so that three need no inner loop. */
const least_shapes = 3;
/** Draws that bring less than this of the leading shape, beside the one that brings most, are only bounded. */
const little = 0.03;

/** Prepares one bar. `active` are the terms that vary; each draw is one standard deviation of its term. */
export function barLines(terms: readonly WarpTerm[], active: readonly WarpTerm[], bar: BarName): BarLines {
  const stations = terms[0]?.bow[bar].length ?? 0;
  const columns = evenUp(active.length);
  const { rank, shapes, coefficients } = fewShapes(
    active.map((term) => term.bow[bar].map((value) => value * term.sd_per_m)),
  );
  const row = Math.max(rank, least_shapes) + 1;
  const heights = new Float64Array(stations * row);
  const peaks = new Float64Array(row);
  for (let s = 0; s < stations; s++) {
    const mean = terms.reduce((sum, term) => sum + (term.bow[bar][s] as number) * term.mean_per_m, 0);
    for (let k = 0; k <= rank; k++) {
      const height = k === 0 ? mean : (shapes[(k - 1) * stations + s] as number);
      heights[s * row + k] = height;
      peaks[k] = Math.max(peaks[k] as number, Math.abs(height));
    }
  }
  const mixing = new Float64Array(rank * columns);
  for (let k = 0; k < rank; k++)
    mixing.set(coefficients.subarray(k * active.length, (k + 1) * active.length), k * columns);
  const leading = mixing.subarray(0, rank === 0 ? 0 : columns);
  const most = leading.reduce((largest, share) => Math.max(largest, Math.abs(share)), 0);
  const few = Int32Array.from(leading.keys()).filter((j) => Math.abs(leading[j] as number) > little * most);
  const shares = Float64Array.from(few, (j) => leading[j] as number);
  let rest = (peaks[1] as number) * lengthOf(leading.filter((share) => Math.abs(share) <= little * most));
  for (let k = 1; k < rank; k++)
    rest += (peaks[k + 1] as number) * lengthOf(mixing.subarray(k * columns, (k + 1) * columns));
  return { stations, rank, columns, mixing, row, heights, peaks, few, shares, rest, much: new Float64Array(row - 1) };
}

/**
 * A size in mm that no station of the bar can pass for one frame's draws (`columns` of them, from `first` on), from the
 * few draws that bring most of its leading shape. `length` is that of the draws as a vector.
 */
export function roughSize(
  { few, shares, peaks, rest }: BarLines,
  draws: Float64Array,
  first: number,
  length: number,
): number {
  let mix = 0;
  for (let c = 0; c < few.length; c++) mix += (shares[c] as number) * (draws[first + (few[c] as number)] as number);
  return (peaks[0] as number) + Math.abs(mix) * (peaks[1] as number) + rest * length;
}

/**
 * Mixes one frame's draws into shapes, kept for `departureAt` and `largestDeparture`, and gives a size in mm that no
 * station of the bar can pass.
 */
export function mixShapes(
  { rank, columns, peaks, mixing, much }: BarLines,
  draws: Float64Array,
  first: number,
): number {
  let bound = peaks[0] as number;
  for (let k = 0, at = 0; k < rank; k++) {
    let even = 0;
    let odd = 0;
    for (let j = first; j < first + columns; j += 2, at += 2) {
      even += (mixing[at] as number) * (draws[j] as number);
      odd += (mixing[at + 1] as number) * (draws[j + 1] as number);
    }
    much[k] = even + odd;
    bound += Math.abs(even + odd) * (peaks[k + 1] as number);
  }
  return bound;
}

/** The largest magnitude of the departure along the bar, mm, for the draws last mixed. */
export function largestDeparture({ stations, rank, row, heights, much }: BarLines): number {
  const a = much[0] as number;
  const b = much[1] as number;
  const c = much[2] as number;
  let largest = 0;
  for (let s = 0, at = 0; s < stations; s++, at += row) {
    let departure =
      (heights[at] as number) +
      (heights[at + 1] as number) * a +
      (heights[at + 2] as number) * b +
      (heights[at + 3] as number) * c;
    for (let k = least_shapes; k < rank; k++) departure += (heights[at + 1 + k] as number) * (much[k] as number);
    const size = Math.abs(departure);
    if (size > largest) largest = size;
  }
  return largest;
}

/** The magnitude of the departure at one station, mm, for the draws last mixed. */
export function departureAt({ rank, row, heights, much }: BarLines, station: number): number {
  let departure = heights[station * row] as number;
  for (let k = 0; k < rank; k++) departure += (heights[station * row + 1 + k] as number) * (much[k] as number);
  return Math.abs(departure);
}

const lengthOf = (values: Float64Array): number => Math.sqrt(values.reduce((sum, value) => sum + value * value, 0));

/** Draws come in pairs. */
export function evenUp(count: number): number {
  return count + (count % 2);
}
