import { barNames, type BarName } from '../base/names.js';
import { barLines, departureAt, largestDeparture, mixShapes, roughSize, type BarLines } from './bar-lines.js';
import type { DrawnBlock } from './drawn-frames.js';
import { barRisk, nine_in_ten, type StationRisk } from './closed-form.js';
import { foldedQuantile } from './normal.js';
import { sampleQuantile, type Estimate } from './order-statistics.js';
import type { WarpTerm } from './terms.js';

/** Out-of-plane departure of one bar over a sample of frames. */
export interface BowSample {
  /** P90 of the largest departure anywhere along the bar, as the sample has it. */
  readonly p90_mm: Estimate;
  /** P90 at the worst station alone, as the same sample has it. */
  readonly station_p90_mm: Estimate;
  /**
   * P90 of the largest departure, steadied: the closed form of the worst station plus what the sample adds to it. The
   * chance of the
   * draw is in both sampled figures and drops out, so like bars get like answers; never below the closed form.
   */
  readonly steadied_p90_mm: number;
}

/** One bar while it is sampled. */
export interface SampledBar {
  readonly name: BarName;
  readonly lines: BarLines;
  readonly worst: StationRisk;
  /**
   * Departures below this are not worked out. The largest is never less than that at the worst station, so its P90 lies
   * above this percentile of the station, so far below P90 that chance cannot bring a sample's there.
   */
  readonly hopeless_mm: number;
  /**
   * Departures worked out so far, anywhere along the bar and at its worst station; all others stayed below
   * `hopeless_mm`.
   */
  readonly largest: Float64Array;
  readonly there: Float64Array;
  kept: number;
}

/** Standard deviations of a sample's share of frames between what is worked out and P90. */
const out_of_reach = 8;
/** With fewer samples chance might still bring a departure from there up to P90, and every one is worked out. */
const enough_to_skip = 4000;

/** Prepares the four bars for a sample of this size; `active` are the terms that vary. */
export function sampledBars(
  terms: readonly WarpTerm[],
  active: readonly WarpTerm[],
  samples: number,
): readonly SampledBar[] {
  const risk = barRisk(terms, 'bow');
  const hopeless_share = nine_in_ten - out_of_reach * Math.sqrt((nine_in_ten * (1 - nine_in_ten)) / samples);
  return barNames.map((name) => {
    const worst = risk[name];
    const hopeless_mm =
      samples < enough_to_skip || worst.sd === 0 ? 0 : foldedQuantile(worst.mean, worst.sd, hopeless_share);
    return {
      name,
      lines: barLines(terms, active, name),
      worst,
      hopeless_mm,
      largest: new Float64Array(samples),
      there: new Float64Array(samples),
      kept: 0,
    };
  });
}

/** A block of imagined frames, and whether a bar is already over the limit in each (1). */
export interface Block extends DrawnBlock {
  readonly over: Uint8Array;
}

/**
 * Works out this bar in the first `count` frames of a block: keeps the departures that can matter for P90 and marks the
 * frames it puts over the limit.
 */
export function sampleBar(bar: SampledBar, { draws, lengths, over }: Block, count: number, limit_mm: number): void {
  const { lines, hopeless_mm } = bar;
  const open_floor_mm = Math.min(hopeless_mm, limit_mm);
  for (let n = 0; n < count; n++) {
    const floor_mm = over[n] === 1 ? hopeless_mm : open_floor_mm;
    if (roughSize(lines, draws, n * lines.columns, lengths[n] as number) < floor_mm) continue;
    const bound_mm = mixShapes(lines, draws, n * lines.columns);
    if (bound_mm < floor_mm) continue;
    const there = departureAt(lines, bar.worst.station);
    if (there > limit_mm) over[n] = 1;
    if (over[n] === 1 && bound_mm < hopeless_mm) continue;
    const bow = largestDeparture(lines);
    if (bow > limit_mm) over[n] = 1;
    bar.largest[bar.kept] = bow;
    bar.there[bar.kept++] = there;
  }
}

/** What the sample of `samples` frames showed of this bar. */
export function bowSample({ worst, largest, there, kept }: SampledBar, samples: number): BowSample {
  const p90_mm = sampleQuantile(largest.subarray(0, kept), nine_in_ten, samples - kept);
  const station_p90_mm = sampleQuantile(there.subarray(0, kept), nine_in_ten, samples - kept);
  return { p90_mm, station_p90_mm, steadied_p90_mm: worst.p90_mm + (p90_mm.value - station_p90_mm.value) };
}
