import { directions, timoshenko } from './structure.js';
import type { Direction, Loads, Structure, Theory } from './structure.js';
import { addUniformLoad } from './element-stiffness.js';
import { vectorToGlobal, vectorToLocal } from './element-axes.js';
import { prepare } from './assemble.js';
import type { Prepared } from './assemble.js';
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
function memberLoadVectors({ elements }: Prepared, { members }: Loads): (Float64Array | null)[] {
  const vectors: (Float64Array | null)[] = elements.map(() => null);
  let own: Float64Array | null = null;
  for (let n = 0; n < members.length; n++) {
    const load = members[n]!;
    const before = members[n - 1];
    const element = elements[load.member]!;
    const alike =
      before && before.force === load.force && before.moment === load.moment && elements[before.member] === element;
    // Members alike under one even load, as those of a bar are, share theirs.
    if (own === null || !alike) {
      own = new Float64Array(12);
      addUniformLoad(load, element.axes.R, element.axes.length, element.phi, own);
    }
    const known = vectors[load.member];
    vectors[load.member] = known ? known.map((f, r) => f + own![r]!) : own;
  }
  return vectors.map((f, e) => {
    const G = elements[e]!.G;
    return f && G ? product12(G, f, true) : f;
  });
}

/** Forces on the ends of every element in local axes: k u − equivalent load. */
function endForcesOf(
  { elements, equations: { movements } }: Prepared,
  u: Float64Array,
  vectors: readonly (Float64Array | null)[] | null,
): readonly Float64Array[] {
  const all = twelves(elements.length);
  const global = new Float64Array(12);
  const local = new Float64Array(12);
  for (let e = 0; e < elements.length; e++) {
    const { k, axes } = elements[e]!;
    const forces = all[e]!;
    const own = movements[e]!;
    for (let r = 0; r < 12; r++) global[r] = u[own[r]!]!;
    vectorToLocal(global, axes.R, local);
    product12(k, local, false, forces);
    const f = vectors === null ? null : vectors[e]!;
    if (f) for (let r = 0; r < 12; r++) forces[r]! -= f[r]!;
  }
  return all;
}

/** Movements of every node from the unknowns `x`, prescribed ones at rest. */
export function spreadUnknowns(prepared: Prepared, x: Float64Array): Float64Array {
  const { of } = prepared.equations;
  const u = new Float64Array(of.length);
  for (let m = 0; m < u.length; m++) if (of[m]! >= 0) u[m] = x[of[m]!]!;
  return u;
}

/** Forces and moments put on each movement by hand, at the nodes. */
function appliedOf({ equations }: Prepared, { nodes }: Loads): Float64Array {
  const applied = new Float64Array(equations.of.length);
  nodes.forEach(({ node, force, moment }) => {
    for (let d = 0; d < 3; d++) {
      applied[6 * node + d]! += force[d]!;
      applied[6 * node + 3 + d]! += moment[d]!;
    }
  });
  return applied;
}

/** Adds forces on the ends of every member, told along its own axes, to those on each movement. */
function addEnds(
  { elements, equations: { movements } }: Prepared,
  ends: readonly (Float64Array | null)[],
  to: Float64Array,
): void {
  const global = new Float64Array(12);
  for (let e = 0; e < ends.length; e++) {
    const f = ends[e];
    if (!f) continue;
    vectorToGlobal(f, elements[e]!.axes.R, global);
    const own = movements[e]!;
    for (let r = 0; r < 12; r++) to[own[r]!]! += global[r]!;
  }
}

/** Forces of the supports on the structure: what its members and springs push there, less what is put on it. */
function reactionsOf(
  prepared: Prepared,
  loads: Loads,
  u: Float64Array,
  endForces: readonly Float64Array[],
): Float64Array {
  const { structure, equations, springs } = prepared;
  const { of, shared } = equations;
  const pushed = appliedOf(prepared, loads).map((f) => -f);
  addEnds(prepared, endForces, pushed);
  springs.forEach(({ a, b, c, d, k }) => {
    const force = k * (u[c]! - u[d]!);
    pushed[a]! += force;
    pushed[b]! -= force;
  });
  const held = new Float64Array(of.length);
  for (let m = 0; m < of.length; m++) held[shared[m]!]! += pushed[m]!;
  const reactions = new Float64Array(of.length);
  for (const { node, fix } of structure.supports) {
    directions.forEach((direction: Direction, d) => {
      if (fix[direction] !== undefined) reactions[6 * node + d] = held[shared[6 * node + d]!]!;
    });
  }
  return reactions;
}

/** Solves a prepared structure under loads and its prescribed movements. */
export function solvePrepared(prepared: Prepared, loads: Loads): FrameSolution {
  const { of, prescribed, count } = prepared.equations;
  const vectors = memberLoadVectors(prepared, loads);
  const pushed = appliedOf(prepared, loads);
  addEnds(prepared, vectors, pushed);
  if (prescribed.some((v) => v !== 0)) addPrescribed(prepared, pushed);
  const x = new Float64Array(count);
  for (let m = 0; m < of.length; m++) if (of[m]! >= 0) x[of[m]!]! += pushed[m]!;
  solveFactored(prepared.factors, x);
  const u = spreadUnknowns(prepared, x);
  for (let m = 0; m < u.length; m++) if (of[m]! < 0) u[m] = prescribed[m]!;
  const endForces = endForcesOf(prepared, u, vectors);
  return {
    u,
    endForces,
    // Summed up where they are asked for.
    get reactions() {
      return reactionsOf(prepared, loads, u, endForces);
    },
  };
}

/** Adds what prescribed movements push on the free ones: −K_free,given · u_given. */
function addPrescribed(prepared: Prepared, pushed: Float64Array): void {
  const { prescribed } = prepared.equations;
  const ends = endForcesOf(prepared, prescribed, null).map((forces) => forces.map((f) => -f));
  addEnds(prepared, ends, pushed);
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
