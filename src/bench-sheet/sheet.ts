import type { BarName, CornerName } from '../base/names.js';
import type { JointWay } from '../measure/measure-joint.js';
import type { PlanBoard } from '../plan/plan.js';

/** How far the work had come when the readings were taken. */
export const stages = ['before-cloth', 'after-cloth', 'after-ground', 'finished'] as const;
export type Stage = (typeof stages)[number];

/** What was measured of one frame while it was built. A reading that was not taken is null or missing. */
export interface Sheet {
  /** Name of the plan it was filled in for, as written; the user's own text. */
  readonly plan: string | null;
  readonly when: Stage;
  /** False when the sheet does not say and `after-cloth` was taken. */
  readonly when_said: boolean;
  /** Both diagonals over the outer corners: one way, and the other. */
  readonly diagonals_mm: readonly [number, number] | null;
  /** How far the fourth corner stands off a flat table, three being pressed down; and which corner that is. */
  readonly corner_lift_mm: number | null;
  readonly lifted: CornerName | null;
  /**
   * The same seen over two straight sticks, one along the left and one along the right bar: how far their far ends
   * disagree.
   */
  readonly winding_mm: number | null;
  /** Middle of a bar out of the plane of its corners; sign as one likes. */
  readonly bow_mm: Readonly<Partial<Record<BarName, number>>>;
  /** Middle of a bar out of straight in the plane of the cloth. */
  readonly inward_bow_mm: Readonly<Partial<Record<BarName, number>>>;
  /** Lowest note of the tapped cloth. */
  readonly tap_Hz: number | null;
  /** A weight on a square pad in the middle of the cloth lying level, and how far it sank. */
  /** A null pad is the one the report's own push test names. */
  readonly push: { readonly weight_g: number; readonly sag_mm: number; readonly pad_mm: number | null } | null;
  readonly weight_kg: number | null;
  /** Moisture of the boards. */
  readonly moisture_pct: number | null;
  /** Which of the plan's frames this is, where it asks for several; null when the sheet does not say. */
  readonly frame: number | null;
  /** Who built it; the user's own text. */
  readonly student: string | null;
  /** Which boards it is made of, and what was read of them. */
  readonly boards: readonly SheetBoard[];
  /** Corners glued beside the frame in the same way and loaded at the bench. */
  readonly test_joints: readonly TestJoint[];
}

/** One board of the frame: the mark it bears in the pile, and its readings; null where not said or read. */
export interface SheetBoard extends PlanBoard {
  readonly mark: string | null;
}

/** A corner with one leg clamped down and a weight hung on the other. */
export interface TestJoint {
  readonly way: JointWay;
  readonly weight_g: number;
  /** From the inside of the clamped leg to the weight. */
  readonly arm_mm: number;
  /** How far the free leg moved at the weight. */
  readonly moves_mm: number;
}

/** Whether the cloth was on. */
export const clothOn = (sheet: Sheet): boolean => sheet.when !== 'before-cloth';

/** Whether the ground was on. */
export const groundOn = (sheet: Sheet): boolean => sheet.when === 'after-ground' || sheet.when === 'finished';

/** Reading errors at the bench, one way (`practice`): what a reading may be off without anything being wrong. */
export const readingError = {
  tape_mm: 1,
  table_mm: 0.5,
  stick_mm: 1,
  string_mm: 0.5,
  note_Hz: 0.25,
  sag_mm: 0.5,
  meter_pct: 1,
} as const;
