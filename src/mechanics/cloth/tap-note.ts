import type { ClothPull } from '../../plan/plan.js';
import { airMass_kg_per_m2 } from './air-loading.js';
import { membraneNote_Hz, pullFromNote_N_per_m } from './membrane-note.js';
import type { ClothSpan } from '../../fit/span.js';

/** The notes that all mean one pull: low with walled air, high with free air, Hz. */
export interface TapBand {
  readonly low_Hz: number;
  readonly high_Hz: number;
}

/**
 * The pulls that one note may mean, N/m along the width: low with free air, high with walled air; `value` is midway.
 */
export interface PullBand {
  readonly low_N_per_m: number;
  readonly value_N_per_m: number;
  readonly high_N_per_m: number;
}

/** Below this a note is felt rather than heard, Hz (common knowledge of hearing). */
export const lowestHeard_Hz = 20;

/** Notes of the tapped cloth at a given pull, air included. Cloth mass in kg/m², without air. */
export function tapBand(span: ClothSpan, pull: ClothPull, cloth_kg_per_m2: number): TapBand {
  return {
    low_Hz: membraneNote_Hz(span, pull, cloth_kg_per_m2 + airMass_kg_per_m2(span, 'walled')),
    high_Hz: membraneNote_Hz(span, pull, cloth_kg_per_m2 + airMass_kg_per_m2(span, 'free')),
  };
}

/**
 * Pull that a tapped note means, as a band: the air may move freely or as by a wall, and the note is read with an error
 * (± Hz).
 * `y_over_x` is the pull along the height over the one along the width.
 */
export function pullFromTap(
  span: ClothSpan,
  note_Hz: number,
  cloth_kg_per_m2: number,
  error_Hz = 0,
  y_over_x = 1,
): PullBand {
  const at = (note: number, surround: 'free' | 'walled'): number =>
    pullFromNote_N_per_m(span, note, cloth_kg_per_m2 + airMass_kg_per_m2(span, surround), y_over_x);
  if (!(error_Hz >= 0 && error_Hz < note_Hz))
    throw new RangeError(`the reading error must be smaller than the note, found ±${error_Hz} Hz of ${note_Hz} Hz`);
  return {
    low_N_per_m: at(note_Hz - error_Hz, 'free'),
    value_N_per_m: (at(note_Hz, 'free') + at(note_Hz, 'walled')) / 2,
    high_N_per_m: at(note_Hz + error_Hz, 'walled'),
  };
}
