import type { FrameNode, Member } from './structure.js';

/** Length of a member and its local axes as rows of a 3 × 3 matrix (x, y, z, each in global components). */
export interface Axes {
  readonly length: number;
  readonly R: Float64Array;
}

/** Local axes of a member. Throws a RangeError when it has no length or lies along its own `zref`. */
export function memberAxes(nodes: readonly FrameNode[], member: Member): Axes {
  const a = nodes[member.i]!;
  const b = nodes[member.j]!;
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const dz = b.z - a.z;
  const length = Math.sqrt(dx * dx + dy * dy + dz * dz);
  if (!(length > 0) || !Number.isFinite(length)) throw new RangeError(`member "${member.id}" has no length`);
  const x0 = dx / length;
  const x1 = dy / length;
  const x2 = dz / length;
  const [r0, r1, r2] = member.zref;
  let y0 = r1 * x2 - r2 * x1;
  let y1 = r2 * x0 - r0 * x2;
  let y2 = r0 * x1 - r1 * x0;
  const size = Math.sqrt(y0 * y0 + y1 * y1 + y2 * y2);
  if (!(size > 1e-9 * Math.sqrt(r0 * r0 + r1 * r1 + r2 * r2)))
    throw new RangeError(`member "${member.id}" lies along its zref`);
  y0 /= size;
  y1 /= size;
  y2 /= size;
  const R = Float64Array.of(x0, x1, x2, y0, y1, y2, x1 * y2 - x2 * y1, x2 * y0 - x0 * y2, x0 * y1 - x1 * y0);
  return { length, R };
}

/**
 * The global axis (0, 1, 2) that local z lies along, or -1: such a member keeps bending in that plane and out of it
 * apart.
 */
export function planeAxis(R: Float64Array): number {
  for (let m = 0; m < 3; m++) if (R[m] === 0 && R[3 + m] === 0) return m;
  return -1;
}

/** Pairs of x and y, of shifts and of turns, at either end. */
const pairs = [0, 3, 6, 9] as const;

/** Turns, in place, the matrix of a member whose local z is the global one: only x and y mix, by (c, s). */
function turnAboutZ(m: Float64Array, c: number, s: number): void {
  if (s === 0 && c === 1) return;
  for (const row of pairs) {
    for (let j = 12 * row, end = j + 12; j < end; j++) {
      const x = m[j]!;
      const y = m[j + 12]!;
      if (x === 0 && y === 0) continue;
      m[j] = c * x - s * y;
      m[j + 12] = s * x + c * y;
    }
  }
  for (const column of pairs) {
    for (let j = column; j < 144; j += 12) {
      const x = m[j]!;
      const y = m[j + 1]!;
      if (x === 0 && y === 0) continue;
      m[j] = c * x - s * y;
      m[j + 1] = s * x + c * y;
    }
  }
}

/** Turns a 12 × 12 local matrix (rows of 12) into global axes: Tᵀ k T with T four copies of R. */
export function toGlobal(k: Float64Array, R: Float64Array, out: Float64Array): void {
  if (R[8]! > 0 && planeAxis(R) === 2) {
    out.set(k);
    turnAboutZ(out, R[0]!, R[1]!);
    return;
  }
  for (let bi = 0; bi < 12; bi += 3) {
    for (let bj = 0; bj < 12; bj += 3) {
      for (let c = 0; c < 3; c++) {
        const t0 = k[bi * 12 + bj]! * R[c]! + k[bi * 12 + bj + 1]! * R[3 + c]! + k[bi * 12 + bj + 2]! * R[6 + c]!;
        const t1 =
          k[(bi + 1) * 12 + bj]! * R[c]! +
          k[(bi + 1) * 12 + bj + 1]! * R[3 + c]! +
          k[(bi + 1) * 12 + bj + 2]! * R[6 + c]!;
        const t2 =
          k[(bi + 2) * 12 + bj]! * R[c]! +
          k[(bi + 2) * 12 + bj + 1]! * R[3 + c]! +
          k[(bi + 2) * 12 + bj + 2]! * R[6 + c]!;
        for (let r = 0; r < 3; r++) out[(bi + r) * 12 + bj + c] = R[r]! * t0 + R[3 + r]! * t1 + R[6 + r]! * t2;
      }
    }
  }
}

/** Turns twelve global components into local ones (`out` may not be `v`). */
export function vectorToLocal(v: Float64Array, R: Float64Array, out: Float64Array): void {
  for (let b = 0; b < 12; b += 3) {
    for (let r = 0; r < 3; r++) out[b + r] = R[3 * r]! * v[b]! + R[3 * r + 1]! * v[b + 1]! + R[3 * r + 2]! * v[b + 2]!;
  }
}

/** Turns twelve local components into global ones (`out` may not be `v`). */
export function vectorToGlobal(v: Float64Array, R: Float64Array, out: Float64Array): void {
  for (let b = 0; b < 12; b += 3) {
    for (let c = 0; c < 3; c++) out[b + c] = R[c]! * v[b]! + R[3 + c]! * v[b + 1]! + R[6 + c]! * v[b + 2]!;
  }
}
