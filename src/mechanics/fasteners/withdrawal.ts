import { MM_PER_IN, N_PER_LB, N_PER_MM_PER_LB_PER_IN } from './us-units.js';

/** Formulas printed with D in inches and the answer in lb per inch of thread, turned into N per mm with D in mm. */
const perMm = (lb_per_in: number): number => lb_per_in * N_PER_MM_PER_LB_PER_IN;

/**
 * Design withdrawal of a wood screw from side grain, N per mm of thread in the holding piece: 2850 G² D (lb/in).
 * `G` oven-dry specific gravity, `diameter_mm` the shank. Not for end grain. Source: nds-2018 eq. 12.2-2.
 */
export function screwWithdrawal_N_per_mm(G: number, diameter_mm: number): number {
  return perMm(2850 * G ** 2 * (diameter_mm / MM_PER_IN));
}

/**
 * Design withdrawal of a nail from side grain, N per mm of penetration: 1380 G^2.5 D (lb/in). Nothing in end grain.
 * Source: nds-2018 eq. 12.2-3.
 */
export function nailWithdrawal_N_per_mm(G: number, diameter_mm: number): number {
  return perMm(1380 * G ** 2.5 * (diameter_mm / MM_PER_IN));
}

/** Design withdrawal of a lag screw from side grain, N per mm of thread: 1800 G^1.5 D^0.75 (lb/in). Source: nds-2018 eq. 12.2-1. */
export function lagWithdrawal_N_per_mm(G: number, diameter_mm: number): number {
  return perMm(1800 * G ** 1.5 * (diameter_mm / MM_PER_IN) ** 0.75);
}

/** Ultimate (breaking) withdrawal of a nail, N: 7850 G^2.5 D L (lb, in). Source: wood-handbook-2010 ch. 8. */
export function nailUltimate_N(G: number, diameter_mm: number, penetration_mm: number): number {
  return 7850 * G ** 2.5 * (diameter_mm / MM_PER_IN) * (penetration_mm / MM_PER_IN) * N_PER_LB;
}

/** Ultimate (breaking) withdrawal of a wood screw, N: 15 700 G² D L (lb, in). Source: wood-handbook-memory ch. 8. */
export function screwUltimate_N(G: number, diameter_mm: number, thread_mm: number): number {
  return 15700 * G ** 2 * (diameter_mm / MM_PER_IN) * (thread_mm / MM_PER_IN) * N_PER_LB;
}
