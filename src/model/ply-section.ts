import { jointedBeam, slipModulus_N_per_mm } from './gamma-method.js';
import type { Bond, Stack } from '../plan/plan.js';
import type { Section } from './frame-shape.js';
import { solidSection } from './section.js';

/** One bar as it is built from equal plies. */
export interface PlyBuild {
  readonly ply_w_mm: number;
  readonly ply_d_mm: number;
  readonly plies: number;
  readonly stack: Stack;
  readonly bond: Bond;
  readonly E_MPa: number;
  readonly G_MPa: number;
  readonly density_kg_per_m3: number;
  /** Length over which the screws work, mm. */
  readonly span_mm: number;
  /** Screws that hold the plies; null when there are none. */
  readonly screws: { readonly shank_mm: number; readonly every_mm: number } | null;
}

/** What a built-up bar is for the frame and for its own strength. */
export interface BuiltSection {
  readonly section: Section;
  /**
   * Times an in-plane moment over `I_plane`: the largest bending stress in any ply. Half the width of what bends as
   * one; for plies that slip, γ a + h/2.
   */
  readonly fibre_mm: number;
}

/**
 * Section of a built-up bar. Glued plies are one solid piece; two or three screwed plies work as the mechanically
 * jointed
 * beam of EN 1995-1-1 Annex B for bending across the interface; anything else is the plain sum of its plies.
 * `slip` is 1 for shape and 2/3 for stability (share of the slip modulus that counts).
 */
export function plySection(build: PlyBuild, slip: 1 | 0.6666666666666666): BuiltSection {
  const { plies, stack, bond, E_MPa, G_MPa, ply_w_mm, ply_d_mm } = build;
  const side = stack === 'side-by-side';
  const w_mm = side ? plies * ply_w_mm : ply_w_mm;
  const d_mm = side ? ply_d_mm : plies * ply_d_mm;
  const solid = solidSection(w_mm, d_mm, E_MPa, G_MPa);
  if (plies === 1 || bond === 'glue' || bond === 'glue+screws') return { section: solid, fibre_mm: w_mm / 2 };
  const ply = solidSection(ply_w_mm, ply_d_mm, E_MPa, G_MPa);
  const loose: Section = {
    ...solid,
    I_plane_mm4: plies * ply.I_plane_mm4,
    I_out_mm4: plies * ply.I_out_mm4,
    J_mm4: plies * ply.J_mm4,
  };
  if (bond === 'none' || build.screws === null || plies > 3) return { section: loose, fibre_mm: ply_w_mm / 2 };
  const across_mm = side ? ply_w_mm : ply_d_mm;
  const breadth_mm = side ? ply_d_mm : ply_w_mm;
  const { EI_Nmm2, gamma, a_mm } = jointedBeam({
    plies: Array.from({ length: plies }, () => ({ E_MPa, breadth_mm, height_mm: across_mm })),
    slip_N_per_mm: slip * slipModulus_N_per_mm(build.density_kg_per_m3, build.screws.shank_mm),
    spacing_mm: build.screws.every_mm,
    span_mm: build.span_mm,
  });
  if (!side) return { section: { ...loose, I_out_mm4: EI_Nmm2 / E_MPa }, fibre_mm: ply_w_mm / 2 };
  const fibre_mm = Math.max(...gamma.map((share, i) => share * Math.abs(a_mm[i] as number) + across_mm / 2));
  return { section: { ...loose, I_plane_mm4: EI_Nmm2 / E_MPa }, fibre_mm };
}
