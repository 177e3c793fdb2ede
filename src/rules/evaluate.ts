import { lazily } from '../base/lazily.js';
import type { About, UnitSystem } from '../base/names.js';
import type { Element, Fact, FactPath } from '../facts/fact.js';
import { factsGiven, type FactSource } from '../facts/fact-source.js';
import { nameInWords } from '../facts/told.js';
import type { Finding, Verdict } from '../findings/finding.js';
import { caseOf, conditionFor, silenceFor, type Asked, type Case } from './judge/case.js';
import { decide, heldLines, type Answer, type Answers, type EnginePart, type Question } from './judge/engine.js';
import { tabulate } from './judge/fact-table.js';
import { readyRules } from './judge/ready-rule.js';
import { linesIn } from './group.js';
import { isKnown, pose, question, type AskedLine, type Posed, type PosedLine } from './judge/settle.js';
import type { Ruleset } from './ruleset.js';
import { rulesIn } from './in-system.js';
import { byPath, say, sayUnknown, sayVerdict, sayWhyNot, type Naming, type SayContext } from './say/say.js';

/** A rule that had nothing to say of an element, and why. `about` is null when there was no element at all. */
export interface Silence {
  readonly rule: string;
  readonly about: About | null;
  /** Facts by their paths, as the ruleset has them. */
  readonly why: string;
  /** The same as a page has it. */
  readonly why_read: string;
}

/** Everything the rules say of one plan, in the order of the ruleset. */
export interface Evaluation {
  readonly findings: readonly Finding<FactPath>[];
  readonly silent: readonly Silence[];
}

const adviceOnUnknown = 'Find out what is missing before you cut; until then this is not known to be safe.';

/**
 * Asks every rule of every element it is about. Facts come in the units of the catalogue; findings keep them, and their
 * sentences speak in `units` (metric), and of costs in `currency`.
 * What is missing or not finite makes a finding unknown, never clear. Any list of facts will do: only a bug rejects.
 */
export async function evaluateRules(
  given: Ruleset,
  facts: readonly Fact[] | FactSource,
  options: { readonly units?: UnitSystem; readonly currency?: string } = {},
): Promise<Evaluation> {
  const units = options.units ?? 'metric';
  const ruleset = rulesIn(given, units);
  const table = tabulate('all' in facts ? facts : factsGiven(facts));
  const context: SayContext = { ruleset, table, units, currency: options.currency ?? '' };
  const silent: Silence[] = [];
  const posed: Asked[] = [];
  for (const ready of readyRules(ruleset.rules)) {
    const { rule } = ready;
    const abouts = table.elementsOf(rule.each);
    if (abouts.length === 0) {
      const why = noneOf(rule.each);
      silent.push({ rule: rule.id, about: null, why, why_read: why });
    }
    for (const about of abouts) {
      const applies = ready.applies === null ? null : pose(ready.applies, about, context);
      posed.push({ number: posed.length, ready, about, applies });
    }
  }
  // What does not apply is asked nothing more; most others are clear, and what the rest are is asked of the rest only.
  const silenced = await ask(posed, silenceFor, 'silent');
  const cases: Case[] = [];
  for (const one of posed) {
    const answer = silenced[one.number];
    if (answer === undefined) cases.push(caseOf(one, context));
    else silent.push(silenceOf(one, answer, context));
  }
  const cleared = await ask(cases, conditionFor, 'clear');
  const unclear = cases.filter(({ number }) => cleared[number] === undefined);
  const blamed = await ask(unclear, conditionFor, 'stop', 'caution', 'asked');
  const had = await adviceHad(
    unclear.filter(({ number }) => ['stop', 'caution'].includes(blamed[number]?.event ?? '')),
    context,
  );
  const findings = cases.map((one) => findingOf(one, cleared[one.number] ?? blamed[one.number], context, had));
  return { findings, silent };
}

/** Of several outcomes the one that counts; each is asked so that at most one of the first four can hold. */
const priorities = { silent: 5, stop: 4, caution: 3, clear: 2, asked: 1 };

