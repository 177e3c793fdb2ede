import type { Influence } from '../model/frame-results.js';
import type { Model } from '../model/model.js';
import { boardState } from '../risk/assess.js';
import type { CausePart } from '../risk/causes.js';
import { barWarps } from '../risk/spread.js';
import { warpTerms } from '../risk/terms.js';
import { liftPerTilt_mm_per_rad } from '../what-if/tilt-lift.js';
import type { CauseKind } from './diagnose.js';
import { readingError } from './sheet.js';

/** One independent part of the lift that was read: normal, mm. */
export interface LiftPart {
  readonly kind: CauseKind;
  /** Bar, crossbar or corner it comes from; empty for the reading. */
  readonly member: string;
  readonly mean: number;
  readonly variance: number;
  /** Lift it makes at the planned pull over the one it makes as the frame was read. */
  readonly at_planned_pull: number;
}

/**
 * Lean of a saw cut, one standard deviation, degrees (`proposal`): what a saw set by eye or by its own scale leaves.
 */
export const cut_lean_sd_deg = 0.2;

/**
 * Every independent part of a lift that was read. Boards: as chosen (with their mean), reading error of measured
 * boards, drying after choosing.
 * Corners: cuts that lean, four joints of two cuts each, wider when the corners are already known to be off square by
 * `corner_off_rad`. The reading itself.
 * `influence` is that of the frame as it was read, `planned` that at the planned pull (null: the same).
 */
export function liftParts(
  model: Model,
  influence: readonly Influence[],
  planned: readonly Influence[] | null,
  corner_off_rad: number,
  error_mm: number = readingError.table_mm,
): readonly LiftPart[] {
  const state = boardState(model);
  const terms = warpTerms(barWarps(model, state), influence);
  const dry = barWarps(model, { ...state, drying_pct: 0 });
  const plannedLift = new Map(
    (planned ?? influence).map(({ member, kind, corner_lift }) => [`${member} ${kind}`, corner_lift * 1e-3]),
  );
  const boards = terms.flatMap(({ warp, lift }, i): LiftPart[] => {
    if (lift === 0) return [];
    const chosen_mean = dry[i]!.mean_per_m;
    const at_planned_pull = plannedLift.get(`${warp.member} ${warp.kind}`)! / lift;
    const part = (of: CausePart, mean_per_m: number): LiftPart => ({
      kind: `${warp.from}-${of}`,
      member: warp.member,
      mean: lift * mean_per_m,
      variance: lift ** 2 * warp[`${of}_var`],
      at_planned_pull,
    });
    return [
      part('chosen', warp.chosen_var > 0 ? chosen_mean : 0),
      part('reading', warp.chosen_var > 0 ? 0 : chosen_mean),
      part('drying', warp.mean_per_m - chosen_mean),
    ];
  });
  const lean_rad = Math.max((Math.SQRT2 * cut_lean_sd_deg * Math.PI) / 180, corner_off_rad);
  const perTilt = liftPerTilt_mm_per_rad(model, influence);
  const perTiltPlanned = liftPerTilt_mm_per_rad(model, planned ?? influence);
  const corners = (Object.keys(perTilt) as (keyof typeof perTilt)[]).map((corner): LiftPart => ({
    kind: 'corners',
    member: corner,
    mean: 0,
    variance: (perTilt[corner] * lean_rad) ** 2,
    at_planned_pull: perTiltPlanned[corner] / perTilt[corner],
  }));
  return [...boards, ...corners, { kind: 'reading', member: '', mean: 0, variance: error_mm ** 2, at_planned_pull: 1 }];
}
