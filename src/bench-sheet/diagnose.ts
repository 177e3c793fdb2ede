import type { CornerName } from '../base/names.js';
import type { CausePart } from '../risk/causes.js';
import type { BoardWarp } from '../risk/ply-warp.js';

/** One likely cause of a lifted corner. */
export interface LikelyCause {
  /** In words: `twist of left and right as chosen`. */
  readonly name: string;
  readonly kind: CauseKind;
  /**
   * How much of the lift it is expected to make, mm, in the direction of the lift; all causes add up to the lift. Null
   * when only known to be at work.
   */
  readonly part_mm: number | null;
  /** What to do about it, in a sentence; empty when there is nothing to do. */
  readonly cure: string;
}

/** Sorts of causes: boards, the cut of the corners, the pull, the reading itself. */
export type CauseKind = 'past-critical' | 'pull' | 'corners' | 'reading' | 'rest' | `${BoardWarp}-${CausePart}`;

/** Why a corner stands up, most likely first. */
export interface Diagnosis {
  /** The lift that was read, mm, positive when top right or bottom left stands up. */
  readonly lift_mm: number;
  readonly lifted: CornerName;
  /** False when the sheet does not say which corner, and the likelier one was taken. */
  readonly corner_said: boolean;
  readonly causes: readonly LikelyCause[];
}
