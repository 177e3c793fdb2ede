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

/** Shift across the member at one of its nodes. */
function shiftAt(member: MeshMember, u: Float64Array, node: number, side: Side): number {
  return side === 'out' ? u[6 * node + 2]! : member.along[0] * u[6 * node + 1]! - member.along[1] * u[6 * node]!;
}

/** Slope of the centre line there, without the share of shear. */
function slopeAt(member: MeshMember, u: Float64Array, node: number, side: Side): number {
  return side === 'out' ? member.along[1] * u[6 * node + 3]! - member.along[0] * u[6 * node + 4]! : u[6 * node + 5]!;
}

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
  const { nodes, at, length_mm, section } = member;
  const EI = section.E_MPa * (side === 'plane' ? section.I_plane_mm4 : section.I_out_mm4);
  const last = nodes.length - 1;
  const first = shiftAt(member, u, nodes[0]!, side);
  const end = shiftAt(member, u, nodes[last]!, side);
  const out = new Float64Array(fractions.length);
  let e = -1;
  let [h, v0, t0, v1, t1, phi] = [0, 0, 0, 0, 0, 0];
  for (let f = 0; f < fractions.length; f++) {
    const s = fractions[f]!;
    if (e < 0 || (e + 1 < last && s > at[e + 1]!)) {
      do e++;
      while (e + 1 < last && s > at[e + 1]!);
      h = (at[e + 1]! - at[e]!) * length_mm;
      v0 = shiftAt(member, u, nodes[e]!, side);
      t0 = slopeAt(member, u, nodes[e]!, side) * h;
      v1 = shiftAt(member, u, nodes[e + 1]!, side);
      t1 = slopeAt(member, u, nodes[e + 1]!, side) * h;
      phi = member.shear[side] / (h * h);
    }
    const t = (s - at[e]!) / (at[e + 1]! - at[e]!);
    const rest = t * (1 - t);
    const straight = v0 + (v1 - v0) * t;
    const bent = straight + rest * ((v1 - v0) * (2 * t - 1) + t0 * (1 - t) - t1 * t);
    const sheared = straight + ((t0 - t1) * rest) / 2;
    const bubble = h * h * rest;
    const loaded = (q * bubble * (bubble + member.shear[side])) / (24 * EI);
    out[f] = (bent + phi * sheared) / (1 + phi) + loaded - (first + (end - first) * s);
  }
  return out;
}

/** Fractions of a member's length at its nodes and evenly between them, `parts` per element. */
export function fineFractions(member: MeshMember, parts: number): number[] {
  const fractions = [0];
  for (let e = 1; e < member.at.length; e++) {
    const [from, to] = [member.at[e - 1]!, member.at[e]!];
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
