import type { ClothPull } from '../../plan/plan.js';
import { mustBePositive, type ClothSpan } from '../../fit/span.js';

/**
 * Note of a stretched rectangle with `m` half-waves along the width and `n` along the height, fixed at all four edges.
 * f = ½ √((T_x m²/a² + T_y n²/b²) / σ), Hz; pull in N/m, moving mass (cloth and the air it carries) in kg/m².
 * Source: rayleigh. Throws RangeError for a pull or mass that is not above zero.
 */
export function membraneNote_Hz(span: ClothSpan, pull: ClothPull, mass_kg_per_m2: number, m = 1, n = 1): number {
  mustBePositive({
    width_mm: span.width_mm,
    height_mm: span.height_mm,
    x_N_per_m: pull.x_N_per_m,
    y_N_per_m: pull.y_N_per_m,
    mass_kg_per_m2,
  });
  return 0.5 * Math.sqrt(waveStiffness(span, pull, m, n) / mass_kg_per_m2);
}

/**
 * Pull (the one along the width; the other keeps `y_over_x`) of a cloth whose lowest note is known, N/m.
 * The inverse of {@link membraneNote_Hz} for one half-wave each way; for equal pull T = 4 f² σ / (1/a² + 1/b²). Source:
 * rayleigh.
 */
export function pullFromNote_N_per_m(span: ClothSpan, note_Hz: number, mass_kg_per_m2: number, y_over_x = 1): number {
  mustBePositive({
    width_mm: span.width_mm,
    height_mm: span.height_mm,
    note_Hz,
    mass_kg_per_m2,
    y_over_x,
  });
  return (4 * note_Hz ** 2 * mass_kg_per_m2) / waveStiffness(span, { x_N_per_m: 1, y_N_per_m: y_over_x }, 1, 1);
}

function waveStiffness(span: ClothSpan, pull: ClothPull, m: number, n: number): number {
  const a_m = span.width_mm / 1000;
  const b_m = span.height_mm / 1000;
  return pull.x_N_per_m * (m / a_m) ** 2 + pull.y_N_per_m * (n / b_m) ** 2;
}
