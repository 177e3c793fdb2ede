import { lazily } from '../base/lazily.js';
import { remembered } from '../base/remembered.js';
import type { About, UnitSystem } from '../base/names.js';
import { catalogueByPath } from '../facts/catalogue.js';
import type { Element, Fact, FactPath } from '../facts/fact.js';
import { factsGiven, type FactSource } from '../facts/fact-source.js';
import { nameInWords } from '../facts/told.js';
import type { Finding, Verdict } from '../findings/finding.js';
import { decide, type Answer, type EnginePart, type Question } from './judge/engine.js';
import { tabulate } from './judge/fact-table.js';
import type { Against, Condition, Rule, Ruleset } from './ruleset.js';
import { rulesIn } from './in-system.js';
import { byPath, say, sayUnknown, sayVerdict, sayWhyNot, type Naming, type SayContext } from './say/say.js';
import {
  pose,
  posedLines,
  question,
  type AskedLine,
  type PosedCondition,
  type PosedLine,
  type Setting,
} from './judge/settle.js';

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
 * One rule asked of one element, its numbers in place: those of what it requires once that is asked, so that nothing is
 * worked out for a rule that does not apply.
 */
class Case {
  readonly applies: PosedCondition | null;
  #notStop: PosedCondition | null | undefined;
  #clear: PosedCondition | undefined;

  constructor(
    /** What the engine calls it. */
    readonly name: string,
    readonly rule: Rule,
    readonly about: About,
    private readonly setting: Setting,
  ) {
    this.applies = rule.applies === null ? null : pose(rule.applies, 'value', setting);
  }

