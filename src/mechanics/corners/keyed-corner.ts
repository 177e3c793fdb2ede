import { keyedSizes } from '../../fit/keyed-sizes.js';
import type { CornerStatics } from '../../model/frame-results.js';
import { mitreDemand } from './corner-demand.js';

/** Bending a softwood tongue bears for good, MPa: 14 (C14, EN 338) times 0.8 over 1.3 (medium load, EN 1995-1-1). */
const TONGUE_BENDING_MPA = (14 * 0.8) / 1.3;
/** Pressure that the shoulders bear along and across the grain at 45 degrees, MPa (proposal). */
const SHOULDER_MPA = 3;

/**
 * Demand over capacity of a dry tongue in its slot. Out-of-plane moment and torque together bend the tongue, w wide and a third of the depth thick. What little moment the joint
 * carries in the plane presses the mitred shoulders together at one end (they are w√2 long and two thirds of the depth wide, a triangle over half of them); the cloth's pull presses them besides.
 * Source: statics (physics section 14), strengths as stated.
 */
export function tongueUse(corner: CornerStatics, w_mm: number, d_mm: number): number {
  const { tongue_mm } = keyedSizes(w_mm, d_mm);
  const { normal_N, in_plane_Nmm } = mitreDemand(corner);
  const bending_MPa = (6 * (Math.abs(corner.out_moment_Nmm) + Math.abs(corner.torque_Nmm))) / (w_mm * tongue_mm ** 2);
  const [long_mm, wide_mm] = [w_mm * Math.SQRT2, d_mm - tongue_mm];
  const pressed_MPa = Math.max(0, -normal_N) / (long_mm * wide_mm) + (6 * in_plane_Nmm) / (wide_mm * long_mm ** 2);
  return Math.max(bending_MPa / TONGUE_BENDING_MPA, pressed_MPa / SHOULDER_MPA);
}
