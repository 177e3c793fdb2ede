import { readQuantity, unitsOf } from '../base/units.js';
import type { Dimension } from '../base/unit-table.js';

/** An option that cannot be used as given; its message says what was found and what is allowed. */
export class BadOption extends Error {}

/** A quantity as an option gave it. */
export interface Given {
  readonly value: number;
  /** True when it was written in inches, pounds and the like. */
  readonly inch: boolean;
}

const shown = (dimension: Dimension): string =>
  unitsOf(dimension)
    .filter((unit) => !/[²³°·"']|^inch|^foot|^feet|hour|minutes|days|percent|pct/.test(unit))
    .join(', ');

/** Reads `--length "2000 mm"` in the dimension's own unit. Throws BadOption. */
export function quantityOption(name: string, text: string, dimension: Dimension, example: string): Given {
  const reading = readQuantity(text, dimension);
  if (reading.ok) return { value: reading.value, inch: reading.system === 'inch' };
  const why =
    reading.fault === 'comma'
      ? ' Write a point for the decimals.'
      : reading.fault === 'no-unit'
        ? ' Write the unit after the number, all in quotes.'
        : '';
  throw new BadOption(
    `--${name}: found \`${text.slice(0, 60)}\`; allowed: a number with a unit (${shown(dimension)}), such as "${example}".${why}`,
  );
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
  if (Number.isNaN(day.getTime()) || !day.toISOString().startsWith(text))
    throw new BadOption(`--date: found \`${text.slice(0, 60)}\`; allowed: a day written like 2024-05-02.`);
  return text;
}

/** What each reader gives. */
type Read<T> = { readonly [K in keyof T]: T[K] extends () => infer R ? R : never };

/** Reads several options; what is wrong with any of them is told at once, a line each. Throws BadOption. */
export function allOptions<T extends Readonly<Record<string, () => unknown>>>(readers: T): Read<T> {
  const wrong: string[] = [];
  const found = Object.entries(readers).map(([name, read]) => {
    try {
      return [name, read()];
    } catch (error) {
      if (!(error instanceof BadOption)) throw error;
      wrong.push(...error.message.split('\n'));
      return [name, undefined];
    }
  });
  if (wrong.length > 0) throw new BadOption([...new Set(wrong)].join('\n'));
  return Object.fromEntries(found) as Read<T>;
}

/** Reads each of several readings of one option; all that cannot be read are told. Throws BadOption. */
export function eachReading<T>(texts: readonly string[], read: (text: string) => T): readonly T[] {
  return Object.values(allOptions(Object.fromEntries(texts.map((text, i) => [`#${i}`, () => read(text)]))));
}

/** The readings of an option that may be repeated, as quantities. Throws BadOption. */
export const readingsOption = (
  name: string,
  texts: readonly string[] | undefined,
  dimension: Dimension,
  example: string,
): readonly Given[] =>
  eachReading(needed(name, texts, example), (text) => quantityOption(name, text, dimension, example));

/** A quantity that must be given. Throws BadOption. */
export const neededQuantity = (name: string, text: string | undefined, dimension: Dimension, example: string): Given =>
  quantityOption(name, needed(name, text, example), dimension, example);

/** The value of a quantity that may be left out. Throws BadOption. */
export const optionalValue = (
  name: string,
  text: string | undefined,
  dimension: Dimension,
  example: string,
): number | undefined => (text === undefined ? undefined : quantityOption(name, text, dimension, example).value);
