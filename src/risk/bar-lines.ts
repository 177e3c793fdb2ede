import type { BarName } from '../base/names.js';
import { bowDepartures } from './departures.js';
import { fewShapes } from './few-shapes.js';
import type { WarpTerm } from './terms.js';

/**
 * A bar's out-of-plane departure over frames built alike: at each station a mean plus a few heights, each times a
 * standard normal of its own. The first is the one that the widest station follows alone; the others bring little.
 */
export interface BarLines {
  /** How many normals, two at least: what is missing is flat. */
  readonly rank: number;
  /** Station by station where anything varies: its mean, then its height in each normal, mm. */
  readonly heights: ArrayLike<number>;
  /** The largest mean where nothing varies, mm. */
  readonly still_mm: number;
  /** rank × terms, row by row: how each normal is mixed from the terms, one standard deviation of each. */
  readonly mixing: ArrayLike<number>;
}

/** Prepares one bar. */
export function barLines(terms: readonly WarpTerm[], bar: BarName): BarLines {
  const columns = terms.length;
  const { means, spreads } = bowDepartures(terms)[bar];
  const stations = means.length;
  const { rank: few, shapes, coefficients } = fewShapes(spreads, columns);
  const rank = Math.max(few, 2);
  const heights: number[] = [];
  let still_mm = 0;
  for (let s = 0; s < stations; s++) {
    const mean = means[s] as number;
    let varies = false;
    for (let k = 0; k < few; k++) varies ||= coefficients[k * stations + s] !== 0;
    if (varies) {
      heights.push(mean);
      for (let k = 0; k < rank; k++) heights.push(k < few ? (coefficients[k * stations + s] as number) : 0);
    } else still_mm = Math.max(still_mm, Math.abs(mean));
  }
  const mixing = [...shapes];
  while (mixing.length < rank * columns) mixing.push(0);
  return { rank, heights, still_mm, mixing };
}

/** Where a line through the space of normals leaves the frames whose bar stays within a limit. */
export interface Crossing {
  /** The bar stays within for places between these, in standard deviations from the middle of the line. */
  low: number;
  high: number;
  /** What one standard deviation along the line moves the station that decides, mm. */
  low_mm: number;
  high_mm: number;
}

/**
 * Follows a line: the first two normals run along a direction of length one (`line` at `first` and after it), the others
 * stay at the numbers that follow there. Every station's departure is straight along it, so that the frames within
 * `limit_mm` lie between two ends.
 */
export function crossLine(
  { rank, heights }: BarLines,
  limit_mm: number,
  line: Float64Array,
  first: number,
  into: Crossing,
): void {
  const along = line[first] as number;
  const across = line[first + 1] as number;
  let low = -Infinity;
  let high = Infinity;
  let low_mm = 1;
  let high_mm = 1;
  for (let at = 0; at < heights.length; at += rank + 1) {
    let middle = heights[at] as number;
    for (let k = 2; k < rank; k++) middle += (heights[at + 1 + k] as number) * (line[first + k] as number);
    const slope = (heights[at + 1] as number) * along + (heights[at + 2] as number) * across;
    const size = Math.abs(slope);
    if (slope < 0) middle = -middle;
    const per_mm = 1 / size;
    const up = (limit_mm - middle) * per_mm;
    const down = (-limit_mm - middle) * per_mm;
    if (up < high) {
      high = up;
      high_mm = size;
    }
    if (down > low) {
      low = down;
      low_mm = size;
    }
  }
  into.low = low;
  into.high = high;
  into.low_mm = low_mm;
  into.high_mm = high_mm;
}

/** Whether the bar departs by more than the limit anywhere, for these normals. */
export function passes({ rank, heights, still_mm }: BarLines, normals: Float64Array, limit_mm: number): boolean {
  if (still_mm > limit_mm) return true;
  for (let at = 0; at < heights.length; at += rank + 1) {
    let departure = heights[at] as number;
    for (let k = 0; k < rank; k++) departure += (heights[at + 1 + k] as number) * (normals[k] as number);
    if (Math.abs(departure) > limit_mm) return true;
  }
  return false;
}

/** The bar's normals for one frame's draws, one for each term. */
export function mixNormals({ rank, mixing }: BarLines, draws: Float64Array, columns: number, into: Float64Array): void {
  for (let k = 0, at = 0; k < rank; k++) {
    let sum = 0;
    for (let j = 0; j < columns; j++, at++) sum += (mixing[at] as number) * (draws[j] as number);
    into[k] = sum;
  }
}
