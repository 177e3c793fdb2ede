import type { FactSettings, Model, Solution } from '../model/model.js';
import { assessWarp, boardState, type NoWarp } from './assess.js';
import type { Cause } from './causes.js';
import type { Normal } from '../shelf/shelf.js';
import type { LiftCurve } from './lift-curve.js';
import { boardRemedies, whatHalves, type Remedy } from './remedies.js';

/** What a report tells of the corner lift. */
export interface WarpStory {
  readonly limit_mm: number;
  readonly mean_mm: number;
  readonly sd_mm: number;
  readonly p90_mm: number;
  readonly chance: number;
  /** The same for boards as soft as one in twenty. */
  readonly chance_soft: number;
  /** The lift at no pull, and how it grows: working pull over critical pull, average boards (1 and more is past it). */
  readonly unpulled: Normal;
  readonly growth: LiftCurve;
  /** Largest first, shares summing to 1. */
  readonly causes: readonly Cause[];
  /** Handling of the boards that helps, mildest first. */
  readonly remedies: readonly Remedy[];
  readonly halves: Remedy | null;
}

/** The story, or why there is none. */
export type WarpTold =
  { readonly story: WarpStory; readonly reason?: undefined } | { readonly story: null; readonly reason: NoWarp };

/** Everything the report's page on warp needs, in closed form (no sampling). */
export function warpStory(model: Model, solution: Solution, settings: FactSettings): WarpTold {
  const risk = assessWarp(model, solution, settings);
  if (risk === null) return { story: null, reason: 'bows-sideways' };
  const limit_mm = settings.corner_lift_limit_mm;
  const state = boardState(model);
  const remedies = boardRemedies(model, risk.frame, state, limit_mm);
  const { lift } = risk;
  return {
    story: {
      limit_mm,
      mean_mm: lift.mean,
      sd_mm: lift.sd,
      p90_mm: lift.p90_mm,
      chance: risk.lift_chance,
      chance_soft: risk.lift_chance_soft,
      unpulled: lift.unpulled,
      growth: lift.growth,
      causes: risk.causes,
      remedies,
      halves: whatHalves(remedies),
    },
  };
}
