import type { MemberBuild, Model } from '../model/model.js';
import type { BoardWarp } from './ply-warp.js';
import { asPlaced, type BoardState } from './spread.js';

/**
 * What is known of one warp of one board by itself: mean and variance in its own unit (rad/m or 1/m) and its square.
 */
export interface PlyKnown {
  readonly mean: number;
  readonly variance: number;
}

/**
 * One board of a bar by itself, not paired with any other: its reading ± the reading error, or the spread of its kind
 * where it was not read; what
 * drying adds after choosing comes on top.
 */
export function plyKnown(
  build: MemberBuild,
  model: Model,
  { drying_pct, assumptions }: BoardState,
  from: BoardWarp,
  reading: number | null,
): PlyKnown {
  const chosen = asPlaced(build.stock.spread[model.plan.lumber.chosen], from);
  const unsorted = asPlaced(build.stock.spread.unsorted, from);
  const drying_share = assumptions.drying_per_pct * Math.max(0, drying_pct);
  const reading_sd = from === 'twist' ? assumptions.reading_twist_rad_per_m : assumptions.reading_curve_per_m;
  const variance = (reading === null ? chosen.sd : reading_sd) ** 2 + (unsorted.sd * drying_share) ** 2;
  return { mean: (reading ?? chosen.mean) + unsorted.mean * drying_share, variance };
}
