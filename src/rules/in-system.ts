import type { UnitSystem } from '../base/names.js';
import type { FactUnit } from '../facts/fact.js';
import { thresholdsOf, unitOfKey } from './quantity.js';
import type { Limit, Ruleset, Thresholds } from './ruleset.js';

/** The limit as a plan in inches is held to it: its twin where it has one. */
export const limitInInches = (limit: Limit): Limit =>
  limit.inches === null ? limit : { ...limit, amounts: limit.inches };

type Told = Pick<Ruleset, 'limits' | 'thresholds'>;
const known = new WeakMap<Ruleset['limits'], Told>();

/**
 * A ruleset as a plan of this unit system is held to it: in inches, limits that have a twin are that twin. Worked out
 * once for the limits of a ruleset.
 */
export function rulesIn(ruleset: Ruleset, units: UnitSystem): Ruleset {
  if (units === 'metric') return ruleset;
  const before = known.get(ruleset.limits);
  if (before !== undefined) return { ...ruleset, ...before };
  const limits = new Map([...ruleset.limits].map(([name, limit]) => [name, limitInInches(limit)]));
  const thresholds = new Map(
    [...ruleset.thresholds].map(([key, old]): [string, Thresholds] => {
      const { name, unit } = unitOfKey(key);
      const limit = limits.get(name);
      return [key, (limit === undefined ? null : thresholdsOf(limit, unit as FactUnit)) ?? old];
    }),
  );
  known.set(ruleset.limits, { limits, thresholds });
  known.set(limits, { limits, thresholds });
  return { ...ruleset, limits, thresholds };
}
