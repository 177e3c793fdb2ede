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

/** Of a cubic between its ends (shift and slope at either, the slopes times h): its area and its moment. */
const area = [1 / 2, 1 / 12, 1 / 2, -1 / 12];
const moment = [3 / 20, 1 / 30, 7 / 20, -1 / 20];
/** Its second derivatives at both ends and the third, of which the sines are integrals. */
const bend0 = [-6, -4, 6, -2];
const bend1 = [6, 2, -6, 4];
const third = [12, 6, -12, 6];

/** The shares of nodes at the fractions `at` (rising from 0 to 1) of an edge of this length. */
export function edgeShares(at: readonly number[], length: number, terms: number): EdgeShares {
  const count = 2 * at.length;
  const sines = new Float64Array(terms * count);
  const falling = new Float64Array(count);
  const rising = new Float64Array(count);
  for (let e = 0; e + 1 < at.length; e++) {
    const from = at[e]!;
    const part = at[e + 1]! - from;
    for (let c = 0; c < 4; c++) {
      const size = c % 2 === 1 ? part * part * length : part;
      const lever = size * (from * area[c]! + part * moment[c]!);
      falling[2 * e + c]! += size * area[c]! - lever;
      rising[2 * e + c]! += lever;
    }
    for (let n = 1; n <= terms; n++) {
      const k = n * Math.PI;
      const cos0 = Math.cos(k * from);
      const cos1 = Math.cos(k * at[e + 1]!);
      const turn = (Math.sin(k * at[e + 1]!) - Math.sin(k * from)) / (k * part);
      const scale = -2 / (k * k * k * part * part);
      for (let c = 0, place = (n - 1) * count + 2 * e; c < 4; c++, place++) {
        const share = bend0[c]! * cos0 - bend1[c]! * cos1 + third[c]! * turn;
        sines[place]! += scale * (c % 2 === 1 ? part * length : 1) * share;
      }
    }
  }
  const last = count - 2;
  falling[0]! -= 1 / 3;
  rising[0]! -= 1 / 6;
  falling[last]! -= 1 / 6;
  rising[last]! -= 1 / 3;
  return { count, terms, sines, falling, rising };
}
