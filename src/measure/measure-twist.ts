import { mustBePositive } from '../fit/span.js';
import { doubt } from './plausible.js';
import { digits, type Reading } from './reading.js';

/** Two ways to read the twist of a board: winding sticks across it, or a corner that stands off a flat table. */
export interface TwistReading {
  /** Height by which one end of the stick, or one corner of the board, stands off. */
  readonly rise_mm: number;
  /** Distance over which it rises: the length of the stick, or the width of the board. */
  readonly width_mm: number;
  /** Distance between the two sticks, or the length of the board. */
  readonly length_mm: number;
  /** Which way it turns: `right` like a wood screw. */
  readonly hand: 'right' | 'left';
  /** Reading error of the rise, ±; half a millimetre when not given. */
  readonly error_mm?: number;
  /** The bar and ply to write the board down for. */
  readonly board?: { readonly for: string; readonly ply: number };
}

/** Angle of a rise over a width, degrees. */
export function twistAngle_deg(rise_mm: number, width_mm: number): number {
  return (Math.atan(rise_mm / width_mm) * 180) / Math.PI;
}

/**
 * Twist rate from a rise over a width and a length, degrees per metre, unsigned. Source: pre-twisting-chalmers uses the
 * same reading.
 */
export function twistRate_deg_per_m(rise_mm: number, width_mm: number, length_mm: number): number {
  return twistAngle_deg(rise_mm, width_mm) / (length_mm / 1000);
}

/**
 * Twist of a board in degrees per metre, right-handed positive, as a band. Throws RangeError for a width or length not
 * above zero or a negative rise.
 */
export function measureTwist(reading: TwistReading): Reading {
  const { rise_mm, width_mm, length_mm, hand } = reading;
  const error_mm = reading.error_mm ?? 0.5;
  mustBePositive({ width: width_mm, length: length_mm });
  if (!(rise_mm >= 0 && Number.isFinite(rise_mm)))
    throw new RangeError(`the rise must be zero or more (say which hand it turns instead), found ${rise_mm}`);
  const sign = hand === 'right' ? 1 : -1;
  const at = (rise: number): number => sign * twistRate_deg_per_m(rise, width_mm, length_mm) + 0;
  const ends = [at(rise_mm - error_mm), at(rise_mm + error_mm)];
  const board = reading.board ?? { for: 'top', ply: 1 };
  const value = at(rise_mm);
  const doubtful = doubt('twist', value);
  return {
    words: `Twist = angle of the rise over the width, divided by the length: ${digits(rise_mm)} mm over ${digits(width_mm)} mm is ${digits(twistAngle_deg(rise_mm, width_mm))} degrees, over ${digits(length_mm / 1000)} m, ${hand}-handed.`,
    value,
    low: Math.min(...ends),
    high: Math.max(...ends),
    unit: 'deg/m',
    paste: `boards:\n  - { for: ${board.for}, ply: ${board.ply}, twist: ${digits(value, 2)} deg/m }`,
    notes: [
      ...(doubtful === null ? [] : [doubtful]),
      ...(rise_mm < 2 * error_mm
        ? ['The rise is no larger than twice the reading error: use longer sticks, or read over a longer stretch.']
        : []),
    ],
  };
}
