import type { BarName } from '../base/names.js';
import type { Influence } from '../model/frame-results.js';
import type { BarWarp } from './spread.js';

/** A departure at each station of each side bar. */
type BarLinesOf = Readonly<Record<BarName, ArrayLike<number>>>;

/** One natural warp of one member with what it does to the frame. The frame's warp is the sum over all terms. */
export interface WarpTerm {
  readonly warp: BarWarp;
  readonly mean_per_m: number;
  /** Standard deviation of the warp, all causes together, rad/m or 1/m. */
  readonly sd_per_m: number;
  /** Corner lift, mm per unit of the warp (rad/m or 1/m). */
  readonly lift: number;
  /** Out-of-plane departure of every side bar at its stations, mm per unit. */
  readonly bow: BarLinesOf;
  /** In-plane inward departure, likewise. */
  readonly crook: BarLinesOf;
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
    return new Term(warp, influence);
  });
}

/** A term whose departures are put per metre when they are first read. */
class Term implements WarpTerm {
  readonly warp: BarWarp;
  readonly mean_per_m: number;
  readonly sd_per_m: number;
  readonly lift: number;
  readonly #influence: Influence;
  #bow: BarLinesOf | null = null;
  #crook: BarLinesOf | null = null;

  constructor(warp: BarWarp, influence: Influence) {
    this.warp = warp;
    this.mean_per_m = warp.mean_per_m;
    this.sd_per_m = Math.sqrt(warp.chosen_var + warp.reading_var + warp.drying_var);
    this.lift = influence.corner_lift * per_m;
    this.#influence = influence;
  }

  get bow(): BarLinesOf {
    return (this.#bow ??= perMetre(this.#influence.bar_bow));
  }

  get crook(): BarLinesOf {
    return (this.#crook ??= perMetre(this.#influence.bar_crook));
  }
}

function perMetre({ top, bottom, left, right }: BarLinesOf): BarLinesOf {
  return { top: linePerMetre(top), bottom: linePerMetre(bottom), left: linePerMetre(left), right: linePerMetre(right) };
}

function linePerMetre(line: ArrayLike<number>): readonly number[] {
  const scaled: number[] = [];
  for (let i = 0; i < line.length; i++) scaled.push((line[i] as number) * per_m);
  return scaled;
}
