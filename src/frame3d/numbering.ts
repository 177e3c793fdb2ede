import { planeAxis } from './element-axes.js';
import type { Axes } from './element-axes.js';
import { numberEquations, orderNodes } from './equations.js';
import type { Equations } from './equations.js';
import { directions } from './structure.js';
import type { Structure } from './structure.js';

/** A numbering with all that it hangs on. */
export interface Numbering extends Equations {
  readonly key: Float64Array;
}

/** Numberings kept at most: frames of one kind come one after the other, each meshed in a few ways. */
const mostKept = 12;

const kept: Numbering[] = [];

/** Whether a stiffness is there, and rigid. */
const firmness = (k: number): number => (k === Infinity ? 2 : k > 0 ? 1 : 0);

/** All that the numbering of a structure hangs on: what is joined to what, which way it lies, what is given. */
function keyOf({ nodes, members, springs, supports }: Structure, axes: readonly Axes[]): Float64Array {
  const key = new Float64Array(4 + 3 * members.length + 3 * springs.length + 8 * supports.length);
  let at = 0;
  const add = (value: number): void => {
    key[at++] = value;
  };
  add(nodes.length);
  add(members.length);
  add(springs.length);
  add(supports.length);
  for (let e = 0; e < members.length; e++) {
    add(members[e]!.i);
    add(members[e]!.j);
    add(planeAxis(axes[e]!.R));
  }
  for (const { i, j, k } of springs) {
    let firm = 0;
    for (let d = 0; d < 6; d++) firm = 3 * firm + firmness(k[d]!);
    add(i);
    add(j);
    add(firm);
  }
  for (const { node, fix } of supports) {
    let given = 0;
    add(node);
    for (const direction of directions) {
      given = 2 * given + (fix[direction] === undefined ? 0 : 1);
      add(fix[direction] ?? 0);
    }
    add(given);
  }
  return key;
}

function sameKey(one: Float64Array, two: Float64Array): boolean {
  if (one.length !== two.length) return false;
  for (let n = 0; n < one.length; n++) if (one[n] !== two[n]) return false;
  return true;
}

/**
 * The numbering of a structure; `like` itself where that is the same. It hangs on what is joined to what alone, not on
 * how long or stiff anything is: structures of one kind share it.
 */
export function numberingOf(structure: Structure, axes: readonly Axes[], like?: Numbering): Numbering {
  const key = keyOf(structure, axes);
  if (like && sameKey(like.key, key)) return like;
  const known = kept.find((one) => sameKey(one.key, key));
  if (known) return known;
  const numbering = { ...numberEquations(structure, axes, orderNodes(structure)), key };
  if (kept.length >= mostKept) kept.shift();
  kept.push(numbering);
  return numbering;
}
