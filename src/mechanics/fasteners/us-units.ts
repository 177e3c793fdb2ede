/** Exact conversions for formulas whose sources print pounds and inches. */
export const MM_PER_IN = 25.4;
export const N_PER_LB = 4.4482216152605;
/** lb/in → N/mm. */
export const N_PER_MM_PER_LB_PER_IN = N_PER_LB / MM_PER_IN;
/** psi → MPa. */
export const MPA_PER_PSI = N_PER_LB / MM_PER_IN ** 2;