/** Asks of cases whether these become of them: each by the question whose answer yes means it, where there is one. */
function ask<One extends Asked, Event extends keyof typeof priorities>(
  cases: readonly One[],
  conditionOf: (one: One, event: Event) => EnginePart | null,
  ...events: readonly Event[]
): Promise<Answers> {
  const rules = events.map((event) => {
    const questions: Question[] = [];
    for (const one of cases) {
      const when = conditionOf(one, event);
      if (when !== null) questions.push({ about: one.number, when });
    }
    return { event, priority: priorities[event], questions };
  });
  return decide(rules);
}

/** Whether a plan has already what a rule advises, by the place of the advice. */
type Had = (one: Case, advice: number) => boolean;

/**
 * Whether the plan has already what rules would advise: one question for each piece of advice that says when it need
 * not be given.
 */
async function adviceHad(cases: readonly Case[], context: SayContext): Promise<Had> {
  const most = cases.reduce((longest, { ready }) => Math.max(longest, ready.unless.length), 0);
  const questions: Question[] = [];
  for (const { number, ready, about } of cases)
    ready.unless.forEach((unless, advice) => {
      const when = unless === null ? null : question(pose(unless, about, context), 'holds');
      if (when !== null) questions.push({ about: number * most + advice, when });
    });
  const had = await decide([{ event: 'had', priority: 1, questions }]);
  return ({ number }, advice) => had[number * most + advice] !== undefined;
}

/** A case in which a rule has nothing to say. */
function silenceOf({ ready: { rule }, about, applies }: Asked, answer: Answer, context: SayContext): Silence {
  const why = (named: Naming) => (): string => sayWhyNot(decidingLine(applies!, answer), context, named);
  return lazily({ why: why(byPath), why_read: why(nameInWords) }, { rule: rule.id, about });
}

/** What became of a case; its sentences are made when they are first read, as a search over plans asks for none. */
function findingOf(one: Case, answer: Answer | undefined, context: SayContext, had: Had): Finding<FactPath> {
  const { about } = one;
  const { rule } = one.ready;
  const verdict = answer === undefined || answer.event === 'asked' ? 'unknown' : (answer.event as Verdict);
  const line =
    verdict === 'unknown'
      ? missingLine(one, answer)
      : decidingLine(verdict === 'stop' ? (one.notStop ?? one.clear) : one.clear, answer!);
  return lazily(
    {
      say: () => (verdict === 'unknown' ? sayUnknown(line, about) : sayVerdict(rule, verdict, about, line, context)),
      do: (): readonly string[] =>
        verdict === 'clear'
          ? []
          : verdict === 'unknown'
            ? [adviceOnUnknown]
            : rule.do.flatMap((advice, index) => (had(one, index) ? [] : say(advice.say, about, line, context))),
    },
    {
      rule: rule.id,
      title: rule.title,
      about,
      verdict,
      fact: line.line.fact,
      actual: line.actual,
      limit: line.limit,
      unit: line.ready.spec.unit,
      used: line.used,
      cautions: rule.cautions,
      source: rule.source,
    },
  );
}

/**
 * The line that keeps a case from being decided: one of its condition to be asked at all, unless that holds; else one
 * of its requirement.
 */
function missingLine({ applies, notStop, clear }: Case, answer: Answer | undefined): PosedLine {
  const asked = applies === null || answer?.event === 'asked' ? [] : linesIn(applies);
  const lines = [...asked, ...(notStop === null ? [] : linesIn(notStop)), ...linesIn(clear)];
  return lines.find((line) => !isKnown(line)) ?? lines[0]!;
}

/** The line that a finding shows: of those that decided, the one that uses most of its limit. */
function decidingLine(condition: Posed, { when, trace }: Answer): PosedLine {
  if (!('parts' in condition)) return condition;
  const lines = linesIn(condition);
  const decided = (heldLines(when, trace) as readonly AskedLine[])
    .map(({ posed }) => posed)
    .filter((posed) => lines.includes(posed));
  return decided.reduce(
    (worst, line) => ((line.used ?? 0) > (worst.used ?? 0) ? line : worst),
    decided[0] ?? lines[0]!,
  );
}

function noneOf(each: Element): string {
  return each === 'hanging' ? 'The plan does not hang the piece.' : `The plan has no ${each}s.`;
}
