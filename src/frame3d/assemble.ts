import { directions } from './structure.js';
import type { FrameNode, Member, Structure, Support, Theory, Vector } from './structure.js';
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
  /** The terms of all springs that are neither absent nor rigid. */
  readonly springs: readonly SpringTerm[];
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

/** Whether two of a kind are equal in these fields. */
const sameIn =
  <T>(...fields: readonly (keyof T)[]) =>
  (one: T, two: T): boolean =>
    fields.every((field) => one[field] === two[field]);

const sameNode = sameIn<FrameNode>('id', 'x', 'y', 'z');
const sameEnds = sameIn<Member>('id', 'i', 'j');
const sameSection = sameIn<Member>('E', 'G', 'A', 'Iy', 'Iz', 'J');
const sameVector = sameIn<Vector>(0, 1, 2);

/** Members that follow each other are of one kind when they are alike in all but where they lie. */
const sameKind = (one: Member, two: Member): boolean =>
  !one.releases && !two.releases && sameSection(one, two) && sameVector(one.zref, two.zref);

/** Lengths and directions that differ by less are the same but for the rounding of their nodes. */
const rounding = 1e-13;

/** Whether a member lies like one of these axes, with the same way up. */
function liesAlong({ length, R }: Axes, nodes: readonly FrameNode[], { i, j }: Member): boolean {
  const [a, b] = [nodes[i]!, nodes[j]!];
  const [x, y, z] = [b.x - a.x, b.y - a.y, b.z - a.z];
  const own = Math.sqrt(x * x + y * y + z * z);
  return (
    Math.abs(own - length) <= rounding * length &&
    Math.abs(x / own - R[0]!) <= rounding &&
    Math.abs(y / own - R[1]!) <= rounding &&
    Math.abs(z / own - R[2]!) <= rounding
  );
}

/** Every member ready for use; those of one kind, one length and one direction in a row share what is made of them. */
function prepareElements(structure: Structure, theory: Theory): Element[] {
  const elements: Element[] = [];
  structure.members.forEach((member, e) => {
    const movements = new Int32Array(12);
    for (let d = 0; d < 6; d++) {
      movements[d] = 6 * member.i + d;
      movements[6 + d] = 6 * member.j + d;
    }
    const before = elements[e - 1];
    if (before && sameKind(structure.members[e - 1]!, member) && liesAlong(before.axes, structure.nodes, member)) {
      const { axes, phi, k, G } = before;
      elements.push({ axes, phi, k, G, movements });
      return;
    }
    const axes = memberAxes(structure.nodes, member);
    const phi = shearParameters(member, axes.length, theory);
    const k = memberStiffness(member, axes.length, phi);
    const released = releasedRows(member);
    const G = released.length > 0 ? condenseReleases(k, released) : null;
    elements.push({ axes, phi, k, G, movements });
  });
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
function addSprings(springs: readonly SpringTerm[], of: Int32Array, stiffness: ProfileMatrix): void {
  const add = (row: number, column: number, value: number): void => {
    const [i, j] = [of[row]!, of[column]!];
    if (j >= 0 && j <= i) addEntry(stiffness, i, j, value);
  };
  for (const { a, b, c, d, k } of springs) {
    add(a, c, k);
    add(a, d, -k);
    add(b, c, -k);
    add(b, d, k);
  }
}

/** What numbering hangs on of a spring's stiffness: whether it is there, and rigid. */
const firmness = (k: number): number => (k === Infinity ? 2 : Math.sign(k));

const sameFix = sameIn<Support['fix']>(...directions);

const alike = <T>(one: readonly T[], two: readonly T[], same: (a: T, b: T) => boolean): boolean =>
  one.length === two.length && one.every((a, n) => same(a, two[n]!));

/** Whether all that numbering hangs on is the same: how stiff members and springs are does not matter to it. */
const sameFramework = (one: Structure, two: Structure): boolean =>
  alike(one.nodes, two.nodes, sameNode) &&
  alike(one.members, two.members, (a, b) => sameEnds(a, b) && sameVector(a.zref, b.zref)) &&
  alike(
    one.springs,
    two.springs,
    (a, b) => a.i === b.i && a.j === b.j && a.k.every((k, d) => firmness(k) === firmness(b.k[d]!)),
  ) &&
  alike(one.supports, two.supports, (a, b) => a.node === b.node && sameFix(a.fix, b.fix));

/**
 * Assembles and factorises the linear stiffness of a structure.
 *
 * Numbering is taken from `like`, prepared before with the same theory, when nothing but stiffness differs; elements
 * too where it is that of springs alone.
 * Throws a RangeError for input that describes no structure: a member without length, two values for one movement.
 */
export function prepare(structure: Structure, theory: Theory, like?: Prepared): Preparation {
  const known = like && sameFramework(like.structure, structure) ? like : null;
  const sameMembers = known !== null && alike(known.structure.members, structure.members, sameKind);
  const elements = sameMembers ? known.elements : prepareElements(structure, theory);
  const axes = elements.map((e) => e.axes);
  const equations = known?.equations ?? numberEquations(structure, axes, orderNodes(structure));
  const stiffness = emptyProfile(equations.first);
  const global = new Float64Array(144);
  let turned: Float64Array | null = null;
  for (const { k, axes, movements } of elements) {
    if (k !== turned) toGlobal(k, axes.R, global);
    turned = k;
    addElementMatrix(stiffness, equations.of, movements, global);
  }
  const springs = springTerms(structure);
  addSprings(springs, equations.of, stiffness);
  const factors = factorise(stiffness);
  if (factors.vanished.length > 0 || factors.negative > 0) {
    return { stable: false, freedoms: freedomsOf(structure, equations, factors) };
  }
  return { stable: true, prepared: { structure, elements, equations, springs, stiffness, factors } };
}
