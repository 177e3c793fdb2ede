import { barNames, type BarName } from '../base/names.js';
import { evenUp } from './bar-lines.js';
import { nine_in_ten } from './closed-form.js';
import { normalDeviates } from './normal-deviates.js';
import { sampleMoments, sampleQuantile, sampleShare, type Estimate } from './order-statistics.js';
import { liftFrom } from './lift-curve.js';
import { asItIs, type LiftGrowth } from './lift-growth.js';
import { bowSample, sampleBar, sampledBars, type Block, type BowSample } from './sampled-bar.js';
import type { WarpTerm } from './terms.js';

/** How many frames to imagine, from which seed, and what counts as too much. */
export interface SampleSettings {
  readonly seed: number;
  /** At least 1. */
  readonly samples: number;
  readonly corner_lift_limit_mm: number;
  readonly bar_bow_limit_mm: Readonly<Record<BarName, number>>;
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

/** Frames worked out together: small enough for the nearest memory, and each step's loop is warm after the first few blocks. */
const block_frames = 256;

/**
 * Imagines `samples` frames: draws every bar's natural warp, adds up what it does, keeps the lift and each bar's largest out-of-plane departure.
 * Boards are not drawn one by one: a bar's warp is a sum of jointly normal boards, hence exactly normal itself, and the pairing of its
 * plies is already in that sum. Lifts grow with the pull as `growth` says. Same terms, seed and number give the same answer.
 */
export function sampleWarp(terms: readonly WarpTerm[], settings: SampleSettings, growth: LiftGrowth = asItIs): WarpSample {
  const { samples } = settings;
  const active = terms.filter(varies);
  const columns = evenUp(active.length);
  const bars = sampledBars(terms, active, samples);
  const lift_mean = terms.reduce((sum, term) => sum + term.lift * term.mean_per_m, 0);
  const lift_by = new Float64Array(columns);
  active.forEach((term, j) => (lift_by[j] = term.lift * term.sd_per_m));
  const lifts = new Float64Array(samples);
  const block: Block = { draws: new Float64Array(block_frames * columns), lengths: new Float64Array(block_frames), over: new Uint8Array(block_frames) };
  const fill = normalDeviates(settings.seed);
  let bowed = 0;
  for (let start = 0; start < samples; start += block_frames) {
    const count = Math.min(block_frames, samples - start);
    fill(block.draws);
    addUpLifts(lifts, start, count, block, lift_mean, lift_by);
    block.over.fill(0);
    for (const bar of bars) sampleBar(bar, block, count, settings.bar_bow_limit_mm[bar.name]);
    for (let n = 0; n < count; n++) bowed += block.over[n] as number;
  }
  for (let n = 0; n < samples; n++) lifts[n] = liftFrom(growth.curve, growth.terms_share * (lifts[n] as number));
  const { mean, sd } = sampleMoments(lifts);
  let lifted = 0;
  for (let n = 0; n < samples; n++) {
    const size = Math.abs(lifts[n] as number);
    lifts[n] = size;
    if (size > settings.corner_lift_limit_mm) lifted++;
  }
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

/** Lift of every frame of a block, and the length of its draws as a vector. */
function addUpLifts(lifts: Float64Array, start: number, count: number, { draws, lengths }: Block, mean: number, by: Float64Array): void {
  const columns = by.length;
  for (let n = 0, at = 0; n < count; n++) {
    let lift = mean;
    let square = 0;
    for (let j = 0; j < columns; j++, at++) {
      const z = draws[at] as number;
      lift += (by[j] as number) * z;
      square += z * z;
    }
    lifts[start + n] = lift;
    lengths[n] = Math.sqrt(square);
  }
}

function varies(term: WarpTerm): boolean {
  return term.sd_per_m > 0 && (term.lift !== 0 || barNames.some((bar) => term.bow[bar].some((value) => value !== 0)));
}