  /** What keeps it from being a stop, where that is less than the requirement. */
  get notStop(): PosedCondition | null {
    const { otherwise } = this.rule;
    if (this.#notStop === undefined)
      this.#notStop =
        otherwise.kind === 'always'
          ? null
          : pose(stopCondition(this.rule), otherwise.kind === 'by-limit' ? 'stop' : 'value', this.setting);
    return this.#notStop;
  }

  get clear(): PosedCondition {
    const { otherwise, require } = this.rule;
    return (this.#clear ??= pose(require, otherwise.kind === 'by-limit' ? 'caution' : 'value', this.setting));
  }
}

/**
 * What may become of a case; `unknown` is what is left when none of these does. `asked`: the rule applies, whatever it
 * makes of it.
 */
type Outcome = 'silent' | 'clear' | 'stop' | 'caution' | 'asked';

/** Of several outcomes the one that counts; each is asked so that at most one of the first four can hold. */
const priorities: Readonly<Record<Outcome, number>> = { silent: 5, stop: 4, caution: 3, clear: 2, asked: 1 };

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
  const ruleset = rulesIn(given, options.units ?? 'metric');
  const table = tabulate('all' in facts ? facts : factsGiven(facts));
  const values = new Map<string, number | string>();
  const settings = new Map<About, Setting>();
  const settingOf = (about: About): Setting => {
    let setting = settings.get(about);
    if (setting === undefined) settings.set(about, (setting = { ruleset, table, about, asked: values }));
    return setting;
  };
  const silent: Silence[] = [];
  const cases: Case[] = [];
  for (const rule of ruleset.rules) {
    const abouts = table.elementsOf(rule.each);
    if (abouts.length === 0) {
      const why = noneOf(rule.each);
      silent.push({ rule: rule.id, about: null, why, why_read: why });
    }
    for (const about of abouts) cases.push(new Case(`case ${cases.length}`, rule, about, settingOf(about)));
  }
  // What does not apply is asked nothing more; most others are clear, and what the rest are is asked of the rest only.
  const answers = new Map<string, Answer>();
  const ask = async (of: readonly Case[], ...outcomes: readonly Outcome[]): Promise<readonly Case[]> => {
    const asked: Question[] = [];
    for (const one of of) for (const outcome of outcomes) pushQuestion(one, outcome, asked);
    const found = await decide(asked, values);
    for (const [name, answer] of found) answers.set(name, answer);
    return of.filter(({ name }) => !found.has(name));
  };
  const applying = await ask(cases, 'silent');
  const unclear = await ask(applying, 'clear');
  await ask(unclear, 'stop', 'caution', 'asked');
  const context = { ruleset, table, units: options.units ?? 'metric', currency: options.currency ?? '' };
  const blamed = unclear.filter(({ name }) => ['stop', 'caution'].includes(answers.get(name)?.event ?? ''));
  const had = await decide(
    blamed.flatMap((one) => alreadyThere(one, settingOf(one.about))),
    values,
  );
  const findings: Finding<FactPath>[] = [];
  for (const one of cases) {
    const answer = answers.get(one.name);
    if (answer?.event === 'silent') {
      const why = (named: Naming) => (): string => sayWhyNot(decidingLine(one.applies!, answer), context, named);
      silent.push(lazily({ why: why(byPath), why_read: why(nameInWords) }, { rule: one.rule.id, about: one.about }));
    } else findings.push(findingOf(one, answer, context, (index) => had.has(adviceName(one, index))));
  }
  return { findings, silent };
}

const adviceName = ({ name }: Case, index: number): string => `${name}, advice ${index}`;

/**
 * Whether the plan has already what a rule would advise: one question for each piece of advice that says when it need
 * not be given.
 */
function alreadyThere(one: Case, setting: Setting): readonly Question[] {
  return one.rule.do.flatMap(({ unless }, index): Question[] => {
    const asked = unless === null ? null : question(pose(unless, 'value', setting), 'holds');
    return asked === null
      ? []
      : [{ about: adviceName(one, index), event: 'had', priority: 1, when: { join: 'all', parts: [asked] } }];
  });
}

/** What a rule with a threshold of its own for a stop requires there; else what it requires. */
const stopCondition = remembered(({ require, otherwise }: Rule): Condition =>
  otherwise.kind === 'stop-beyond' ? beyond(require, otherwise.stop) : require,
);

/** The same requirement with the threshold beyond which it is a stop. */
const beyond = (condition: Condition, stop: Against): Condition => ({
  ...condition,
  parts: condition.parts.map((part) => ('parts' in part ? beyond(part, stop) : { ...part, against: stop })),
});

/**
 * Adds the question whose answer yes means this outcome; what cannot be answered yes, whatever is known, is not asked.
 */
function pushQuestion(one: Case, event: Outcome, asked: Question[]): void {
  const wanted = conditionsOf(one, event);
  if (wanted === null) return;
  const parts: EnginePart[] = [];
  for (const [condition, way] of wanted) {
    const part = question(condition, way);
    if (part === null) return;
    parts.push(part);
  }
  asked.push({ about: one.name, event, priority: priorities[event], when: { join: 'all', parts } });
}

type Wanted = readonly (readonly [PosedCondition, 'holds' | 'fails'])[];

/**
 * What must surely hold or surely fail for an outcome, that which decides it last; null where a case cannot have the
 * outcome.
 */
function conditionsOf(one: Case, outcome: Outcome): Wanted | null {
  const {
    applies,
    rule: { otherwise },
  } = one;
  const asked: Wanted = applies === null ? [] : [[applies, 'holds']];
  if (outcome === 'silent') return applies === null ? null : [[applies, 'fails']];
  if (outcome === 'asked')
    return applies === null || posedLines(applies).every(({ reason }) => reason === null) ? null : asked;
  const { notStop, clear } = one;
  const spared: Wanted = notStop === null ? [] : [[notStop, 'holds']];
  switch (outcome) {
    case 'clear':
      return asked.concat(spared, [[clear, 'holds']]);
    case 'stop':
      return otherwise.kind === 'always'
        ? otherwise.verdict === 'stop'
          ? asked.concat([[clear, 'fails']])
          : null
        : asked.concat([[notStop!, 'fails']]);
    case 'caution':
      return otherwise.kind === 'always' && otherwise.verdict === 'stop'
        ? null
        : asked.concat(spared, [[clear, 'fails']]);
  }
}

/** What became of a case; its sentences are made when they are first read, as a search over plans asks for none. */
function findingOf(
  one: Case,
  answer: Answer | undefined,
  context: SayContext,
  has: (advice: number) => boolean,
): Finding<FactPath> {
  const { rule, about } = one;
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
            : rule.do.flatMap((advice, index) => (has(index) ? [] : say(advice.say, about, line, context))),
    },
    {
      rule: rule.id,
      title: rule.title,
      about,
      verdict,
      fact: line.line.fact,
      actual: line.actual,
      limit: line.limit,
      unit: catalogueByPath.get(line.line.fact)!.unit,
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
  const asked = applies === null || answer?.event === 'asked' ? [] : posedLines(applies);
  const lines = [...asked, ...(notStop === null ? [] : posedLines(notStop)), ...posedLines(clear)];
  return lines.find(({ reason }) => reason !== null) ?? lines[0]!;
}

/** The line that a finding shows: of those that decided, the one that uses most of its limit. */
function decidingLine(condition: PosedCondition, answer: Answer): PosedLine {
  const lines = posedLines(condition);
  if (lines.length === 1) return lines[0]!;
  const own = new Set(lines);
  const decided = (answer.held as readonly AskedLine[]).map(({ posed }) => posed).filter((posed) => own.has(posed));
  return decided.reduce(
    (worst, line) => ((line.used ?? 0) > (worst.used ?? 0) ? line : worst),
    decided[0] ?? lines[0]!,
  );
}

function noneOf(each: Element): string {
  return each === 'hanging' ? 'The plan does not hang the piece.' : `The plan has no ${each}s.`;
}
