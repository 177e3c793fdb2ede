import { barNames, type BarName } from '../base/names.js';
import { evenUp } from './bar-lines.js';
import { normalDeviates } from './normal-deviates.js';
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
 * Frames worked out together: small enough for the nearest memory, and each step's loop is warm after the first few
 * blocks.
 */
const block_frames = 256;

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
  const block: Block = {
    draws: new Float64Array(block_frames * columns),
    lengths: new Float64Array(block_frames),
    over: new Uint8Array(block_frames),
  };
  const fill = normalDeviates(settings.seed);
  let bowed = 0;
  for (let start = 0; start < samples; start += block_frames) {
    const count = Math.min(block_frames, samples - start);
    fill(block.draws);
    measureDraws(block, count, columns);
    block.over.fill(0);
    for (const bar of bars) sampleBar(bar, block, count, settings.bar_bow_limit_mm[bar.name]);
    for (let n = 0; n < count; n++) bowed += block.over[n] as number;
  }
  return {
    samples,
    bow: Object.fromEntries(bars.map((bar) => [bar.name, bowSample(bar, samples)])) as Record<BarName, BowSample>,
    any_bow_chance: sampleShare(bowed, samples),
  };
}

/** The length of every frame's draws as a vector. */
function measureDraws({ draws, lengths }: Block, count: number, columns: number): void {
  for (let n = 0, at = 0; n < count; n++) {
    let square = 0;
    for (let j = 0; j < columns; j++, at++) square += (draws[at] as number) ** 2;
    lengths[n] = Math.sqrt(square);
  }
}

function varies(term: WarpTerm): boolean {
  return term.sd_per_m > 0 && barNames.some((bar) => term.bow[bar].some((value) => value !== 0));
}
