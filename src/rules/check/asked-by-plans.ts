import type { Problem } from '../../base/problem.js';
import { catalogueByPath } from '../../facts/catalogue.js';
import { limitsOfRule } from '../say/limits-used.js';
import { checkProblem } from './check-problems.js';
import { linesOf, type Rule, type Ruleset } from '../ruleset.js';

/**
 * Limits that a file of one's own sets, though only plans that ask for it are held to them: without a word the teacher
 * would believe that all are.
 */
export function limitsAskedByPlans({ rules, limits, layers }: Ruleset): readonly Problem[] {
  const [lowest] = layers;
  return [...limits.values()]
    .filter(({ place }) => place.file !== lowest?.file)
    .flatMap((limit): Problem[] => {
      const using = rules.filter((rule) => limitsOfRule(rule).includes(limit.name));
      if (using.length === 0 || !using.every(asksThePlan)) return [];
      return [checkProblem('limit-asked-by-plan', limit.place, { value: limit.name, name: using[0]!.id }, 'warning')];
    });
}

/**
 * Whether a rule is asked only where the plan itself says that it wants to be: the catalogue calls such a fact's
 * meaning "whether the plan …".
 */
function asksThePlan({ applies }: Rule): boolean {
  return linesOf(applies).some(
    ({ fact, compare, against }) =>
      compare === 'is' &&
      against.kind === 'word' &&
      against.value === 'yes' &&
      /^Whether the plan /u.test(catalogueByPath.get(fact)?.meaning ?? ''),
  );
}
