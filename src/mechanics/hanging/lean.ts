/** A picture leaning on its hook and its bottom edge. Lengths in mm. */
export interface LeanCase {
  readonly height_mm: number;
  /** Rings below the top edge, and hook above the rings. */
  readonly rings_below_top_mm: number;
  readonly rise_mm: number;
  /**
   * How far the hook holds the backs of the bars off the wall at the height of the hook: hook stand-off less what the
   * wire lies in front of the backs.
   */
  readonly standoff_mm: number;
  /**
   * How far plates or a crossbar behind the bars hold their lower edge off the wall; 0 where the bars themselves meet
   * it.
   */
  readonly out_mm: number;
  /** Centre of gravity in front of the backs of the bars. */
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
 * Lean of a hanging picture: moments about the bottom edge, which rests on the wall, itself or by what stands out
 * behind it. With h = height − rings below top + rise, s = standoff − out, 0 or more:
 * sin α = s/h; top stand-off = height sin α + out cos α; hook pull-out = W ((cg + out) cos α + height/2 sin α − s)/(h
 * cos α).
 * Source: statics (physics). Null when the hook would be at or below the bottom edge.
 */
export function lean(c: LeanCase): Lean | null {
  const h = c.height_mm - c.rings_below_top_mm + c.rise_mm;
  const s = Math.max(0, c.standoff_mm - c.out_mm);
  if (!(h > s)) return null;
  const alpha = Math.asin(s / h);
  const pull =
    (c.weight_N * ((c.cg_mm + c.out_mm) * Math.cos(alpha) + (c.height_mm / 2) * Math.sin(alpha) - s)) /
    (h * Math.cos(alpha));
  return {
    angle_deg: (alpha * 180) / Math.PI,
    top_standoff_mm: c.height_mm * Math.sin(alpha) + c.out_mm * Math.cos(alpha),
    pull_out_N: Math.max(0, pull),
  };
}
