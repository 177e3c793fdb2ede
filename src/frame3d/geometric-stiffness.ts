import type { FrameSolution } from './solve.js';
import type { Prepared } from './assemble.js';
import { addElementMatrix } from './assemble.js';
import { toGlobal, vectorToGlobal } from './element-axes.js';
import { addEntry, emptyProfile } from './profile-matrix.js';
import type { ProfileMatrix } from './profile-matrix.js';

/**
 * Stress resultants of one member on the face towards its end: axial force and shear along local y, moment about local
 * z at both ends. Under a uniform load the shear grows by `grown` from end to end and the moment is a parabola.
 */
export interface Resultants {
  readonly N: number;
  readonly Vy: number;
  readonly grown: number;
  readonly Mi: number;
  readonly Mj: number;
}

/** Means of N and V_y, the growth of V_y and end values of M_z, from a member's end forces. */
export function resultantsOf(f: Float64Array): Resultants {
  return { N: (f[6]! - f[0]!) / 2, Vy: (f[7]! - f[1]!) / 2, grown: f[7]! + f[1]!, Mi: -f[5]!, Mj: f[11]! };
}

/** Shear and moment at a fraction of a member's length L. */
export function resultantsAt(
  { Vy, grown, Mi, Mj }: Resultants,
  L: number,
  s: number,
): { readonly V: number; readonly M: number } {
  return { V: Vy + grown * (s - 0.5), M: Mi + (Mj - Mi) * s + (grown * L * s * (1 - s)) / 2 };
}

/** Three-point Gauss rule on 0..1, exact to the fifth power. */
const gaussPoints = [0.5 - Math.sqrt(0.15), 0.5, 0.5 + Math.sqrt(0.15)] as const;
const gaussWeights = [5 / 18, 8 / 18, 5 / 18] as const;

/** Shape functions at the Gauss points for unit length: slope and curvature of the Hermite cubic, and linear twist. */
export const shapes = gaussPoints.map((s, g) => ({
  s,
  weight: gaussWeights[g]!,
  slope: [-6 * s + 6 * s * s, 1 - 4 * s + 3 * s * s, 6 * s - 6 * s * s, -2 * s + 3 * s * s],
  curvature: [-6 + 12 * s, -4 + 6 * s, 6 - 12 * s, -2 + 6 * s],
}));

const inPlane = [1, 5, 7, 11] as const;
export const outOfPlane = [2, 4, 8, 10] as const;

/** ∫ a' b' dx of the Hermite cubics over unit length, times 30; a rotation counts once for each L. */
const slopesTogether = [
  [36, 3, -36, 3],
  [3, 4, -3, -1],
  [-36, -3, 36, -3],
  [3, -1, -3, 4],
] as const;

/**
 * Local geometric stiffness (rows of 12) of a member with nodal rotation vectors:
 * U = ∫ N/2 (v'² + w'²) − V_y u' v' + V_y/2 θ_x w' + M_z/2 (θ_x w'' − w' θ_x') dx, w' = −θ_y,
 * with Hermite v and w, linear u and θ_x, N constant, V_y linear and M_z' = −V_y; u' meets the mean of V_y.
 * Moments and shears across the other axis are
 * left out.
 * V_y u' v' is as small as an axial strain; with it a frame turned rigidly in its plane stays in balance, however it is
 * held.
 */
