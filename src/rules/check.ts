import type { Problem } from '../base/problem.js';
import { nearest } from '../base/schema-problems.js';
import { canSpeak } from './can-speak.js';
import { runExamples, type ExampleOutcome } from './examples.js';
import { loadRuleset, type LoadOptions, type RulesetTexts } from './load-ruleset.js';
import { ruleProblem } from './rule-problems.js';
import { limitsReadByFacts, linesOf, type Limit, type Rule, type Ruleset } from './ruleset.js';
import { placeholdersOf } from './say.js';
import { sentencesOf } from './sentences.js';

/** Everything that can be said of a ruleset without a plan. */
export interface RulesetCheck {
  /** Null when it does not load. */
  readonly ruleset: Ruleset | null;
  /** Errors and warnings, each with its place. */
  readonly problems: readonly Problem[];
  /** Every example that was tried. */
  readonly examples: readonly ExampleOutcome[];
}

/** Loads a ruleset and tries it: its examples, rules that can never be asked or never speak, limits that nothing uses. */
export async function checkRuleset(texts: RulesetTexts, entryFile: string, options: LoadOptions = {}): Promise<RulesetCheck> {
  const loaded = loadRuleset(texts, entryFile, options);
  if (!loaded.ok) return { ruleset: null, problems: loaded.problems, examples: [] };
  const ruleset = loaded.value;
  const examples: ExampleOutcome[] = [];
  const problems: Problem[] = [...loaded.warnings];
  for (const rule of ruleset.rules) {
    const outcomes = await runExamples(ruleset, rule.id);
    examples.push(...outcomes);
    for (const outcome of outcomes) if (!outcome.ok) problems.push(exampleProblem(rule, outcome));
    if (outcomes.some(({ example, ok }) => example === 'fails' && ok)) continue;
    const speech = await canSpeak(ruleset, rule);
    if (speech !== 'speaks') problems.push(ruleProblem(speech, rule.place, { value: rule.id }, 'warning'));
  }
  for (const limit of unusedLimits(ruleset)) problems.push(ruleProblem('limit-unused', limit.place, { value: limit.name, nearest: nearest(limit.name, [...usedLimits(ruleset)]) }, 'warning'));
  return { ruleset, problems, examples };
}

function exampleProblem(rule: Rule, { example, verdict, wanted, say }: ExampleOutcome): Problem {
  return ruleProblem('example-fails', rule.place, { value: `${rule.id}: the example \`${example}\` is ${verdict}. ${say}`, allowed: `an example that is ${wanted}` });
}

function unusedLimits(ruleset: Ruleset): readonly Limit[] {
  const used = usedLimits(ruleset);
  return [...ruleset.limits.values()].filter(({ name }) => !used.has(name));
}

/** Limits named by any rule of any file, so that a rule switched off does not make its limit a mistake. */
function usedLimits({ layers }: Ruleset): ReadonlySet<string> {
  const names = layers.flatMap(({ rules }) => rules.flatMap(limitsOfRule));
  return new Set([...names, ...limitsReadByFacts]);
}

/** The limits a rule names, in its lines, its thresholds and its sentences. */
export function limitsOfRule(rule: Rule): readonly string[] {
  const lines = [...linesOf(rule.require), ...linesOf(rule.applies)].map(({ against }) => against);
  const against = rule.otherwise.kind === 'stop-beyond' ? [...lines, rule.otherwise.stop] : lines;
  const named = against.flatMap((one) => (one.kind === 'limit' ? [one.name] : []));
  const said = sentencesOf(rule).flatMap(placeholdersOf).flatMap((name) => (name.startsWith('limits.') ? [name.slice('limits.'.length)] : []));
  return [...new Set([...named, ...said])];
}
