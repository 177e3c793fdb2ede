import type { UnitSystem } from '../base/names.js';
import { formatQuantity, type QuantityUnit } from '../base/units-format.js';
import { catalogueByPath } from './catalogue.js';

/** The unit in which a fact is told: its own, but for differences of per cents, which are told in points; `word` for a path nobody knows. */
export function toldUnit(path: string): QuantityUnit {
  const spec = catalogueByPath.get(path);
  return spec?.told === 'points' ? 'points' : (spec?.unit ?? 'word');
}

/** A value of a fact as a sentence tells it, in the plan's own units; null is `unknown`. */
export function factInWords(path: string, value: number | string | null, units: UnitSystem): string {
  const told = catalogueByPath.get(path)?.told;
  if (typeof value === 'string' && typeof told === 'object') return told[value] ?? value;
  return formatQuantity(value, toldUnit(path), units);
}
