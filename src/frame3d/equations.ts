import { directions } from './structure.js';
import type { Structure } from './structure.js';
import { graphOf, narrowOrder } from './ordering.js';
import { planeAxis } from './element-axes.js';
import type { Axes } from './element-axes.js';

/**
 * Which movement of which node is which unknown. Movement `m` of node `p` is `6 p + m`, in the order of `directions`.
 */
export interface Equations {
  /** Number of unknowns. */
  readonly count: number;
  /** Unknown of each movement, or -1 where it is prescribed. */
  readonly of: Int32Array;
  /** Prescribed value of each movement (0 where free). */
  readonly prescribed: Float64Array;
  /** Representative of each set of movements that are shared exactly. */
  readonly shared: Int32Array;
  /** First column of each row of a stiffness matrix on these unknowns. */
  readonly first: Int32Array;
  /** Movements of members and springs that act on each other, flattened groups of unknowns (-1 among them possible). */
  readonly groups: readonly (readonly number[])[];
  /** The twelve movements of the nodes of each member. */
  readonly movements: readonly Int32Array[];
}

/** Sets of movements bound together, by union with path halving. */
function bindings(count: number): { root: (m: number) => number; bind: (a: number, b: number) => void } {
  const parent = new Int32Array(count);
  for (let m = 0; m < count; m++) parent[m] = m;
  const root = (m: number): number => {
    while (parent[m] !== m) m = parent[m] = parent[parent[m]!]!;
    return m;
  };
  const bind = (a: number, b: number): void => {
    const p = root(a);
    const q = root(b);
    if (p !== q) parent[Math.max(p, q)] = Math.min(p, q);
  };
  return { root, bind };
}

const whole = [[0, 1, 2, 3, 4, 5]];
/** A node's movements in the xy plane before those out of it, so that those of a plane frame are so as a whole. */
const inTurn = [0, 1, 5, 2, 3, 4];
/** For a member whose local z is the global axis m: movements in its plane, and out of it. */
const parted = [0, 1, 2].map((m) => [
  [(m + 1) % 3, (m + 2) % 3, 3 + m],
  [m, 3 + ((m + 1) % 3), 3 + ((m + 2) % 3)],
]);

/** Groups of movements (node and direction flattened) that members and springs bind to each other. */
function couplings(structure: Structure, axes: readonly Axes[]): number[][] {
  const groups: number[][] = [];
  structure.members.forEach((member, e) => {
    const m = planeAxis(axes[e]!.R);
    for (const set of m < 0 ? whole : parted[m]!) {
      const group: number[] = [];
      for (let n = 0; n < set.length; n++) group.push(6 * member.i + set[n]!);
      for (let n = 0; n < set.length; n++) group.push(6 * member.j + set[n]!);
      groups.push(group);
    }
  });
  for (const { i, j, k } of structure.springs) {
    for (let d = 0; d < 6; d++) if (k[d]! > 0 && (d < 3 || d === 5)) groups.push([6 * i + d, 6 * j + d]);
    // A moment about z couples the turns about x and y once it carries load (geometric stiffness).
    if (k[3] > 0 || k[4] > 0 || k[5] > 0) groups.push([6 * i + 3, 6 * i + 4, 6 * j + 3, 6 * j + 4]);
  }
  return groups;
}

/** Puts in place of every movement what stands for it. */
function rename(groups: readonly number[][], standsFor: Int32Array): void {
  for (const group of groups) for (let n = 0; n < group.length; n++) group[n] = standsFor[group[n]!]!;
}

/**
 * Numbers the unknowns: parts of the structure that do not act on each other one after the other (a plane frame
 * falls into movements in its plane and out of it), inside each part along `order`, a narrow ordering of the nodes.
 * Throws a RangeError when a movement is given two different values.
 */
export function numberEquations(structure: Structure, axes: readonly Axes[], order: readonly number[]): Equations {
  const size = 6 * structure.nodes.length;
  const ties = bindings(size);
  for (const { i, j, k } of structure.springs) {
    for (let d = 0; d < 6; d++) if (k[d] === Infinity) ties.bind(6 * i + d, 6 * j + d);
  }
  const shared = new Int32Array(size);
  for (let m = 0; m < size; m++) shared[m] = ties.root(m);

  const given = new Float64Array(size).fill(NaN);
  for (const { node, fix } of structure.supports) {
    directions.forEach((direction, d) => {
      const value = fix[direction];
      if (value === undefined) return;
      const m = shared[6 * node + d]!;
      if (!Number.isNaN(given[m]) && given[m] !== value) {
        throw new RangeError(`node "${structure.nodes[node]!.id}" is given two different values of ${direction}`);
      }
      given[m] = value;
    });
  }
  const isGiven = (m: number): boolean => !Number.isNaN(given[m]);

  const groups = couplings(structure, axes);
  rename(groups, shared);
  const parts = bindings(size);
  for (const group of groups) {
    let head = -1;
    for (const m of group) {
      if (isGiven(m)) continue;
      if (head < 0) head = m;
      else parts.bind(head, m);
    }
  }

  const buckets = new Map<number, number[]>();
  const placed = new Uint8Array(size);
  for (const node of order) {
    for (const d of inTurn) {
      const m = shared[6 * node + d]!;
      if (placed[m] || isGiven(m)) continue;
      placed[m] = 1;
      const part = parts.root(m);
      const bucket = buckets.get(part);
      if (bucket) bucket.push(m);
      else buckets.set(part, [m]);
    }
  }
  const unknown = new Int32Array(size).fill(-1);
  let count = 0;
  for (const bucket of buckets.values()) for (const m of bucket) unknown[m] = count++;

  const of = new Int32Array(size);
  const prescribed = new Float64Array(size);
  for (let m = 0; m < size; m++) {
    of[m] = unknown[shared[m]!]!;
    prescribed[m] = isGiven(shared[m]!) ? given[shared[m]!]! : 0;
  }
  rename(groups, unknown);
  const movements = structure.members.map(({ i, j }) =>
    Int32Array.from({ length: 12 }, (_, m) => (m < 6 ? 6 * i + m : 6 * j + m - 6)),
  );
  return { count, of, prescribed, shared, first: rowStarts(count, [groups], (eq) => eq), groups, movements };
}

/** First column of every row, when each group of unknowns acts on itself; `rowOf` each its row, negative: left out. */
export function rowStarts(
  count: number,
  lists: readonly (readonly ArrayLike<number>[])[],
  rowOf: (unknown: number) => number,
): Int32Array {
  const first = new Int32Array(count);
  for (let i = 0; i < count; i++) first[i] = i;
  for (const groups of lists) {
    for (const group of groups) {
      let lowest = count;
      for (let n = 0; n < group.length; n++) {
        const row = rowOf(group[n]!);
        if (row >= 0 && row < lowest) lowest = row;
      }
      for (let n = 0; n < group.length; n++) {
        const row = rowOf(group[n]!);
        if (row >= 0 && lowest < first[row]!) first[row] = lowest;
      }
    }
  }
  return first;
}

/** Pairs of nodes joined by members or springs. */
export function nodeEdges(structure: Structure): number[] {
  const edges: number[] = [];
  for (const { i, j } of structure.members) edges.push(i, j);
  for (const { i, j } of structure.springs) edges.push(i, j);
  return edges;
}

/** An ordering of the nodes that keeps joined ones close. */
export function orderNodes(structure: Structure): number[] {
  return narrowOrder(graphOf(structure.nodes.length, nodeEdges(structure)));
}
