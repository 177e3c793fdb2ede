import type { Half } from './halves.js';
import { addEntry, emptyOn, factorise, solveFactored } from './profile-matrix.js';
import type { ProfileFactors, ProfileMatrix } from './profile-matrix.js';
import type { SecondOrder, StretchedFrame } from './stretched-frame.js';

/** K + share · K_g of one half, in the numbering that suits the skin. */
function frameTangent(
  { prepared: { stiffness } }: StretchedFrame,
  { geometric }: SecondOrder,
  { from, rows, entries }: Half,
  share: number,
): ProfileMatrix {
  const target = emptyOn(rows);
  const { values } = target;
  const K = stiffness.values;
  const Kg = geometric.values;
  for (let e = 0, at = stiffness.start[from]! + stiffness.first[from]!; e < entries.length; e++, at++) {
    if (entries[e]! >= 0) values[entries[e]!] = K[at]! + share * Kg[at]!;
  }
  return target;
}

/** Factors of K + share · (K_g + K_m) out of the plane, with the twist between nodes where it settles. */
export function tangentOutOfPlane(frame: StretchedFrame, second: SecondOrder, share: number): ProfileFactors {
  const { outOfPlane: half, ties } = frame;
  const { place, from } = half;
  const target = frameTangent(frame, second, half, share);
  const { start, values } = target;
  const skin = second.membrane.skin.values;
  for (let t = 0; t < skin.length; t++) values[ties[t]!]! += share * skin[t]!;
  const { at, unknowns, pushes, k } = second.midTwists;
  for (let e = 0; e < k.length; e++) {
    const softer = (-share * share) / k[e]!;
    for (let p = at[e]!; p < at[e + 1]!; p++) {
      const row = place[unknowns[p]! - from]!;
      const push = softer * pushes[p]!;
      for (let q = at[e]!; q <= p; q++) {
        const column = place[unknowns[q]! - from]!;
        values[row >= column ? start[row]! + column : start[column]! + row]! += push * pushes[q]!;
      }
    }
  }
  return factorise(target, true);
}

/** Factors of K + share · (K_g + K_m) in the plane. */
export function tangentInPlane(frame: StretchedFrame, second: SecondOrder, share: number): ProfileFactors {
  const { inPlane: half } = frame;
  const { place, from: zero } = half;
  const target = frameTangent(frame, second, half, share);
  for (const { from, to, k } of second.membrane.threads) {
    const one = from < 0 ? -1 : place[from - zero]!;
    const other = to < 0 ? -1 : place[to - zero]!;
    if (one >= 0) addEntry(target, one, one, share * k);
    if (other >= 0) addEntry(target, other, other, share * k);
    if (one >= 0 && other >= 0) addEntry(target, one, other, -share * k);
  }
  return factorise(target, true);
}

/** A factorised stiffness that loads can be put on, one after the other. */
export interface Tangent {
  /** Whether it is positive: the state that it belongs to stands. */
  readonly stands: boolean;
  /** b ← K⁻¹ b on the frame's unknowns. */
  readonly solve: (b: Float64Array) => void;
}

/** The frame under the pull that `second` was made for; without, the frame alone. */
export function tangentOf(frame: StretchedFrame, second: SecondOrder | null): Tangent {
  if (second === null) return { stands: true, solve: (b) => solveFactored(frame.prepared.factors, b) };
  const halves = [
    { half: frame.inPlane, factors: tangentInPlane(frame, second, 1) },
    { half: frame.outOfPlane, factors: tangentOutOfPlane(frame, second, 1) },
  ];
  const placed = new Float64Array(Math.max(...halves.map(({ half }) => half.to - half.from)));
  const solve = (b: Float64Array): void => {
    for (const { half, factors } of halves) {
      const { from, to, place } = half;
      let first = from;
      while (first < to && b[first] === 0) first++;
      if (first === to) continue;
      for (let i = from; i < to; i++) placed[place[i - from]!] = b[i]!;
      solveFactored(factors, placed);
      for (let i = from; i < to; i++) b[i] = placed[place[i - from]!]!;
    }
  };
  return { stands: halves.every(({ factors: f }) => f.negative === 0 && f.vanished.length === 0), solve };
}
