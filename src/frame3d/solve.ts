import { directions, timoshenko } from './structure.js';
import type { Direction, Loads, Structure, Theory } from './structure.js';
import { addUniformLoad } from './element-stiffness.js';
import { vectorToGlobal, vectorToLocal } from './element-axes.js';
import { prepare, springTerms } from './assemble.js';
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

/** m v, or mᵀ v, of twelve. */
export function product12(m: Float64Array, v: Float64Array, transposed: boolean): Float64Array {
  const out = new Float64Array(12);
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
  for (const load of loads.members) {
    const { axes, phi } = prepared.elements[load.member]!;
    const f = (vectors[load.member] ??= new Float64Array(12));
    addUniformLoad(load, axes.R, axes.length, phi, f);
  }
  return vectors.map((f, e) => {
    const G = prepared.elements[e]!.G;
    return f && G ? product12(G, f, true) : f;
  });
}

/** Forces on the element's ends in local axes: k u − equivalent load. */
function endForcesOf(element: Element, u: Float64Array, f: Float64Array | null): Float64Array {
  const global = new Float64Array(12);
  const local = new Float64Array(12);
  for (let r = 0; r < 12; r++) global[r] = u[element.movements[r]!]!;
  vectorToLocal(global, element.axes.R, local);
  const forces = product12(element.k, local, false);
  if (f) for (let r = 0; r < 12; r++) forces[r]! -= f[r]!;
  return forces;
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
  const { structure, elements, equations } = prepared;
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
  const endForces = elements.map((element, e) => endForcesOf(element, u, vectors[e] ?? null));

  const held = new Float64Array(of.length);
  elements.forEach((element, e) => {
    vectorToGlobal(endForces[e]!, element.axes.R, scratch);
    for (let r = 0; r < 12; r++) held[shared[element.movements[r]!]!]! += scratch[r]!;
  });
  for (const { a, b, c, d, k } of springTerms(structure)) {
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
  for (const element of prepared.elements) {
    const forces = endForcesOf(element, prescribed, null);
    vectorToGlobal(forces, element.axes.R, global);
    for (let r = 0; r < 12; r++) pushed[element.movements[r]!]! -= global[r]!;
  }
  for (const { a, b, c, d, k } of springTerms(prepared.structure)) {
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
