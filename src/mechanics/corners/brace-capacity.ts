import type { Model } from '../../model/model.js';
import { braceScrews } from '../../model/brace-layout.js';
import { rowSquares_mm2 } from '../../model/plate-stiffness.js';
import { planBraceScrews } from '../fasteners/brace-fastening.js';

/** Shear stress that plywood's face veneers bear across their grain under glue, MPa (proposal). */
export const PLY_ROLLING_MPA = 1;

/**
 * In-plane moment, N·mm, that a gusset glued to one bar over `b` × `h` carries: polar modulus b h √(b² + h²)/6 times
 * the bond.
 */
export function gluedPatchMoment_Nmm(b_mm: number, h_mm: number, bond_MPa: number): number {
  return ((b_mm * h_mm * Math.hypot(b_mm, h_mm)) / 6) * bond_MPa;
}

/**
 * In-plane corner moment that the brace, gusset or angle could carry alone, N·mm; 0 when there is none.
 * Timber: the force in the brace acts at leg/√2 from the corner; its mitred ends hold by glue (butt bond × end face w√2
 * × the shallower depth) or by screws across their
 * length (the force meets the bar at 45°, so its sliding part is F/√2), whichever is stronger.
 * Gusset: glued patch on each bar from the mitre to the end of the leg, or its screws about their middle, Z Σ r²/r of
 * the farthest. Angle: the same of the screws in a leg.
 * Source: statics with the shelf's bond (proposal) and nds-2018 lateral values. `duration` is the load-duration factor
 * on the screws.
 */
export function braceMoment_Nmm(model: Model, duration: number): number {
  const { corners } = model.plan;
  const brace = corners.brace;
  if (!brace) return 0;
  const { w_mm, d_mm } = model.bars.top.section;
  const Z = (planBraceScrews(model)?.lateral_N ?? 0) * duration;
  const row = braceScrews(model.plan, model.shelf, model.bars.top.section);
  const glued = corners.glue !== null;
  const timber = model.braces[0];
  if (timber) {
    const { w_mm: wb, d_mm: db } = timber.section;
    const glue_N = glued ? model.shelf.joints.bond_MPa.butt * wb * Math.SQRT2 * Math.min(db, d_mm) : 0;
    return (Math.max(glue_N, Math.SQRT2 * (row?.per_bar ?? 0) * Z) * brace.leg_mm) / Math.SQRT2;
  }
  const farthest_mm = row === null ? 0 : ((row.per_bar - 1) * row.spacing_mm) / 2;
  const screws =
    row === null || farthest_mm === 0 ? 0 : (Z * rowSquares_mm2(row.per_bar, row.spacing_mm)) / farthest_mm;
  const glue =
    glued && brace.kind === 'ply-gusset'
      ? gluedPatchMoment_Nmm(w_mm, Math.max(0, brace.leg_mm - w_mm / 2), PLY_ROLLING_MPA)
      : 0;
  return Math.max(glue, screws);
}
