import type { UnitSystem } from './names.js';
import { negated, parseShopNumber, plus, rational, times, toNumber, type Rational } from './rational.js';
import { rememberedBy } from './remembered.js';
import { units, type Dimension, type Unit } from './unit-table.js';

/** Why a text is not the quantity asked for. */
export type QuantityFault = 'no-unit' | 'other-unit' | 'not-a-number' | 'comma' | 'too-large';

/**
 * A quantity read: `value` in the dimension's own unit (mm, N/m, MPa, kg/m3, g/m2, ml/m2, rad/m, 1/m, %, °C, N, Nm, g,
 * h, ml, Hz, deg), exact but for degrees.
 */
export type QuantityReading =
  | { readonly ok: true; readonly value: number; readonly exact: Rational; readonly system: UnitSystem | null }
  | { readonly ok: false; readonly fault: QuantityFault };

const fault = (why: QuantityFault): QuantityReading => ({ ok: false, fault: why });

const vulgar: Readonly<Record<string, string>> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
  '⅓': '1/3',
  '⅔': '2/3',
};

/** Figures, letters and signs of one spelling only, with single spaces between. */
const plain = /^[!-~]+(?: [!-~]+)*$/;

/** One spelling for what keyboards and phones write in several: primes, minus signs, fraction characters, spaces. */
export function plainSpelling(text: string): string {
  if (plain.test(text)) return text;
  return text
    .replace(/[½¼¾⅛⅜⅝⅞⅓⅔]/g, (sign) => ` ${vulgar[sign] ?? sign}`)
    .replace(/\u2060/g, '')
    .replace(/[“”″]/g, '"')
    .replace(/[‘’′]/g, "'")
    .replace(/[−‐‑]/g, '-')
    .replace(/×/g, 'x')
    .replace(/⁄/g, '/')
    .replace(/\s+/g, ' ')
    .trim();
}

const findUnit = (dimension: Dimension, written: string): Unit | undefined => {
  const table = units[dimension];
  if (Object.hasOwn(table, written)) return table[written];
  const lower = written.toLowerCase();
  const key = Object.keys(table).find((name) => name.toLowerCase() === lower);
  return key === undefined ? undefined : table[key];
};

const numberAndUnit = /^([+-]?[\d.](?:[\d./\s-]*[\d.])?(?:[eE][+-]?\d+)?)\s*(.*)$/;
const feetAndInches = /^([+-]?)\s*([\d.]+)\s*(?:ft|feet|foot|')\s*(\d[\d./\s-]*?)\s*(?:in|inch|inches|")$/i;

/**
 * Reads `900 mm`, `35-3/8 in`, `2 ft 11 in`, `200 N/m`, `12 %`, `68 °F` … exactly. Never throws; text longer than 60
 * characters is no quantity.
 */
export function readQuantity(text: string, dimension: Dimension): QuantityReading {
  return text.length > 60 ? fault('not-a-number') : readShortQuantity(text, dimension);
}

/** A plan is read twice, to check it and to fill it, and its neighbours in a class say much the same. */
const readShortQuantity = rememberedBy((text: string, dimension: Dimension) => `${dimension} ${text}`, readOnce, 1000);

function readOnce(text: string, dimension: Dimension): QuantityReading {
  const spelled = plainSpelling(text);
  if (dimension === 'length') {
    const both = feetAndInches.exec(spelled);
    if (both !== null) return readFeetAndInches(both[1] ?? '', both[2] ?? '', both[3] ?? '');
  }
  if (/^[+-]?\d+,\d/.test(spelled)) return fault('comma');
  const match = numberAndUnit.exec(spelled);
  if (match === null) return fault('not-a-number');
  const [, written = '', unitText = ''] = match;
  const number = parseShopNumber(written.trim());
  if (number === null) return fault('not-a-number');
  if (number === Infinity) return fault('too-large');
  const unit = findUnit(dimension, unitText.trim());
  if (unit === undefined) return fault(unitText.trim() === '' ? 'no-unit' : 'other-unit');
  return reading(number as Rational, unit);
}

function reading(number: Rational, unit: Unit): QuantityReading {
  const scaled = times(number, unit.factor);
  const exact = unit.offset === undefined ? scaled : plus(scaled, unit.offset);
  const value = unit.also === undefined ? toNumber(exact) : toNumber(exact) * unit.also;
  return { ok: true, value, exact, system: unit.system ?? null };
}

function readFeetAndInches(sign: string, feetText: string, inchText: string): QuantityReading {
  const feet = parseShopNumber(feetText);
  const inches = parseShopNumber(inchText.trim());
  if (feet === Infinity || inches === Infinity) return fault('too-large');
  if (feet === null || inches === null) return fault('not-a-number');
  const total = plus(times(feet as Rational, rational(12)), inches as Rational);
  return reading(sign === '-' ? negated(total) : total, units.length['in'] as Unit);
}

/**
 * Reads a cross-section such as `19 x 38 mm`, `3/4 x 1-1/2 in` or `3/4" x 1-1/2"`, in mm, in the order written. Null
 * when it is none.
 */
export function readSize(
  text: string,
): { readonly first_mm: number; readonly second_mm: number; readonly system: UnitSystem | null } | null {
  if (text.length > 60) return null;
  const parts = plainSpelling(text).split(/\s*(?:x|X|\bby\b)\s*/);
  const [first, second] = parts;
  if (parts.length !== 2 || first === undefined || second === undefined) return null;
  const b = readQuantity(second, 'length');
  if (!b.ok) return null;
  const a = readQuantity(first, 'length');
  const borrowed = /[a-z"']+$/i.exec(second)?.[0] ?? '';
  const a2 = a.ok || a.fault !== 'no-unit' ? a : readQuantity(`${first} ${borrowed}`, 'length');
  return a2.ok ? { first_mm: a2.value, second_mm: b.value, system: b.system } : null;
}

/**
 * Reads a range such as `35..60 %` (or a single value, taken as both ends), in the dimension's own unit, as written.
 * Null when it is none.
 */
export function readRange(text: string, dimension: Dimension): { readonly low: number; readonly high: number } | null {
  const [first, second, ...more] = text.split('..').map((part) => part.trim());
  if (first === undefined || more.length > 0) return null;
  const high = readQuantity(second ?? first, dimension);
  if (!high.ok) return null;
  if (second === undefined) return { low: high.value, high: high.value };
  const unit = /[^\d.\s].*$/.exec(second)?.[0] ?? '';
  const low = readQuantity(/^[\d.]+$/.test(first) ? `${first} ${unit}` : first, dimension);
  return low.ok ? { low: low.value, high: high.value } : null;
}

/** The spellings of units a dimension accepts, for messages. */
export const unitsOf = (dimension: Dimension): readonly string[] =>
  Object.keys(units[dimension]).filter((name) => name !== '');
