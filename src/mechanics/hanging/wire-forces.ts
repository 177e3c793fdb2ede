/** What a loaded wire does, N. */
export interface WireForces {
  readonly tension_N: number;
  /** Inward pull on each side bar. */
  readonly inward_N: number;
  /** Upward pull at each ring. */
  readonly lift_N: number;
  /** Load on one hook. */
  readonly hook_N: number;
}

/**
 * Forces of a wire at `angle_deg` to the horizontal carrying `weight_N`: T = W/(2 sin θ), inward H = W/(2 tan θ); both
 * hold for one hook and for two, since each
 * ring carries half the weight either way. One hook carries W. Each of two hooks carries the resultant of a slanting
 * and a level wire, 2 T sin(θ/2).
 * Source: statics (physics). The angle must be above 0.
 */
export function wireForces(weight_N: number, angle_deg: number, hooks: number): WireForces {
  const theta = (angle_deg * Math.PI) / 180;
  const tension_N = weight_N / (2 * Math.sin(theta));
  return {
    tension_N,
    inward_N: weight_N / (2 * Math.tan(theta)),
    lift_N: weight_N / 2,
    hook_N: hooks >= 2 ? 2 * tension_N * Math.sin(theta / 2) : weight_N,
  };
}
