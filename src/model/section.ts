import { rememberedBy } from '../base/remembered.js';
import type { Section } from './frame-shape.js';

/** Rectangles kept: a shelf has few sizes, and bars are built of few boards. */
const most_kept = 100;

/**
 * Saint-Venant torsion constant of a solid rectangle, mm⁴, by the classical series.
 * Sides in any order; source `saint-venant` (checked against the printed table in the tests).
 */
export const torsionConstant = rememberedBy(
  (side_1_mm: number, side_2_mm: number) => `${side_1_mm} ${side_2_mm}`,
  sumTorsion,
  most_kept,
);

function sumTorsion(side_1_mm: number, side_2_mm: number): number {
  const p = Math.max(side_1_mm, side_2_mm);
  const q = Math.min(side_1_mm, side_2_mm);
  let sum = 0;
  for (let n = 1; n <= 39; n += 2) sum += Math.tanh((n * Math.PI * p) / (2 * q)) / n ** 5;
  return p * q ** 3 * (1 / 3 - (64 / Math.PI ** 5) * (q / p) * sum);
}

/** Section of one solid rectangle: `w` in the plane of the cloth, `d` at right angles to it, mm; E and G in MPa. */
export function solidSection(w_mm: number, d_mm: number, E_MPa: number, G_MPa: number): Section {
  return {
    w_mm,
    d_mm,
    A_mm2: w_mm * d_mm,
    I_plane_mm4: (d_mm * w_mm ** 3) / 12,
    I_out_mm4: (w_mm * d_mm ** 3) / 12,
    J_mm4: torsionConstant(w_mm, d_mm),
    E_MPa,
    G_MPa,
  };
}
