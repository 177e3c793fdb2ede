import { barNames, type BarName } from '../base/names.js';
import { barLines, evenUp, largestDeparture, mixShapes, type BarLines } from './bar-lines.js';
import { barRisk, nine_in_ten } from './closed-form.js';
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
  /** P90, for each bar, of its largest departure anywhere along it. */
  readonly bow_p90_mm: Readonly<Record<BarName, Estimate>>;
  /** Share of frames with at least one bar beyond the limit anywhere along it. */
  readonly any_bow_chance: Estimate;
}

/** Departures whose bound is below this quantile of the worst station cannot reach P90 and are not worked out. */
const hopeless_share = 0.85;
/** With fewer samples a chance order might still matter there, and every departure is worked out. */
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
  const bars = barNames.map((bar) => barLines(terms, active, bar));
  const hopeless = hopelessBelow(terms, samples);
  const lifts = new Float64Array(samples);
  const bows = bars.map(() => new Float64Array(samples));
  const draw = new Float64Array(evenUp(columns));
  const fill = normalDeviates(seed);
  let lifted = 0;
  let bowed = 0;
  for (let n = 0; n < samples; n++) {
    fill(draw);
    let lift = lift_mean;
    for (let j = 0; j < columns; j++) lift += (lift_by[j] as number) * (draw[j] as number);
    lifts[n] = lift;
    if (Math.abs(lift) > corner_lift_limit_mm) lifted++;
    let over = false;
    for (let b = 0; b < bars.length; b++) {
      const bar = bars[b] as BarLines;
      let bow = mixShapes(bar, draw);
      const mattersForP90 = bow >= (hopeless[b] as number);
      const mattersForLimit = bow > bar_bow_limit_mm && !over;
      if (mattersForP90 || mattersForLimit) {
        bow = largestDeparture(bar);
        if (bow > bar_bow_limit_mm) over = true;
      }
      (bows[b] as Float64Array)[n] = bow;
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
    bow_p90_mm: Object.fromEntries(barNames.map((bar, b) => [bar, sampleQuantile(bows[b] as Float64Array, nine_in_ten)])) as Record<BarName, Estimate>,
    any_bow_chance: sampleShare(bowed, samples),
  };
}

function varies(term: WarpTerm): boolean {
  return term.sd_per_m > 0 && (term.lift !== 0 || barNames.some((bar) => term.bow[bar].some((value) => value !== 0)));
}

/** Per bar: the largest departure is never less than that at the worst station, so P90 lies above this station's 85th percentile. */
function hopelessBelow(terms: readonly WarpTerm[], samples: number): readonly number[] {
  if (samples < enough_to_skip) return barNames.map(() => 0);
  const worst = barRisk(terms, 'bow');
  return barNames.map((bar) => foldedQuantile(worst[bar].mean, worst[bar].sd, hopeless_share));
}
