import { barNames, type BarName } from '../base/names.js';
import { evenUp } from './bar-lines.js';
import { block_frames, drawnFrames } from './drawn-frames.js';
import { sampleShare, type Estimate } from './order-statistics.js';
import { bowSample, sampleBar, sampledBars, type Block, type BowSample } from './sampled-bar.js';
import type { WarpTerm } from './terms.js';

/** How many frames to imagine, from which seed, and what counts as too much. */
export interface SampleSettings {
  readonly seed: number;
  /** At least 1. */
  readonly samples: number;
  readonly bar_bow_limit_mm: Readonly<Record<BarName, number>>;
}

/** What a seeded sample of frames showed, every figure with its standard error. */
export interface WarpSample {
  readonly samples: number;
  readonly bow: Readonly<Record<BarName, BowSample>>;
  /** Share of frames with at least one bar beyond the limit anywhere along it. */
  readonly any_bow_chance: Estimate;
}

/**
 * Imagines `samples` frames: draws every bar's natural warp, adds up what it does, keeps each bar's largest
 * out-of-plane departure (the lift of a corner needs no sample).
 * Boards are not drawn one by one: a bar's warp is a sum of jointly normal boards, hence exactly normal itself, and the
 * pairing of its
 * plies is already in that sum.  Same terms, seed and number give the same answer.
 */
export function sampleWarp(terms: readonly WarpTerm[], settings: SampleSettings): WarpSample {
  const { samples } = settings;
  const active = terms.filter(varies);
  const columns = evenUp(active.length);
  const bars = sampledBars(terms, active, samples);
  const over = new Uint8Array(block_frames);
  const blockOf = drawnFrames(settings.seed, columns, samples);
  let bowed = 0;
  for (let start = 0; start < samples; start += block_frames) {
    const count = Math.min(block_frames, samples - start);
    const block: Block = { ...blockOf(start / block_frames), over: over.fill(0) };
    for (const bar of bars) sampleBar(bar, block, count, settings.bar_bow_limit_mm[bar.name]);
    for (let n = 0; n < count; n++) bowed += over[n] as number;
  }
  return {
    samples,
    bow: Object.fromEntries(bars.map((bar) => [bar.name, bowSample(bar, samples)])) as Record<BarName, BowSample>,
    any_bow_chance: sampleShare(bowed, samples),
  };
}

function varies(term: WarpTerm): boolean {
  return term.sd_per_m > 0 && barNames.some((bar) => term.bow[bar].some((value) => value !== 0));
}
