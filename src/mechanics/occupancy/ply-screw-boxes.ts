import type { BarName } from '../../base/names.js';
import type { Model } from '../../model/model.js';
import { backShaft, shaft, type Occupant } from './occupant.js';

/** What of a ply screw decides its room. */
export interface PlyScrewSize {
  readonly shank_mm: number;
  readonly length_mm: number;
  /** How far from the nearer edge of the face its line runs. */
  readonly edge_mm: number;
}

/**
 * Ply screws of one bar as boxes, from the inner face or from the back, as its plies lie. Two lines take turns: the
 * first screw runs near the back (or the inner edge).
 * Places count from the left or bottom end.
 */
export function plyScrewBoxes(
  model: Model,
  bar: BarName,
  { shank_mm, length_mm, edge_mm }: PlyScrewSize,
  places_mm: readonly number[],
): readonly Occupant[] {
  const {
    section: { w_mm, d_mm },
    stack,
  } = model.bars[bar];
  const face_mm = stack === 'side-by-side' ? d_mm : w_mm;
  const fixing = { bar, kind: 'ply-screw', of: bar } as const;
  return places_mm.map((mm, i): Occupant => {
    const line = i % 2 === 0 ? edge_mm : face_mm - edge_mm;
    return stack === 'side-by-side'
      ? shaft(fixing, shank_mm, mm, [0, length_mm], line)
      : backShaft(fixing, shank_mm, mm, line, [0, length_mm]);
  });
}
