import { barNames, type BarName } from '../base/names.js';
import type { Normal } from '../shelf/shelf.js';
import { asItIs, type LiftGrowth } from './lift-growth.js';
import { grownMoments, liftFrom, unpulledFor, type LiftCurve } from './lift-curve.js';
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
  const { mean, sd } = combine(terms, (term) => term.lift);
  return grownLift({ mean: mean * growth.terms_share, sd: sd * growth.terms_share }, growth.curve);
}

/** The same from the lift at no pull. */
export function grownLift(unpulled: Normal, curve: LiftCurve): LiftRisk {
  return {
    ...grownMoments(curve, unpulled),
    p90_mm: liftFrom(curve, foldedQuantile(unpulled.mean, unpulled.sd, nine_in_ten)),
    unpulled,
    growth: curve,
  };
}

/**
 * Chance that the lift is larger than the limit, mm, whichever way; certain where no board is straight enough to stay
 * below it.
 */
export function liftChance({ unpulled, growth }: LiftRisk, limit_mm: number): number {
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
  return Object.fromEntries(barNames.map((bar) => [bar, worstStation(terms, way, bar)])) as Record<
    BarName,
    StationRisk
  >;
}

function worstStation(terms: readonly WarpTerm[], way: 'bow' | 'crook', bar: BarName): StationRisk {
  const stations = terms[0]?.[way][bar].length ?? 0;
  let worst: StationRisk = { station: 0, mean: 0, sd: 0, p90_mm: 0 };
  for (let station = 0; station < stations; station++) {
    const here = combine(terms, (term) => term[way][bar][station] as number);
    if (Math.abs(here.mean) <= Math.abs(worst.mean) && here.sd <= worst.sd) continue;
    const p90_mm = foldedQuantile(here.mean, here.sd, nine_in_ten);
    if (p90_mm > worst.p90_mm) worst = { ...here, station, p90_mm };
  }
  return worst;
}

/** Mean and sd of a sum of independent terms, each times its response. */
function combine(terms: readonly WarpTerm[], response: (term: WarpTerm) => number): Normal {
  let mean = 0;
  let variance = 0;
  for (const term of terms) {
    const each = response(term);
    mean += each * term.mean_per_m;
    variance += (each * term.sd_per_m) ** 2;
  }
  return { mean, sd: Math.sqrt(variance) };
}
