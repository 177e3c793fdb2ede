import type { EndRelease, Member, MemberLoad, Theory } from './structure.js';

/**
 * Shear parameters of a member, 12 E I / (κ G A L²) along local y (bending with Iz) and z (with Iy); 0 without shear.
 */
export interface ShearParameters {
  readonly y: number;
  readonly z: number;
}

export function shearParameters(member: Member, length: number, theory: Theory): ShearParameters {
  if (!theory.shear) return { y: 0, z: 0 };
  const c = (12 * member.E) / (theory.kappa * member.G * member.A * length * length);
  return { y: c * member.Iz, z: c * member.Iy };
}

/** Of a stiffness of four, a shift and a turn at i, then at j: which of its six numbers stands where, row by row. */
const bendingTerms = [0, 1, 2, 1, 1, 3, 4, 5, 2, 4, 0, 4, 1, 5, 4, 3];

/** Adds bending from the shift `v` and the turn `t` at i, six further on at j; `sign` −1 where t tips v downwards. */
function addBending(k: Float64Array, v: number, t: number, EI: number, L: number, p: number, sign: 1 | -1): void {
  const c = EI / (L * (1 + p));
  const shift = (12 * c) / (L * L);
  const mixed = (sign * 6 * c) / L;
  const terms = [shift, mixed, -shift, (4 + p) * c, -mixed, (2 - p) * c];
  for (let n = 0; n < 16; n++) {
    const row = (n & 4 ? t : v) + (n & 8 ? 6 : 0);
    const column = (n & 1 ? t : v) + (n & 2 ? 6 : 0);
    k[row * 12 + column] = terms[bendingTerms[n]!]!;
  }
}

/** Adds a spring of stiffness s from movement `a` at i to the same at j. */
function addSpring(k: Float64Array, a: number, s: number): void {
  k[a * 13] = k[(a + 6) * 13] = s;
  k[a * 13 + 6] = k[a * 13 + 72] = -s;
}

/** Local stiffness (rows of 12, order ux uy uz rx ry rz at i then j) of an exact two-node beam. */
export function memberStiffness(member: Member, L: number, phi: ShearParameters): Float64Array {
  const k = new Float64Array(144);
  addSpring(k, 0, (member.E * member.A) / L);
  addSpring(k, 3, (member.G * member.J) / L);
  addBending(k, 1, 5, member.E * member.Iz, L, phi.y, 1);
  addBending(k, 2, 4, member.E * member.Iy, L, phi.z, -1);
  return k;
}

/** The share of a vector along the axis that begins at r. */
const along = (R: Float64Array, r: number, v: MemberLoad['force']): number =>
  R[r]! * v[0] + R[r + 1]! * v[1] + R[r + 2]! * v[2];

/**
 * Local end loads that do the same to the nodes as a uniform load (the negatives of the fixed-end forces), added to
 * `f`.
 * A moment across the member partly becomes a couple of shears, the less the softer the member is in shear.
 */
export function addUniformLoad(
  load: MemberLoad,
  R: Float64Array,
  L: number,
  phi: ShearParameters,
  f: Float64Array,
): void {
  const qx = along(R, 0, load.force);
  const qy = along(R, 3, load.force);
  const qz = along(R, 6, load.force);
  const mx = along(R, 0, load.moment);
  const my = along(R, 3, load.moment);
  const mz = along(R, 6, load.moment);
  const shearY = mz / (1 + phi.y);
  const shearZ = my / (1 + phi.z);
  const endZ = (0.5 * L * mz * phi.y) / (1 + phi.y);
  const endY = (0.5 * L * my * phi.z) / (1 + phi.z);
  const half = L / 2;
  const twelfth = (L * L) / 12;
  f[0]! += qx * half;
  f[1]! += qy * half - shearY;
  f[2]! += qz * half + shearZ;
  f[3]! += mx * half;
  f[4]! += endY - qz * twelfth;
  f[5]! += endZ + qy * twelfth;
  f[6]! += qx * half;
  f[7]! += qy * half + shearY;
  f[8]! += qz * half - shearZ;
  f[9]! += mx * half;
  f[10]! += endY + qz * twelfth;
  f[11]! += endZ - qy * twelfth;
}

const turnIndex: Readonly<Record<EndRelease, number>> = { rx: 3, ry: 4, rz: 5 };

/** Local rows of the moments a member does not pass on. */
export function releasedRows(member: Member): readonly number[] {
  const rows = (member.releases?.i ?? []).map((r) => turnIndex[r]);
  return rows.concat((member.releases?.j ?? []).map((r) => 6 + turnIndex[r]));
}

/**
 * Condenses the released rotations out of `k`, in place, and returns `G`: the end movements of the member itself
 * are G · (movements of the nodes), and end loads f become Gᵀ f. A rotation that nothing resists stays at rest.
 */
export function condenseReleases(k: Float64Array, rows: readonly number[]): Float64Array {
  const G = new Float64Array(144);
  for (let i = 0; i < 12; i++) G[i * 13] = 1;
  for (const c of rows) {
    const pivot = k[c * 13]!;
    const line = new Float64Array(12);
    if (pivot > 0) for (let j = 0; j < 12; j++) line[j] = j === c ? 0 : -k[c * 12 + j]! / pivot;
    const column = Float64Array.from({ length: 12 }, (_, i) => k[i * 12 + c]!);
    for (let i = 0; i < 12; i++) {
      const g = G[i * 12 + c]!;
      G[i * 12 + c] = 0;
      for (let j = 0; j < 12; j++) {
        k[i * 12 + j] = i === c || j === c ? 0 : k[i * 12 + j]! + column[i]! * line[j]!;
        G[i * 12 + j]! += g * line[j]!;
      }
    }
  }
  return G;
}
