import type { Nail, Screw } from '../../shelf/shelf.js';
import { dowelBearing_MPa, STEEL_BEARING_MPA } from './dowel-bearing.js';
import { END_GRAIN_LATERAL } from './load-duration.js';
import { singleShear_N } from './yield-modes.js';

/** A single-shear joint of wood on wood, or of a steel plate on wood (`G_side` null). */
export interface Lapped {
  readonly G_side: number | null;
  readonly G_main: number;
  readonly side_mm: number;
  /** Penetration into the main piece. */
  readonly main_mm: number;
  /** The fastening runs along the grain of the main piece. */
  readonly end_grain?: boolean;
}

function lateral_N(diameter_mm: number, yield_MPa: number, joint: Lapped): number {
  const { N } = singleShear_N({
    diameter_mm,
    side_mm: joint.side_mm,
    main_mm: joint.main_mm,
    side_bearing_MPa: joint.G_side === null ? STEEL_BEARING_MPA : dowelBearing_MPa(joint.G_side, diameter_mm),
    main_bearing_MPa: dowelBearing_MPa(joint.G_main, diameter_mm),
    bending_yield_MPa: yield_MPa,
  });
  return joint.end_grain ? END_GRAIN_LATERAL * N : N;
}

/** Design lateral load of one screw, N, on its root diameter, normal load duration. Source: nds-2018. */
export function screwLateral_N(screw: Pick<Screw, 'root_mm' | 'yield_MPa'>, joint: Lapped): number {
  return lateral_N(screw.root_mm, screw.yield_MPa, joint);
}

/** Design lateral load of one nail, N, normal load duration. Source: nds-2018. */
export function nailLateral_N(nail: Pick<Nail, 'diameter_mm' | 'yield_MPa'>, joint: Lapped): number {
  return lateral_N(nail.diameter_mm, nail.yield_MPa, joint);
}
