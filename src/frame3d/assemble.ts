import type { FrameNode, Member, Structure, Theory } from './structure.js';
import { memberAxes, toGlobal } from './element-axes.js';
import type { Axes } from './element-axes.js';
import { condenseReleases, memberStiffness, releasedRows, shearParameters } from './element-stiffness.js';
import type { ShearParameters } from './element-stiffness.js';
import type { Equations } from './equations.js';
import { numberingOf } from './numbering.js';
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
}

/** A structure whose stiffness is assembled and factorised, ready for any number of loads. */
export interface Prepared {
  readonly structure: Structure;
  readonly elements: readonly Element[];
  readonly equations: Equations;
  /** The terms of all springs that are neither absent nor rigid. */
  readonly springs: readonly SpringTerm[];
  readonly stiffness: ProfileMatrix;
  readonly factors: ProfileFactors;
}

/** A stable structure, or every way in which an unstable one is free to move. */
export type Preparation =
  | { readonly stable: true; readonly prepared: Prepared }
  | { readonly stable: false; readonly freedoms: readonly Freedom[] };

/** Adds a symmetric 12 × 12 matrix in global axes to a matrix on the unknowns, leaving prescribed movements out. */
export function addElementMatrix(target: ProfileMatrix, of: Int32Array, movements: Int32Array, k: Float64Array): void {
  const { start, values } = target;
  for (let r = 0; r < 12; r++) {
    const i = of[movements[r]!]!;
    if (i < 0) continue;
    for (let c = 0; c <= r; c++) {
      const v = k[r * 12 + c]!;
      if (v === 0) continue;
      const j = of[movements[c]!]!;
      if (j < 0) continue;
      if (j < i) values[start[i]! + j]! += v;
      else if (j > i) values[start[j]! + i]! += v;
      // Two movements that are one unknown: the entry stands for both halves.
      else values[start[i]! + i]! += r === c ? v : 2 * v;
    }
  }
}

/** Members that follow each other are of one kind when they are alike in all but where they lie. */
const sameKind = (one: Member, two: Member): boolean =>
  one.E === two.E &&
  one.G === two.G &&
  one.A === two.A &&
  one.Iy === two.Iy &&
  one.Iz === two.Iz &&
  one.J === two.J &&
  !one.releases &&
  !two.releases &&
  one.zref[0] === two.zref[0] &&
  one.zref[1] === two.zref[1] &&
  one.zref[2] === two.zref[2];

/** Lengths and directions that differ by less are the same but for the rounding of their nodes. */
const rounding = 1e-13;

/** Whether a member lies like one of these axes, with the same way up. */
function liesAlong({ length, R }: Axes, nodes: readonly FrameNode[], { i, j }: Member): boolean {
  const a = nodes[i]!;
  const b = nodes[j]!;
  const x = b.x - a.x;
  const y = b.y - a.y;
  const z = b.z - a.z;
  const own = Math.sqrt(x * x + y * y + z * z);
  return (
    Math.abs(own - length) <= rounding * length &&
    Math.abs(x / own - R[0]!) <= rounding &&
    Math.abs(y / own - R[1]!) <= rounding &&
    Math.abs(z / own - R[2]!) <= rounding
  );
}

/** Every member ready for use; those of one kind, one length and one direction in a row are one element. */
function prepareElements({ nodes, members }: Structure, theory: Theory): Element[] {
  const elements: Element[] = [];
  for (let e = 0; e < members.length; e++) {
    const member = members[e]!;
    const before = elements[e - 1];
    if (before && sameKind(members[e - 1]!, member) && liesAlong(before.axes, nodes, member)) {
      elements.push(before);
      continue;
    }
    const axes = memberAxes(nodes, member);
    const phi = shearParameters(member, axes.length, theory);
    const k = memberStiffness(member, axes.length, phi);
    const released = member.releases ? releasedRows(member) : [];
    const G = released.length > 0 ? condenseReleases(k, released) : null;
    elements.push({ axes, phi, k, G });
  }
  return elements;
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
  const add = (i: number, j: number, push: number, by: number, k: number): unknown =>
    terms.push({ a: 6 * i + push, b: 6 * j + push, c: 6 * i + by, d: 6 * j + by, k });
  structure.springs.forEach(({ i, j, k, cross }) => {
    for (let d = 0; d < 6; d++) if (k[d]! > 0 && k[d] !== Infinity) add(i, j, d, d, k[d]!);
    if (cross !== undefined) {
      add(i, j, 3, 4, cross);
      add(i, j, 4, 3, cross);
    }
  });
  return terms;
}

/**
 * Adds the springs to a stiffness on the unknowns `of`; every entry of the lower triangle comes from exactly one term.
 */
function addSprings(springs: readonly SpringTerm[], of: Int32Array, stiffness: ProfileMatrix): void {
  springs.forEach(({ a, b, c, d, k }) => {
    for (let n = 0; n < 4; n++) {
      const i = of[n < 2 ? a : b]!;
      const j = of[n % 2 === 0 ? c : d]!;
      if (j >= 0 && j <= i) addEntry(stiffness, i, j, n === 0 || n === 3 ? k : -k);
    }
  });
}

/**
 * Assembles and factorises the linear stiffness of a structure.
 *
 * Throws a RangeError for input that describes no structure: a member without length, two values for one movement.
 */
export function prepare(structure: Structure, theory: Theory): Preparation {
  const elements = prepareElements(structure, theory);
  const axes = elements.map((e) => e.axes);
  const equations = numberingOf(structure, axes);
  const { of, movements, first } = equations;
  const stiffness = emptyProfile(first);
  const global = new Float64Array(144);
  let turned: Element | null = null;
  for (let e = 0; e < elements.length; e++) {
    const element = elements[e]!;
    if (element !== turned) toGlobal(element.k, element.axes.R, global);
    turned = element;
    addElementMatrix(stiffness, of, movements[e]!, global);
  }
  const springs = springTerms(structure);
  addSprings(springs, of, stiffness);
  const factors = factorise(stiffness);
  if (factors.vanished.length > 0 || factors.negative > 0) {
    return { stable: false, freedoms: freedomsOf(structure, equations, factors) };
  }
  return { stable: true, prepared: { structure, elements, equations, springs, stiffness, factors } };
}
