import { MM_PER_IN, MPA_PER_PSI } from './us-units.js';

/**
 * Bending yield strength of a common wire nail, MPa, by its diameter: 100 000 psi up to 0.142 in, then 90 000, 80 000 and 70 000 psi to 0.273 in.
 * Thinner than the table's 0.099 in (brads) takes its first row. Source: nds-2018 Table I1.
 */
export function nailBendingYield_MPa(diameter_mm: number): number {
  const D = diameter_mm / MM_PER_IN;
  const psi = D <= 0.142 ? 100_000 : D <= 0.177 ? 90_000 : D <= 0.236 ? 80_000 : 70_000;
  return psi * MPA_PER_PSI;
}

/** Bending yield strength of a wood screw, MPa, by its number: 100 000 psi to No. 6, 90 000 to No. 9, 80 000 to No. 12, 70 000 above. Source: nds-2018-memory. */
export function screwBendingYield_MPa(number: number): number {
  const psi = number <= 6 ? 100_000 : number <= 9 ? 90_000 : number <= 12 ? 80_000 : 70_000;
  return psi * MPA_PER_PSI;
}
