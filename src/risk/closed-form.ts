import type { BarName } from '../base/names.js';
import { lazily } from '../base/lazily.js';
import { once } from '../base/once.js';
import type { Normal } from '../shelf/shelf.js';
import { asItIs, type LiftGrowth } from './lift-growth.js';
import { grownMoments, liftFrom, unpulledFor, type LiftCurve } from './lift-curve.js';
import { bowDepartures, departuresOf, type Departures } from './departures.js';
import { chanceBeyond, foldedQuantile } from './normal.js';
import type { WarpTerm } from './terms.js';

/** Nine in ten: the share that P90 numbers speak of. */
export const nine_in_ten = 0.9;

/**
 * Corner lift over frames built like this, mm: the lift at no pull is normal, and `growth` makes it what it is under
 * pull.
 */
export interface LiftRisk extends Normal {
  /** Nine in ten lift by less than this, whichever way. */
  readonly p90_mm: number;
  readonly unpulled: Normal;
  readonly growth: LiftCurve;
}

/** Mean, sd and P90 of the magnitude of the corner lift. Without `growth` the terms' own answer stands. */
export function liftRisk(terms: readonly WarpTerm[], growth: LiftGrowth = asItIs): LiftRisk {
  const { mean, sd } = liftOf(terms);
  return grownLift({ mean: mean * growth.terms_share, sd: sd * growth.terms_share }, growth.curve);
}

/** The same from the lift at no pull. */
export function grownLift(unpulled: Normal, growth: LiftCurve): LiftRisk {
  const moments = once(() => grownMoments(growth, unpulled));
  return lazily(
    {
      mean: () => moments().mean,
      sd: () => moments().sd,
      p90_mm: () => liftFrom(growth, foldedQuantile(unpulled.mean, unpulled.sd, nine_in_ten)),
    },
    { unpulled, growth },
  );
}

/**
 * Chance that the lift is larger than the limit, mm, whichever way; certain where no board is straight enough to stay
 * below it.
 */
export function liftChance({ unpulled, growth }: Pick<LiftRisk, 'unpulled' | 'growth'>, limit_mm: number): number {
  const least = unpulledFor(growth, limit_mm);
  return least < 0 ? 1 : chanceBeyond(unpulled.mean, unpulled.sd, least);
}

/** Natural bow or crook of one bar at its worst station. */
export interface StationRisk extends Normal {
  /** Which station along the bar, 0 = left or bottom end. */
  readonly station: number;
  /** Nine in ten depart by less than this there, whichever way, mm. */
  readonly p90_mm: number;
}

/**
 * P90 of a bar's departure at the one station where it is largest (with no mean, where the spread is widest). The
 * largest departure
 * along the bar can only be more than that at one station, so this is a lower bound; sampling gives the largest itself.
 */
export function barRisk(terms: readonly WarpTerm[], way: 'bow' | 'crook'): Readonly<Record<BarName, StationRisk>> {
  const worst = (bar: BarName): StationRisk =>
    worstStation(way === 'bow' ? bowDepartures(terms)[bar] : departuresOf(terms, way, bar));
  return { top: worst('top'), bottom: worst('bottom'), left: worst('left'), right: worst('right') };
}

/** So much more spread, share of size, makes a P90 larger for certain. */
const clearly = 1e-9;

function worstStation({ means, spreads }: Departures): StationRisk {
  const sds: number[] = [];
  const columns = spreads.length / means.length;
  /** Where the spread is widest: what has less of it and no larger mean is not the worst. */
  let widest = 0;
  for (let station = 0, at = 0; station < means.length; station++) {
    let variance = 0;
    for (let j = 0; j < columns; j++, at++) variance += (spreads[at] as number) ** 2;
    sds.push(Math.sqrt(variance));
    if (sds[station]! > sds[widest]!) widest = station;
  }
  let worst: StationRisk = { station: 0, mean: 0, sd: 0, p90_mm: 0 };
  for (let station = 0; station < means.length; station++) {
    const mean = means[station]!;
    const sd = sds[station]!;
    const size = Math.abs(mean);
    if (size <= Math.abs(means[widest]!) && sd < sds[widest]! - clearly * (size + sd)) continue;
    if (size <= Math.abs(worst.mean) && sd <= worst.sd) continue;
    const p90_mm = foldedQuantile(mean, sd, nine_in_ten);
    if (p90_mm > worst.p90_mm) worst = { station, mean, sd, p90_mm };
  }
  return worst;
}

/** Mean and sd of the sum of independent terms' lifts. */
function liftOf(terms: readonly WarpTerm[]): Normal {
  let mean = 0;
  let variance = 0;
  for (const { lift, mean_per_m, sd_per_m } of terms) {
    mean += lift * mean_per_m;
    variance += (lift * sd_per_m) ** 2;
  }
  return { mean, sd: Math.sqrt(variance) };
}
