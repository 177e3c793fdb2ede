import { keyedSizes } from '../../fit/keyed-sizes.js';
import type { CornerStatics } from '../../model/frame-results.js';
import { mitreDemand } from './corner-demand.js';

/** Bending a softwood tongue bears for good, MPa: 14 (C14, EN 338) times 0.8 over 1.3 (medium load, EN 1995-1-1). */
const TONGUE_BENDING_MPA = (14 * 0.8) / 1.3;
/** Pressure that a mitred shoulder bears, at 45 degrees to the grain, MPa (proposal). */
const SHOULDER_MPA = 3;

/**
 * Demand over capacity of a dry tongue in its slot. The cloth pulls at the front edge and presses the front shoulder
 * (w√2 long, a third of the depth thick) shut: its thrust there, a third of the
 * depth before the middle, carries that much of the out-of-plane moment; the tongue bends under the rest. What little
 * moment there is in the plane presses the shoulders at one end. A
 * corner that is pulled open leaves all of it to the tongue. Source: statics (physics section 14), strengths as stated.
 */
export function tongueUse(corner: CornerStatics, w_mm: number, d_mm: number): number {
  const { tongue_mm } = keyedSizes(w_mm, d_mm);
  const { normal_N, in_plane_Nmm, out_Nmm } = mitreDemand(corner);
  const long_mm = w_mm * Math.SQRT2;
  const thrust_N = Math.max(0, -normal_N);
  const bending_MPa = (6 * Math.max(0, out_Nmm - (thrust_N * d_mm) / 3)) / (long_mm * tongue_mm ** 2);
  const pressed_MPa = thrust_N / (long_mm * tongue_mm) + (6 * in_plane_Nmm) / (2 * tongue_mm * long_mm ** 2);
  return Math.max(bending_MPa / TONGUE_BENDING_MPA, pressed_MPa / SHOULDER_MPA);
}
