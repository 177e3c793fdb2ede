import { MM_PER_IN, N_PER_MM_PER_LB_PER_IN } from './us-units.js';

/** Formulas printed with D in inches and the answer in lb per inch of thread, turned into N per mm with D in mm. */
const perMm = (lb_per_in: number): number => lb_per_in * N_PER_MM_PER_LB_PER_IN;

/**
 * Design withdrawal of a wood screw from side grain, N per mm of thread in the holding piece: 2850 G² D (lb/in).
 * `G` oven-dry specific gravity, `diameter_mm` the shank. Not for end grain. Source: nds-2018 eq. 12.2-2.
 */
export function screwWithdrawal_N_per_mm(G: number, diameter_mm: number): number {
  return perMm(2850 * G ** 2 * (diameter_mm / MM_PER_IN));
}
