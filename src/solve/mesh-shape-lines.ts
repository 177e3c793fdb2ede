import { barNames } from '../base/names.js';
import type { BarName } from '../base/names.js';
import type { MeshMember } from './mesh-layout.js';

/**
 * The plane a member's departure from its chord is seen in: towards the viewer, or along its local y in the plane of
 * the frame.
 */
export type Side = 'out' | 'plane';

/** Inward direction of a bar, as a sign on its local y (which is +y on level bars and −x on upright ones). */
export const inwardSign: Readonly<Record<BarName, number>> = { bottom: 1, top: -1, left: -1, right: 1 };

/** The sign on a bar's local rotation about its own axis that turns its front edge inward. */
export const rollSign: Readonly<Record<BarName, number>> = { bottom: -1, top: 1, left: 1, right: -1 };

/**
 * Departure of a member's centre line from the chord between its ends, at the given fractions of its length (rising):
 * between nodes the exact shape of a beam with its shear under a uniform load `q` (N/mm along the same direction),
 * `out` towards the viewer positive, `plane` along local y positive.
 */
export function departures(
  member: MeshMember,
  u: Float64Array,
  side: Side,
  fractions: ArrayLike<number>,
  q = 0,
): Float64Array {
  const { nodes, at, length_mm, section, along } = member;
  const out = side === 'out';
  const EI = section.E_MPa * (out ? section.I_out_mm4 : section.I_plane_mm4);
  const softness = member.shear[side];
  const shift = (n: number): number => {
    const m = 6 * nodes[n]!;
    return out ? u[m + 2]! : along[0] * u[m + 1]! - along[1] * u[m]!;
  };
  /** Slope of the centre line, without the share of shear. */
  const slope = (n: number): number => {
    const m = 6 * nodes[n]!;
    return out ? along[1] * u[m + 3]! - along[0] * u[m + 4]! : u[m + 5]!;
  };
  const last = nodes.length - 1;
  const first = shift(0);
  const tilt = shift(last) - first;
  const found = new Float64Array(fractions.length);
  let v = first;
  let turn = slope(0);
  for (let e = 0, f = 0; e < last; e++) {
    const from = at[e]!;
    const to = at[e + 1]!;
    const h = (to - from) * length_mm;
    const next = shift(e + 1);
    const rise = next - v;
    const t0 = turn * h;
    turn = slope(e + 1);
    const t1 = turn * h;
    const phi = softness / (h * h);
    for (; f < found.length && (e + 1 === last || fractions[f]! <= to); f++) {
      const s = fractions[f]!;
      const t = (s - from) / (to - from);
      const rest = t * (1 - t);
      const straight = v + rise * t;
      const bent = straight + rest * (rise * (2 * t - 1) + t0 * (1 - t) - t1 * t);
      const sheared = straight + ((t0 - t1) * rest) / 2;
      const bubble = h * h * rest;
      const loaded = (q * bubble * (bubble + softness)) / (24 * EI);
      found[f] = (bent + phi * sheared) / (1 + phi) + loaded - (first + tilt * s);
    }
    v = next;
  }
  return found;
}

/** Fractions of a member's length at its nodes and evenly between them, `parts` per element. */
export function fineFractions(member: MeshMember, parts: number): number[] {
  const fractions = [0];
  for (let e = 1; e < member.at.length; e++) {
    const from = member.at[e - 1]!;
    const to = member.at[e]!;
    for (let p = 1; p <= parts; p++) fractions.push(p === parts ? to : from + ((to - from) * p) / parts);
  }
  return fractions;
}

/** The value of largest magnitude, sign kept; 0 for none. */
export function largestOf(values: ArrayLike<number>): number {
  let largest = 0;
  for (let v = 0; v < values.length; v++) if (Math.abs(values[v]!) > Math.abs(largest)) largest = values[v]!;
  return largest;
}

/** One value per side bar. */
export function perBar<T>(of: (bar: BarName) => T): Record<BarName, T> {
  return Object.fromEntries(barNames.map((bar) => [bar, of(bar)])) as Record<BarName, T>;
}
