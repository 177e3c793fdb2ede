import type { CornerStatics } from '../../model/frame-results.js';
import type { NailedCut } from '../../fit/nail-path.js';
import { mitreDemand } from './corner-demand.js';

/** Nails that hold a corner without glue. */
export interface NailedCorner {
  readonly cut: NailedCut;
  readonly w_mm: number;
  readonly d_mm: number;
  readonly each: number;
  /** Design lateral load of one, N, end grain already counted. */
  readonly lateral_N: number;
  /** Distance of the nail from the outer corner along the edge (mitre). */
  readonly place_mm: number;
}

/** A capacity of nothing is reported as this many times overloaded: a number a rule can compare. */
export const NOTHING_HOLDS = 99;

const share = (demand: number, capacity: number): number =>
  demand === 0 ? 0 : capacity > 0 ? demand / capacity : NOTHING_HOLDS;

/**
 * Demand over capacity of nails alone.
 * Mitre: the corner wants to close, turning about the inner end of the mitre; each nail lies across its own end-grain
 * piece, so only its sideways strength works, at 45° to
 * the face: moment n Z cos 45° × (w − place)√2 = n Z (w − place); out of the plane n Z cos 45° × d/2. Sliding n Z,
 * friction not counted.
 * Butt: a nail in end grain cannot hold an opening joint: nothing. Half-lap: n nails a half width apart twist the lap:
 * n Z w/4, one nail cannot.
 * Source: statics with nds-2018 values.
 */
export function nailedUse(joint: NailedCorner, corner: CornerStatics): number {
  const { cut, w_mm, d_mm, each: n, lateral_N: Z, place_mm } = joint;
  if (cut === 'butt') return NOTHING_HOLDS;
  if (cut === 'half-lap') {
    const turning = n > 1 ? (n * Z * w_mm) / 4 : 0;
    return Math.min(
      NOTHING_HOLDS,
      share(Math.abs(corner.moment_Nmm), turning) + share(Math.hypot(corner.axial_N, corner.shear_N), n * Z),
    );
  }
  const demand = mitreDemand(corner);
  const open = share(demand.in_plane_Nmm, n * Z * (w_mm - place_mm));
  const out = share(demand.out_Nmm, (n * Z * d_mm) / (2 * Math.SQRT2));
  return Math.min(NOTHING_HOLDS, open + out + share(demand.sliding_N, n * Z));
}
