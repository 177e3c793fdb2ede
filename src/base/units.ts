import type { UnitSystem } from './names.js';
import { negated, parseShopNumber, plus, rational, times, toNumber, type Rational } from './rational.js';

/** What kind of quantity a text is read as. */
export type Dimension =
  | 'length'
  | 'pull'
  | 'stress'
  | 'density'
  | 'mass-per-area'
  | 'volume-per-area'
  | 'twist'
  | 'curvature'
  | 'percent'
  | 'temperature'
  | 'force'
  | 'moment'
  | 'mass'
  | 'time'
  | 'volume'
  | 'frequency'
  | 'angle'
  | 'diffusion'
  | 'fraction';

/** One way of writing a unit: value in the dimension's own unit = factor × number + offset. */
interface Unit {
  readonly factor: Rational;
  readonly offset?: Rational;
  readonly system?: UnitSystem;
  /** An irrational factor on top (degrees to radians). */
  readonly also?: number;
}

const r = rational;
const inch = r(254, 10);
const pound_force_N = r(44482216152605n, 10n ** 13n);
const pound_kg = r(45359237n, 10n ** 8n);
const radians = Math.PI / 180;
const of = (factor: Rational, system?: UnitSystem, also?: number): Unit => ({
  factor,
  ...(system ? { system } : {}),
  ...(also === undefined ? {} : { also }),
});
const metric = (n: number | bigint, d: number | bigint = 1): Unit => of(r(n, d), 'metric');
const psi_MPa = times(pound_force_N, r(100, 254 * 254));

/** Every unit understood, by dimension; values come out in the first unit of each line. */
const units: Readonly<Record<Dimension, Readonly<Record<string, Unit>>>> = {
  length: {
    mm: metric(1),
    cm: metric(10),
    m: metric(1000),
    in: of(inch, 'inch'),
    '"': of(inch, 'inch'),
    inch: of(inch, 'inch'),
    inches: of(inch, 'inch'),
    ft: of(times(inch, r(12)), 'inch'),
    "'": of(times(inch, r(12)), 'inch'),
    foot: of(times(inch, r(12)), 'inch'),
    feet: of(times(inch, r(12)), 'inch'),
  },
  pull: {
    'N/m': metric(1),
    'N/cm': metric(100),
    'N/mm': metric(1000),
    'kN/m': metric(1000),
    'lbf/in': of(times(pound_force_N, r(10000, 254)), 'inch'),
    'lb/in': of(times(pound_force_N, r(10000, 254)), 'inch'),
    'lbf/ft': of(times(pound_force_N, r(10000, 254 * 12)), 'inch'),
  },
  stress: {
    MPa: metric(1),
    GPa: metric(1000),
    kPa: metric(1, 1000),
    'N/mm2': metric(1),
    'N/mm²': metric(1),
    psi: of(psi_MPa, 'inch'),
    ksi: of(times(psi_MPa, r(1000)), 'inch'),
    Mpsi: of(times(psi_MPa, r(10n ** 6n)), 'inch'),
  },
  density: {
    'kg/m3': metric(1),
    'kg/m³': metric(1),
    'g/cm3': metric(1000),
    'g/cm³': metric(1000),
    'g/ml': metric(1000),
    'lb/ft3': of(times(pound_kg, r(10n ** 12n, 3048n ** 3n)), 'inch'),
    pcf: of(times(pound_kg, r(10n ** 12n, 3048n ** 3n)), 'inch'),
  },
  'mass-per-area': {
    'g/m2': metric(1),
    'g/m²': metric(1),
    gsm: metric(1),
    'kg/m2': metric(1000),
    'kg/m²': metric(1000),
    'oz/yd2': of(times(pound_kg, r(1000n * 10n ** 8n, 16n * 9144n ** 2n)), 'inch'),
    'oz/yd²': of(times(pound_kg, r(1000n * 10n ** 8n, 16n * 9144n ** 2n)), 'inch'),
  },
  'volume-per-area': { 'ml/m2': metric(1), 'ml/m²': metric(1) },
  twist: {
    'rad/m': metric(1),
    'mrad/m': metric(1, 1000),
    'deg/m': of(r(1), 'metric', radians),
    '°/m': of(r(1), 'metric', radians),
    'deg/ft': of(r(10000, 3048), 'inch', radians),
  },
  curvature: {
    '/m': metric(1),
    '1/m': metric(1),
    '/mm': metric(1000),
    '1/mm': metric(1000),
    '/ft': of(r(10000, 3048), 'inch'),
    '1/ft': of(r(10000, 3048), 'inch'),
  },
  percent: { '%': of(r(1)), pct: of(r(1)), percent: of(r(1)) },
  temperature: {
    C: metric(1),
    '°C': metric(1),
    F: { factor: r(5, 9), offset: r(-160, 9), system: 'inch' },
    '°F': { factor: r(5, 9), offset: r(-160, 9), system: 'inch' },
  },
  force: { N: metric(1), kN: metric(1000), lbf: of(pound_force_N, 'inch'), lb: of(pound_force_N, 'inch') },
  moment: {
    Nm: metric(1),
    'N·m': metric(1),
    'N m': metric(1),
    'lbf·in': of(times(pound_force_N, r(254, 10000)), 'inch'),
    'lbf in': of(times(pound_force_N, r(254, 10000)), 'inch'),
  },
  mass: {
    g: metric(1),
    kg: metric(1000),
    lb: of(times(pound_kg, r(1000)), 'inch'),
    oz: of(times(pound_kg, r(1000, 16)), 'inch'),
  },
  time: {
    h: of(r(1)),
    hours: of(r(1)),
    hour: of(r(1)),
    min: of(r(1, 60)),
    minutes: of(r(1, 60)),
    day: of(r(24)),
    days: of(r(24)),
  },
  volume: { ml: metric(1), cl: metric(10), l: metric(1000) },
  frequency: { Hz: of(r(1)) },
  angle: {
    deg: of(r(1)),
    '°': of(r(1)),
    rad: of(r(1), undefined, 1 / radians),
    mrad: of(r(1, 1000), undefined, 1 / radians),
  },
  diffusion: { 'm2/s': metric(1) },
  fraction: { '': of(r(1)), '%': of(r(1, 100)) },
};

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

/** One spelling for what keyboards and phones write in several: primes, minus signs, fraction characters, spaces. */
export function plainSpelling(text: string): string {
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
  if (text.length > 60) return fault('not-a-number');
  const plain = plainSpelling(text);
  if (dimension === 'length') {
    const both = feetAndInches.exec(plain);
    if (both !== null) return readFeetAndInches(both[1] ?? '', both[2] ?? '', both[3] ?? '');
  }
  if (/^[+-]?\d+,\d/.test(plain)) return fault('comma');
  const match = numberAndUnit.exec(plain);
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
  const total = plus(times(feet as Rational, r(12)), inches as Rational);
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
