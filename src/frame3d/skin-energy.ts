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
  // Sums over the sines along `level` by whether their number is odd or even, the same sums for both adjacent ends.
  const sums = [new Float64Array(level.count), new Float64Array(level.count)] as const;
  for (let n = 1; n <= upright.terms; n++) {
    const a = (n * Math.PI) / height;
    sums[0].fill(0);
    sums[1].fill(0);
    for (let m = 1; m <= level.terms; m++) {
      const b = (m * Math.PI) / width;
      const meet = (x * y * a * b) / (y * a * a + x * b * b);
      const sum = sums[m % 2 === 0 ? 0 : 1];
      for (let c = 0, at = (m - 1) * level.count; c < level.count; c++, at++) sum[c]! += meet * level.sines[at]!;
    }
    for (let c = 0; c < level.count; c++) {
      const [even, odd] = [sums[0][c]!, sums[1][c]!];
      sums[0][c] = even + odd;
      sums[1][c] = even - odd;
    }
    const [straight, alternating] = sums;
    // What even sines along `upright` bring is collected in the blocks of the bottom, what odd ones in those of the top.
    const [left, right] = n % 2 === 0 ? [leftBottom, rightBottom] : [leftTop, rightTop];
    for (let r = 0; r < upright.count; r++) {
      const share = upright.sines[(n - 1) * upright.count + r]!;
      if (share === 0) continue;
      for (let c = 0, at = r * level.count; c < level.count; c++, at++) {
        left[at]! += share * straight[c]!;
        right[at]! += share * alternating[c]!;
      }
    }
  }
  for (let at = 0; at < size; at++) {
    const [even, odd] = [leftBottom[at]!, leftTop[at]!];
    const [evenFar, oddFar] = [rightBottom[at]!, rightTop[at]!];
    leftBottom[at] = -even - odd;
    leftTop[at] = even - odd;
    rightBottom[at] = evenFar + oddFar;
    rightTop[at] = oddFar - evenFar;
  }
  return { leftBottom, leftTop, rightBottom, rightTop };
}
