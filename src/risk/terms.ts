import { barNames, type BarName } from '../base/names.js';
import { lazily } from '../base/lazily.js';
import { remembered } from '../base/remembered.js';
import type { Influence } from '../model/frame-results.js';
import type { BarWarp } from './spread.js';

/** One natural warp of one member with what it does to the frame. The frame's warp is the sum over all terms. */
export interface WarpTerm {
  readonly warp: BarWarp;
  readonly mean_per_m: number;
  /** Standard deviation of the warp, all causes together, rad/m or 1/m. */
  readonly sd_per_m: number;
  /** Corner lift, mm per unit of the warp (rad/m or 1/m). */
  readonly lift: number;
  /** Out-of-plane departure of every side bar at its stations, mm per unit. */
  readonly bow: Readonly<Record<BarName, Float64Array>>;
  /** In-plane inward departure, likewise. */
  readonly crook: Readonly<Record<BarName, Float64Array>>;
}

/** Influence numbers are per 1/mm, spreads per metre. */
const per_m = 1e-3;

/**
 * Joins each warp to the frame's answer to it. Throws when an influence is missing: that is a bug, not a plan's fault.
 */
export function warpTerms(warps: readonly BarWarp[], influences: readonly Influence[]): readonly WarpTerm[] {
  const known = new Map(influences.map((influence) => [`${influence.member} ${influence.kind}`, influence]));
  return warps.map((warp) => {
    const influence = known.get(`${warp.member} ${warp.kind}`);
    if (influence === undefined) throw new Error(`no influence numbers for ${warp.kind} of ${warp.member}`);
    return lazily(
      { crook: () => perMetre(influence.bar_crook) },
      {
        warp,
        mean_per_m: warp.mean_per_m,
        sd_per_m: Math.sqrt(warp.chosen_var + warp.reading_var + warp.drying_var),
        lift: influence.corner_lift * per_m,
        bow: perMetre(influence.bar_bow),
      },
    );
  });
}

const perMetre = remembered(
  (lines: Readonly<Record<BarName, Float64Array>>) =>
    Object.fromEntries(barNames.map((bar) => [bar, lines[bar].map((value) => value * per_m)])) as Record<
      BarName,
      Float64Array
    >,
);
