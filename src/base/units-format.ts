import type { UnitSystem } from './names.js';

/** Units a fact may carry; the same words as the catalogue of facts. */
export type QuantityUnit = 'mm' | 'mrad' | 'N' | 'Nm' | 'N/m' | 'kg' | 'deg' | 'Hz' | 'share' | 'chance' | 'pct' | 'cost' | 'count' | 'ratio' | 'days' | 'ml' | 'MPa' | 'C' | 'word';

const mm_per_inch = 25.4;
const newtons_per_pound = 4.4482216152605;

/** The number at `digits` significant digits, without exponent, trailing zeros or a minus before zero; below 10^-12 it is 0. The same on every machine. */
export function formatNumber(value: number, digits = 3): string {
  if (!Number.isFinite(value)) return 'unknown';
  const rounded = Number(value.toPrecision(digits));
  if (Math.abs(rounded) < 1e-12) return '0';
  const decimals = Math.max(0, Math.min(20, digits - 1 - Math.floor(Math.log10(Math.abs(rounded)))));
  const text = rounded.toFixed(decimals);
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
}

/** A whole number of `step`s, or null when the value is not one within a millionth of a step. */
const wholeSteps = (value: number, step: number): number | null => {
  const steps = Math.round(value / step);
  return Math.abs(value / step - steps) < 1e-6 * Math.max(1, Math.abs(steps)) ** 0.5 ? steps : null;
};

/** The number of inches as a shop writes it, sixty-fourths in: `35-3/8`, `-1/2`, `12`. */
function inchWords(sixtyFourths: number): string {
  const size = Math.abs(sixtyFourths);
  const whole = Math.floor(size / 64);
  let [top, bottom] = [size % 64, 64];
  while (top > 0 && top % 2 === 0) [top, bottom] = [top / 2, bottom / 2];
  const sign = sixtyFourths < 0 ? '-' : '';
  if (top === 0) return `${sign}${whole}`;
  return whole === 0 ? `${sign}${top}/${bottom}` : `${sign}${whole}-${top}/${bottom}`;
}

/**
 * A length for people. Metric: whole or tenth millimetres. Inch: exact where it is a multiple of 1/64 in, else to 1/16 in, or to 1/64 in below 1/4 in.
 * Reading the text back gives the length within half of the step it was rounded to.
 */
export function formatLength(length_mm: number, system: UnitSystem): string {
  if (!Number.isFinite(length_mm)) return 'unknown';
  if (system === 'metric') {
    const tenths = Math.round(length_mm * 10) / 10;
    return `${tenths === 0 ? '0' : String(tenths)} mm`;
  }
  const inches = length_mm / mm_per_inch;
  const exact = wholeSteps(inches, 1 / 64);
  if (exact !== null) return `${inchWords(exact === 0 ? 0 : exact)} in`;
  const step = Math.abs(inches) < 1 / 4 ? 1 : 4;
  const rounded = Math.round((inches * 64) / step) * step;
  return `${inchWords(rounded === 0 ? 0 : rounded)} in`;
}

/** A cross-section such as `19 x 38 mm` or `3/4 x 1-1/2 in`. */
export function formatSize(first_mm: number, second_mm: number, system: UnitSystem): string {
  const first = formatLength(first_mm, system).replace(/ \w+$/, '');
  return `${first} x ${formatLength(second_mm, system)}`;
}

/** A share (0..1) in per cent, finer near nothing: `35 %`, `0.4 %`. */
export function formatShare(share: number): string {
  return `${formatNumber(share * 100, Math.abs(share) < 0.995 ? 2 : 3)} %`;
}

/** A chance in words: `about 1 in 6`, `less than 1 in 1000`, `about 2 in 3`, `nearly certain`. */
export function chanceInWords(chance: number): string {
  if (!Number.isFinite(chance)) return 'unknown';
  if (chance < 0.001) return 'less than 1 in 1000';
  if (chance > 0.99) return 'nearly certain';
  if (chance > 0.9) return `about ${Math.round(chance * 20)} in 20`;
  if (chance > 0.45 && chance < 0.55) return 'about 1 in 2';
  if (chance > 0.4) return `about ${Math.round(chance * 10)} in 10`;
  const odds = 1 / chance;
  return `about 1 in ${odds < 20 ? Math.round(odds) : formatNumber(odds, odds < 100 ? 1 : 2)}`;
}

type Writer = (value: number, system: UnitSystem) => string;
const withUnit = (unit: string, digits = 3): Writer => (value) => `${formatNumber(value, digits)} ${unit}`;

/** One writer per unit. */
const writers: Readonly<Record<Exclude<QuantityUnit, 'word'>, Writer>> = {
  'mm': formatLength,
  'mrad': withUnit('mrad', 2),
  'N': (value, system) => (system === 'inch' ? `${formatNumber(value / newtons_per_pound, 2)} lbf` : `${formatNumber(value, 3)} N`),
  'Nm': (value, system) => (system === 'inch' ? `${formatNumber(value / (newtons_per_pound * 0.0254), 3)} lbf·in` : `${formatNumber(value, 3)} N·m`),
  'N/m': (value, system) => (system === 'inch' ? `${formatNumber((value * 0.0254) / newtons_per_pound, 3)} lbf/in` : `${formatNumber(value, 3)} N/m`),
  'kg': (value, system) => (system === 'inch' ? `${formatNumber(value / 0.45359237, value < 4.5 ? 2 : 3)} lb` : `${formatNumber(value, value < 10 ? 2 : 3)} kg`),
  'deg': (value) => `${formatNumber(value, 2)}°`,
  'Hz': withUnit('Hz', 3),
  'share': formatShare,
  'chance': formatShare,
  'pct': (value) => `${formatNumber(value, 3)} %`,
  'cost': (value) => (Number.isFinite(value) ? (Math.round(value * 100) / 100 || 0).toFixed(2) : 'unknown'),
  'count': (value) => formatNumber(Math.round(value), 15),
  'ratio': (value) => formatNumber(value, 3),
  'days': (value) => { const text = formatNumber(value, 2); return text === '1' ? '1 day' : `${text} days`; },
  'ml': withUnit('ml', 2),
  'MPa': (value, system) => (system === 'inch' ? `${formatNumber(value / 0.00689475729316836, 2)} psi` : `${formatNumber(value, 3)} MPa`),
  'C': (value, system) => (system === 'inch' ? `${formatNumber(value * 1.8 + 32, 3)} °F` : `${formatNumber(value, 3)} °C`),
};

/**
 * Any value of a fact in words and units people use, in the unit system they write in. `value` in the fact's own unit (`mm`, `share` 0..1, `pct` 0..100 …).
 * Words pass as they are; null and non-finite numbers are `unknown`.
 */
export function formatQuantity(value: number | string | null, unit: QuantityUnit, system: UnitSystem): string {
  if (value === null) return 'unknown';
  if (typeof value === 'string') return value;
  if (!Number.isFinite(value)) return 'unknown';
  return unit === 'word' ? String(value) : writers[unit](value, system);
}
