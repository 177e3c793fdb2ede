import type { Structure, Theory } from './structure.js';
import { rowStarts } from './equations.js';
import { prepare } from './assemble.js';
import type { Prepared } from './assemble.js';
import type { Freedom } from './freedoms.js';
import type { FrameSolution } from './solve.js';
import { geometricStiffness } from './geometric-stiffness.js';
import { midTwists } from './mid-twist.js';
import type { MidTwists } from './mid-twist.js';
import type { StabilityProblem } from './load-factors.js';
import { addMembraneProduct, borderUnknowns, buildMembrane } from './membrane.js';
import { threadEnds } from './threads.js';
import type { Membrane } from './membrane.js';
import type { MembraneBorder } from './membrane-border.js';
import type { Tension } from './skin-energy.js';
import { addEntry, addProduct, emptyProfile, factorise, solveFactored } from './profile-matrix.js';
import type { ProfileFactors, ProfileMatrix } from './profile-matrix.js';

/** A plane frame and the border of the skin it carries. */
export interface StretchedFrame {
  readonly prepared: Prepared;
  readonly border: MembraneBorder;
  /** Numbering in which the unknowns that the skin ties to each other come last. */
  readonly joined: JoinedNumbering;
}

/** Where the frame's unknowns stand once the skin joins them. */
interface JoinedNumbering {
  readonly frame: Int32Array;
  readonly first: Int32Array;
}

/**
 * The skin ties every unknown along the border to every other: they come last, so that all others keep the narrow rows
 * they have without it; before them the other turns of the nodes there, before those what lies inside, and first the
 * parts that the skin does not act on.
 */
function joinNumbering({ equations }: Prepared, border: MembraneBorder): JoinedNumbering {
  const { count, of, part } = equations;
  const tied = borderUnknowns(border, of);
  const rank = new Uint8Array(count);
  const linked = new Set(tied.map((unknown) => part[unknown]!));
  for (let unknown = 0; unknown < count; unknown++) if (linked.has(part[unknown]!)) rank[unknown] = 1;
  for (const side of [border.bottom, border.top, border.left, border.right]) {
    for (const node of side) {
      for (let movement = 6 * node; movement < 6 * node + 6; movement++) {
        const unknown = of[movement]!;
        if (unknown >= 0 && rank[unknown] === 1) rank[unknown] = 2;
      }
    }
  }
  for (const unknown of tied) rank[unknown] = 3;
  const frame = new Int32Array(count);
  let next = 0;
  for (let wanted = 0; wanted <= 3; wanted++) {
    for (let unknown = 0; unknown < count; unknown++) if (rank[unknown] === wanted) frame[unknown] = next++;
  }
  const move = (group: readonly number[]): number[] => group.map((unknown) => (unknown >= 0 ? frame[unknown]! : -1));
  const threads = threadEnds(border).map(({ from, to, freedom }) => [of[6 * from + freedom]!, of[6 * to + freedom]!]);
  return { frame, first: rowStarts(count, [...equations.groups, tied, ...threads].map(move)) };
}

/** Prepares a frame and the skin on its border; or tells how the frame alone is free to move. */
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
  return { stable: true, stretched: { prepared, border, joined: joinNumbering(prepared, border) } };
}

/**
 * Second-order stiffness of a frame under the forces of a solution, and of its skin under tension, for one unit of
 * load.
 */
export interface SecondOrder {
  readonly geometric: ProfileMatrix;
  readonly membrane: Membrane;
  readonly midTwists: MidTwists;
  /**
   * Linear and second-order stiffness in the joined numbering, the skin included, and what the twist between nodes
   * takes from them at the square of the load.
   */
  readonly joinedLinear: ProfileMatrix;
  readonly joinedSecond: ProfileMatrix;
  readonly joinedSquare: ProfileMatrix;
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
 * Second-order stiffness for the forces of `solution` and the tension that goes with them.
 */
export function secondOrder(frame: StretchedFrame, solution: FrameSolution, tension: Tension): SecondOrder {
  const { prepared, border, joined } = frame;
  const geometric = geometricStiffness(prepared, solution);
  const membrane = buildMembrane(border, tension, prepared.equations);
  const joinedSecond = place(geometric, joined);
  const { p, q, k } = membrane;
  for (let c = 0; c < k.length; c++) addEntry(joinedSecond, joined.frame[p[c]!]!, joined.frame[q[c]!]!, k[c]!);
  const between = midTwists(prepared, solution);
  const joinedSquare = emptyProfile(joined.first);
  prepared.elements.forEach(({ movements }, e) => {
    const push = between.pushes.subarray(12 * e, 12 * e + 12);
    for (let r = 0; r < 12; r++) {
      const i = prepared.equations.of[movements[r]!]!;
      if (i < 0 || push[r] === 0) continue;
      for (let c = 0; c < 12; c++) {
        const j = prepared.equations.of[movements[c]!]!;
        if (j < 0 || push[c] === 0 || joined.frame[j]! > joined.frame[i]!) continue;
        addEntry(joinedSquare, joined.frame[i]!, joined.frame[j]!, (-push[r]! * push[c]!) / between.k[e]!);
      }
    }
  });
  const joinedLinear = place(prepared.stiffness, joined);
  return { geometric, membrane, midTwists: between, joinedLinear, joinedSecond, joinedSquare };
}

/** Factors of K + share · (K_g + K_m), with the twist between nodes where it settles. */
export function tangentFactors(second: SecondOrder, share: number): ProfileFactors {
  const { joinedLinear: linear, joinedSecond, joinedSquare } = second;
  const values = new Float64Array(linear.values.length);
  for (let v = 0; v < values.length; v++)
    values[v] = linear.values[v]! + share * (joinedSecond.values[v]! + share * joinedSquare.values[v]!);
  return factorise({ ...linear, values }, true);
}

/**
 * K φ = −λ (K_g + K_m) φ on the unknowns of the frame, followed by the parabola of twist of every member (which a mode
 * has beyond `prepared.equations.count`).
 */
export function stabilityProblem({ equations, elements, factors }: Prepared, second: SecondOrder): StabilityProblem {
  const { count, of } = equations;
  const { pushes, k } = second.midTwists;
  return {
    n: count + k.length,
    solve: (b) => {
      solveFactored(factors, b);
      for (let e = 0; e < k.length; e++) b[count + e]! /= k[e]!;
    },
    addProduct: (x, y) => {
      addProduct(second.geometric, x, y);
      addMembraneProduct(second.membrane, x, y);
      elements.forEach(({ movements }, e) => {
        let pushed = 0;
        for (let r = 0; r < 12; r++) {
          const i = of[movements[r]!]!;
          const share = pushes[12 * e + r]!;
          if (i < 0 || share === 0) continue;
          pushed += share * x[i]!;
          y[i]! += share * x[count + e]!;
        }
        y[count + e]! += pushed;
      });
    },
    countBelow: (factor) => tangentFactors(second, factor).negative,
  };
}