export function memberGeometricStiffness(force: Resultants, L: number, k: Float64Array): void {
  k.fill(0);
  const { N, Vy } = force;
  for (let a = 0; a < 4; a++) {
    for (let b = 0; b < 4; b++) {
      const turns = (a % 2) + (b % 2);
      const value = ((N * slopesTogether[a]![b]!) / 30) * (turns === 0 ? 1 / L : turns === 1 ? 1 : L);
      k[inPlane[a]! * 12 + inPlane[b]!] = value;
      k[outOfPlane[a]! * 12 + outOfPlane[b]!] = turns === 1 ? -value : value;
    }
  }
  const shear = Vy / L;
  k[1] = k[12] = k[79] = k[90] = -shear;
  k[7] = k[84] = k[73] = k[18] = shear;
  for (const { s, weight, slope, curvature } of shapes) {
    const { V, M } = resultantsAt(force, L, s);
    for (let a = 0; a < 4; a++) {
      const sign = a % 2 === 0 ? 1 / L : -1;
      const dip = sign * slope[a]!;
      const bent = ((V * dip + (M * sign * curvature[a]!) / L) / 2) * weight * L;
      const twisted = (M / 2) * dip * weight;
      k[36 + outOfPlane[a]!]! += (1 - s) * bent + twisted;
      k[108 + outOfPlane[a]!]! += s * bent - twisted;
    }
  }
  for (const w of outOfPlane) {
    k[12 * w + 3] = k[36 + w]!;
    k[12 * w + 9] = k[108 + w]!;
  }
}

/** m ← Gᵀ m G. */
function carry(m: Float64Array, G: Float64Array): void {
  const half = new Float64Array(144);
  for (let i = 0; i < 12; i++) {
    for (let j = 0; j < 12; j++) {
      let sum = 0;
      for (let c = 0; c < 12; c++) sum += m[i * 12 + c]! * G[c * 12 + j]!;
      half[i * 12 + j] = sum;
    }
  }
  for (let i = 0; i < 12; i++) {
    for (let j = 0; j < 12; j++) {
      let sum = 0;
      for (let c = 0; c < 12; c++) sum += G[c * 12 + i]! * half[c * 12 + j]!;
      m[i * 12 + j] = sum;
    }
  }
}

/** Moment about z that each spring brings to its node j. */
function springMoments(
  { elements, equations: { movements }, structure: { springs, nodes } }: Prepared,
  { u, endForces }: FrameSolution,
): Float64Array {
  const wanted = new Float64Array(nodes.length);
  const global = new Float64Array(12);
  for (let e = 0; e < elements.length; e++) {
    vectorToGlobal(endForces[e]!, elements[e]!.axes.R, global);
    wanted[movements[e]![0]! / 6]! += global[5]!;
    wanted[movements[e]![6]! / 6]! += global[11]!;
  }
  const moments = new Float64Array(springs.length);
  springs.forEach(({ i, j, k }, s) => {
    if (!(k[5] > 0) || k[5] === Infinity) return;
    const moment = k[5] * (u[6 * i + 5]! - u[6 * j + 5]!);
    moments[s] = moment;
    wanted[i]! += moment;
    wanted[j]! -= moment;
  });
  springs.forEach(({ j, k }, s) => {
    if (k[5] === Infinity) moments[s] = wanted[j]!;
  });
  return moments;
}

/**
 * Geometric stiffness of a plane frame in the global xy plane under the forces of a linear solution, on the same band
 * as its stiffness. A spring that carries the moment M = k (θ_iz − θ_jz) adds M/2 (θ_ix θ_jy − θ_iy θ_jx); where it is
 * rigid about z alone, M is what node j is in balance with.
 */
export function geometricStiffness(prepared: Prepared, solution: FrameSolution): ProfileMatrix {
  const { elements, equations, structure } = prepared;
  const target = emptyProfile(equations.first);
  const local = new Float64Array(144);
  const global = new Float64Array(144);
  elements.forEach(({ axes, G }, e) => {
    memberGeometricStiffness(resultantsOf(solution.endForces[e]!), axes.length, local);
    if (G) carry(local, G);
    toGlobal(local, axes.R, global);
    addElementMatrix(target, equations.of, equations.movements[e]!, global);
  });
  const add = (a: number, b: number, value: number): void => {
    const i = equations.of[a]!;
    const j = equations.of[b]!;
    if (i >= 0 && j >= 0) addEntry(target, i, j, value);
  };
  const moments = springMoments(prepared, solution);
  structure.springs.forEach(({ i, j }, s) => {
    const M = moments[s]!;
    if (M === 0) return;
    add(6 * i + 3, 6 * j + 4, M / 2);
    add(6 * i + 4, 6 * j + 3, -M / 2);
  });
  return target;
}
