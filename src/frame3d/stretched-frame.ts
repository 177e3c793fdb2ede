import type { Structure, Theory } from './structure.js';
import { nodeEdges, rowStarts } from './equations.js';
import { graphOf, narrowOrder } from './ordering.js';
import { prepare } from './assemble.js';
import type { Prepared } from './assemble.js';
import type { Freedom } from './freedoms.js';
import type { FrameSolution } from './solve.js';
import { geometricStiffness } from './geometric-stiffness.js';
import { buildMembrane, interiorNumber, threadEnds } from './membrane.js';
import type { Membrane, MembraneGrid, Tension } from './membrane.js';
import { addEntry, emptyProfile, factorise } from './profile-matrix.js';
import type { ProfileFactors, ProfileMatrix } from './profile-matrix.js';

/** A plane frame with the grid of the skin it carries, prepared together so that both fit one narrow ordering. */
export interface StretchedFrame {
  readonly prepared: Prepared;
  readonly grid: MembraneGrid;
  /** Numbering that has the interior points of the skin among the unknowns of the frame. */
  readonly joined: JoinedNumbering;
}

/** Where the frame's unknowns and the skin's interior points stand in one common system. */
interface JoinedNumbering {
  readonly frame: Int32Array;
  readonly interior: Int32Array;
  readonly first: Int32Array;
}

/** Pairs of points (nodes, then interior points from `offset` on) that the skin couples. */
function gridEdges(grid: MembraneGrid, offset: number): number[] {
  const edges: number[] = [];
  const point = (a: number, b: number): number => {
    const inside = interiorNumber(grid, a, b);
    return inside >= 0 ? offset + inside : grid.edge(a, b);
  };
  const [columns, rows] = [grid.xs.length, grid.ys.length];
  for (let b = 0; b < rows; b++) {
    for (let a = 0; a < columns; a++) {
      const here = point(a, b);
      if (a + 1 < columns) edges.push(here, point(a + 1, b));
      if (b + 1 < rows) edges.push(here, point(a, b + 1));
      if (a + 1 < columns && b + 1 < rows) edges.push(here, point(a + 1, b + 1), point(a + 1, b), point(a, b + 1));
    }
  }
  return edges;
}

function joinNumbering(prepared: Prepared, grid: MembraneGrid, order: readonly number[]): JoinedNumbering {
  const { equations } = prepared;
  const [columns, rows] = [grid.xs.length, grid.ys.length];
  const point = (a: number, b: number): number => {
    const inside = interiorNumber(grid, a, b);
    return inside >= 0 ? equations.count + inside : equations.of[6 * grid.edge(a, b) + 2]!;
  };
  const quads: number[][] = [];
  for (let b = 0; b + 1 < rows; b++) {
    for (let a = 0; a + 1 < columns; a++)
      quads.push([point(a, b), point(a + 1, b), point(a + 1, b + 1), point(a, b + 1)]);
  }
  const linked = new Set<number>();
  for (const quad of quads) for (const eq of quad) if (eq >= 0 && eq < equations.count) linked.add(equations.part[eq]!);

  const nodes = prepared.structure.nodes.length;
  const total = equations.count + order.length - nodes;
  const key = new Float64Array(total);
  const nodePlaces: number[] = [];
  order.forEach((point, position) => {
    if (point < nodes) nodePlaces.push(position);
    else key[equations.count + point - nodes] = position;
  });
  for (let eq = 0; eq < equations.count; eq++) {
    const part = linked.has(equations.part[eq]!) ? 0 : 1 + equations.part[eq]!;
    key[eq] = part * order.length + nodePlaces[equations.place[eq]!]!;
  }
  const sorted = Array.from({ length: total }, (_, i) => i).sort((p, q) => key[p]! - key[q]! || p - q);
  const at = new Int32Array(total);
  sorted.forEach((unknown, position) => (at[unknown] = position));
  const move = (group: readonly number[]): number[] => group.map((eq) => (eq >= 0 ? at[eq]! : -1));
  const pairs = threadEnds(grid).map(({ from, to, freedom }) => [
    equations.of[6 * from + freedom]!,
    equations.of[6 * to + freedom]!,
  ]);
  const first = rowStarts(total, [...equations.groups.map(move), ...quads.map(move), ...pairs.map(move)]);
  return { frame: at.slice(0, equations.count), interior: at.slice(equations.count), first };
}

