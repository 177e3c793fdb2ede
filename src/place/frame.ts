import type { FactSettings, Model, Solution } from '../model/model.js';
import type { Piece } from '../cutting/pieces/piece.js';

/**
 * One frame to be built out of the pile: its plan as a solved model, and what counts as a lifted corner and a bowed
 * bar.
 */
export interface Frame {
  readonly model: Model;
  readonly solution: Solution;
  readonly settings: FactSettings;
  /** Which of the plan's frames, from 1. */
  readonly copy: number;
}

/** One piece of one frame that wants a board: a ply of a bar or crossbar. */
export interface Slot {
  /** Index of its frame. */
  readonly frame: number;
  readonly piece: Piece;
  /** What is written on it: the piece's label, with plan number and copy where there are several frames. */
  readonly tag: string;
}
