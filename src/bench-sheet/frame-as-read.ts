import type { Influence } from '../model/frame-results.js';
import type { Model, Solution } from '../model/model.js';
import { boardState } from '../risk/assess.js';
import { barWarps } from '../risk/spread.js';
import { warpTerms, type WarpTerm } from '../risk/terms.js';
import { solveInfluence } from '../solve/analyse-frame.js';
import { pullRead, type PullRead } from './pull-read.js';
import { clothOn, type Sheet } from './sheet.js';

/**
 * How the frame answers natural warp as it stood when it was read: without cloth, at the pull that was read, or at the
 * planned one.
 */
export interface FrameAsRead {
  readonly pull: PullRead | null;
  /** Share of the working pull it stood under: 0 without cloth, 1 when no reading tells. */
  readonly pull_share: number;
  /** Null when the flat frame does not hold at that pull. */
  readonly influence: readonly Influence[] | null;
  readonly terms: readonly WarpTerm[] | null;
}

/** Solves the frame anew where it did not stand under the working pull. */
export function frameAsRead(model: Model, solution: Solution, sheet: Sheet): FrameAsRead {
  const pull = pullRead(model, sheet);
  const pull_share = clothOn(sheet) ? (pull?.value ?? 1) : 0;
  const influence =
    pull_share === 1
      ? solution.influence
      : solveInfluence(model.shape, { x: model.working.x * pull_share, y: model.working.y * pull_share });
  return {
    pull,
    pull_share,
    influence,
    terms: influence === null ? null : warpTerms(barWarps(model, boardState(model)), influence),
  };
}
