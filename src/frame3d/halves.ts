import { rowStarts } from './equations.js';
import { borderUnknowns } from './membrane.js';
import type { MembraneBorder } from './membrane-border.js';
import type { Prepared } from './assemble.js';
import { threadEnds } from './threads.js';

/**
 * One of the two ways in which a plane frame and its skin move, in their plane or out of it: under loads in the plane
 * neither pushes the other, in the linear stiffness and in what the loads add to it.
 */
export interface Half {
  /** Its unknowns: from this one to the one before `to`. */
  readonly from: number;
  readonly to: number;
  /** Where each stands in a numbering that suits the frame with its skin, and the row starts of a matrix in it. */
  readonly place: Int32Array;
  readonly first: Int32Array;
}

export interface Halves {
  readonly inPlane: Half;
  readonly outOfPlane: Half;
}

const planeMovements = [0, 1, 5];

/** Places along a list of the half's unknowns, and row starts for what the frame's groups and the skin tie together. */
function numbered(
  { equations }: Prepared,
  from: number,
  unknowns: readonly number[],
  ties: readonly (readonly number[])[],
): Half {
  const place = new Int32Array(unknowns.length);
  unknowns.forEach((unknown, n) => (place[unknown - from] = n));
  const to = from + unknowns.length;
  const own = (unknown: number): number => (unknown >= from && unknown < to ? place[unknown - from]! : -1);
  return { from, to, place, first: rowStarts(unknowns.length, [equations.groups, ties], own) };
}

/** In the plane: as the frame's unknowns stand, whose rows the threads widen. */
function inPlaneHalf(prepared: Prepared, count: number, border: MembraneBorder): Half {
  const { of } = prepared.equations;
  const ties = threadEnds(border).map(({ from, to, freedom }) => [of[6 * from + freedom]!, of[6 * to + freedom]!]);
  return numbered(
    prepared,
    0,
    Array.from({ length: count }, (_, unknown) => unknown),
    ties,
  );
}

/**
 * Out of the plane the skin ties every unknown along the border to every other: they come last, so that all others keep
 * the narrow rows they have without it; before them the other turns of the nodes there, first what lies inside.
 */
function outOfPlaneHalf(prepared: Prepared, from: number, border: MembraneBorder): Half {
  const { count, of } = prepared.equations;
  const tied = borderUnknowns(border, of);
  const rank = new Uint8Array(count);
  for (const side of [border.bottom, border.top, border.left, border.right]) {
    for (const node of side) for (let m = 6 * node; m < 6 * node + 6; m++) if (of[m]! >= 0) rank[of[m]!] = 1;
  }
  for (const unknown of tied) rank[unknown] = 2;
  const unknowns: number[] = [];
  for (let wanted = 0; wanted <= 2; wanted++) {
    for (let unknown = from; unknown < count; unknown++) if (rank[unknown] === wanted) unknowns.push(unknown);
  }
  return numbered(prepared, from, unknowns, [tied]);
}

/** Both halves of a frame in the xy plane. Throws a RangeError for a structure that does not lie in it. */
export function halvesOf(prepared: Prepared, border: MembraneBorder): Halves {
  const { count, of } = prepared.equations;
  let [inside, outside] = [0, count];
  for (let m = 0; m < of.length; m++) {
    if (of[m]! < 0) continue;
    if (planeMovements.includes(m % 6)) inside = Math.max(inside, of[m]! + 1);
    else outside = Math.min(outside, of[m]!);
  }
  if (inside > outside) throw new RangeError('a frame with a skin lies in the xy plane');
  return { inPlane: inPlaneHalf(prepared, inside, border), outOfPlane: outOfPlaneHalf(prepared, outside, border) };
}
