import { mustBePositive } from '../../fit/span.js';

/**
 * Change of pull in the middle when two opposite bars bow inward by the given amounts, N/m; negative = loss.
 * ΔT = −E·t·(δ₁ + δ₂)/L with E·t in N per m of width, lengths in mm. The cloth is taken as a strip; crossways shrinking
 * is left out.
 */
export function pullChangeFromBow_N_per_m(
  stiffness_N_per_m: number,
  bow1_mm: number,
  bow2_mm: number,
  length_mm: number,
): number {
  mustBePositive({ stiffness: stiffness_N_per_m, length: length_mm });
  return (-stiffness_N_per_m * (bow1_mm + bow2_mm)) / length_mm;
}

/**
 * Farthest both ends of a length may be keyed out before a stretch limit is reached, mm each: ε L/2. Ground: a few
 * thousandths, source janas-2022.
 */
export function keyTravel_mm(strain_limit: number, length_mm: number): number {
  return (strain_limit * length_mm) / 2;
}

/**
 * Pull that builds up when a shrinkage (fraction) is held back by the frame, N/m: E·t · ε. An estimate: real cloth
 * creeps and its stiffness changes when wet.
 */
export function pullFromHeldShrinkage_N_per_m(stiffness_N_per_m: number, shrinkage: number): number {
  return stiffness_N_per_m * shrinkage;
}
