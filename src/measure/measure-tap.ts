import type { ClothSpan } from '../fit/span.js';
import { airMass_kg_per_m2 } from '../mechanics/cloth/air-loading.js';
import { lowestHeard_Hz, pullFromTap } from '../mechanics/cloth/tap-note.js';
import { doubt } from './plausible.js';
import { digits, type Reading } from './reading.js';

/** The lowest note of a tapped cloth. */
export interface TapReading {
  /** Free rectangle of the cloth, mm. */
  readonly span: ClothSpan;
  /** Mass of the cloth with its ground, g/m². */
  readonly mass_g_per_m2: number;
  readonly note_Hz: number;
  /** Reading error, ± Hz; a quarter of a hertz when not given. */
  readonly error_Hz?: number;
}

/**
 * Pull of a cloth from its lowest note, N/m, equal both ways, as a band: free air to walled air. Throws RangeError for
 * a number not above zero.
 */
export function measureTap(reading: TapReading): Reading {
  const { span, mass_g_per_m2, note_Hz } = reading;
  const band = pullFromTap(span, note_Hz, mass_g_per_m2 / 1000, Math.min(reading.error_Hz ?? 0.25, note_Hz / 2));
  const [free, walled] = [1000 * airMass_kg_per_m2(span, 'free'), 1000 * airMass_kg_per_m2(span, 'walled')];
  const value = band.value_N_per_m;
  const doubtful = doubt('pull', value);
  return {
    words: `Pull = 4 × note² × (cloth + air) ÷ (1/width² + 1/height²): ${digits(note_Hz)} Hz on ${digits(span.width_mm, 4)} × ${digits(span.height_mm, 4)} mm, cloth ${digits(mass_g_per_m2)} g/m², air that swings along ${digits(free)} to ${digits(walled)} g/m².`,
    value,
    low: band.low_N_per_m,
    high: band.high_N_per_m,
    unit: 'N/m',
    paste: pastePull(value),
    notes: [
      ...(doubtful === null ? [] : [doubtful]),
      ...(note_Hz < lowestHeard_Hz
        ? ['So low a note is felt, not heard: read it with a phone’s vibration meter, or use the push test.']
        : []),
      'It must be the lowest note: tap near the middle and listen with the phone close to the cloth. A higher note would say a far higher pull.',
      'Taken as the same pull along and across.',
    ],
  };
}

/** Lines for the plan: the pull as read, and twice that as the peak. */
export function pastePull(pull_N_per_m: number): string {
  return `cloth:\n  pull: { working: ${digits(pull_N_per_m, 3)} N/m, peak: ${digits(2 * pull_N_per_m, 3)} N/m }`;
}
