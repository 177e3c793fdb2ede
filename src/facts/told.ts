import type { UnitSystem } from '../base/names.js';
import { formatQuantity, type QuantityUnit } from '../base/units-format.js';
import { specOf } from './catalogue.js';
import type { FactPath } from './fact.js';

/** The unit in which a fact is told: its own, but for differences of per cents, which are told in points. */
export function toldUnit(path: FactPath): QuantityUnit {
  const { told, unit } = specOf(path);
  return told === 'points' ? 'points' : unit;
}

/** A value of a fact as a sentence tells it, in the plan's own units; null is `unknown`; costs in `currency`. */
export function factInWords(path: FactPath, value: number | string | null, units: UnitSystem, currency = ''): string {
  const told = specOf(path).told;
  if (typeof value === 'string' && typeof told === 'object') return told[value] ?? value;
  return formatQuantity(value, toldUnit(path), units, currency);
}
