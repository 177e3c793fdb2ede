/**
 * How the lift of a corner grows with the pull: y (1 − f) + β y³ = y₀, y₀ the lift at no pull. Below f = 1 and for small lifts this is
 * y₀/(1 − f); past it a frame turns to one side by itself. Source: physics section 13.
 */
export interface LiftCurve {
  /** f, the pull over the critical pull. */
  readonly pull_share: number;
  readonly beta_per_mm2: number;
}

/** Lift (mm) under pull of a frame that lifts by `unpulled_mm` without: on the side it leans to already, the one it settles on. */
export function liftFrom(curve: LiftCurve, unpulled_mm: number): number {
  const size = Math.abs(unpulled_mm);
  const { beta_per_mm2: beta } = curve;
  if (beta === 0) return unpulled_mm / (1 - curve.pull_share);
  // From above the curve is convex, so that Newton's steps come down onto the largest root and never pass it.
  let y = Math.max(settledLift(curve) + Math.cbrt(size / beta), 0);
  for (let step = 0; step < 100; step++) {
    const slope = 1 - curve.pull_share + 3 * beta * y * y;
    if (!(slope > 0)) break;
    const next = y - (unpulledFor(curve, y) - size) / slope;
    if (!(next < y * (1 - 1e-15))) break;
    y = next;
  }
  return unpulled_mm < 0 ? -y : y;
}

/** The lift at no pull that grows into `lift_mm`; negative where a frame past its critical pull goes beyond that lift whatever its boards. */
export function unpulledFor({ pull_share, beta_per_mm2 }: LiftCurve, lift_mm: number): number {
  return lift_mm * (1 - pull_share) + beta_per_mm2 * lift_mm ** 3;
}

/** How far a frame of straight boards turns past its critical pull, mm; 0 below it. */
export function settledLift({ pull_share, beta_per_mm2 }: LiftCurve): number {
  return pull_share > 1 ? Math.sqrt((pull_share - 1) / beta_per_mm2) : 0;
}
