/**
 * Gap at one end of a glued mitre when the bars shrink more across than along, mm: bar width × √2 × (s_across −
 * s_along).
 * Shrinkages as fractions. Positive: drying, open at the inner (heel) end; negative: swelling, open at the outer end.
 * Each mitre face turns by half the angle.
 */
export function mitreGap_mm(bar_width_mm: number, shrink_across: number, shrink_along: number): number {
  return bar_width_mm * Math.SQRT2 * mitreAngle_rad(shrink_across, shrink_along);
}

/** Error of the corner's angle from that shrinkage, rad. */
export function mitreAngle_rad(shrink_across: number, shrink_along: number): number {
  return shrink_across - shrink_along;
}
