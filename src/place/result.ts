import type { CutPlan } from '../cutting/boards/purchase.js';
import type { Pile, PileBoard } from '../pile/pile.js';
import type { Stretch } from '../pile/stretches.js';
import type { Plan, PlanBoard } from '../plan/plan.js';
import type { NoWarp } from '../risk/assess.js';
import type { Reading } from '../risk/readings.js';
import type { Slot } from './frame.js';
import type { Luck } from './luck.js';
import type { Lie } from './turning.js';

/** One piece and the board it is cut from. */
export interface Place {
  readonly slot: Slot;
  readonly board: PileBoard;
  /** Where the piece begins on its board, from the marked end. */
  readonly from_mm: number;
  /** What the saw takes beside it along the board. */
  readonly kerf_mm: number;
  readonly lie: Lie;
}

/** Corner lift of one frame as its boards are placed. */
export interface PlacedLift {
  readonly mean_mm: number;
  readonly sd_mm: number;
  /** Nine in ten lift by less, whichever way. */
  readonly p90_mm: number;
  readonly chance: number;
  readonly limit_mm: number;
}

/** One frame with its boards. */
export interface PlacedFrame {
  readonly plan: Plan;
  /** Which of the plan's frames, from 1. */
  readonly copy: number;
  readonly places: readonly Place[];
  /** Pieces for which the pile has no board. */
  readonly missing: readonly Slot[];
  /** The boards as the plan would write them. */
  readonly boards: readonly PlanBoard[];
  /** Null when nothing can be said; `reason` then says why. */
  readonly lift: PlacedLift | null;
  readonly reason: NoWarp | null;
  /** No more than this is the chance that a bar bows too far. */
  readonly bow_chance: number | null;
  readonly luck: Luck | null;
  /** Readings that would settle most of what is still open, the most telling first. */
  readonly readings: readonly Reading[];
}

/** A board, or what is left of one, that goes back on the rack. */
export interface LeftBoard {
  readonly board: PileBoard;
  readonly left: readonly Stretch[];
  /** Whether nothing is cut from it. */
  readonly whole: boolean;
  /** A sentence; empty for the rest of a board that was used. */
  readonly why: string;
}

/** The answer for a pile and one or several plans. */
export interface PlacedPile {
  readonly pile: Pile;
  readonly frames: readonly PlacedFrame[];
  /** Chances of a lifted corner and of bowed bars added up over all frames, and the least that any placing can have. */
  readonly aim: number;
  readonly bound: number;
  readonly proven: boolean;
  readonly left: readonly LeftBoard[];
  /** Shelf keys of those kinds in the pile that are as thick as wide: none of their faces is the wide one. */
  readonly square: readonly string[];
  /** What to buy for the pieces that find no board; null when there are none. */
  readonly buy: CutPlan | null;
}
