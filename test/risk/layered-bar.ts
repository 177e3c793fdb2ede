/** One layer of a bar glued from layers, at rest on its own: stretched by `strain` at mid-thickness, bent to `curvature` (1/m). */
export interface Layer {
  readonly thickness_m: number;
  /** Any unit, the same for all layers. */
  readonly E: number;
  readonly strain: number;
  readonly curvature: number;
}

/**
 * Curvature (1/m) of the free bar: plane sections, no force and no moment on any cut. Written from those two conditions alone,
 * ∫E(ε + yκ − own) dy = 0 and ∫E(ε + yκ − own) y dy = 0, with own = strain + (y − middle)·curvature.
 */
export function layeredCurvature_per_m(layers: readonly Layer[]): number {
  let [A, S, I, N, M] = [0, 0, 0, 0, 0];
  let y = 0;
  for (const { thickness_m: t, E, strain, curvature } of layers) {
    const middle = y + t / 2;
    A += E * t;
    S += E * t * middle;
    I += E * (t * middle ** 2 + t ** 3 / 12);
    N += E * t * strain;
    M += E * (t * middle * strain + (t ** 3 / 12) * curvature);
    y += t;
  }
  return (A * M - S * N) / (A * I - S ** 2);
}
