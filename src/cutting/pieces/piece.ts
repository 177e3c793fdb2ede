import type { About, BarName } from '../../base/names.js';
import type { Lay, PlanCorners } from '../../plan/plan.js';

/**
 * Where a half-lap is cut out of a piece: from its left or bottom end, mm. Half the piece's depth is taken away there.
 */
export interface Lap {
  readonly from_mm: number;
  readonly width_mm: number;
  readonly depth_mm: number;
}

/** One piece as it leaves the board. */
export interface Piece {
  /** `T`, `B`, `L`, `R`, with the ply: `T1` (outer or front), `T2`; `C1` … crossbars; `TL` … braces by corner. */
  readonly label: string;
  readonly part: 'bar' | 'crossbar' | 'brace';
  /** `top`, `crossbar-1`, or the corner of a brace. */
  readonly about: About;
  /** Which way it runs in the frame; a brace runs `across` its corner. */
  readonly runs: 'upright' | 'level' | 'across';
  /** 1 = outer (side by side) or front (front to back). */
  readonly ply: number;
  /** Shelf key. */
  readonly stock: string;
  readonly lay: Lay;
  /** How both ends leave the saw when cut from the board. */
  readonly ends: 'square' | 'mitre';
  /** The side of the board a mitre runs across, mm; 0 for square ends. Short point = long point − 2 × this. */
  readonly across_mm: number;
  /** Length to cut, on a mark of the shop tape: the long point of a mitred piece. */
  readonly cut_mm: number;
  /** Short point of a mitred piece; the same as `cut_mm` for square ends. */
  readonly short_mm: number;
  /** Length the geometry asks for, before rounding and without trim. */
  readonly exact_mm: number;
  /**
   * A blank is glued or screwed to its other plies first and then cut as one piece to this; null when the piece is
   * finished as it leaves the board.
   */
  readonly later: { readonly ends: 'square' | 'mitre'; readonly cut_mm: number; readonly short_mm: number } | null;
  readonly laps: readonly Lap[];
  /** Which side faces up at the saw, in words. */
  readonly face_up: string;
  /** What else to know, in words, one after the other: a small letter first, no full stop last. */
  readonly notes: readonly string[];
}

/**
 * One strip of a raised lip, mitred at both ends to run round the front of the frame; cut from strips, not from boards.
 */
export interface LipPiece {
  /** `lip T`, `lip B`, `lip L`, `lip R`. */
  readonly label: string;
  readonly about: BarName;
  /** Long point to long point: the side of the face on a mark of the tape. */
  readonly cut_mm: number;
}

/** All pieces of one frame, with the sizes they were made from. */
export interface PieceList {
  readonly pieces: readonly Piece[];
  /** Empty where the bars have no lip. */
  readonly lips: readonly LipPiece[];
  /** So many frames like this are made. */
  readonly frames: number;
  readonly mark_mm: number;
  /** Built size of the bars in the plane of the cloth. */
  readonly w_mm: number;
  /**
   * Between the bars, in whole marks of the tape: as long as a crossbar is cut, and as the short side of a mitred bar.
   */
  readonly opening: { readonly width_mm: number; readonly height_mm: number };
  /** Width of a bar as the tape shows it: opening and two bars make up the face. */
  readonly bar_mm: number;
  readonly face: { readonly width_mm: number; readonly height_mm: number };
  readonly corner: PlanCorners['cut'];
  /** What cannot be cut as asked, a sentence each. */
  readonly faults: readonly string[];
}
