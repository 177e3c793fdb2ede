import { crossLine, mixNormals, passes, type BarLines, type Crossing } from './bar-lines.js';
import { lineTail, lineTailPlace } from './line-tail.js';
import { normalDeviates } from './normal-deviates.js';
import { normalCdf } from './normal.js';

/** A bar, its limit and the chance that it passes it somewhere. */
export interface BarAtLimit {
  readonly lines: BarLines;
  readonly limit_mm: number;
  readonly chance: number;
}

/** How sure to be: as sure as if so many frames were drawn from this seed and those with a bowed bar counted. */
export interface SampleSettings {
  readonly seed: number;
  /** At least 1. */
  readonly samples: number;
}

/** An estimate with its standard error, or where it lies between bounds, how far these are apart; in the same unit. */
export interface Estimate {
  readonly value: number;
  readonly se: number;
}

/** Frames drawn before it is asked how sure the answer is. */
const block_frames = 64;
/** Where the sum of chances is larger, frames as they come say more than frames that have a bowed bar. */
const seldom = 0.3;
/** Draws of a frame beside one for each term: a line's direction, which place on it, which bar. */
const more_draws = 4;

/**
 * Chance that at least one bar passes its limit: not below the largest chance of one bar, not above the sum of all.
 * Where that leaves no more doubt than counting `samples` frames would, the sum is taken, on the safe side. Else what
 * the sum has too much, for frames with several bowed bars, is sampled until no more doubt is left than that (above an
 * even chance: than counting has there).
 */
export function anyBowChance(bars: readonly BarAtLimit[], { seed, samples }: SampleSettings): Estimate {
  const most = bars.reduce((largest, { chance }) => Math.max(largest, chance), 0);
  const sum = bars.reduce((all, { chance }) => all + chance, 0);
  const upper = Math.min(1, sum);
  if (upper - most <= countingError(most, samples)) return { value: upper, se: upper - most };
  const tooMuch = sum < seldom ? ofBowedFrames(bars, sum, seed) : ofAllFrames(bars, sum, seed);
  let total = 0;
  // One frame more with two bowed bars: none at all among a few frames is no proof that there are none.
  let squares = (sum < seldom ? sum / 2 : 1) ** 2;
  for (let n = 1; ; n++) {
    const share = tooMuch();
    total += share;
    squares += share * share;
    if (n < samples && n % block_frames !== 0) continue;
    const mean = total / n;
    const value = Math.min(upper, Math.max(most, sum - mean));
    const se = Math.sqrt(Math.max(0, squares / n - mean * mean) / n);
    if (n >= samples || se <= countingError(Math.min(0.5, value), samples)) return { value, se };
  }
}

/** Standard error of a share counted over so many frames. */
function countingError(share: number, samples: number): number {
  return Math.sqrt((share * (1 - share)) / samples);
}

/**
 * Draws frames of which one bar passes its limit, the likelier the oftener, and gives what the sum of all chances
 * counts too much on that account. The two normals that move the bar most are not drawn: how likely they bring it past
 * its limit in the drawn direction is known, and so is where.
 */
function ofBowedFrames(bars: readonly BarAtLimit[], sum: number, seed: number): () => number {
  const columns = columnsOf(bars);
  const draws = new Float64Array(columns + more_draws);
  const own = new Float64Array(most_normals);
  const fill = normalDeviates(seed);
  const ends: Crossing = { low: 0, high: 0, low_mm: 0, high_mm: 0 };
  return () => {
    fill(draws);
    const bar = drawnBar(bars, sum * normalCdf(draws[columns] as number));
    const { lines, limit_mm, chance } = bar;
    mixNormals(lines, draws, columns, own);
    const before = [own[0] as number, own[1] as number] as const;
    const length = Math.hypot(draws[columns + 1] as number, draws[columns + 2] as number);
    own[0] = (draws[columns + 1] as number) / length;
    own[1] = (draws[columns + 2] as number) / length;
    crossLine(lines, limit_mm, own, 0, ends);
    const none_within = ends.low >= ends.high;
    const above = none_within ? 0.5 : lineTail(ends.high);
    const beyond = none_within ? 1 : above + lineTail(-ends.low);
    const place = beyond * normalCdf(draws[columns + 3] as number);
    const reach = place < above ? lineTailPlace(place) : -lineTailPlace(place - above);
    for (let k = 0; k < 2; k++) {
      const moved = (own[k] as number) * reach - (before[k] as number);
      for (let j = 0; j < columns; j++)
        draws[j] = (draws[j] as number) + moved * (lines.mixing[k * columns + j] as number);
    }
    const bowed = 1 + bowedBars(bars, draws, columns, bar);
    return sum * (beyond / chance) * (1 - 1 / bowed);
  };
}

/**
 * Draws frames as they come, and gives what the sum of all chances counts too much. How many bars are bowed on average
 * is known: what the drawn frames have more of them is taken off, by the share that would be best if bars bowed apart.
 */
function ofAllFrames(bars: readonly BarAtLimit[], sum: number, seed: number): () => number {
  const columns = columnsOf(bars);
  const draws = new Float64Array(columns);
  const fill = normalDeviates(seed);
  const none = bars.reduce((all, { chance }) => all * (1 - chance), 1);
  const best = (sum * none) / bars.reduce((all, { chance }) => all + chance * (1 - chance), 0);
  return () => {
    fill(draws);
    const bowed = bowedBars(bars, draws, columns, null);
    return sum - Math.min(1, bowed) + best * (bowed - sum);
  };
}

const most_normals = 32;
const normals = new Float64Array(most_normals);

/** How many bars but this one pass their limits. */
function bowedBars(bars: readonly BarAtLimit[], draws: Float64Array, columns: number, but: BarAtLimit | null): number {
  let bowed = 0;
  for (const bar of bars) {
    if (bar === but || bar.chance === 0) continue;
    mixNormals(bar.lines, draws, columns, normals);
    if (passes(bar.lines, normals, bar.limit_mm)) bowed++;
  }
  return bowed;
}

/** Draws of a frame: one for each term. */
function columnsOf([first]: readonly BarAtLimit[]): number {
  return first === undefined ? 0 : first.lines.mixing.length / first.lines.rank;
}

/** The bar in whose share of the sum of chances this place lies. */
function drawnBar(bars: readonly BarAtLimit[], place: number): BarAtLimit {
  let left = place;
  return bars.find(({ chance }) => (left -= chance) < 0) ?? (bars.at(-1) as BarAtLimit);
}
