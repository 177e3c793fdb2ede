/**
 * Standard acceleration of free fall, the weight of a mass in N per kg: 9.80665 exactly. Source: iso-80000-3 (fixed by
 * the third CGPM, 1901).
 */
export const GRAVITY_N_PER_KG = 9.80665;
