import type { Structure, Theory } from './structure.js';
import { prepare } from './assemble.js';
import type { Prepared } from './assemble.js';
import type { Freedom } from './freedoms.js';
import { keptFor, sameNumbers } from './kept-for.js';
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
 * Prepares a frame and the skin on its border; or tells how the frame alone is free to move. Throws a RangeError for
 * one that is not plane.
 */
export function prepareStretched(
  structure: Structure,
  border: MembraneBorder,
  theory: Theory,
):
  | { readonly stable: true; readonly stretched: StretchedFrame }
  | { readonly stable: false; readonly freedoms: readonly Freedom[] } {
  const preparation = prepare(structure, theory);
  if (!preparation.stable) return preparation;
  const { prepared } = preparation;
  const { inPlane, outOfPlane, edges, ties } = halvesOf(prepared.equations, border);
  return { stable: true, stretched: { prepared, border, inPlane, outOfPlane, edges, ties } };
}

/** Whether two frames number their unknowns alike. */
export const sameUnknowns = ({ prepared: one }: StretchedFrame, { prepared: two }: StretchedFrame): boolean =>
  sameNumbers(one.equations.key, two.equations.key);

/** What the forces of a solution and the skin's tension add to the stiffness of a frame. */
export interface SecondOrder {
  readonly geometric: ProfileMatrix;
  readonly membrane: Membrane;
  readonly midTwists: MidTwists;
}

const keptSkins = keptFor<Membrane>(2);

/** The skin over a frame: the same for frames alike in all but how stiff they are. */
function skinOf({ prepared: { equations }, border, edges }: StretchedFrame, tension: Tension): Membrane {
  const { bottom, top, left, right, along_x, along_y, width, height } = border;
  return keptSkins(
    [equations.key, bottom, top, left, right, along_x, along_y, [width, height, tension.x, tension.y]],
    () => buildMembrane(border, tension, equations, edges),
  );
}

/** Second-order stiffness for the forces of `solution`, which lie in the plane, and the tension that goes with them. */
export const secondOrder = (frame: StretchedFrame, solution: FrameSolution, tension: Tension): SecondOrder => ({
  geometric: geometricStiffness(frame.prepared, solution),
  membrane: skinOf(frame, tension),
  midTwists: midTwists(frame.prepared, solution),
});
