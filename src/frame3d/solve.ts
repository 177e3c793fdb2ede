import { directions, timoshenko } from './structure.js';
import type { Direction, Loads, Structure, Theory } from './structure.js';
import { addUniformLoad } from './element-stiffness.js';
import { vectorToGlobal, vectorToLocal } from './element-axes.js';
import { prepare } from './assemble.js';
import type { Element, Prepared } from './assemble.js';
import type { Freedom } from './freedoms.js';
import { solveFactored } from './profile-matrix.js';

/** Answer of the linear problem. */
export interface FrameSolution {
  /** Six movements per node, in the order of `directions`. */
  readonly u: Float64Array;
  /** Forces and moments acting on the structure at prescribed movements, same layout; 0 elsewhere. */
  readonly reactions: Float64Array;
  /** Per member twelve local forces acting on its ends, at i then j: Fx Fy Fz Mx My Mz. */
  readonly endForces: readonly Float64Array[];
}

/** The solution, or in words how the structure is free to move. */
export type FrameAnswer =
  | { readonly stable: true; readonly solution: FrameSolution }
  | { readonly stable: false; readonly freedoms: readonly Freedom[] };

/** As many vectors of twelve, side by side in one array: far cheaper than as many arrays. */
export function twelves(count: number): Float64Array[] {
  const all = new Float64Array(12 * count);
  const each: Float64Array[] = [];
  for (let at = 0; at < all.length; at += 12) each.push(all.subarray(at, at + 12));
  return each;
}

/** m v, or mᵀ v, of twelve, into `out`, which may not be v. */
export function product12(
  m: Float64Array,
  v: Float64Array,
  transposed: boolean,
  out: Float64Array = new Float64Array(12),
): Float64Array {
  for (let i = 0; i < 12; i++) {
    let sum = 0;
    for (let j = 0; j < 12; j++) sum += (transposed ? m[j * 12 + i]! : m[i * 12 + j]!) * v[j]!;
    out[i] = sum;
  }
  return out;
}

/** Local equivalent end loads of every member, releases condensed. */
function memberLoadVectors(prepared: Prepared, loads: Loads): (Float64Array | null)[] {
  const vectors: (Float64Array | null)[] = prepared.elements.map(() => null);
  const free = twelves(loads.members.length);
  for (const load of loads.members) {
    const { axes, phi } = prepared.elements[load.member]!;
    const f = (vectors[load.member] ??= free.pop()!);
    addUniformLoad(load, axes.R, axes.length, phi, f);
  }
  return vectors.map((f, e) => {
    const G = prepared.elements[e]!.G;
    return f && G ? product12(G, f, true) : f;
  });
}

/** Forces on the ends of every element in local axes: k u − equivalent load. */
function endForcesOf(
  elements: readonly Element[],
  u: Float64Array,
  vectors: readonly (Float64Array | null)[] | null,
): readonly Float64Array[] {
  const all = twelves(elements.length);
  const [global, local] = [new Float64Array(12), new Float64Array(12)];
  elements.forEach(({ movements, axes, k }, e) => {
    const forces = all[e]!;
    for (let r = 0; r < 12; r++) global[r] = u[movements[r]!]!;
    vectorToLocal(global, axes.R, local);
    product12(k, local, false, forces);
    const f = vectors?.[e];
    if (f) for (let r = 0; r < 12; r++) forces[r]! -= f[r]!;
  });
  return all;
}

/** Movements of every node from the unknowns `x`, prescribed ones at rest. */
export function spreadUnknowns(prepared: Prepared, x: Float64Array): Float64Array {
  const { of } = prepared.equations;
  const u = new Float64Array(of.length);
  for (let m = 0; m < u.length; m++) if (of[m]! >= 0) u[m] = x[of[m]!]!;
  return u;
}

/** Solves a prepared structure under loads and its prescribed movements. */
export function solvePrepared(prepared: Prepared, loads: Loads): FrameSolution {
  const { structure, elements, equations, springs } = prepared;
  const { of, prescribed, shared } = equations;
  const vectors = memberLoadVectors(prepared, loads);

  const pushed = new Float64Array(of.length);
  const scratch = new Float64Array(12);
  elements.forEach((element, e) => {
    const f = vectors[e];
    if (!f) return;
    vectorToGlobal(f, element.axes.R, scratch);
    for (let r = 0; r < 12; r++) pushed[element.movements[r]!]! += scratch[r]!;
  });
  const applied = new Float64Array(of.length);
  for (const { node, force, moment } of loads.nodes) {
    for (let d = 0; d < 3; d++) {
      applied[6 * node + d]! += force[d]!;
      applied[6 * node + 3 + d]! += moment[d]!;
    }
  }
  if (prescribed.some((v) => v !== 0)) addPrescribed(prepared, pushed);

  const x = new Float64Array(equations.count);
  for (let m = 0; m < of.length; m++) if (of[m]! >= 0) x[of[m]!]! += pushed[m]! + applied[m]!;
  solveFactored(prepared.factors, x);
  const u = spreadUnknowns(prepared, x);
  for (let m = 0; m < u.length; m++) if (of[m]! < 0) u[m] = prescribed[m]!;
  const endForces = endForcesOf(elements, u, vectors);

  const held = new Float64Array(of.length);
  elements.forEach((element, e) => {
    vectorToGlobal(endForces[e]!, element.axes.R, scratch);
    for (let r = 0; r < 12; r++) held[shared[element.movements[r]!]!]! += scratch[r]!;
  });
  for (const { a, b, c, d, k } of springs) {
    const force = k * (u[c]! - u[d]!);
    held[shared[a]!]! += force;
    held[shared[b]!]! -= force;
  }
  for (let m = 0; m < of.length; m++) held[shared[m]!]! -= applied[m]!;
  const reactions = new Float64Array(of.length);
  for (const { node, fix } of structure.supports) {
    directions.forEach((direction: Direction, d) => {
      if (fix[direction] !== undefined) reactions[6 * node + d] = held[shared[6 * node + d]!]!;
    });
  }
  return { u, reactions, endForces };
}

/** Adds what prescribed movements push on the free ones: −K_free,given · u_given. */
function addPrescribed(prepared: Prepared, pushed: Float64Array): void {
  const { prescribed } = prepared.equations;
  const global = new Float64Array(12);
  const forces = endForcesOf(prepared.elements, prescribed, null);
  prepared.elements.forEach(({ axes, movements }, e) => {
    vectorToGlobal(forces[e]!, axes.R, global);
    for (let r = 0; r < 12; r++) pushed[movements[r]!]! -= global[r]!;
  });
  for (const { a, b, c, d, k } of prepared.springs) {
    const force = k * (prescribed[c]! - prescribed[d]!);
    pushed[a]! -= force;
    pushed[b]! += force;
  }
}

/** Solves a structure from scratch. Throws a RangeError for input that describes no structure. */
export function solveFrame(structure: Structure, loads: Loads, theory: Theory = timoshenko): FrameAnswer {
  const preparation = prepare(structure, theory);
  if (!preparation.stable) return preparation;
  return { stable: true, solution: solvePrepared(preparation.prepared, loads) };
}
