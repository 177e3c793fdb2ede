import type { FactPath, FactUnit } from '../facts/fact.js';
import { thresholdsOf } from './quantity.js';
import type { Ruleset } from './ruleset.js';

/** The amounts of a limit as numbers; only those that the limit has. */
export interface LimitValue {
  readonly value?: number;
  readonly stop?: number;
  readonly caution?: number;
}

/**
 * A limit as numbers, before or without rules: `corner-lift` and `bar-bow` are needed to compute the chances of warp.
 * With `of`, in the unit of that fact, which `lookup` must supply; else in `unit`.
 * Null when there is no such limit, its fact is not known, or its amounts do not fit the unit.
 */
export function limitValue(
  ruleset: Ruleset,
  name: string,
  lookup: (path: FactPath) => number | null,
  unit: FactUnit = 'mm',
): LimitValue | null {
  const limit = ruleset.limits.get(name);
  const thresholds = limit === undefined ? null : thresholdsOf(limit, unit);
  if (limit === undefined || thresholds === null) return null;
  const base = limit.of === null ? 1 : lookup(limit.of);
  if (base === null || !Number.isFinite(base)) return null;
  const amounts = Object.entries({ value: thresholds.value, stop: thresholds.stop, caution: thresholds.caution });
  return Object.fromEntries(
    amounts.flatMap(([key, amount]) => (amount === null ? [] : [[key, amount * Math.abs(base)]])),
  );
}
