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

function pair(k: Float64Array, a: number, b: number, value: number): void {
  k[a * 12 + b] = value;
  k[b * 12 + a] = value;
}

function addSpring(k: Float64Array, a: number, b: number, s: number): void {
  pair(k, a, a, s);
  pair(k, b, b, s);
  pair(k, a, b, -s);
}

/** Bending from the shift `v` and the turn `t` at i, six further on at j. */
function addBending(k: Float64Array, v: number, t: number, c: number, p: number, shift: number, mixed: number): void {
  pair(k, v, v, shift);
  pair(k, v + 6, v + 6, shift);
  pair(k, v, v + 6, -shift);
  pair(k, v, t, mixed);
  pair(k, v, t + 6, mixed);
  pair(k, v + 6, t, -mixed);
  pair(k, v + 6, t + 6, -mixed);
  pair(k, t, t, (4 + p) * c);
  pair(k, t + 6, t + 6, (4 + p) * c);
  pair(k, t, t + 6, (2 - p) * c);
}

/** Local stiffness (rows of 12, order ux uy uz rx ry rz at i then j) of an exact two-node beam. */
export function memberStiffness({ E, G, A, Iy, Iz, J }: Member, L: number, phi: ShearParameters): Float64Array {
  const k = new Float64Array(144);
  addSpring(k, 0, 6, (E * A) / L);
  addSpring(k, 3, 9, (G * J) / L);
  const along = (E * Iz) / (L * (1 + phi.y));
  addBending(k, 1, 5, along, phi.y, (12 * along) / (L * L), (6 * along) / L);
  // A positive turn about y tips z downwards.
  const across = (E * Iy) / (L * (1 + phi.z));
  addBending(k, 2, 4, across, phi.z, (12 * across) / (L * L), (-6 * across) / L);
  return k;
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
  const qx = local(load.force, 0);
  const qy = local(load.force, 1);
  const qz = local(load.force, 2);
  const mx = local(load.moment, 0);
  const my = local(load.moment, 1);
  const mz = local(load.moment, 2);
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
