import type { BarForces } from '../model/frame-results.js';
import type { MemberBuild } from '../model/model.js';

/**
 * The largest stress in a bar, MPa, and where: in the wood between the corners, or in a half-lap, which leaves half the
 * depth.
 */
export interface BarStress {
  readonly bar_MPa: number;
  /** Null where the corners are not half-lapped. */
  readonly lap_MPa: number | null;
}

/**
 * Distance of the outermost fibre for bending out of the plane, mm: half of what bends as one. Plies front to back that
 * slip are taken at half the whole depth, on the safe side.
 */
function outFibre_mm({ section, bond, plies, stack, ply_d_mm }: MemberBuild): number {
  const loose = plies > 1 && (bond === 'none' || (bond === 'screws' && plies > 3));
  return (loose && stack === 'front-to-back' ? ply_d_mm : section.d_mm) / 2;
}

/**
 * Largest stress along a bar: axial force and both bendings, magnitudes added at each place. At the inner edge of a
 * half-lap, half a bar's width from the end of the centre line, half the depth
 * carries: twice the stress of axial force and in-plane bending, four times that of bending out of the plane; within
 * the lap the glued halves share. Source: statics (physics section 15).
 */
export function barStress(build: MemberBuild, forces: readonly BarForces[], lapped: boolean): BarStress {
  const { section, fibre_mm, span_mm } = build;
  const out_mm = outFibre_mm(build);
  const stress = ({ axial_N, plane_Nmm, out_Nmm }: BarForces, depth: number): number =>
    Math.abs(axial_N) / (section.A_mm2 * depth) +
    (Math.abs(plane_Nmm) * fibre_mm) / (section.I_plane_mm4 * depth) +
    (Math.abs(out_Nmm) * out_mm) / (section.I_out_mm4 * depth ** 2);
  const largest = (places: readonly BarForces[], depth: number): number => {
    let most = 0;
    for (const place of places) most = Math.max(most, stress(place, depth));
    return most;
  };
  const reach = section.w_mm / 2 / span_mm;
  return {
    bar_MPa: largest(forces, 1),
    lap_MPa: lapped ? largest([forcesAt(forces, reach), forcesAt(forces, 1 - reach)], 1 / 2) : null,
  };
}

/** Forces at a place between those that are known. */
function forcesAt(forces: readonly BarForces[], s: number): BarForces {
  const after = Math.max(
    1,
    forces.findIndex((place) => place.s >= s),
  );
  const [a, b] = [forces[after - 1] as BarForces, forces[after] as BarForces];
  const t = b.s === a.s ? 0 : (s - a.s) / (b.s - a.s);
  const between = (of: (place: BarForces) => number): number => of(a) + t * (of(b) - of(a));
  return {
    s,
    axial_N: between((f) => f.axial_N),
    plane_Nmm: between((f) => f.plane_Nmm),
    out_Nmm: between((f) => f.out_Nmm),
  };
}
