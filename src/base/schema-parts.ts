import * as z from 'zod/mini';
import { rememberedBy } from './remembered.js';
import { readQuantity, readRange, readSize, unitsOf } from './units.js';
import type { Dimension } from './unit-table.js';

/** What a check inside a schema reports: a code of `messages.ts` and its details, carried through zod in `params`. */
export interface SchemaFault {
  readonly problem: string;
  readonly allowed: string;
}

const faultCodes = {
  'no-unit': 'no-unit',
  'other-unit': 'other-unit',
  'not-a-number': 'not-a-quantity',
  comma: 'decimal-comma',
  'too-large': 'out-of-range',
} as const;

/** Limits of a quantity in its dimension's own unit, both ends allowed, and how to say them. */
export interface QuantityLimits {
  readonly least: number;
  readonly most: number;
  /** `from 100 mm to 20 m` */
  readonly words: string;
}

type Check = { value: string; issues: unknown[] };
const report = (check: Check, problem: string, allowed: string): void => {
  (check.issues as object[]).push({
    code: 'custom',
    input: check.value,
    params: { problem, allowed } satisfies SchemaFault,
  });
};

/** A schema just made, with what is said of it for editors: as a check, which it might be too, that costs a copy. */
export function described<T extends z.core.$ZodType>(schema: T, words: z.core.GlobalMeta): T {
  z.globalRegistry.add(schema, words);
  return schema;
}

/** The message by which the mapping to problems knows that a text with a unit was wanted. */
const wanted = (allowed: string): string => `@quantity ${allowed}`;
/** The words after `@quantity` of a zod message, or null. */
export const wantedQuantity = (message: string): string | null =>
  message.startsWith('@quantity ') ? message.slice('@quantity '.length) : null;

const patterns: Partial<Record<Dimension, string>> = {
  length:
    '^\\s*[+-]?[\\d.½¼¾⅛⅜⅝⅞⅓⅔][\\d./½¼¾⅛⅜⅝⅞⅓⅔⁄eE+ -]*\\s*(mm|cm|m|in|inch|inches|ft|feet|foot|"|\'|“|”|″|‘|’|′)(.*(in|inch|inches|"|”|″))?\\s*$',
};

/**
 * What a text in one of these dimensions looks like to other programs: a number in any shop's spelling, then one of the
 * units.
 */
export function patternOf(...dimensions: readonly Dimension[]): string {
  const spellings = [...new Set(dimensions.flatMap(unitsOf))]
    .sort((a, b) => b.length - a.length)
    .map((unit) => unit.replaceAll(/[\^$.*+?()[\]{}|/]/gu, '\\$&'));
  const units = [...new Set(dimensions.map((dimension) => patterns[dimension]))].flatMap((own) =>
    own === undefined ? [] : [own],
  );
  const bare = dimensions.includes('fraction') ? '?' : '';
  return [`^\\s*[+−-]?[\\d.½¼¾⅛⅜⅝⅞⅓⅔][\\d./½¼¾⅛⅜⅝⅞⅓⅔⁄eE+ -]*\\s*(${spellings.join('|')})${bare}\\s*$`, ...units].join(
    '|',
  );
}

/** One reading among several that a text may have. */
export interface Alternative {
  readonly dimension: Dimension;
  readonly limits: QuantityLimits;
}

const allowedUnits = rememberedBy(
  (dimension: Dimension) => dimension,
  (dimension) =>
    unitsOf(dimension)
      .filter((unit) => !/[²³°·"']|^inch|^foot|^feet|hour|minutes|days|percent|pct/.test(unit))
      .join(', '),
  100,
);
const patternOfOne = rememberedBy(
  (dimension: Dimension) => dimension,
  (dimension) => patterns[dimension] ?? patternOf(dimension),
  100,
);

/** A schema of a text that is one of several quantities, told apart by its unit, such as `1/2` or `450 mm`. */
export function eitherQuantity(alternatives: readonly Alternative[], description: string, examples: readonly string[]) {
  const allowed = `${examples.map((example) => `\`${example}\``).join(' or ')}`;
  return described(
    z.string({ error: wanted(allowed) }).check((check) => {
      const readings = alternatives.map(({ dimension, limits }) => ({
        reading: readQuantity(check.value, dimension),
        limits,
      }));
      const fits =
        readings.find(({ reading }) => reading.ok) ??
        readings.find(({ reading }) => !reading.ok && (reading.fault === 'too-large' || reading.fault === 'comma'));
      if (fits === undefined) report(check, 'not-a-quantity', allowed);
      else if (!fits.reading.ok)
        report(check, faultCodes[fits.reading.fault], fits.reading.fault === 'comma' ? allowed : fits.limits.words);
      else if (!(fits.reading.value >= fits.limits.least && fits.reading.value <= fits.limits.most))
        report(check, 'out-of-range', fits.limits.words);
    }),
    {
      description,
      pattern: patternOf(...alternatives.map(({ dimension }) => dimension)),
      examples: [...examples],
    },
  );
}

/**
 * A schema of a text holding a quantity with its unit, such as `900 mm`; limits and units are checked, the JSON schema
 * gets a pattern.
 */
export function quantity(dimension: Dimension, limits: QuantityLimits, description: string, example: string) {
  const allowed = `a number with ${dimension === 'percent' ? '%' : `a unit (${allowedUnits(dimension)})`}, such as \`${example}\``;
  return described(
    z.string({ error: wanted(allowed) }).check((check) => {
      const reading = readQuantity(check.value, dimension);
      if (!reading.ok) report(check, faultCodes[reading.fault], reading.fault === 'too-large' ? limits.words : allowed);
      else if (!(reading.value >= limits.least && reading.value <= limits.most))
        report(check, 'out-of-range', limits.words);
    }),
    {
      description: `${description} (${limits.words})`,
      pattern: patternOfOne(dimension),
      examples: [example],
    },
  );
}

