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

/** Local stiffness (rows of 12, order ux uy uz rx ry rz at i then j) of an exact two-node beam. */
export function memberStiffness(member: Member, L: number, phi: ShearParameters): Float64Array {
  const k = new Float64Array(144);
  const pair = (a: number, b: number, value: number): void => {
    k[a * 12 + b] = value;
    k[b * 12 + a] = value;
  };
  spring(0, 6, (member.E * member.A) / L);
  spring(3, 9, (member.G * member.J) / L);
  bending(1, 5, 7, 11, member.E * member.Iz, phi.y, 1);
  bending(2, 4, 8, 10, member.E * member.Iy, phi.z, -1);
  return k;

  function spring(a: number, b: number, s: number): void {
    pair(a, a, s);
    pair(b, b, s);
    pair(a, b, -s);
  }
  /** Shift and rotation at i, then at j; `sign` is -1 where a positive rotation tips the shift downwards. */
  function bending(v1: number, t1: number, v2: number, t2: number, EI: number, p: number, sign: number): void {
    const c = EI / (L * (1 + p));
    const shift = (12 * c) / (L * L);
    const mixed = (sign * 6 * c) / L;
    pair(v1, v1, shift);
    pair(v2, v2, shift);
    pair(v1, v2, -shift);
    pair(v1, t1, mixed);
    pair(v1, t2, mixed);
    pair(v2, t1, -mixed);
    pair(v2, t2, -mixed);
    pair(t1, t1, (4 + p) * c);
    pair(t2, t2, (4 + p) * c);
    pair(t1, t2, (2 - p) * c);
  }
}

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
  const local = (v: MemberLoad['force'], r: number): number =>
    R[3 * r]! * v[0] + R[3 * r + 1]! * v[1] + R[3 * r + 2]! * v[2];
  const [qx, qy, qz] = [local(load.force, 0), local(load.force, 1), local(load.force, 2)];
  const [mx, my, mz] = [local(load.moment, 0), local(load.moment, 1), local(load.moment, 2)];
  const shearY = mz / (1 + phi.y);
  const shearZ = my / (1 + phi.z);
  const endZ = (0.5 * L * mz * phi.y) / (1 + phi.y);
  const endY = (0.5 * L * my * phi.z) / (1 + phi.z);
  const [half, twelfth] = [L / 2, (L * L) / 12];
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
