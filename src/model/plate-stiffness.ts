import type { BuiltSize } from '../plan/build-up.js';
import type { Plan } from '../plan/plan.js';
import type { Lumber, Shelf } from '../shelf/shelf.js';
import { braceScrews, GUSSET_MM } from './brace-layout.js';
import { slipModulus_N_per_mm } from './slip-modulus.js';

/** Shear stiffness of plywood through its thickness, which is what yields under a glue line, MPa (proposal). */
const PLY_SHEAR_MPA = 500;

/** Σ r² of `n` fastenings in a row `spacing` apart, about their middle, mm². */
export const rowSquares_mm2 = (n: number, spacing_mm: number): number => (spacing_mm ** 2 * n * (n ** 2 - 1)) / 12;

/** Polar moment of area of a rectangle about its middle, mm⁴. */
const polar_mm4 = (a_mm: number, b_mm: number): number => (a_mm * b_mm * (a_mm ** 2 + b_mm ** 2)) / 12;

/**
 * What a gusset or angle adds to a corner in the plane, N·mm per radian between its two bars, beside the corner's own
 * joint. On each bar K = Σ K_ser r² of its screws about
 * their middle (EN 1995-1-1 Table 7.1, steel on timber twice that), or of the glue line under a glued gusset where that
 * is stiffer; the two bars in series, so half of one.
 * 0 for a timber brace, which is an element of its own, and for a plate that neither screw nor glue holds.
 */
export function plateStiffness_Nmm_per_rad(plan: Plan, shelf: Shelf, stock: Lumber, bar: BuiltSize): number {
  const { brace, glue } = plan.corners;
  if (brace === null || brace.kind === 'timber') return 0;
  const held = braceScrews(plan, shelf, bar);
  const steel = brace.kind === 'steel-angle' ? 2 : 1;
  const screws =
    held === null
      ? 0
      : steel *
        slipModulus_N_per_mm(stock.density_kg_per_m3, held.screw.shank_mm) *
        rowSquares_mm2(held.per_bar, held.spacing_mm);
  if (brace.kind === 'steel-angle' || glue === null) return screws / 2;
  const sheet_mm = (brace.stock === null ? undefined : shelf.lumber[brace.stock]?.thickness_mm) ?? GUSSET_MM;
  const glued = (PLY_SHEAR_MPA / sheet_mm) * polar_mm4(bar.w_mm, Math.max(0, brace.leg_mm - bar.w_mm / 2));
  return Math.max(screws, glued) / 2;
}
