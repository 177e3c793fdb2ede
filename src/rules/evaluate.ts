import type { About, UnitSystem } from '../base/names.js';
import { catalogueByPath } from '../facts/catalogue.js';
import type { Element, Fact } from '../facts/fact.js';
import type { Finding, Verdict } from '../findings/finding.js';
import { answer, type Question } from './engine.js';
import { tabulate, type FactTable } from './fact-table.js';
import type { Rule, Ruleset } from './ruleset.js';
import { say, sayUnknown, sayWhyNot } from './say.js';
import { askedLine, pose, truthOf, type PosedCondition, type PosedLine } from './settle.js';

/** A rule that had nothing to say of an element, and why. `about` is null when there was no element at all. */
export interface Silence {
  readonly rule: string;
  readonly about: About | null;
  readonly why: string;
}

/** Everything the rules say of one plan, in the order of the ruleset. */
export interface Evaluation {
  readonly findings: readonly Finding[];
  readonly silent: readonly Silence[];
}

const adviceOnUnknown = 'Find out what is missing before you cut; until then this is not known to be safe.';

/** One rule asked of one element, its questions posed but not yet answered. */
interface Case {
  readonly rule: Rule;
  readonly about: About;
  readonly applies: PosedCondition | null;
  readonly notStop: PosedCondition | null;
  readonly clear: PosedCondition;
}

/**
 * Asks every rule of every element it is about. Facts come in the units of the catalogue; findings keep them, and their sentences speak in `units` (metric).
 * What is missing or not finite makes a finding unknown, never clear. Any list of facts will do: only a bug rejects.
 */
export async function evaluateRules(ruleset: Ruleset, facts: readonly Fact[], options: { readonly units?: UnitSystem } = {}): Promise<Evaluation> {
  const table = tabulate(facts);
  const questions: Question[] = [];
  const asked = new Map<string, number | string>();
  const silent: Silence[] = [];
  const cases: Case[] = [];
  for (const rule of ruleset.rules) {
    const abouts = table.elementsOf(rule.each);
    if (abouts.length === 0) silent.push({ rule: rule.id, about: null, why: noneOf(rule.each) });
    for (const about of abouts) cases.push(caseOf(rule, about, ruleset, table, questions, asked));
  }
  const answers = await answer(questions, asked);
  const findings: Finding[] = [];
  for (const one of cases) {
    const applies = one.applies === null ? true : truthOf(one.applies, answers);
    if (applies === false && one.applies !== null) silent.push({ rule: one.rule.id, about: one.about, why: whyNot(one.applies, answers, options.units) });
    else findings.push(findingOf(one, applies, answers, ruleset, table, options.units ?? 'metric'));
  }
  return { findings, silent };
}

function caseOf(rule: Rule, about: About, ruleset: Ruleset, table: FactTable, questions: Question[], asked: Map<string, number | string>): Case {
  const setting = { ruleset, table, about, questions, asked };
  const { otherwise } = rule;
  const twoThresholds = otherwise.kind === 'by-limit';
  const stopCondition = otherwise.kind === 'stop-beyond' ? { ...rule.require, lines: rule.require.lines.map((line) => ({ ...line, against: otherwise.stop })) } : rule.require;
  return {
    rule,
    about,
    applies: rule.applies === null ? null : pose(rule.applies, 'value', setting),
    notStop: otherwise.kind === 'always' ? null : pose(stopCondition, twoThresholds ? 'stop' : 'value', setting),
    clear: pose(rule.require, twoThresholds ? 'caution' : 'value', setting),
  };
}

function findingOf(one: Case, applies: boolean | null, answers: ReadonlyMap<string, boolean>, ruleset: Ruleset, table: FactTable, units: UnitSystem): Finding {
  const { rule, about } = one;
  const clear = truthOf(one.clear, answers);
  const notStop = one.notStop === null ? true : truthOf(one.notStop, answers);
  const verdict = verdictOf(rule, applies, notStop, clear);
  const condition = decidingCondition(one, verdict, applies, notStop);
  const line = verdict === 'unknown' ? (condition.unknown[0] ?? condition.lines[0]!) : decidingLine(condition, answers);
  const context = { ruleset, table, units };
  return {
    rule: rule.id,
    about,
    verdict,
    fact: line.line.fact,
    actual: line.actual,
    limit: line.limit,
    unit: catalogueByPath.get(line.line.fact)!.unit,
    used: line.used,
    say: verdict === 'unknown' ? sayUnknown(line, about) : say(verdict === 'clear' ? (rule.say_clear ?? rule.say) : rule.say, about, line, context),
    do: verdict === 'clear' ? [] : verdict === 'unknown' ? [adviceOnUnknown] : rule.do.map((advice) => say(advice, about, line, context)),
    cautions: rule.cautions,
    source: rule.source,
  };
}

function verdictOf(rule: Rule, applies: boolean | null, notStop: boolean | null, clear: boolean | null): Verdict {
  if (applies === null) return 'unknown';
  if (notStop === false) return 'stop';
  if (notStop === null || clear === null) return 'unknown';
  if (clear) return 'clear';
  return rule.otherwise.kind === 'always' ? rule.otherwise.verdict : 'caution';
}

/** The condition that a finding shows: the one that was not met or not known, else the one that was met. */
function decidingCondition({ applies: applied, notStop: stopping, clear }: Case, verdict: Verdict, applies: boolean | null, notStop: boolean | null): PosedCondition {
  if (applies === null && applied !== null) return applied;
  if (stopping === null) return clear;
  return verdict === 'stop' || notStop === null ? stopping : clear;
}

/** The line that a finding shows: of several, the failing one that uses most of its limit, else the one nearest to failing. */
function decidingLine(condition: PosedCondition, answers: ReadonlyMap<string, boolean>): PosedLine {
  const known = condition.lines.filter((line) => line.reason === null);
  const wanted = condition.join === 'any' && truthOf(condition, answers) === true;
  const decisive = known.filter((line) => askedLine(line, condition, answers) === wanted);
  const candidates = decisive.length > 0 ? decisive : known;
  return candidates.reduce((worst, line) => ((line.used ?? 0) > (worst.used ?? 0) ? line : worst), candidates[0] ?? condition.lines[0]!);
}

function whyNot(applies: PosedCondition, answers: ReadonlyMap<string, boolean>, units: UnitSystem = 'metric'): string {
  return sayWhyNot(decidingLine(applies, answers), units);
}

function noneOf(each: Element): string {
  return each === 'hanging' ? 'The plan does not hang the piece.' : `The plan has no ${each}s.`;
}
