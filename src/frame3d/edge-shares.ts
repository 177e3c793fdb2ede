/**
 * What the nodes along an edge bring to its shape: per node a shift across the edge and a slope along it, cubic between
 * nodes. The shape is a straight line between its ends plus Σ c_n sin(nπs), s = 0..1 along the edge.
 */
export interface EdgeShares {
  /** Two for each node: its shift, its slope. */
  readonly count: number;
  readonly terms: number;
  /** terms × count, row by row: c_n per unit of each. */
  readonly sines: Float64Array;
  /** ∫ (1 − s) f ds and ∫ s f ds, f the shape less its straight line. */
  readonly falling: Float64Array;
  readonly rising: Float64Array;
}

/** The shares of nodes at the fractions `at` (rising from 0 to 1) of an edge of this length. */
export function edgeShares(at: readonly number[], length: number, terms: number): EdgeShares {
  const count = 2 * at.length;
  const sines = new Float64Array(terms * count);
  const falling = new Float64Array(count);
  const rising = new Float64Array(count);
  const angle = (n: number, node: number): number => n * Math.PI * at[node]!;
  for (let e = 0; e + 1 < at.length; e++) {
    const part = at[e + 1]! - at[e]!;
    const h = part * length;
    const [area, moment] = [
      [1 / 2, h / 12, 1 / 2, -h / 12],
      [3 / 20, h / 30, 7 / 20, -h / 20],
    ];
    // Second derivatives at both ends of the cubic and the third, of which the sines are integrals.
    const [bend0, bend1, third] = [
      [-6, -4 * h, 6, -2 * h],
      [6, 2 * h, -6, 4 * h],
      [12, 6 * h, -12, 6 * h],
    ];
    for (let c = 0; c < 4; c++) {
      const share = part * area![c]!;
      const lever = part * (at[e]! * area![c]! + part * moment![c]!);
      falling[2 * e + c]! += share - lever;
      rising[2 * e + c]! += lever;
    }
    for (let n = 1; n <= terms; n++) {
      const k = n * Math.PI;
      const [cos0, cos1] = [Math.cos(angle(n, e)), Math.cos(angle(n, e + 1))];
      const turn = (Math.sin(angle(n, e + 1)) - Math.sin(angle(n, e))) / (k * part);
      const scale = -2 / (k * k * k * part * part);
      const row = (n - 1) * count + 2 * e;
      for (let c = 0; c < 4; c++)
        sines[row + c]! += scale * (bend0![c]! * cos0 - bend1![c]! * cos1 + third![c]! * turn);
    }
  }
  const last = count - 2;
  falling[0]! -= 1 / 3;
  rising[0]! -= 1 / 6;
  falling[last]! -= 1 / 6;
  rising[last]! -= 1 / 3;
  return { count, terms, sines, falling, rising };
}