/** A length between two limits in mm. */
export const length = (least: number, most: number, words: string, description: string, example: string) =>
  quantity('length', { least, most, words }, description, example);

/** A cross-section such as `19 x 38 mm`, each side between two limits in mm. */
export function size(least_mm: number, most_mm: number, description: string) {
  const allowed = 'two sides and a unit, such as `19 x 38 mm` or `3/4 x 1-1/2 in`';
  return described(
    z.string({ error: wanted(allowed) }).check((check) => {
      const reading = readSize(check.value);
      if (reading === null) report(check, 'not-a-quantity', allowed);
      else if ([reading.first_mm, reading.second_mm].some((side) => !(side >= least_mm && side <= most_mm)))
        report(check, 'out-of-range', `sides from ${least_mm} mm to ${most_mm} mm`);
    }),
    { description, pattern: '\\d.*(x|X|×|by).*\\d', examples: ['19 x 38 mm'] },
  );
}

/** A range such as `35..60 %`, both ends between two limits. */
export function range(dimension: Dimension, limits: QuantityLimits, description: string, example: string) {
  const allowed = `two numbers and a unit, such as \`${example}\``;
  return described(
    z.string({ error: wanted(allowed) }).check((check) => {
      const reading = readRange(check.value, dimension);
      if (reading === null) report(check, 'not-a-quantity', allowed);
      else if (!(
        reading.low >= limits.least &&
        reading.low <= limits.most &&
        reading.high >= limits.least &&
        reading.high <= limits.most
      ))
        report(check, 'out-of-range', limits.words);
      else if (reading.low > reading.high) report(check, 'turned-range', 'the lower number first');
    }),
    {
      description: `${description} (${limits.words})`,
      pattern: `\\d.*(${unitsOf(dimension)
        .map((unit) => unit.replaceAll(/[\^$.*+?()[\]{}|/]/gu, '\\$&'))
        .join('|')})\\s*$`,
      examples: [example],
    },
  );
}

/** One line of plain text without control characters. */
export function plainText(most: number, description: string) {
  const allowed = `one line of 1 to ${most} characters`;
  return described(
    z.string().check((check) => {
      if (
        check.value.trim() === '' ||
        [...check.value].length > most ||
        /[\u0000-\u001f\u007f-\u009f\u2028\u2029\u202a-\u202e\u2066-\u2069\ufffe\uffff]|[\ud800-\udfff](?![\udc00-\udfff])(?<![\ud800-\udbff][\udc00-\udfff])/.test(
          check.value,
        )
      )
        report(check, 'bad-text', allowed);
    }),
    { description, minLength: 1, maxLength: most },
  );
}

/** A name by which an entry of the shelf is known. */
export const shelfKey = (description: string) =>
  described(
    z.string().check((check) => {
      if (!isPlainKey(check.value)) report(check, 'bad-key-name', 'letters, figures, dots and dashes, at most 60');
    }),
    { description, pattern: keyPattern.source },
  );

const keyPattern = /^[A-Za-z0-9][A-Za-z0-9._-]{0,59}$/;
/** True for a name that may stand for an entry of the shelf. */
export const isPlainKey = (text: string): boolean => keyPattern.test(text);

/** A whole number between two limits. */
export const whole = (least: number, most: number, description: string) =>
  described(z.int().check(z.gte(least), z.lte(most)), { description });

/** A finite number between two limits. */
export const number = (least: number, most: number, description: string) =>
  described(z.number().check(z.gte(least), z.lte(most)), { description });

/** One of a few words. */
export const oneOf = <const T extends readonly [string, ...string[]]>(words: T, description: string) =>
  described(z.enum(words), { description });
