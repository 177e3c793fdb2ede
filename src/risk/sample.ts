import { barNames, type BarName } from '../base/names.js';
import { barLines, departureAt, evenUp, largestDeparture, mixShapes, type BarLines } from './bar-lines.js';
import { barRisk, nine_in_ten, type StationRisk } from './closed-form.js';
import { foldedQuantile } from './normal.js';
import { normalDeviates } from './normal-deviates.js';
import { sampleMoments, sampleQuantile, sampleShare, type Estimate } from './order-statistics.js';
import type { WarpTerm } from './terms.js';

/** How many frames to imagine, from which seed, and what counts as too much. */
export interface SampleSettings {
  readonly seed: number;
  /** At least 1. */
  readonly samples: number;
  readonly corner_lift_limit_mm: number;
  readonly bar_bow_limit_mm: number;
}

/** What a seeded sample of frames showed, every figure with its standard error. */
export interface WarpSample {
  readonly samples: number;
  readonly lift_mean_mm: Estimate;
  readonly lift_sd_mm: Estimate;
  /** Of the magnitude. */
  readonly lift_p90_mm: Estimate;
  /** Share of frames whose lift is beyond the limit. */
  readonly lift_chance: Estimate;
  readonly bow: Readonly<Record<BarName, BowSample>>;
  /** Share of frames with at least one bar beyond the limit anywhere along it. */
  readonly any_bow_chance: Estimate;
}

/** Out-of-plane departure of one bar. */
export interface BowSample {
  /** P90 of the largest departure anywhere along the bar, as the sample has it. */
  readonly p90_mm: Estimate;
  /** P90 at the worst station alone, as the same sample has it. */
  readonly station_p90_mm: Estimate;
  /**
   * P90 of the largest departure, steadied: the closed form of the worst station plus what the sample adds to it. The chance of the
   * draw is in both sampled figures and drops out, so like bars get like answers; never below the closed form.
   */
  readonly steadied_p90_mm: number;
}

/** Departures that stay below this quantile of the worst station cannot reach P90 and are not worked out. */
const hopeless_share = 0.85;
/** With fewer samples chance might still bring one up there, and every departure is worked out. */
const enough_to_skip = 4000;

/**
 * Imagines `samples` frames: draws every bar's natural warp, adds up what it does, keeps the lift and each bar's largest out-of-plane departure.
 * Boards are not drawn one by one: a bar's warp is a sum of jointly normal boards, hence exactly normal itself, and the pairing of its
 * plies is already in that sum. Same terms, seed and number give the same answer.
 */
export function sampleWarp(terms: readonly WarpTerm[], settings: SampleSettings): WarpSample {
  const { samples, seed, corner_lift_limit_mm, bar_bow_limit_mm } = settings;
  const active = terms.filter(varies);
  const columns = active.length;
  const lift_mean = terms.reduce((sum, term) => sum + term.lift * term.mean_per_m, 0);
  const lift_by = Float64Array.from(active, (term) => term.lift * term.sd_per_m);
  const bars = sampledBars(terms, active, samples);
  const lifts = new Float64Array(samples);
  const draw = new Float64Array(evenUp(columns));
  const fill = normalDeviates(seed);
  let lifted = 0;
  let bowed = 0;
  for (let n = 0; n < samples; n++) {
    fill(draw);
    let lift = lift_mean;
    let square = 0;
    for (let j = 0; j < columns; j++) {
      const z = draw[j] as number;
      lift += (lift_by[j] as number) * z;
      square += z * z;
    }
    lifts[n] = lift;
    if (Math.abs(lift) > corner_lift_limit_mm) lifted++;
    const length = Math.sqrt(square);
    let over = false;
    for (let b = 0; b < bars.length; b++) {
      const bar = bars[b] as SampledBar;
      const floor_mm = over ? bar.hopeless_mm : Math.min(bar.hopeless_mm, bar_bow_limit_mm);
      const bound_mm = mixShapes(bar.lines, draw, length, floor_mm);
      if (bound_mm < floor_mm) continue;
      const there = departureAt(bar.lines, bar.worst.station);
      if (there > bar_bow_limit_mm) over = true;
      if (over && bound_mm < bar.hopeless_mm) continue;
      const bow = largestDeparture(bar.lines);
      if (bow > bar_bow_limit_mm) over = true;
      bar.largest[bar.kept] = bow;
      bar.there[bar.kept++] = there;
    }
    if (over) bowed++;
  }
  const { mean, sd } = sampleMoments(lifts);
  for (let n = 0; n < samples; n++) lifts[n] = Math.abs(lifts[n] as number);
  return {
    samples,
    lift_mean_mm: mean,
    lift_sd_mm: sd,
    lift_p90_mm: sampleQuantile(lifts, nine_in_ten),
    lift_chance: sampleShare(lifted, samples),
    bow: Object.fromEntries(bars.map((bar) => [bar.name, bowSample(bar, samples)])) as Record<BarName, BowSample>,
    any_bow_chance: sampleShare(bowed, samples),
  };
}

/** One bar while it is sampled. */
interface SampledBar {
  readonly name: BarName;
  readonly lines: BarLines;
  readonly worst: StationRisk;
  /** The largest departure is never less than that at the worst station, so its P90 lies above this 85th percentile of the station. */
  readonly hopeless_mm: number;
  /** Departures worked out so far, anywhere along the bar and at its worst station; all others stayed below `hopeless_mm`. */
  readonly largest: Float64Array;
  readonly there: Float64Array;
  kept: number;
}

function sampledBars(terms: readonly WarpTerm[], active: readonly WarpTerm[], samples: number): readonly SampledBar[] {
  const risk = barRisk(terms, 'bow');
  return barNames.map((name) => {
    const worst = risk[name];
    const hopeless_mm = samples < enough_to_skip || worst.sd === 0 ? 0 : foldedQuantile(worst.mean, worst.sd, hopeless_share);
    return { name, lines: barLines(terms, active, name), worst, hopeless_mm, largest: new Float64Array(samples), there: new Float64Array(samples), kept: 0 };
  });
}

function bowSample({ worst, largest, there, kept }: SampledBar, samples: number): BowSample {
  const p90_mm = sampleQuantile(largest.subarray(0, kept), nine_in_ten, samples - kept);
  const station_p90_mm = sampleQuantile(there.subarray(0, kept), nine_in_ten, samples - kept);
  return { p90_mm, station_p90_mm, steadied_p90_mm: worst.p90_mm + (p90_mm.value - station_p90_mm.value) };
}

function varies(term: WarpTerm): boolean {
  return term.sd_per_m > 0 && (term.lift !== 0 || barNames.some((bar) => term.bow[bar].some((value) => value !== 0)));
}
