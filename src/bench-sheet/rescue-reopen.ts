import { evenGive } from '../base/joint-give.js';
import type { CornerName } from '../base/names.js';
import type { FrameShape } from '../model/frame-shape.js';
import { solveInfluence, solveLiftCompliance } from '../solve/analyse-frame.js';
import { unpulledLift } from './rescue-cures.js';
import type { MeasuredTwist } from './rescue-twist.js';

/** Give of a corner that is sawn open: it hands on no moment. */
const open_widths = 1e7;

const bare = { x: 0, y: 0 } as const;

/** What opening one corner and gluing it again asks for. */
export interface Reopened {
  /** How far past flat the frame is held while the glue sets, mm: the other pair of corners up by so much. */
  readonly past_flat_mm: number;
  /** Lift that is left for every millimetre the frame is held wrong, mm/mm, without pull. */
  readonly left_per_mm: number;
}

/**
 * By how much to hold a frame past flat while an opened corner is glued again, so that it springs back to flat. Held at
 * −p the open frame, whose own lift is yₒ and stiffness kₒ,
 * asks the clamps for kₒ (yₒ + p); let go, the closed frame of stiffness k_c gives that back: p = yₒ kₒ/(k_c − kₒ).
 * Four equal bars, stiff in bending: kₒ = k_c/2, so p is the open frame's own lift.
 * Null where the frame stays as stiff with the corner open, because something else holds it.
 */
export function reopen(shape: FrameShape, twist: MeasuredTwist, corner: CornerName): Reopened | null {
  const open: FrameShape = { ...shape, corner_give: { ...shape.corner_give, [corner]: evenGive(open_widths) } };
  const influence = solveInfluence(open, bare);
  const [closed, opened] = [solveLiftCompliance(shape, bare), solveLiftCompliance(open, bare)];
  if (influence === null || closed === null || opened === null || opened < closed * 1.02) return null;
  const own_mm = unpulledLift(twist, { influence_unpulled: influence });
  return { past_flat_mm: (own_mm * closed) / (opened - closed), left_per_mm: 1 - closed / opened };
}
