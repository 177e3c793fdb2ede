import type { UnitSystem } from '../base/names.js';
import { remembered } from '../base/remembered.js';
import type { FactUnit } from '../facts/fact.js';
import { thresholdsOf, unitOfKey } from './quantity.js';
import type { Limit, Ruleset, Thresholds } from './ruleset.js';

/** The limit as a plan in inches is held to it: its twin where it has one. */
export const limitInInches = (limit: Limit): Limit =>
  limit.inches === null ? limit : { ...limit, amounts: limit.inches };

const inInches = remembered(
  (old: Ruleset['limits'], { thresholds }: Ruleset) => {
    const limits: Ruleset['limits'] = new Map([...old].map(([name, limit]) => [name, limitInInches(limit)]));
    const told = [...thresholds].map(([key, before]): [string, Thresholds] => {
      const { name, unit } = unitOfKey(key);
      const limit = limits.get(name);
      return [key, (limit === undefined ? null : thresholdsOf(limit, unit as FactUnit)) ?? before];
    });
    return { limits, thresholds: new Map(told) };
  },
  ({ limits }) => limits,
);

/**
 * A ruleset as a plan of this unit system is held to it: in inches, limits that have a twin are that twin. Worked out
 * once for the limits of a ruleset.
 */
export const rulesIn = (ruleset: Ruleset, units: UnitSystem): Ruleset =>
  units === 'metric' ? ruleset : { ...ruleset, ...inInches(ruleset.limits, ruleset) };
