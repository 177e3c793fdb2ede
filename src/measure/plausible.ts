import { digits } from './reading.js';

/**
 * What a reading may come to: outside `possible` no board or cloth gives it and it is refused; outside `likely` it is
 * told, because it is rarely right.
 */
interface Bounds {
  readonly of: string;
  readonly unit: string;
  readonly possible: readonly [number, number];
  readonly likely: readonly [number, number];
  /** What was most likely read or typed wrong. */
  readonly check: string;
}

/**
 * Bounds of what bench readings come to. `possible` never reaches beyond what plan and shelf take (proposals inside
 * that).
 */
export const bounds = {
  twist: {
    of: 'a twist',
    unit: 'deg/m',
    possible: [-30, 30],
    likely: [-8, 8],
    check: 'the rise, the length of the sticks and their units',
  },
  stiffness: {
    of: 'a stiffness',
    unit: 'MPa',
    possible: [1000, 40_000],
    likely: [4000, 20_000],
    check: 'the sag, the span, the weight and which way the board lies',
  },
  pull: {
    of: 'a pull',
    unit: 'N/m',
    possible: [5, 2500],
    likely: [50, 800],
    check: 'the note or sag, and whether it was the lowest note',
  },
  bow: {
    of: 'a curvature',
    unit: '/m',
    possible: [-0.1, 0.1],
    likely: [-0.03, 0.03],
    check: 'the rise, and the length it was read over',
  },
} as const satisfies Readonly<Record<string, Bounds>>;

export type Bounded = keyof typeof bounds;

/** Throws RangeError for a value that nothing gives; else a sentence of doubt, or null when it is ordinary. */
export function doubt(kind: Bounded, value: number): string | null {
  const { of, unit, possible, likely, check }: Bounds = bounds[kind];
  const said = (n: number): string => `${digits(n)} ${unit}`;
  if (!(value >= possible[0] && value <= possible[1]))
    throw new RangeError(
      `The readings come to ${of} of ${said(value)}; between ${said(possible[0])} and ${said(possible[1])} is what can be: check ${check}.`,
    );
  if (value >= likely[0] && value <= likely[1]) return null;
  return `${said(value)} is rarely true; ${of} mostly lies between ${said(likely[0])} and ${said(likely[1])}: check ${check}.`;
}

/** Of readings of one kind that are all above zero, one so many times another is a slip of the point or of the unit. */
const SLIP = 5;
/** And so many times is told. */
const FAR = 2.5;

/**
 * Throws RangeError where readings of one series cannot belong together; else a sentence of doubt, or null. Readings
 * that are not all above zero are left alone.
 */
export function apart(what: string, values: readonly number[], words: readonly string[]): string | null {
  if (values.length < 2 || values.some((value) => !(value > 0))) return null;
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const times = most / least;
  const named = `${words[values.indexOf(least)]} and ${words[values.indexOf(most)]}`;
  if (times >= SLIP)
    throw new RangeError(
      `${what}: ${named} stand in one series, one ${digits(times, 2)} times the other; read both again, or give them one by one.`,
    );
  return times >= FAR
    ? `${named} stand in one series, one ${digits(times, 2)} times the other: read both again.`
    : null;
}
