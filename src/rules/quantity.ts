import { remembered, rememberedBy } from '../base/remembered.js';
import { readForFact } from '../base/units-fact.js';
import type { FactUnit } from '../facts/fact.js';
import type { Limit, Thresholds } from './ruleset.js';

/**
 * An amount as written, in the unit of a fact; null when it does not fit.
 * Units must be written, except where there is none to write (shares, chances, ratios, counts, costs): `3 mm`, `10 %`,
 * `1/400`, `2.5`.
 */
export function amountIn(text: string, unit: FactUnit): number | null {
  if (unit === 'word') return null;
  const reading = readForFact(text, unit);
  if (!reading.ok || typeof reading.value !== 'number' || !Number.isFinite(reading.value)) return null;
  if (unit === 'chance' && (reading.value < 0 || reading.value > 1)) return null;
  return reading.value;
}

/** Units that an amount may be written in. */
export const measuredUnits: readonly FactUnit[] = [
  'ratio',
  'mm',
  'N',
  'Nm',
  'N/m',
  'kg',
  'deg',
  'deg/m',
  'Hz',
  'pct',
  'days',
  'ml',
  'MPa',
  'C',
];

/** True when a text is an amount for some fact, whichever. */
export function isAmount(text: string): boolean {
  return amountIn(text, 'share') !== null || measuredUnits.some((unit) => amountIn(text, unit) !== null);
}

/** What may be written for a fact of this unit, for messages. */
export function wordingOf(unit: FactUnit): string {
  if (unit === 'chance') return 'a chance between 0 and 1, such as 10 % or 0.1';
  if (unit === 'share' || unit === 'ratio') return 'a plain number or a fraction, such as 1.5 or 1/400';
  const reading = readForFact(null, unit);
  return reading.ok ? 'a word' : `a number with a unit, one of ${reading.units.slice(0, 6).join(', ')}`;
}

/** What is read of a limit, by the unit it is read in: its amounts never change. */
const readLimits = remembered((limit: Limit) =>
  rememberedBy(
    (unit: FactUnit) => unit,
    (unit): Thresholds | null => {
      const read = (text: string): number | null => amountIn(text, limit.of === null ? unit : 'share');
      if ('value' in limit.amounts) {
        const value = read(limit.amounts.value);
        return value === null ? null : { of: limit.of, value, stop: null, caution: null };
      }
      const stop = read(limit.amounts.stop);
      const caution = read(limit.amounts.caution);
      return stop === null || caution === null ? null : { of: limit.of, value: null, stop, caution };
    },
    measuredUnits.length + 10,
  ),
);

/** The amounts of a limit as used on a fact of this unit; null when they do not fit it. */
export const thresholdsOf = (limit: Limit, unit: FactUnit): Thresholds | null => readLimits(limit)(unit);

/** Limit and unit of a key of `Ruleset.thresholds`. */
export function unitOfKey(key: string): { readonly name: string; readonly unit: string } {
  const at = key.indexOf(' in ');
  return { name: key.slice(0, at), unit: key.slice(at + 4) };
}

/** Key of `Ruleset.thresholds`. */
export function thresholdKey(limit: string, unit: FactUnit): string {
  return `${limit} in ${unit}`;
}
