import { rowStarts } from './equations.js';
import type { Equations } from './equations.js';
import { keptFor } from './kept-for.js';
import { skinEdges } from './membrane.js';
import type { SkinEdges } from './membrane.js';
import type { MembraneBorder } from './membrane-border.js';
import { rowsFrom, rowsOf } from './profile-matrix.js';
import type { Rows } from './profile-matrix.js';
import { threadEnds } from './threads.js';

/**
 * One of the two ways in which a plane frame and its skin move, in their plane or out of it: under loads in the plane
 * neither pushes the other, in the linear stiffness and in what the loads add to it.
 */
export interface Half {
  /** Its unknowns: from this one to the one before `to`. */
  readonly from: number;
  readonly to: number;
  /** Its rows in a matrix on the frame's unknowns. */
  readonly own: Rows;
  /** Where each unknown stands in a numbering that suits the frame with its skin, and the rows of a matrix in it. */
  readonly place: Int32Array;
  readonly rows: Rows;
  /** Where each entry of its own rows, one after the other, stands among those of such a matrix; −1: always nought. */
  readonly entries: Int32Array;
}

/** Both halves of a frame, and the edges of its skin. */
export interface Halves {
  readonly inPlane: Half;
  readonly outOfPlane: Half;
  readonly edges: SkinEdges;
  /** Where the entries between what the skin ties, row by row, stand in a matrix out of the plane. */
  readonly ties: Int32Array;
}

const planeMovements = [0, 1, 5];

/** Where entries of a symmetric matrix stand, row by row: row r with those of the columns from `first` to its own. */
function entriesIn({ first, start }: Rows, places: Int32Array, from: (r: number) => number): Int32Array {
  const entries: number[] = [];
  places.forEach((row, r) => {
    for (let c = from(r); c <= r; c++) {
      const low = Math.min(row, places[c]!);
      const high = Math.max(row, places[c]!);
      entries.push(low < first[high]! ? -1 : start[high]! + low);
    }
  });
  return Int32Array.from(entries);
}

/** Places along a list of the half's unknowns, and rows for what the frame's groups and the skin tie together. */
function numbered(
  { first, groups }: Equations,
  from: number,
  unknowns: readonly number[],
  ties: readonly ArrayLike<number>[],
): Half {
  const place = new Int32Array(unknowns.length);
  unknowns.forEach((unknown, n) => (place[unknown - from] = n));
  const to = from + unknowns.length;
  const own = rowsOf(rowsFrom(first), from, to);
  const rows = rowsFrom(
    rowStarts(unknowns.length, [...groups, ...ties], (unknown) =>
      unknown >= from && unknown < to ? place[unknown - from]! : -1,
    ),
  );
  return { from, to, own, place, rows, entries: entriesIn(rows, place, (r) => own.first[r]!) };
}

/** In the plane: as the frame's unknowns stand, whose rows the threads widen. */
function inPlaneHalf(equations: Equations, count: number, border: MembraneBorder): Half {
  const { of } = equations;
  const ties = threadEnds(border).map(({ from, to, freedom }) => [of[6 * from + freedom]!, of[6 * to + freedom]!]);
  return numbered(
    equations,
    0,
    Array.from({ length: count }, (_, unknown) => unknown),
    ties,
  );
}

/**
 * Out of the plane the skin ties every unknown along the border to every other: they come last, so that all others keep
 * the narrow rows they have without it; before them the other turns of the nodes there, first what lies inside.
 */
function outOfPlaneHalf(equations: Equations, from: number, border: MembraneBorder, tied: Int32Array): Half {
  const { count, of } = equations;
  const rank = new Uint8Array(count);
  for (const side of [border.bottom, border.top, border.left, border.right]) {
    for (const node of side) for (let m = 6 * node; m < 6 * node + 6; m++) if (of[m]! >= 0) rank[of[m]!] = 1;
  }
  for (const unknown of tied) rank[unknown] = 2;
  const unknowns = Array.from({ length: count - from }, (_, n) => from + n);
  return numbered(
    equations,
    from,
    unknowns.sort((p, q) => rank[p]! - rank[q]!),
    [tied],
  );
}

function makeHalves(equations: Equations, border: MembraneBorder): Halves {
  const { count, of } = equations;
  let [inside, outside] = [0, count];
  for (let m = 0; m < of.length; m++) {
    if (of[m]! < 0) continue;
    if (planeMovements.includes(m % 6)) inside = Math.max(inside, of[m]! + 1);
    else outside = Math.min(outside, of[m]!);
  }
  if (inside > outside) throw new RangeError('a frame with a skin lies in the xy plane');
  const edges = skinEdges(border, of);
  const inPlane = inPlaneHalf(equations, inside, border);
  const outOfPlane = outOfPlaneHalf(equations, outside, border, edges.tied);
  const { rows, place } = outOfPlane;
  const tied = edges.tied.map((unknown) => place[unknown - outside]!);
  return { inPlane, outOfPlane, edges, ties: entriesIn(rows, tied, () => 0) };
}

const kept = keptFor<Halves>(4);

/** Both halves of a frame in the xy plane. Throws a RangeError for a structure that does not lie in it. */
export const halvesOf = (equations: Equations, border: MembraneBorder): Halves =>
  kept([equations.key, border.bottom, border.top, border.left, border.right], () => makeHalves(equations, border));
