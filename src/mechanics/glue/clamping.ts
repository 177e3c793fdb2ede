import { MM_PER_IN, MPA_PER_PSI } from '../fasteners/us-units.js';

/** Clamps stand 8 to 12 in apart and 1.5 to 2 in from the ends; the middle of both is taken. Source: glue-guide. */
export const CLAMP_PITCH_MM = 10 * MM_PER_IN;
export const CLAMP_FROM_END_MM = 1.75 * MM_PER_IN;

/** Clamps for one blank at one go. */
export function clampsFor(length_mm: number): number {
  const run = length_mm - 2 * CLAMP_FROM_END_MM;
  return run <= 0 ? 1 : Math.ceil(run / CLAMP_PITCH_MM - 1e-9) + 1;
}

/** Clamp pressure by density class, MPa: softwood (G up to 0.5) 100–150 psi, medium (to 0.6) 150–200, dense 200–300. Source: glue-guide; class limits proposal. */
export function clampPressure_MPa(G: number): { readonly low: number; readonly high: number } {
  const [low, high] = G <= 0.5 ? [100, 150] : G <= 0.6 ? [150, 200] : [200, 300];
  return { low: low * MPA_PER_PSI, high: high * MPA_PER_PSI };
}
