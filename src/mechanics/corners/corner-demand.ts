import type { CornerStatics } from '../../model/frame-results.js';
import type { EdgePull, FrameShape } from '../../model/frame-shape.js';

/** What the corner joint must carry, resolved onto a mitre face, N and mm. */
export interface FaceDemand {
  /** Across the face, tension positive; the pull of the cloth normally presses it shut. */
  readonly normal_N: number;
  /** Along the face. */
  readonly sliding_N: number;
  readonly in_plane_Nmm: number;
  /** Bending of the face out of the plane of the cloth, and twisting about its normal. */
  readonly out_Nmm: number;
  readonly twist_Nmm: number;
}

/**
 * Actions of a bar end turned into the axes of a 45° face. At a free corner the shear of one bar is the axial force of
 * the other, so both press or both pull together, as the
 * sign of N says (the cloth presses a bare corner shut; behind a brace it may be pulled open): normal ±(|N| + |V|)/√2,
 * sliding ||N| − |V||/√2. Out-of-plane moment and torque of unknown relative sign are taken as adding in bending, their
 * difference as twist.
 * Source: statics (physics).
 */
export function mitreDemand(corner: CornerStatics): FaceDemand {
  const { axial_N: N, shear_N: V, moment_Nmm, out_moment_Nmm: O, torque_Nmm: T } = corner;
  return {
    normal_N: ((N < 0 ? -1 : 1) * (Math.abs(N) + Math.abs(V))) / Math.SQRT2,
    sliding_N: Math.abs(Math.abs(N) - Math.abs(V)) / Math.SQRT2,
    in_plane_Nmm: Math.abs(moment_Nmm),
    out_Nmm: (Math.abs(O) + Math.abs(T)) / Math.SQRT2,
    twist_Nmm: Math.abs(Math.abs(O) - Math.abs(T)) / Math.SQRT2,
  };
}

/**
 * In-plane corner moment of the bare frame, rigid corners, no crossbars or braces, N·mm: (q_y L_x³/I_x + q_x
 * L_y³/I_y)/(12 (L_x/I_x + L_y/I_y)).
 * An upper bound of what a brace has to carry alone. Source: physics section 3.
 */
export function bareCornerMoment_Nmm(shape: FrameShape, pull: EdgePull): number {
  const { span_x_mm: Lx, span_y_mm: Ly } = shape;
  const Ix = (shape.bars.top.I_plane_mm4 + shape.bars.bottom.I_plane_mm4) / 2;
  const Iy = (shape.bars.left.I_plane_mm4 + shape.bars.right.I_plane_mm4) / 2;
  return ((pull.y * Lx ** 3) / Ix + (pull.x * Ly ** 3) / Iy) / (12 * (Lx / Ix + Ly / Iy));
}