/** Prepares a frame and the grid of its skin; or tells how the frame alone is free to move. */
export function prepareStretched(
  structure: Structure,
  grid: MembraneGrid,
  theory: Theory,
):
  | { readonly stable: true; readonly stretched: StretchedFrame }
  | { readonly stable: false; readonly freedoms: readonly Freedom[] } {
  const nodes = structure.nodes.length;
  const interior = Math.max(0, (grid.xs.length - 2) * (grid.ys.length - 2));
  const order = narrowOrder(graphOf(nodes + interior, nodeEdges(structure).concat(gridEdges(grid, nodes))));
  const preparation = prepare(
    structure,
    theory,
    order.filter((point) => point < nodes),
  );
  if (!preparation.stable) return preparation;
  const { prepared } = preparation;
  return { stable: true, stretched: { prepared, grid, joined: joinNumbering(prepared, grid, order) } };
}

/**
 * Second-order stiffness of a frame under the forces of a solution, and of its skin under tension, for one unit of
 * load.
 */
export interface SecondOrder {
  readonly geometric: ProfileMatrix;
  readonly membrane: Membrane;
  /** Linear and second-order stiffness in the joined numbering, skin interior included. */
  readonly joinedLinear: ProfileMatrix;
  readonly joinedSecond: ProfileMatrix;
}

/** Copies a matrix on the frame's unknowns into the joined system. */
function place(matrix: ProfileMatrix, joined: JoinedNumbering): ProfileMatrix {
  const target = emptyProfile(joined.first);
  for (let i = 0; i < matrix.n; i++) {
    const at = matrix.start[i]!;
    const row = joined.frame[i]!;
    const to = target.start[row]!;
    for (let j = matrix.first[i]!; j <= i; j++) {
      const value = matrix.values[at + j]!;
      if (value === 0) continue;
      const column = joined.frame[j]!;
      if (column <= row) target.values[to + column]! += value;
      else addEntry(target, row, column, value);
    }
  }
  return target;
}

/**
 * Second-order stiffness for the forces of `solution` and the tension that goes with them. Without tension the skin
 * lies still.
 */
export function secondOrder(frame: StretchedFrame, solution: FrameSolution, tension: Tension): SecondOrder {
  const { prepared, grid, joined } = frame;
  const geometric = geometricStiffness(prepared, solution);
  const membrane = buildMembrane(grid, tension, prepared.equations);
  const joinedSecond = place(geometric, joined);
  const { p, q, k } = membrane.couplings;
  const at = (point: number): number => (point >= 0 ? joined.interior[point]! : joined.frame[-1 - point]!);
  for (let c = 0; c < k.length; c++) addEntry(joinedSecond, at(p[c]!), at(q[c]!), k[c]!);
  const joinedLinear = place(prepared.stiffness, joined);
  if (tension.x === 0 && tension.y === 0) for (const point of joined.interior) addEntry(joinedLinear, point, point, 1);
  return { geometric, membrane, joinedLinear, joinedSecond };
}

/** Factors of K + share · (K_g + K_m), the skin's interior among the unknowns. */
export function tangentFactors(second: SecondOrder, share: number): ProfileFactors {
  const { joinedLinear: linear, joinedSecond } = second;
  const values = new Float64Array(linear.values.length);
  for (let v = 0; v < values.length; v++) values[v] = linear.values[v]! + share * joinedSecond.values[v]!;
  return factorise({ ...linear, values }, true);
}
