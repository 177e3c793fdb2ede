import { atAngleToGrain } from './angle-to-grain.js';
import { MM_PER_IN, MPA_PER_PSI } from './us-units.js';

/** Bearing strength of mild steel plate under a thin fastening, MPa (61 850 psi). Source: nds-2018-memory. */
export const STEEL_BEARING_MPA = 61850 * MPA_PER_PSI;

/**
 * Dowel bearing strength of wood, MPa. Under 1/4 in: 16 600 G^1.84 psi in every direction. From 1/4 in: 11 200 G along
 * and
 * 6100 G^1.45/√D across the grain, and between them by the angle-to-grain equation.
 * Source: nds-2018 Table 12.3.3.
 */
export function dowelBearing_MPa(G: number, diameter_mm: number, angle_deg = 0): number {
  const D = diameter_mm / MM_PER_IN;
  if (D < 0.25) return 16600 * G ** 1.84 * MPA_PER_PSI;
  return atAngleToGrain(11200 * G * MPA_PER_PSI, ((6100 * G ** 1.45) / Math.sqrt(D)) * MPA_PER_PSI, angle_deg);
}
