import type { UnitSystem } from './names.js';

export { chanceInWords } from './chance-words.js';

/** Units that an amount may be told in; those of facts are among them. */
export type QuantityUnit =
  | 'mm'
  | 'mrad'
  | 'N'
  | 'Nm'
  | 'N/m'
  | 'kg'
  | 'deg'
  | 'deg/m'
  | 'Hz'
  | 'share'
  | 'chance'
  | 'pct'
  | 'points'
  | 'cost'
  | 'count'
  | 'ratio'
  | 'days'
  | 'ml'
  | 'MPa'
  | 'C'
  | 'word';

const mm_per_inch = 25.4;
const metres_per_foot = 0.3048;
const newtons_per_pound = 4.4482216152605;
const ml_per_fluid_ounce = 29.5735295625;
const ml_per_teaspoon = ml_per_fluid_ounce / 6;

/**
 * A number's text with a true minus sign where it begins with a hyphen: all that people read is written through here.
 */
export const trueMinus = (text: string): string => text.replace(/^-(?=[\d.])/u, '\u2212');

/**
 * The number at `digits` significant digits, with a true minus sign, without exponent, trailing zeros or a minus before
 * zero; below 10^-12 it is 0. The same on every machine.
 */
export function formatNumber(value: number, digits = 3): string {
  if (!Number.isFinite(value)) return 'unknown';
  const rounded = Number(value.toPrecision(digits));
  if (Math.abs(rounded) < 1e-12) return '0';
  const decimals = Math.max(0, Math.min(20, digits - 1 - Math.floor(Math.log10(Math.abs(rounded)))));
  const text = rounded.toFixed(decimals);
  return trueMinus(text.includes('.') ? text.replace(/\.?0+$/, '') : text);
}

/** The number with so many decimals, for a column of like numbers; `unknown` where it is not known. */
export const formatFixed = (value: number | null, decimals: number): string =>
  value === null || !Number.isFinite(value) ? 'unknown' : trueMinus(value.toFixed(decimals));

/** A whole number of `step`s, or null when the value is not one within a millionth of a step. */
const wholeSteps = (value: number, step: number): number | null => {
  const steps = Math.round(value / step);
  return Math.abs(value / step - steps) < 1e-6 * Math.max(1, Math.abs(steps)) ** 0.5 ? steps : null;
};

/** The number of inches as a shop writes it, sixty-fourths in: `35-3/8`, `−1/2`, `12`. */
function inchWords(sixtyFourths: number): string {
  const size = Math.abs(sixtyFourths);
  const whole = Math.floor(size / 64);
  let [top, bottom] = [size % 64, 64];
  while (top > 0 && top % 2 === 0) [top, bottom] = [top / 2, bottom / 2];
  const sign = sixtyFourths < 0 ? '\u2212' : '';
  if (top === 0) return `${sign}${whole}`;
  return whole === 0 ? `${sign}${top}/${bottom}` : `${sign}${whole}-${top}/${bottom}`;
}

/** Up to here a tenth of a millimetre says something; longer ones are measured with a tape. */
const tenthsUpTo_mm = 20;

/**
 * A length for people. Metric: exact where it is a multiple of 0.1 mm, else to 1 mm, or to 0.1 mm below 20 mm. Inch:
 * exact where it is a multiple of 1/64 in, else to 1/16 in, or to 1/64 in below 1/4 in.
 * Reading the text back gives the length within half of the step it was rounded to.
 */
export const formatLength = (length_mm: number, system: UnitSystem): string =>
  `${lengthFigures(length_mm, system)}${Number.isFinite(length_mm) ? (system === 'metric' ? ' mm' : ' in') : ''}`;

/** The same without its unit, which stands elsewhere. */
export function lengthFigures(length_mm: number, system: UnitSystem): string {
  if (!Number.isFinite(length_mm)) return 'unknown';
  if (system === 'metric') {
    const tenths = Math.round(length_mm * 10) / 10;
    const shown =
      Math.abs(length_mm) < tenthsUpTo_mm || Math.abs(tenths - length_mm) < 1e-6 ? tenths : Math.round(length_mm);
    return trueMinus(String(shown));
  }
  const inches = length_mm / mm_per_inch;
  const step = Math.abs(inches) < 1 / 4 ? 1 : 4;
  return inchWords(wholeSteps(inches, 1 / 64) ?? Math.round((inches * 64) / step) * step);
}

/** A cross-section such as `19 × 38 mm` or `3/4 × 1-1/2 in`. */
export const formatSize = (first_mm: number, second_mm: number, system: UnitSystem): string =>
  `${lengthFigures(first_mm, system)} × ${formatLength(second_mm, system)}`;

/** A share (0..1) in per cent, finer near nothing: `35 %`, `0.4 %`. */
export function formatShare(share: number): string {
  return `${formatNumber(share * 100, Math.abs(share) < 0.995 ? 2 : 3)} %`;
}

