import { smallestLoadFactors } from './load-factors.js';
import type { Direction, LoadFactor, StabilityProblem } from './load-factors.js';
import { addThreadProduct, skinProduct } from './membrane.js';
import type { Half } from './halves.js';
import { addProduct, emptyOn, factorise, partOf, solveFactored } from './profile-matrix.js';
import type { ProfileFactors } from './profile-matrix.js';
import type { SecondOrder, StretchedFrame } from './stretched-frame.js';
import { tangentInPlane, tangentOutOfPlane } from './tangent.js';

/** The factors of K, which is positive, that belong to one half. */
function factorsWithin({ prepared: { factors } }: StretchedFrame, { from, to, own }: Half): ProfileFactors {
  const { n, first, start, values } = partOf(own, factors);
  return { n, first, start, values, inverse: factors.inverse.subarray(from, to), vanished: [], negative: 0 };
}

/**
 * K φ = −λ (K_g + K_m) φ out of the plane, on the unknowns there, followed by the parabola of twist of every member.
 */
export function outOfPlaneProblem(frame: StretchedFrame, second: SecondOrder): StabilityProblem {
  const { from, to, own } = frame.outOfPlane;
  const count = to - from;
  const factors = factorsWithin(frame, frame.outOfPlane);
  const geometric = partOf(own, second.geometric);
  const { at, unknowns, pushes, k } = second.midTwists;
  const addSkin = skinProduct(second.membrane, from);
  return {
    n: count + k.length,
    solve: (b) => {
      solveFactored(factors, b);
      for (let e = 0; e < k.length; e++) b[count + e]! /= k[e]!;
    },
    addProduct: (x, y) => {
      addProduct(geometric, x, y);
      addSkin(x, y);
      for (let e = 0; e < k.length; e++) {
        let pushed = 0;
        const twist = x[count + e]!;
        for (let p = at[e]!; p < at[e + 1]!; p++) {
          const i = unknowns[p]! - from;
          pushed += pushes[p]! * x[i]!;
          y[i]! += pushes[p]! * twist;
        }
        y[count + e]! += pushed;
      }
    },
    countBelow: (factor) => tangentOutOfPlane(frame, second, factor).negative,
  };
}

/** The same in the plane. */
export function inPlaneProblem(frame: StretchedFrame, second: SecondOrder): StabilityProblem {
  const { from, to, own } = frame.inPlane;
  const factors = factorsWithin(frame, frame.inPlane);
  const geometric = partOf(own, second.geometric);
  return {
    n: to - from,
    solve: (b) => solveFactored(factors, b),
    addProduct: (x, y) => {
      addProduct(geometric, x, y);
      addThreadProduct(second.membrane, from, x, y);
    },
    countBelow: (factor) => tangentInPlane(frame, second, factor).negative,
  };
}

/** A mode out of the plane as a direction of the search. */
function directionOf(
  { prepared, outOfPlane }: StretchedFrame,
  { midTwists }: SecondOrder,
  mode: Float64Array,
): Direction {
  const { from, to, own } = outOfPlane;
  const v = mode.slice(from);
  const p = new Float64Array(v.length);
  addProduct(partOf(own, prepared.stiffness), v, p);
  midTwists.k.forEach((k, e) => (p[to - from + e] = k * v[to - from + e]!));
  return { v, p };
}

/**
 * Whether K + factor · (K_g + K_m) is positive in the plane. Threads under tension only stiffen, so the frame is asked
 * first without them, where its rows are narrow.
 */
function standsInPlane(frame: StretchedFrame, second: SecondOrder, factor: number): boolean {
  const sum = emptyOn(frame.inPlane.own);
  const { values: K } = frame.prepared.stiffness;
  const { values: Kg } = second.geometric;
  for (let v = 0; v < sum.values.length; v++) sum.values[v] = K[v]! + factor * Kg[v]!;
  const alone = factorise(sum, true);
  if (alone.negative === 0 && alone.vanished.length === 0) return true;
  return tangentInPlane(frame, second, factor).negative === 0;
}

/**
 * The smallest positive load factors of a frame with its skin, rising, at most `wanted`, with their modes on the
 * frame's unknowns, the parabola of twist of every member after them. The search begins at the mode `near`, where one
 * is known of a frame with the same unknowns.
 */
export function smallestFactors(
  frame: StretchedFrame,
  second: SecondOrder,
  wanted: number,
  near?: Float64Array,
): LoadFactor[] {
  const { inPlane, outOfPlane } = frame;
  const whole = (from: number, found: readonly LoadFactor[]): LoadFactor[] =>
    found.map(({ factor, mode }) => {
      const all = new Float64Array(outOfPlane.to + second.midTwists.k.length);
      all.set(mode, from);
      return { factor, mode: all };
    });
  const out = smallestLoadFactors(outOfPlaneProblem(frame, second), wanted, near && directionOf(frame, second, near));
  const last = out.length < wanted ? undefined : out[out.length - 1];
  const found = whole(outOfPlane.from, out);
  if (last && standsInPlane(frame, second, last.factor)) return found;
  const inside = whole(inPlane.from, smallestLoadFactors(inPlaneProblem(frame, second), wanted));
  return [...found, ...inside].sort((p, q) => p.factor - q.factor).slice(0, wanted);
}
