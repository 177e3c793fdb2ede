import type { Influence } from '../model/frame-results.js';
import type { Model, Solution } from '../model/model.js';
import { shelfNumber } from '../shelf/shelf-number.js';
import type { LiftCurve } from './lift-curve.js';

/** How lifts worked out from influence numbers become lifts under pull. */
export interface LiftGrowth {
  /** Times the numbers' own answer: the lift at no pull. */
  readonly terms_share: number;
  readonly curve: LiftCurve;
}

/** Nothing grows: influence numbers are taken as they are. */
export const asItIs: LiftGrowth = { terms_share: 1, curve: { pull_share: 0, beta_per_mm2: 0 } };

/** Influence numbers to work with, and how the lift they give grows. */
export interface PulledFrame {
  readonly influence: readonly Influence[];
  readonly growth: LiftGrowth;
  /** Whether the working pull is past the critical one: then only lifts are known, from the frame without pull. */
  readonly past_critical: boolean;
}

/**
 * The frame at working pull. Below the critical pull the influence numbers of the pulled frame hold, and are taken back
 * to no pull by 1 − f, so that the curve leaves them as they
 * are while lifts are small; past it those of the frame without pull, where it is the corner that leaves the plane.
 * Null when a bar bows sideways before that. The frame without pull is solved only where it is asked.
 */
export function pulledFrame(
  solution: Pick<Solution, 'influence' | 'influence_unpulled' | 'stability'>,
): PulledFrame | null {
  const { influence, stability } = solution;
  const { propeller, load_factor } = stability;
  if (influence !== null) {
    if (propeller === null) return { influence, growth: asItIs, past_critical: false };
    const pull_share = 1 / propeller.factor;
    return {
      influence,
      growth: { terms_share: 1 - pull_share, curve: { pull_share, beta_per_mm2: propeller.beta_per_mm2 } },
      past_critical: false,
    };
  }
  if (propeller === null || propeller.factor !== load_factor || propeller.factor > 1) return null;
  const curve = { pull_share: 1 / propeller.factor, beta_per_mm2: propeller.beta_per_mm2 };
  return { influence: solution.influence_unpulled, growth: { terms_share: 1, curve }, past_critical: true };
}

/** The curve for boards as soft as one in twenty: less pull is enough to turn the frame, all else in proportion. */
export function softBoards({ pull_share, beta_per_mm2 }: LiftCurve, model: Model): LiftCurve {
  return { pull_share: pull_share / shelfNumber(model.shelf, 'stiffness-share'), beta_per_mm2 };
}
