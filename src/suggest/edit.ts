import type { Choosing } from '../base/names.js';
import type { Plan, PlanBars, PlanBrace, PlanCrossbar } from '../plan/plan.js';

/** A change that a person would make to a plan, in words and as data. Absent fields stay as they are. */
export interface Edit {
  /** As advice, such as `Turn the bars on edge.` */
  readonly words: string;
  readonly bars?: Partial<Pick<PlanBars, 'stock' | 'lay' | 'plies' | 'stack' | 'bond' | 'pairing'>>;
  readonly crossbars?: readonly PlanCrossbar[];
  readonly brace?: PlanBrace | null;
  readonly chosen?: Choosing;
  /** Moisture after waiting for the boards to settle. */
  readonly moisture_pct?: number;
  readonly hang?: Partial<Plan['hang']>;
}

/** Screws that a pair of boards gets when the plan names none: the reader's own default. */
export const usualPlyScrews: NonNullable<Plan['ply_screws']> = { use: 'screw-6x32', every_mm: 200, pilot_mm: null };

/** The plan with the change made. Pure; what the change makes impossible is found by the checks that follow. */
export function applyEdit(plan: Plan, edit: Edit): Plan {
  const bars = { ...plan.bars, ...edit.bars };
  const screwed = bars.plies > 1 && bars.bond.includes('screws');
  return {
    ...plan,
    bars,
    crossbars: edit.crossbars ?? plan.crossbars,
    corners: edit.brace === undefined ? plan.corners : { ...plan.corners, brace: edit.brace },
    ply_screws: screwed ? (plan.ply_screws ?? usualPlyScrews) : null,
    lumber: { ...plan.lumber, chosen: edit.chosen ?? plan.lumber.chosen, moisture_pct: edit.moisture_pct ?? plan.lumber.moisture_pct },
    hang: { ...plan.hang, ...edit.hang },
  };
}
