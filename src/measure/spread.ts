import { digits } from './reading.js';

/** What several boards of one kind say about their kind. */
export interface SpreadOfReadings {
  readonly count: number;
  readonly mean: number;
  /**
   * Sample standard deviation (n − 1); null for a single board, or readings all alike, which say nothing about spread.
   */
  readonly sd: number | null;
  /** Standard error of the mean; null for a single board. */
  readonly mean_error: number | null;
  /** How far to trust it, in a sentence. */
  readonly note: string;
  /** `{ mean: …, sd: … }` for the shelf's spread, or null when there is no sd to give. */
  readonly paste: string | null;
}

/**
 * Mean and spread of readings in one unit (`deg/m`, `/m`, `MPa` …). Throws RangeError for no readings or one that is
 * not a number.
 */
export function spreadFromReadings(readings: readonly number[], unit: string): SpreadOfReadings {
  const count = readings.length;
  if (count === 0) throw new RangeError('at least one reading is needed');
  if (!readings.every(Number.isFinite)) throw new RangeError('every reading must be a number');
  const mean = readings.reduce((sum, x) => sum + x, 0) / count;
  if (count === 1)
    return {
      count,
      mean,
      sd: null,
      mean_error: null,
      note: 'One board gives a value but no spread: measure at least five before you change the shelf’s spread.',
      paste: null,
    };
  const sd = Math.sqrt(readings.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (count - 1));
  if (readings.every((x) => x === readings[0]))
    return {
      count,
      mean: readings[0] ?? mean,
      sd: null,
      mean_error: null,
      note: 'All readings are the same: that tells how coarsely they were read, not that boards do not vary. No spread is given.',
      paste: null,
    };
  return {
    count,
    mean,
    sd,
    mean_error: sd / Math.sqrt(count),
    note: noteFor(count),
    paste: `{ mean: ${digits(mean)} ${unit}, sd: ${digits(sd)} ${unit} }`,
  };
}

/** The relative error of a standard deviation from n normal readings is about 1/√(2(n − 1)). */
function noteFor(count: number): string {
  const doubt_pct = Math.round(100 / Math.sqrt(2 * (count - 1)));
  const doubt = `With ${count} boards the spread itself is uncertain by about ${doubt_pct} %`;
  if (count < 5) return `${doubt}: a first hint only. Measure at least five, better twenty.`;
  if (count < 20) return `${doubt}: usable, twenty boards would make it firm.`;
  return `${doubt}.`;
}
