import { upToMark } from '../../base/tape.js';

/** What decides how large the cloth is cut; lengths in mm. */
export interface ClothCut {
  readonly face_width_mm: number;
  readonly face_height_mm: number;
  /** From the front edge (on top of the lip) to the back of the bar. */
  readonly depth_mm: number;
  /** Size of the bar in the plane of the cloth. */
  readonly bar_width_mm: number;
  readonly fixed_to: 'back' | 'edge';
  /** Hem beyond the line of staples. */
  readonly turn_mm: number;
  /** Spare cloth for the pliers, both ends together. */
  readonly grip_mm: number;
  /**
   * The finest mark of the tape it is cut by: the margin goes up to the next one, so that face and margins add up to
   * the cut.
   */
  readonly mark_mm: number;
}

/**
 * Cloth beyond the face at one side, mm, up to the next mark of the tape: depth + wrap + turn + half the grip; the wrap
 * is the bar's width when the cloth is fixed to the back, nothing when fixed to the edge.
 */
export function clothMargin_mm(cut: ClothCut): number {
  return upToMark(cut.depth_mm + clothWrap_mm(cut) + cut.turn_mm + cut.grip_mm / 2, cut.mark_mm);
}

/** Cloth that lies on the back of the bar, mm. */
export const clothWrap_mm = (cut: ClothCut): number => (cut.fixed_to === 'back' ? cut.bar_width_mm : 0);

/** Size to cut the cloth, mm: face + 2 (depth + wrap + turn) + grip, each way. Common practice. */
export function clothCutSize(cut: ClothCut): { readonly width_mm: number; readonly height_mm: number } {
  const margin_mm = clothMargin_mm(cut);
  return { width_mm: cut.face_width_mm + 2 * margin_mm, height_mm: cut.face_height_mm + 2 * margin_mm };
}

/**
 * How much a roll is too narrow, mm; zero or less when the cloth fits. The long threads of the roll run along the
 * longer bars, so the shorter cut side lies
 * across the roll; a square may lie either way, which comes to the same. Cloth is never joined.
 */
export function rollShort_mm(cut_width_mm: number, cut_height_mm: number, roll_mm: number): number {
  return Math.min(cut_width_mm, cut_height_mm) - roll_mm;
}
