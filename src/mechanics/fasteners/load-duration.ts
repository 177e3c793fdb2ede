/**
 * Load-duration factors on design values of wood fastenings: lasting (a hanging picture), normal (cloth at its peak), a
 * knock. Source: nds-2018-memory.
 */
export const DURATION = { permanent: 0.9, normal: 1, knock: 1.6 } as const;
/** Lateral design value of a fastening in end grain, share of side grain. Source: nds-2018-memory. */
export const END_GRAIN_LATERAL = 0.67;
