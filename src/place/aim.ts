import { chanceBeyond, normalTail } from '../risk/normal.js';
import type { Measure } from './effects.js';

/**
 * Measures that stand together: the corner lift of a frame by itself, the places along one bar as the worst of them.
 */
export interface Group {
  readonly limit_mm: number;
  /** The limit as it stands in the rules, for shares of it. */
  readonly scale_mm: number;
  readonly measures: readonly number[];
}

/** Groups the measures that can matter: indices into the list. */
export function groupsOf(measures: readonly Measure[], matters: (index: number) => boolean): readonly Group[] {
  const groups = new Map<string, { limit_mm: number; scale_mm: number; measures: number[] }>();
  measures.forEach(({ frame, bar, limit_mm, scale_mm }, index) => {
    if (!matters(index)) return;
    const key = `${frame} ${bar ?? ''}`;
    const group = groups.get(key) ?? { limit_mm, scale_mm, measures: [] };
    group.measures.push(index);
    groups.set(key, group);
  });
  return [...groups.values()];
}

/** So many standard deviations off, a chance is below one in a hundred thousand million and counts as none. */
const none = 7;

/**
 * What a placing is to keep small: the chance of a lifted corner plus, for each bar, the chance that it bows too far at
 * its worst place, over all
 * frames. Their sum is never less than the chance that any of it happens.
 */
export function aimOf(groups: readonly Group[], mean: Float64Array, variance: Float64Array): number {
  let sum = 0;
  for (const { limit_mm, measures } of groups) {
    let worst = 0;
    for (const j of measures) {
      const size = Math.abs(mean[j] as number);
      const sd = Math.sqrt(variance[j] as number);
      if (size + none * sd >= limit_mm) worst = Math.max(worst, chanceBeyond(size, sd, limit_mm));
    }
    sum += worst;
  }
  return sum;
}

/**
 * No placing whose means lie between `low` and `high` and whose variances between `least` and `most` has a smaller aim.
 */
export function aimBound(
  groups: readonly Group[],
  low: Float64Array,
  high: Float64Array,
  least: Float64Array,
  most: Float64Array,
): number {
  let sum = 0;
  for (const { limit_mm, measures } of groups) {
    let worst = 0;
    for (const j of measures) {
      const from = low[j] as number;
      const to = high[j] as number;
      const nearest = from > 0 ? from : to < 0 ? -to : 0;
      worst = Math.max(
        worst,
        chanceAtLeast(nearest, Math.sqrt(least[j] as number), Math.sqrt(most[j] as number), limit_mm),
      );
    }
    sum += worst;
  }
  return sum;
}

/** So many standard deviations off, a chance is below one in a thousand million and counts as none in a bound. */
const negligible = 6;

/**
 * The least chance to pass the limit for a mean of at least this size: it grows with the size; up to the limit it grows
 * with the spread, beyond it one tail grows and the other shrinks.
 */
function chanceAtLeast(size: number, least_sd: number, most_sd: number, limit: number): number {
  if (size + negligible * least_sd < limit) return 0;
  if (size <= limit) return chanceBeyond(size, least_sd, limit);
  if (most_sd === 0) return 1;
  return normalTail((limit - size) / most_sd) + (least_sd === 0 ? 0 : normalTail((limit + size) / least_sd));
}

/** So many standard deviations beyond the mean are passed by one in twenty on either side. */
const one_in_twenty = 1.645;

/**
 * How far out of true a placing may well be, mean and spread together, as shares of the limits added up: what decides
 * between placings of equal chance.
 */
export function outOfTrue(groups: readonly Group[], mean: Float64Array, variance: Float64Array): number {
  let sum = 0;
  for (const { scale_mm, measures } of groups) {
    let worst = 0;
    for (const j of measures)
      worst = Math.max(worst, Math.abs(mean[j] as number) + one_in_twenty * Math.sqrt(variance[j] as number));
    sum += worst / scale_mm;
  }
  return sum;
}
