import { nearestMark, tapeMark_mm } from '../../base/tape.js';
import type { Model } from '../../model/model.js';
import { braceFoot_mm } from '../occupancy/corner-parts.js';
import { crossbarsLie } from '../occupancy/crossbar-ends.js';
import type { Obstacle } from '../occupancy/occupant.js';

/**
 * Length of one hanging strip as sold, its thickness with the strip on the wall behind its bevel, and the room it wants
 * at each end, mm (proposals).
 */
export const CLEAT_LONG_MM = 300;
export const CLEAT_THICK_MM = 12;
const CLEAT_HIGH_MM = 40;
const CLEAT_ROOM_MM = 10;
/** Screws that hold one strip under the top bar. */
export const CLEAT_SCREWS = 4;

/** Bevelled strips under the top bar, flush with its back. */
export interface CleatPlaces {
  /**
   * Middles of the strips from the left edge, mm, on whole marks of the tape: one in the middle, or one to each hand of
   * what stands there.
   */
  readonly middles_mm: readonly number[];
  readonly high_mm: number;
  /** What leaves no room for them; empty when they fit. */
  readonly meets: readonly Obstacle[];
}

/**
 * Where the strips go: in the middle where it is free, else one to each hand, as far in as there is room. The feet of
 * braces and crossbars that reach the backs are in the way.
 */
export function cleatPlaces(model: Model): CleatPlaces {
  const { plan, bars, braces } = model;
  const W = plan.face.width_mm;
  const w_mm = bars.left.section.w_mm;
  const brace = braces[0];
  const end_mm = brace === undefined ? w_mm : braceFoot_mm(brace.leg_mm, brace.section.w_mm)[1];
  const stops = crossbarsLie(model).filter(({ runs, deep_mm }) => runs === 'upright' && deep_mm[0] < CLEAT_THICK_MM);
  const free = (middle: number): boolean => {
    const half = CLEAT_LONG_MM / 2 + CLEAT_ROOM_MM;
    return (
      middle - half >= end_mm &&
      middle + half <= W - end_mm &&
      stops.every((lie) => Math.abs(lie.middle_mm - middle) >= half + lie.w_mm / 2)
    );
  };
  const onMark = (mm: number): number => nearestMark(mm, tapeMark_mm(plan.units));
  const found = (middles_mm: readonly number[]): CleatPlaces => ({
    middles_mm: middles_mm.map(onMark),
    high_mm: CLEAT_HIGH_MM,
    meets: [],
  });
  if (free(W / 2)) return found([W / 2]);
  for (let off = CLEAT_LONG_MM / 2; off < W / 2; off += 5)
    if (free(W / 2 - off) && free(W / 2 + off)) return found([W / 2 - off, W / 2 + off]);
  return {
    middles_mm: [onMark(W / 2)],
    high_mm: CLEAT_HIGH_MM,
    meets: [
      ...stops.map(({ name }) => ({ kind: 'whole-crossbar', of: name }) as const),
      ...(brace === undefined ? [] : [{ kind: 'top-braces', of: 'frame' } as const]),
      ...(stops.length === 0 && brace === undefined ? [{ kind: 'side-bars', of: 'frame' } as const] : []),
    ],
  };
}
