import { barNames, type BarName } from '../base/names.js';
import { asMoistAsRead } from '../bench-sheet/likely-causes.js';
import { clothOn, type Sheet, type SheetBoard } from '../bench-sheet/sheet.js';
import { pullRead, type PullRead } from '../bench-sheet/pull-read.js';
import type { Influence } from '../model/frame-results.js';
import type { Model, Solution } from '../model/model.js';
import { buildModel } from '../model/build-model.js';
import { eachWay, evenGive, type JointGive } from '../base/joint-give.js';
import { cornerJoint } from '../model/joint-give.js';
import { boardState } from '../risk/assess.js';
import { barWarps, type BarWarp } from '../risk/spread.js';
import { warpTerms, type WarpTerm } from '../risk/terms.js';
import type { Shelf } from '../shelf/shelf.js';
import type { Plan } from '../plan/plan.js';
import { solveInfluence, solveStatics } from '../solve/analyse-frame.js';
import { solveModel } from '../solve/solve-model.js';
import type { BuiltFrame } from './folder.js';

/** The plan's frame, solved: bare, at the planned pull, and how its bars draw in with softer and harder corners. */
export interface PlanAnswer {
  readonly model: Model;
  readonly solution: Solution;
  readonly bare: readonly Influence[];
  /** Inward bow of the middle of each bar at the working pull, mm, at each of `gives`. */
  readonly inwardAt: () => readonly Readonly<Record<BarName, number>>[];
}

/** A joint that gives so much in the plane, and in its other two ways in proportion to the usual one. */
export const withPlane = (usual: JointGive, plane: number): JointGive =>
  usual.plane > 0 ? eachWay(usual, (widths) => (widths * plane) / usual.plane) : evenGive(plane);

/**
 * Gives in the plane at which a frame is solved to learn from how its bars draw in, bar-widths: each twice the one
 * before.
 */
export const gives: readonly number[] = Array.from({ length: 11 }, (_, i) => 0.25 * 2 ** i);

/** A frame with its plan's solution. */
export interface SolvedFrame extends BuiltFrame {
  readonly answer: PlanAnswer;
}

/** Solves a plan for `learn`; null when its bare frame cannot be solved. */
export function answerOf(plan: Plan, shelf: Shelf): PlanAnswer | null {
  const model = buildModel(plan, shelf);
  const bare = solveInfluence(model.shape, { x: 0, y: 0 });
  if (bare === null) return null;
  let inward: readonly Readonly<Record<BarName, number>>[] | null = null;
  const inwardAt = (): readonly Readonly<Record<BarName, number>>[] =>
    (inward ??= gives.map((give) => {
      const usual = shelf.joints.give[cornerJoint(plan, shelf, model.bars.top.section)];
      const softer = buildModel({ ...plan, corners: { ...plan.corners, give: withPlane(usual, give) } }, shelf);
      const { bars } = solveStatics(softer.shape, softer.working);
      return Object.fromEntries(barNames.map((bar) => [bar, middleOf(bars[bar].bow_line)])) as Record<BarName, number>;
    }));
  return { model, solution: solveModel(model), bare, inwardAt };
}

/** Inward bow in the middle of a bar, mm. */
export function middleOf(line: readonly { readonly s: number; readonly inward_mm: number }[]): number {
  return line.reduce((best, point) => (Math.abs(point.s - 0.5) < Math.abs(best.s - 0.5) ? point : best)).inward_mm;
}

/** The frame's boards as they were read, and its moisture, in place of what the plan says of them. */
export function asBuilt({ answer: { model }, sheets }: SolvedFrame): Model {
  const read = sheets.flatMap(({ sheet }) => sheet.boards).filter(wasRead);
  const kept = model.plan.boards.filter(
    (board) => !read.some((other) => other.for === board.for && other.ply === board.ply),
  );
  const moist = sheets.find(({ sheet }) => sheet.moisture_pct !== null)?.sheet ?? { moisture_pct: null };
  return asMoistAsRead(
    read.length === 0 ? model : { ...model, plan: { ...model.plan, boards: [...kept, ...read] } },
    moist,
  );
}

/** Whether anything was read of a board, beside its mark. */
export const wasRead = (board: SheetBoard): boolean =>
  board.twist_rad_per_m !== null || board.bow_per_m !== null || board.crook_per_m !== null;

/** Warp of the bars of a frame as it was built. */
export const warpsOf = (model: Model): readonly BarWarp[] => barWarps(model, boardState(model));

/** The frame's answer to that warp, bare. */
export const bareTerms = ({ answer }: SolvedFrame, warps: readonly BarWarp[]): readonly WarpTerm[] =>
  warpTerms(warps, answer.bare);

/** The same at the pull that was read; null when it does not hold there. */
export function termsAsRead(frame: SolvedFrame, warps: readonly BarWarp[], sheet: Sheet): readonly WarpTerm[] | null {
  const { model, solution } = frame.answer;
  const share = clothOn(sheet) ? (pullOf(frame)?.value ?? 1) : 0;
  if (share === 0) return bareTerms(frame, warps);
  const influence =
    share === 1
      ? solution.influence
      : solveInfluence(model.shape, { x: model.working.x * share, y: model.working.y * share });
  return influence === null ? null : warpTerms(warps, influence);
}

/** The pull as first read on the stretched cloth, as a share of the planned one; null when it never was. */
export function pullOf({ answer: { model }, sheets }: SolvedFrame): PullRead | null {
  for (const { sheet } of sheets) {
    const read = pullRead(model, sheet);
    if (read !== null) return read;
  }
  return null;
}

/** Standard error of the logarithm of a pull that was read: its band is taken as two standard errors each way. */
export const lnError = ({ low, high }: PullRead): number => Math.max(0.01, Math.log(high / low) / 4);
