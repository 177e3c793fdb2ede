import { readQuantity, unitsOf, type Dimension } from '../base/units.js';

/** An option that cannot be used as given; its message says what was found and what is allowed. */
export class BadOption extends Error {}

/** A quantity as an option gave it. */
export interface Given {
  readonly value: number;
  /** True when it was written in inches, pounds and the like. */
  readonly inch: boolean;
}

const shown = (dimension: Dimension): string => unitsOf(dimension).filter((unit) => !/[²³°·"']|^inch|^foot|^feet|hour|minutes|days|percent|pct/.test(unit)).join(', ');

/** Reads `--length "2000 mm"` in the dimension's own unit. Throws BadOption. */
export function quantityOption(name: string, text: string, dimension: Dimension, example: string): Given {
  const reading = readQuantity(text, dimension);
  if (reading.ok) return { value: reading.value, inch: reading.system === 'inch' };
  const why = reading.fault === 'comma' ? ' Write a point for the decimals.' : reading.fault === 'no-unit' ? ' Write the unit after the number, all in quotes.' : '';
  throw new BadOption(`--${name}: found \`${text.slice(0, 60)}\`; allowed: a number with a unit (${shown(dimension)}), such as "${example}".${why}`);
}

/** The value of an option that this use cannot do without. Throws BadOption. */
export function needed<T>(name: string, value: T | undefined, example: string): T {
  if (value === undefined) throw new BadOption(`--${name} is missing; give it, such as --${name} "${example}".`);
  return value;
}

/** A day as `2024-05-02`, checked against the calendar. Throws BadOption. */
export function dayOption(text: string | undefined): string | null {
  if (text === undefined) return null;
  const day = /^\d{4}-\d{2}-\d{2}$/.test(text) ? new Date(`${text}T00:00:00Z`) : new Date(Number.NaN);
  if (Number.isNaN(day.getTime()) || !day.toISOString().startsWith(text)) throw new BadOption(`--date: found \`${text.slice(0, 60)}\`; allowed: a day written like 2024-05-02.`);
  return text;
}
