import type { CornerStatics } from '../../model/frame-results.js';
import { mitreDemand } from './corner-demand.js';

/** Stresses on a glued face at its worst point, MPa: pulling it open (tension positive) and sliding. */
export interface FaceStress {
  readonly normal_MPa: number;
  readonly shear_MPa: number;
}

/**
 * Share of a bond used by normal and shear stress together: √(σ² + τ²)/bond, pressing not counted. Source: proposal
 * (quadratic interaction, one bond stress for both).
 */
export function bondUse(stress: FaceStress, bond_MPa: number): number {
  return Math.hypot(Math.max(0, stress.normal_MPa), stress.shear_MPa) / bond_MPa;
}

/**
 * Largest Saint-Venant shear stress of a rectangle p × q under torque T: T (3p + 1.8q)/(p² q²), p the longer side (a
 * handbook fit, recalled; within 4 % of the series).
 */
export function rectangleTwistStress_MPa(torque_Nmm: number, a_mm: number, b_mm: number): number {
  const p = Math.max(a_mm, b_mm);
  const q = Math.min(a_mm, b_mm);
  return (torque_Nmm * (3 * p + 1.8 * q)) / (p ** 2 * q ** 2);
}

/**
 * Elastic stress on a rectangular face `length` × `depth` (in the plane, out of it) from a normal force, sliding force,
 * two moments and a twist.
 */
function rectangleStress(length_mm: number, depth_mm: number, d: ReturnType<typeof mitreDemand>): FaceStress {
  const area = length_mm * depth_mm;
  const normal_MPa =
    d.normal_N / area +
    (6 * d.in_plane_Nmm) / (depth_mm * length_mm ** 2) +
    (6 * d.out_Nmm) / (length_mm * depth_mm ** 2);
  return { normal_MPa, shear_MPa: d.sliding_N / area + rectangleTwistStress_MPa(d.twist_Nmm, length_mm, depth_mm) };
}

/** A glued mitre: the face is w√2 long and d deep. Source: physics section 8, elastic section moduli. */
export function mitreStress(corner: CornerStatics, w_mm: number, d_mm: number): FaceStress {
  return rectangleStress(w_mm * Math.SQRT2, d_mm, mitreDemand(corner));
}

/**
 * A glued butt joint: one bar's end grain, w × d, on the other's side. Which bar ends is not known, so a pressing force
 * is the smaller, a pulling or sliding force the
 * larger of axial force and shear; out-of-plane moment bends the face and torque twists it, or the other way round, so
 * the larger of the two is used for both.
 */
export function buttStress(corner: CornerStatics, w_mm: number, d_mm: number): FaceStress {
  const { axial_N: N, shear_N: V, moment_Nmm, out_moment_Nmm: O, torque_Nmm: T } = corner;
  const larger = Math.max(Math.abs(O), Math.abs(T));
  const smaller = Math.min(Math.abs(O), Math.abs(T));
  return rectangleStress(w_mm, d_mm, {
    normal_N: N < 0 ? -Math.min(Math.abs(N), Math.abs(V)) : Math.max(N, Math.abs(V)),
    sliding_N: Math.max(Math.abs(N), Math.abs(V)),
    in_plane_Nmm: Math.abs(moment_Nmm),
    out_Nmm: larger,
    twist_Nmm: smaller,
  });
}

/**
 * A glued half-lap: two square faces w × w lie on each other. The in-plane moment twists the square in its own plane
 * (polar modulus, corner of the square),
 * axial force and shear slide it, out-of-plane moment and torque peel it.
 */
export function halfLapStress(corner: CornerStatics, w_mm: number): FaceStress {
  const { axial_N: N, shear_N: V, moment_Nmm, out_moment_Nmm: O, torque_Nmm: T } = corner;
  const polar = w_mm ** 3 / (3 * Math.SQRT2);
  return {
    normal_MPa: (6 * (Math.abs(O) + Math.abs(T))) / w_mm ** 3,
    shear_MPa: Math.abs(moment_Nmm) / polar + Math.hypot(N, V) / w_mm ** 2,
  };
}
