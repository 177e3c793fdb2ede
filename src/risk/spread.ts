import type { WarpKind } from '../model/frame-results.js';
import type { MemberBuild, Model } from '../model/model.js';
import { torsionConstant } from '../model/section.js';
import type { PlanBoard } from '../plan/plan.js';
import type { Normal, WarpSpread } from '../shelf/shelf.js';
import type { WarpAssumptions } from './assumptions.js';
import { plyCorrelation, sumPlies } from './pairing.js';
import { warpWeights, type BoardWarp } from './ply-warp.js';

/**
 * How the natural warp of one built-up bar or crossbar varies, for one kind: normal, its variance split by where it
 * comes from.
 */
export interface BarWarp {
  /** `top` … or `crossbar-1` … */
  readonly member: string;
  readonly kind: WarpKind;
  /** Which warp of its boards makes it. */
  readonly from: BoardWarp;
  /** rad/m for twist, 1/m for curvature; signs as in `Influence`. */
  readonly mean_per_m: number;
  /** Squares of the same unit. */
  readonly chosen_var: number;
  readonly reading_var: number;
  readonly drying_var: number;
}

/** What decides the spread besides the bars themselves. */
export interface BoardState {
  /**
   * How far the boards still dry, percentage points; nothing is added when they are at or below the room's moisture.
   */
  readonly drying_pct: number;
  readonly assumptions: WarpAssumptions;
}

/**
 * Spread of natural warp of every side bar and crossbar of the model, three kinds each. Braces are too short to count
 * and are left out.
 */
export function barWarps(model: Model, state: BoardState): readonly BarWarp[] {
  return [...Object.values(model.bars), ...model.crossbars].flatMap((build) => memberWarps(build, model, state));
}

function memberWarps(build: MemberBuild, model: Model, { drying_pct, assumptions }: BoardState): readonly BarWarp[] {
  const boards = boardsOf(model.plan.boards, build);
  const chosen = build.stock.spread[model.plan.lumber.chosen];
  const unsorted = build.stock.spread.unsorted;
  const drying_share = assumptions.drying_per_pct * Math.max(0, drying_pct);
  const J_ply_mm4 = torsionConstant(build.ply_w_mm, build.ply_d_mm);
  const { plies, lay, stack, bond, section } = build;
  const stacked = { plies, lay, stack, bond, J_ply_mm4, J_bar_mm4: section.J_mm4 };
  return warpWeights(stacked).map(({ kind, from, weight }) => {
    const twist = from === 'twist';
    const sum = sumPlies({
      chosen: asPlaced(chosen, from),
      drying: scaled(asPlaced(unsorted, from), drying_share),
      readings: boards.map((board) => (board === null ? null : reading(board, from))),
      reading_sd: twist ? assumptions.reading_twist_rad_per_m : assumptions.reading_curve_per_m,
      correlation: twist ? 0 : plyCorrelation(assumptions.correlation[build.pairing], plies),
    });
    const square = weight ** 2;
    return {
      member: build.name,
      kind,
      from,
      mean_per_m: weight * sum.mean,
      chosen_var: square * sum.chosen_var,
      reading_var: square * sum.reading_var,
      drying_var: square * sum.drying_var,
    };
  });
}

/** One entry per ply of the member: what was measured of it, or null. */
export function boardsOf(boards: readonly PlanBoard[], build: MemberBuild): readonly (PlanBoard | null)[] {
  const read: (PlanBoard | null)[] = [];
  for (let ply = 1; ply <= build.plies; ply++)
    read.push(boards.find((board) => board.for === build.name && board.ply === ply) ?? null);
  return read;
}

function reading(board: PlanBoard, from: BoardWarp): number | null {
  return from === 'twist' ? board.twist_rad_per_m : from === 'bow' ? board.bow_per_m : board.crook_per_m;
}

/**
 * The spread of a board as it ends up in the frame. Twist keeps its hand whichever way a board is turned, so its mean
 * stays; bow and
 * crook turn over with the board, and nobody knows which way it will lie, so a mean bow only widens the spread about
 * zero.
 */
export function asPlaced(spread: WarpSpread, from: BoardWarp): Normal {
  if (from === 'twist') return spread.twist_rad_per_m;
  const { mean, sd } = from === 'bow' ? spread.bow_per_m : spread.crook_per_m;
  return { mean: 0, sd: Math.hypot(mean, sd) };
}

function scaled(normal: Normal, by: number): Normal {
  return { mean: normal.mean * by, sd: normal.sd * by };
}
