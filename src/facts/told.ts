import type { UnitSystem } from '../base/names.js';
import { formatQuantity, type QuantityUnit } from '../base/units-format.js';
import { specOf } from './catalogue.js';
import type { FactPath } from './fact.js';

/** The unit in which a fact is told: its own, but for differences of per cents, which are told in points. */
export function toldUnit(path: FactPath): QuantityUnit {
  const { told, unit } = specOf(path);
  return told === 'points' ? 'points' : unit;
}

const unitEnding = /_(?:mm|mrad|N|Nm|kg|deg|Hz|pct|ml|count|days|MPa|C|N_per_m|deg_per_m)$/u;

/** A fact as one reads it: `bar inward bow` for `bar.inward_bow_mm`. */
export const nameInWords = (path: FactPath): string => path.replace(unitEnding, '').replace(/[._]/gu, ' ');

/** A value of a fact as a sentence tells it, in the plan's own units; null is `unknown`; costs in `currency`. */
export function factInWords(path: FactPath, value: number | string | null, units: UnitSystem, currency = ''): string {
  const told = specOf(path).told;
  if (typeof value === 'string' && typeof told === 'object') return told[value] ?? value;
  return formatQuantity(value, toldUnit(path), units, currency);
}
