import type { Problem } from '../../base/problem.js';
import { canSpeak } from './can-speak.js';
import { runExamples, type ExampleOutcome } from './examples.js';
import { loadRuleset, type LoadOptions, type RulesetTexts } from '../read/load-ruleset.js';
import { ruleProblem } from '../read/rule-problems.js';
import { checkProblem } from './check-problems.js';
import { limitsOfRule, usedLimits } from '../say/limits-used.js';
import { nearNames } from './near-names.js';
import { impossibleExamples } from './possible.js';
import { excludingRules } from './excluding.js';
import { limitsAskedByPlans } from './asked-by-plans.js';
import type { Limit, Rule, Ruleset } from '../ruleset.js';

/** Everything that can be said of a ruleset without a plan. */
export interface RulesetCheck {
  /** Null when it does not load. */
  readonly ruleset: Ruleset | null;
  /** Errors and warnings, each with its place. */
  readonly problems: readonly Problem[];
  /** Every example that was tried. */
  readonly examples: readonly ExampleOutcome[];
}

/**
 * Loads a ruleset and tries it: its examples, rules that can never be asked or never speak, limits that nothing uses.
 */
export async function checkRuleset(
  texts: RulesetTexts,
  entryFile: string,
  options: LoadOptions = {},
): Promise<RulesetCheck> {
  const loaded = loadRuleset(texts, entryFile, options);
  if (!loaded.ok) return { ruleset: null, problems: loaded.problems, examples: [] };
  const ruleset = loaded.value;
  const examples: ExampleOutcome[] = [];
  const problems: Problem[] = [...loaded.warnings];
  for (const rule of ruleset.rules) {
    const outcomes = await runExamples(ruleset, rule.id);
    examples.push(...outcomes);
    for (const outcome of outcomes) if (!outcome.ok) problems.push(exampleProblem(rule, outcome));
    const shown = (wanted: 'clear' | 'not clear'): boolean =>
      outcomes.some(({ wanted: one, ok }) => one === wanted && ok) && !changedSince(ruleset, rule);
    if (shown('not clear') && shown('clear')) continue;
    const speech = await canSpeak(ruleset, rule);
    if (speech !== 'speaks') problems.push(checkProblem(speech, rule.place, { value: rule.id }, 'warning'));
  }
  // A limit that is a slip of the pen was told when the ruleset was loaded.
  const told = new Set(problems.filter(({ code }) => code === 'limit-unused').map(({ path }) => path));
  const near = nearNames(ruleset).filter(({ path }) => !told.has(path));
  problems.push(
    ...ruleset.rules.flatMap(impossibleExamples),
    ...excludingRules(ruleset),
    ...near,
    ...limitsAskedByPlans(ruleset),
  );
  for (const limit of unusedLimits(ruleset).filter(({ place }) => !told.has(place.path)))
    problems.push(ruleProblem('limit-unused', limit.place, { value: limit.name }, 'warning'));
  return { ruleset, problems, examples };
}

/**
 * Whether a limit of the rule was set anew by a file above the rule's own: what its examples showed there need not hold
 * here.
 */
function changedSince({ limits }: Ruleset, rule: Rule): boolean {
  return limitsOfRule(rule).some((name) => limits.get(name)?.place.file !== rule.place.file);
}

function exampleProblem(rule: Rule, { example, verdict, wanted, say }: ExampleOutcome): Problem {
  return checkProblem('example-fails', rule.place, {
    value: `${rule.id}: the example \`${example}\` is ${verdict}. ${say}`,
    allowed: `an example that is ${wanted}`,
  });
}

function unusedLimits(ruleset: Ruleset): readonly Limit[] {
  const used = usedLimits(ruleset.layers);
  return [...ruleset.limits.values()].filter(({ name }) => !used.has(name));
}
