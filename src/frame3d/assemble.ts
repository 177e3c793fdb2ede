import type { Structure, Theory } from './structure.js';
import { memberAxes, toGlobal } from './element-axes.js';
import type { Axes } from './element-axes.js';
import { condenseReleases, memberStiffness, releasedRows, shearParameters } from './element-stiffness.js';
import type { ShearParameters } from './element-stiffness.js';
import { numberEquations, orderNodes } from './equations.js';
import type { Equations } from './equations.js';
import { addEntry, emptyProfile, factorise } from './profile-matrix.js';
import type { ProfileFactors, ProfileMatrix } from './profile-matrix.js';
import { freedomsOf } from './freedoms.js';
import type { Freedom } from './freedoms.js';

/** A member ready for use: local stiffness with its releases condensed, and what is needed to come back. */
export interface Element {
  readonly axes: Axes;
  readonly phi: ShearParameters;
  readonly k: Float64Array;
  /** End movements of the member from those of its nodes; null without releases. */
  readonly G: Float64Array | null;
  /** The twelve movements of its nodes. */
  readonly movements: Int32Array;
}

/** A structure whose stiffness is assembled and factorised, ready for any number of loads. */
export interface Prepared {
  readonly structure: Structure;
  readonly elements: readonly Element[];
  readonly equations: Equations;
  readonly stiffness: ProfileMatrix;
  readonly factors: ProfileFactors;
}

/** A stable structure, or every way in which an unstable one is free to move. */
export type Preparation =
  | { readonly stable: true; readonly prepared: Prepared }
  | { readonly stable: false; readonly freedoms: readonly Freedom[] };

/** Adds a 12 × 12 matrix in global axes to a matrix on the unknowns, leaving prescribed movements out. */
export function addElementMatrix(target: ProfileMatrix, of: Int32Array, movements: Int32Array, k: Float64Array): void {
  for (let r = 0; r < 12; r++) {
    const i = of[movements[r]!]!;
    if (i < 0) continue;
    const { values } = target;
    const at = target.start[i]!;
    for (let c = 0; c < 12; c++) {
      const v = k[r * 12 + c]!;
      if (v === 0) continue;
      const j = of[movements[c]!]!;
      if (j >= 0 && j <= i) values[at + j]! += v;
    }
  }
}

function prepareElements(structure: Structure, theory: Theory): Element[] {
  return structure.members.map((member) => {
    const axes = memberAxes(structure.nodes, member);
    const phi = shearParameters(member, axes.length, theory);
    const k = memberStiffness(member, axes.length, phi);
    const released = releasedRows(member);
    const G = released.length > 0 ? condenseReleases(k, released) : null;
    const movements = new Int32Array(12);
    for (let d = 0; d < 6; d++) {
      movements[d] = 6 * member.i + d;
      movements[6 + d] = 6 * member.j + d;
    }
    return { axes, phi, k, G, movements };
  });
}

/** One term of a spring: k times the difference of movements c and d pushes movement a, and b the other way. */
export interface SpringTerm {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly k: number;
}

/** The terms of all springs that are neither absent nor rigid. */
export function springTerms(structure: Structure): readonly SpringTerm[] {
  const terms: SpringTerm[] = [];
  for (const { i, j, k: stiffness, cross } of structure.springs) {
    const term = (push: number, by: number, k: number): unknown =>
      terms.push({ a: 6 * i + push, b: 6 * j + push, c: 6 * i + by, d: 6 * j + by, k });
    stiffness.forEach((k, d) => {
      if (k > 0 && k !== Infinity) term(d, d, k);
    });
    if (cross !== undefined) {
      term(3, 4, cross);
      term(4, 3, cross);
    }
  }
  return terms;
}

/**
 * Adds the springs to a stiffness on the unknowns `of`; every entry of the lower triangle comes from exactly one term.
 */
function addSprings(structure: Structure, of: Int32Array, stiffness: ProfileMatrix): void {
  const add = (row: number, column: number, value: number): void => {
    const [i, j] = [of[row]!, of[column]!];
    if (j >= 0 && j <= i) addEntry(stiffness, i, j, value);
  };
  for (const { a, b, c, d, k } of springTerms(structure)) {
    add(a, c, k);
    add(a, d, -k);
    add(b, c, -k);
    add(b, d, k);
  }
}

/**
 * Assembles and factorises the linear stiffness of a structure.
 *
 * `order` may give the ordering of the nodes; by default one is found that keeps the band narrow.
 * Throws a RangeError for input that describes no structure: a member without length, two values for one movement.
 */
export function prepare(structure: Structure, theory: Theory, order?: readonly number[]): Preparation {
  const elements = prepareElements(structure, theory);
  const equations = numberEquations(
    structure,
    elements.map((e) => e.axes),
    order ?? orderNodes(structure),
  );
  const stiffness = emptyProfile(equations.first);
  const global = new Float64Array(144);
  for (const { k, axes, movements } of elements) {
    toGlobal(k, axes.R, global);
    addElementMatrix(stiffness, equations.of, movements, global);
  }
  addSprings(structure, equations.of, stiffness);
  const factors = factorise(stiffness);
  if (factors.vanished.length > 0 || factors.negative > 0) {
    return { stable: false, freedoms: freedomsOf(structure, equations, factors) };
  }
  return { stable: true, prepared: { structure, elements, equations, stiffness, factors } };
}
