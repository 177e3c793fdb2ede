import type { EdgeShares } from './edge-shares.js';

// Energy of a rectangular skin that lies where its tension holds it, T_x w_xx + T_y w_yy = 0, from the shape of its
// edges, exact: each edge is a straight line plus sines, and the skin behind a sine is the same sine, dying away across
// as sinh. All blocks are second derivatives of that energy.

/** Tension per length along x and along y. */
export interface Tension {
  readonly x: number;
  readonly y: number;
}

/** Stiffness of one bilinear quadrilateral h × v between its corners (0,0), (1,0), (1,1), (0,1). */
export function quadStiffness(h: number, v: number, tension: Tension): number[] {
  const X = (tension.x * v) / (6 * h);
  const Y = (tension.y * h) / (6 * v);
  const [self, alongX, across, alongY] = [2 * X + 2 * Y, -2 * X + Y, -X - Y, X - 2 * Y];
  return [
    self,
    alongX,
    across,
    alongY,
    alongX,
    self,
    alongY,
    across,
    across,
    alongY,
    self,
    alongX,
    alongY,
    across,
    alongX,
    self,
  ];
}

/** Below this a sinh is its argument. */
const small = 1e-6;

/** Σ_n a_n w_n a_nᵀ over the sines of an edge. */
function weighed({ count, sines }: EdgeShares, weights: Float64Array): Float64Array {
  const block = new Float64Array(count * count);
  for (let n = 0; n < weights.length; n++) {
    const row = n * count;
    for (let r = 0; r < count; r++) {
      const share = weights[n]! * sines[row + r]!;
      if (share === 0) continue;
      for (let c = 0, at = r * count; c <= r; c++, at++) block[at]! += share * sines[row + c]!;
    }
  }
  for (let r = 0; r < count; r++) for (let c = 0; c < r; c++) block[c * count + r] = block[r * count + c]!;
  return block;
}

/**
 * Of the sines of an edge of length `along` with themselves and with those of the opposite edge, `across` away, under
 * the tension `pull` from one to the other and `aside` along them.
 */
export function alongEnergy(
  shares: EdgeShares,
  along: number,
  across: number,
  pull: number,
  aside: number,
): { readonly own: Float64Array; readonly opposite: Float64Array } {
  const own = new Float64Array(shares.terms);
  const opposite = new Float64Array(shares.terms);
  for (let n = 0; n < shares.terms; n++) {
    const wave = ((n + 1) * Math.PI) / along;
    const reach = wave * across * Math.sqrt(aside / pull);
    const flux = wave * Math.sqrt(pull * aside);
    own[n] = (along / 2) * (reach < small ? pull / across : flux / Math.tanh(reach));
    opposite[n] = (-along / 2) * (reach < small ? pull / across : flux / Math.sinh(reach));
  }
  return { own: weighed(shares, own), opposite: weighed(shares, opposite) };
}

/** Between edges that meet in a corner: seen from the other end a sine of even number changes its sign. */
export function adjacentEnergy(
  upright: EdgeShares,
  level: EdgeShares,
  width: number,
  height: number,
  tension: Tension,
): Readonly<Record<'leftBottom' | 'leftTop' | 'rightBottom' | 'rightTop', Float64Array>> {
  const size = upright.count * level.count;
  const [leftBottom, leftTop, rightBottom, rightTop] = [
    new Float64Array(size),
    new Float64Array(size),
    new Float64Array(size),
    new Float64Array(size),
  ];
  const { x, y } = tension;
  const row = new Float64Array(level.count);
  const alternating = new Float64Array(level.count);
  for (let n = 1; n <= upright.terms; n++) {
    const a = (n * Math.PI) / height;
    row.fill(0);
    alternating.fill(0);
    for (let m = 1; m <= level.terms; m++) {
      const b = (m * Math.PI) / width;
      const meet = (x * y * a * b) / (y * a * a + x * b * b);
      for (let c = 0, at = (m - 1) * level.count; c < level.count; c++, at++) {
        const share = meet * level.sines[at]!;
        row[c]! += share;
        alternating[c]! += m % 2 === 0 ? share : -share;
      }
    }
    for (let r = 0; r < upright.count; r++) {
      const share = upright.sines[(n - 1) * upright.count + r]!;
      if (share === 0) continue;
      const turned = n % 2 === 0 ? share : -share;
      for (let c = 0, at = r * level.count; c < level.count; c++, at++) {
        leftBottom[at]! -= share * row[c]!;
        leftTop[at]! += turned * row[c]!;
        rightBottom[at]! += share * alternating[c]!;
        rightTop[at]! -= turned * alternating[c]!;
      }
    }
  }
  return { leftBottom, leftTop, rightBottom, rightTop };
}
