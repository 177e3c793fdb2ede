import type { UnitSystem } from '../base/names.js';
import type { CutEnds } from '../shelf/shelf.js';

/** A knot or another bad place of a board, from its marked end, mm. */
export interface Knot {
  readonly from_mm: number;
  readonly to_mm: number;
}

/**
 * One board in hand. Three chalk marks fix how it lies: a letter on one face, a mark at one end, a mark on one edge.
 * Seen with the letter towards
 * you and the marked end on your left, the marked edge is the upper one. A reading that was not taken is null.
 */
export interface PileBoard {
  /** What is chalked on it; boards without a mark of their own are given one, such as `u1`. */
  readonly mark: string;
  /** Whether the mark is the person's own. */
  readonly marked: boolean;
  /** Shelf key. */
  readonly stock: string;
  readonly length_mm: number;
  /** Right-handed positive, whichever way the board is turned. */
  readonly twist_rad_per_m: number | null;
  /** Flatwise curvature, 1/m, positive where the marked face is the hollow one. */
  readonly bow_per_m: number | null;
  /** Edgewise curvature, 1/m, positive where the marked edge is the hollow one. */
  readonly crook_per_m: number | null;
  readonly knots: readonly Knot[];
  /**
   * Of a piece that is cut already, how its ends are: it is used as it is or not at all. Its long side is the marked
   * edge, or the marked face where it is mitred on edge. Null for boards that may be sawn.
   */
  readonly cut: CutEnds | null;
}

/** The boards in hand, each by itself; text fields are the user's own and untrusted. */
export interface Pile {
  readonly name: string;
  /** The system its first length is written in. */
  readonly units: UnitSystem;
  readonly boards: readonly PileBoard[];
}

/** Whether anything of its warp was read. */
export const isRead = ({ twist_rad_per_m, bow_per_m, crook_per_m }: PileBoard): boolean =>
  twist_rad_per_m !== null || bow_per_m !== null || crook_per_m !== null;
