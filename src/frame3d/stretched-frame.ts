import type { Structure, Theory } from './structure.js';
import { prepare } from './assemble.js';
import type { Prepared } from './assemble.js';
import type { Freedom } from './freedoms.js';
import { halvesOf } from './halves.js';
import type { Halves } from './halves.js';
import type { FrameSolution } from './solve.js';
import { geometricStiffness } from './geometric-stiffness.js';
import { midTwists } from './mid-twist.js';
import type { MidTwists } from './mid-twist.js';
import { buildMembrane } from './membrane.js';
import type { Membrane } from './membrane.js';
import type { MembraneBorder } from './membrane-border.js';
import type { Tension } from './skin-energy.js';
import type { ProfileMatrix } from './profile-matrix.js';

/** A plane frame and the border of the skin it carries. */
export interface StretchedFrame extends Halves {
  readonly prepared: Prepared;
  readonly border: MembraneBorder;
}

/**
 * Prepares a frame and the skin on its border; or tells how the frame alone is free to move. What it has in common with
 * a frame prepared before, of the same theory, is taken from there. Throws a RangeError for one that is not plane.
 */
export function prepareStretched(
  structure: Structure,
  border: MembraneBorder,
  theory: Theory,
  like?: Pick<StretchedFrame, 'prepared'>,
):
  | { readonly stable: true; readonly stretched: StretchedFrame }
  | { readonly stable: false; readonly freedoms: readonly Freedom[] } {
  const preparation = prepare(structure, theory, like?.prepared);
  if (!preparation.stable) return preparation;
  const { prepared } = preparation;
  const { inPlane, outOfPlane, edges, ties } = halvesOf(prepared.equations, border);
  return { stable: true, stretched: { prepared, border, inPlane, outOfPlane, edges, ties } };
}

/** What the forces of a solution and the skin's tension add to the stiffness of a frame. */
export interface SecondOrder {
  readonly geometric: ProfileMatrix;
  readonly membrane: Membrane;
  readonly midTwists: MidTwists;
}

/**
 * Second-order stiffness for the forces of `solution`, which lie in the plane, and the tension that goes with them; the
 * skin may have been built before, for the same border, tension and unknowns.
 */
export function secondOrder(
  { prepared, border, edges }: StretchedFrame,
  solution: FrameSolution,
  tension: Tension,
  membrane: Membrane = buildMembrane(border, tension, prepared.equations, edges),
): SecondOrder {
  const geometric = geometricStiffness(prepared, solution);
  return { geometric, membrane, midTwists: midTwists(prepared, solution) };
}
