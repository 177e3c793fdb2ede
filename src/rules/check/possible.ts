import type { Problem } from '../../base/problem.js';
import { catalogueByPath } from '../../facts/catalogue.js';
import type { FactSpec } from '../../facts/fact.js';
import { formatQuantity } from '../../base/units-format.js';
import { checkProblem } from './check-problems.js';
import type { Rule } from '../ruleset.js';

/**
 * Values the fact can have at all: chances lie between 0 and 1, and only facts marked as signed or as passing zero go
 * below it.
 */
export function possible(value: number | string, spec: FactSpec): boolean {
  if (typeof value === 'string') return true;
  if (spec.unit === 'chance' && value > 1) return false;
  return value >= 0 || spec.signed !== undefined || spec.unit === 'C' || spec.unit === 'pct';
}

/** Examples of a rule with values that no frame can have: they show nothing. Counts are whole. */
export function impossibleExamples({ examples, place }: Rule): readonly Problem[] {
  if (examples === null) return [];
  const values = [examples.clear, examples.edge ?? {}, examples.fails, examples.with].flatMap((one) =>
    Object.entries(one),
  );
  return values.flatMap(([path, value]): Problem[] => {
    const spec = catalogueByPath.get(path)!;
    const whole = spec.unit !== 'count' || typeof value === 'string' || Number.isInteger(value);
    if (possible(value, spec) && whole) return [];
    const allowed = !whole ? 'a whole number' : spec.unit === 'chance' ? 'from 0 to 1' : 'zero or more';
    return [
      checkProblem(
        'impossible-example',
        place,
        { value: formatQuantity(value, spec.unit, 'metric'), name: path, allowed },
        'warning',
      ),
    ];
  });
}
