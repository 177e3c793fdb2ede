/** Twist after drying, in the unit given: twist × (1 + 0.05 (M₁ − M₂)), moisture in percent. Source: twist-moisture-blog, a rule of thumb. */
export function twistAfterDrying(twist: number, from_pct: number, to_pct: number): number {
  return twist * (1 + 0.05 * (from_pct - to_pct));
}

/** Curvature when one edge shrinks more than the other, 1/m: difference of strain over the width (mm). */
export function curvatureFromGradient_per_m(strain_difference: number, width_mm: number): number {
  return (1000 * strain_difference) / width_mm;
}

/** Rise of an arc of given curvature above its chord, mm: κ L²/8; curvature in 1/m, length in mm. */
export function riseOfCurve_mm(curvature_per_m: number, length_mm: number): number {
  return (curvature_per_m * length_mm ** 2) / 8000;
}

/** Curvature of a board whose middle stands off its chord, 1/m: 8 δ/L²; rise and length in mm. */
export function curvatureFromRise_per_m(rise_mm: number, length_mm: number): number {
  return (8000 * rise_mm) / length_mm ** 2;
}

/** Cup of a flat-sawn face, mm: w² (ε_t − ε_r)/(8 R), R = distance from the pith; lengths in mm, strains as fractions. Ring-sector geometry, small angles. */
export function cup_mm(width_mm: number, tangential_strain: number, radial_strain: number, pith_distance_mm: number): number {
  return (width_mm ** 2 * (tangential_strain - radial_strain)) / (8 * pith_distance_mm);
}
