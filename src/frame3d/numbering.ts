import type { Axes } from './element-axes.js';
import { numberEquations, orderNodes } from './equations.js';
import type { Equations } from './equations.js';
import { keptFor } from './kept-for.js';
import { keyOf } from './numbering-key.js';
import type { Structure } from './structure.js';

/** Frames of one kind come one after the other, each meshed in a few ways. */
const kept = keptFor<Equations>(12);

/**
 * The numbering of a structure. It hangs on what is joined to what alone, not on how long or stiff anything is:
 * structures of one kind share it.
 */
export const numberingOf = (structure: Structure, axes: readonly Axes[]): Equations =>
  kept([keyOf(structure, axes)], () => numberEquations(structure, axes, orderNodes(structure)));
