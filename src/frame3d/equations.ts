import { directions } from './structure.js';
import type { Structure } from './structure.js';
import { keyOf } from './numbering-key.js';
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
  /** All that it hangs on. */
  readonly key: readonly number[];
}

/** Sets of movements bound together, by union with path halving. */
function bindings(count: number): { root: (m: number) => number; bind: (a: number, b: number) => void } {
  const parent = Int32Array.from({ length: count }, (_, m) => m);
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
    for (const set of m < 0 ? whole : parted[m]!)
      groups.push([member.i, member.j].flatMap((node) => set.map((d) => 6 * node + d)));
  });
  for (const { i, j, k } of structure.springs) {
    for (let d = 0; d < 6; d++) if (k[d]! > 0 && (d < 3 || d === 5)) groups.push([6 * i + d, 6 * j + d]);
    // A moment about z couples the turns about x and y once it carries load (geometric stiffness).
    if (k[3] > 0 || k[4] > 0 || k[5] > 0) groups.push([6 * i + 3, 6 * i + 4, 6 * j + 3, 6 * j + 4]);
  }
  return groups;
}

/** The same groups of what stands for every movement. */
const renamed = (groups: readonly (readonly number[])[], standsFor: Int32Array): number[][] =>
  groups.map((group) => group.map((m) => standsFor[m]!));

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
  const shared = Int32Array.from({ length: size }, (_, m) => ties.root(m));

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

  const bound = renamed(couplings(structure, axes), shared);
  const parts = bindings(size);
  for (const group of bound) {
    const free = group.filter((m) => !isGiven(m));
    for (const m of free) parts.bind(free[0]!, m);
  }

  const buckets = new Map<number, number[]>();
  const placed = new Uint8Array(size);
  for (const node of order) {
    for (const d of inTurn) {
      const m = shared[6 * node + d]!;
      if (placed[m] || isGiven(m)) continue;
      placed[m] = 1;
      const part = parts.root(m);
      const bucket = buckets.get(part) ?? [];
      bucket.push(m);
      buckets.set(part, bucket);
    }
  }
  const unknown = new Int32Array(size).fill(-1);
  let count = 0;
  for (const bucket of buckets.values()) for (const m of bucket) unknown[m] = count++;

  const of = shared.map((m) => unknown[m]!);
  const prescribed = Float64Array.from(shared, (m) => given[m]! || 0);
  const groups = renamed(bound, unknown);
  const movements = structure.members.map(({ i, j }) =>
    Int32Array.from({ length: 12 }, (_, m) => (m < 6 ? 6 * i + m : 6 * j + m - 6)),
  );
  const first = rowStarts(count, groups, (unknown) => unknown);
  return { count, of, prescribed, shared, first, groups, movements, key: keyOf(structure, axes) };
}

/** First column of every row, when each group of unknowns acts on itself; `rowOf` each its row, negative: left out. */
export function rowStarts(
  count: number,
  groups: readonly ArrayLike<number>[],
  rowOf: (unknown: number) => number,
): Int32Array {
  const first = Int32Array.from({ length: count }, (_, row) => row);
  for (const group of groups) {
    const rows = Array.from(group, rowOf).filter((row) => row >= 0);
    const lowest = Math.min(...rows);
    for (const row of rows) first[row] = Math.min(first[row]!, lowest);
  }
  return first;
}

/** An ordering of the nodes that keeps those joined by members or springs close. */
export const orderNodes = ({ nodes, members, springs }: Structure): number[] =>
  narrowOrder(
    graphOf(
      nodes.length,
      [...members, ...springs].flatMap(({ i, j }) => [i, j]),
    ),
  );
