/** A picture leaning on its hook and its bottom edge. Lengths in mm. */
export interface LeanCase {
  readonly height_mm: number;
  /** Rings below the top edge, and hook above the rings. */
  readonly rings_below_top_mm: number;
  readonly rise_mm: number;
  /** How far the hook holds the back of the frame off the wall at the height of the hook: hook stand-off less what the wire lies in front of the back; 0 or more. */
  readonly standoff_mm: number;
  /** Centre of gravity in front of the back. */
  readonly cg_mm: number;
  readonly weight_N: number;
}

export interface Lean {
  readonly angle_deg: number;
  readonly top_standoff_mm: number;
  /** Pull on the hook away from the wall, N (0 when the frame presses back). */
  readonly pull_out_N: number;
}

/**
 * Lean of a hanging picture: moments about the bottom edge, which rests on the wall. With h = height − rings below top + rise:
 * sin α = standoff/h; top stand-off = height sin α; hook pull-out = W (cg cos α + height/2 sin α − standoff)/(h cos α).
 * Source: statics (physics). Null when the hook would be at or below the bottom edge.
 */
export function lean(c: LeanCase): Lean | null {
  const h = c.height_mm - c.rings_below_top_mm + c.rise_mm;
  if (!(h > c.standoff_mm)) return null;
  const alpha = Math.asin(c.standoff_mm / h);
  const pull = (c.weight_N * (c.cg_mm * Math.cos(alpha) + (c.height_mm / 2) * Math.sin(alpha) - c.standoff_mm)) / (h * Math.cos(alpha));
  return { angle_deg: (alpha * 180) / Math.PI, top_standoff_mm: c.height_mm * Math.sin(alpha), pull_out_N: Math.max(0, pull) };
}