/**
 * Two significant digits, three where the number is no longer than that: what is computed is not truer, what somebody
 * wrote stays as written.
 */
function figures(value: number): string {
  return formatNumber(value, Math.abs(Number(value.toPrecision(3)) - value) <= 1e-9 * Math.abs(value) ? 3 : 2);
}

/** A pull in inches keeps the third digit where it is a plain number in either system. */
const pullFigures = (N_per_m: number): string => {
  const shown = (N_per_m * 0.0254) / newtons_per_pound;
  return figures(N_per_m) === formatNumber(N_per_m, 3)
    ? formatNumber(shown, Math.abs(shown) < 1 ? 2 : 3)
    : figures(shown);
};

/** A volume rounded up to two digits, one of a teaspoon, so that nobody buys too little: `85 ml`, `3.1 fl oz`. */
export function formatVolumeUp(volume_ml: number, system: UnitSystem): string {
  if (!Number.isFinite(volume_ml)) return 'unknown';
  const up = (value: number, digits: number): string => {
    if (value <= 0) return '0';
    const step = 10 ** (Math.floor(Math.log10(value)) - digits + 1);
    return formatNumber(Math.ceil(value / step - 1e-9) * step, digits + 1);
  };
  if (system === 'metric') return `${up(volume_ml, 2)} ml`;
  return volume_ml < ml_per_fluid_ounce
    ? `${up(volume_ml / ml_per_teaspoon, 1)} tsp`
    : `${up(volume_ml / ml_per_fluid_ounce, 2)} fl oz`;
}

type Writer = (value: number, system: UnitSystem) => string;

/** One writer per unit. */
const writers: Readonly<Record<Exclude<QuantityUnit, 'word'>, Writer>> = {
  mm: formatLength,
  mrad: (value) => `${formatNumber((value / 1000) * (180 / Math.PI), 2)}°`,
  N: (value, system) =>
    system === 'inch' ? `${formatNumber(value / newtons_per_pound, 2)} lbf` : `${figures(value)} N`,
  Nm: (value, system) =>
    system === 'inch' ? `${figures(value / (newtons_per_pound * 0.0254))} lbf·in` : `${figures(value)} N·m`,
  'N/m': (value, system) => (system === 'inch' ? `${pullFigures(value)} lbf/in` : `${figures(value)} N/m`),
  kg: (value, system) =>
    system === 'inch'
      ? `${formatNumber(value / 0.45359237, value < 4.5 ? 2 : 3)} lb`
      : `${formatNumber(value, value < 10 ? 2 : 3)} kg`,
  deg: (value) => `${formatNumber(value, 2)}°`,
  'deg/m': (value, system) =>
    system === 'inch' ? `${figures(value * metres_per_foot)}° a foot` : `${figures(value)}° a metre`,
  Hz: (value) => `${figures(value)} Hz`,
  share: formatShare,
  chance: formatShare,
  pct: (value) => `${figures(value)} %`,
  points: (value) => {
    const text = figures(value);
    return text === '1' ? '1 point' : `${text} points`;
  },
  cost: (value) => (Number.isFinite(value) ? trueMinus((Math.round(value * 100) / 100 || 0).toFixed(2)) : 'unknown'),
  count: (value) => formatNumber(Math.round(value), 15),
  ratio: figures,
  days: (value) => {
    const text = formatNumber(Math.abs(value) < 3 ? value : Math.round(value), Math.abs(value) < 3 ? 2 : 15);
    return text === '1' ? '1 day' : `${text} days`;
  },
  ml: (value, system) =>
    system === 'metric'
      ? `${formatNumber(value, 2)} ml`
      : Math.abs(value) < ml_per_fluid_ounce
        ? `${formatNumber(value / ml_per_teaspoon, 1)} tsp`
        : `${formatNumber(value / ml_per_fluid_ounce, 2)} fl oz`,
  MPa: (value, system) =>
    system === 'inch' ? `${formatNumber(value / 0.00689475729316836, 2)} psi` : `${formatNumber(value, 3)} MPa`,
  C: (value, system) =>
    system === 'inch' ? `${formatNumber(value * 1.8 + 32, 3)} °F` : `${formatNumber(value, 3)} °C`,
};

/**
 * Any value of a fact in words and units people use, in the unit system they write in. `value` in the fact's own unit
 * (`mm`, `share` 0..1, `pct` 0..100 …).
 * Words pass as they are; null and non-finite numbers are `unknown`. Costs are told in `currency`, where one is given.
 */
export function formatQuantity(
  value: number | string | null,
  unit: QuantityUnit,
  system: UnitSystem,
  currency = '',
): string {
  if (value === null) return 'unknown';
  if (typeof value === 'string') return value;
  if (!Number.isFinite(value)) return 'unknown';
  if (unit === 'word') return String(value);
  const words = writers[unit](value, system);
  return unit === 'cost' && currency !== '' ? `${words} ${currency}` : words;
}
