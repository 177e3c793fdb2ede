import type { Model, Solution } from '../model/model.js';
import { boardState } from '../risk/assess.js';
import { unpulledFor, type LiftCurve } from '../risk/lift-curve.js';
import { barWarps } from '../risk/spread.js';
import { warpTerms } from '../risk/terms.js';
import type { WarpKind } from '../model/frame-results.js';
import { expectedParts } from './conditioning.js';

/** The natural warp that a frame most likely has, now that its lift was read. */
export interface MeasuredTwist {
  /** Lift it would have without any pull, mm; top right and bottom left up positive. */
  readonly unpulled_mm: number;
  /** Expected warp of each member by kind, rad/m or 1/m. */
  readonly warps: readonly { readonly member: string; readonly kind: WarpKind; readonly per_m: number }[];
}

/** How the lift of a frame grows at a share of its working pull. */
export const curveAt = ({ stability: { propeller } }: Pick<Solution, 'stability'>, share: number): LiftCurve =>
  propeller === null
    ? { pull_share: 0, beta_per_mm2: 0 }
    : { pull_share: share / propeller.factor, beta_per_mm2: propeller.beta_per_mm2 };

/**
 * What a lift (mm, signed) that was read at a share of the working pull says of the members' warp: taken back to no
 * pull by the curve, then shared out among
 * all warps by how much each varies, so that together they make exactly that lift.
 */
export function measuredTwist(model: Model, solution: Solution, lift_mm: number, share: number): MeasuredTwist {
  const unpulled_mm = unpulledFor(curveAt(solution, share), lift_mm);
  const terms = warpTerms(barWarps(model, boardState(model)), solution.influence_unpulled).filter(
    ({ lift, sd_per_m }) => lift !== 0 && sd_per_m > 0,
  );
  const parts = expectedParts(
    terms.map(({ lift, mean_per_m, sd_per_m }) => ({ mean: lift * mean_per_m, variance: (lift * sd_per_m) ** 2 })),
    unpulled_mm,
  );
  return {
    unpulled_mm,
    warps: terms.map(({ warp, lift }, i) => ({ member: warp.member, kind: warp.kind, per_m: parts[i]! / lift })),
  };
}
