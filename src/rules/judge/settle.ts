import type { About } from '../../base/names.js';
import { remembered, rememberedBy } from '../../base/remembered.js';
import { catalogueByPath } from '../../facts/catalogue.js';
import type { EngineLine, EngineOperator, EnginePart } from './engine.js';
import type { FactTable, Reading } from './fact-table.js';
import { thresholdKey } from '../quantity.js';
import type { Compare, Condition, Line, Ruleset } from '../ruleset.js';

/** Which of a limit's amounts is meant. */
export type Which = 'value' | 'stop' | 'caution';

/** A line with its numbers in place, or with the reason why it cannot be judged. */
export interface PosedLine {
  readonly line: Line;
  readonly actual: number | string | null;
  readonly limit: number | string | null;
  readonly used: number | null;
  /** Null when the line is known; else the path of the missing fact and the sentence that says why. */
  readonly reason: { readonly path: string; readonly why: string } | null;
  /** Name under which the engine knows the value; empty for an unknown line. */
  readonly fact: string;
}

/** A condition with its numbers in place: what is known and what is not is settled before the engine is asked. */
export interface PosedCondition {
  readonly join: 'all' | 'any';
  readonly parts: readonly (PosedLine | PosedCondition)[];
}

/** A line as the engine is asked it, and the line of the rule it comes from. */
export interface AskedLine extends EngineLine {
  readonly posed: PosedLine;
}

/** Where facts and limits are looked up, and where the values that the engine needs are gathered. */
export interface Setting {
  readonly ruleset: Ruleset;
  readonly table: FactTable;
  readonly about: About;
  readonly asked: Map<string, number | string>;
}

/** Each comparison and its contrary, as the engine calls them. */
const operators: Readonly<Record<Compare, readonly [holds: EngineOperator, fails: EngineOperator]>> = {
  'at-most': ['lessThanInclusive', 'greaterThan'],
  'at-least': ['greaterThanInclusive', 'lessThan'],
  above: ['greaterThan', 'lessThanInclusive'],
  below: ['lessThan', 'greaterThanInclusive'],
  is: ['equal', 'notEqual'],
  'is-not': ['notEqual', 'equal'],
};

/** Puts the numbers of one element into a condition. */
export function pose(condition: Condition, which: Which, setting: Setting): PosedCondition {
  return {
    join: condition.join,
    parts: condition.parts.map((part) =>
      'parts' in part ? pose(part, which, setting) : poseLine(part, which, setting),
    ),
  };
}

/**
 * What to ask the engine so that the answer yes means: this condition surely holds (or, with `fails`, surely does not).
 * Lines that are not known
 * are left out where others can decide without them; null where none can. A condition of which neither can be asked, or
 * neither is answered yes, is unknown.
 */
export function question(condition: PosedCondition, wanted: 'holds' | 'fails'): EnginePart | null {
  const join = wanted === 'holds' ? condition.join : condition.join === 'all' ? 'any' : 'all';
  const [only] = condition.parts;
  if (condition.parts.length === 1) return 'parts' in only! ? question(only, wanted) : lineQuestion(only!, wanted);
  const parts = condition.parts.map((part) => ('parts' in part ? question(part, wanted) : lineQuestion(part, wanted)));
  const known = parts.filter((part) => part !== null);
  if (known.length === 0 || (join === 'all' && known.length < parts.length)) return null;
  return known.length === 1 ? known[0]! : { join, parts: known };
}

function lineQuestion(posed: PosedLine, wanted: 'holds' | 'fails'): AskedLine | null {
  if (posed.reason !== null) return null;
  return {
    fact: posed.fact,
    operator: operators[posed.line.compare][wanted === 'holds' ? 0 : 1],
    value: posed.limit!,
    posed,
  };
}

/** Every line of a condition, in the order of the file. */
export function posedLines(condition: PosedCondition, lines: PosedLine[] = []): readonly PosedLine[] {
  for (const part of condition.parts)
    if ('parts' in part) posedLines(part, lines);
    else lines.push(part);
  return lines;
}

function poseLine(line: Line, which: Which, setting: Setting): PosedLine {
  const actual = setting.table.read(line.fact, setting.about);
  const limit = thresholdFor(line, which, setting);
  const reason = !actual.known
    ? { path: line.fact, why: actual.reason }
    : !limit.known
      ? { path: limit.path, why: limit.reason }
      : null;
  const fact = actual.known && limit.known ? noted(line, actual.value, setting) : '';
  return {
    line,
    actual: actual.known ? actual.value : null,
    limit: limit.known ? limit.value : null,
    used: usedOf(line, actual, limit),
    reason,
    fact,
  };
}

/** Elements of which names are remembered at most for a line. */
const mostNames = 100;
/** What the engine calls the fact of a line, by element: the same words for every plan. */
const namesOf = remembered((line: Line) => {
  const path = comparesMagnitude(line) ? `size of ${line.fact}` : line.fact;
  return rememberedBy(
    (about: About) => about,
    (about) => `${path} @ ${about}`,
    mostNames,
  );
});

/** Notes a value for the engine and gives the name it goes by. */
function noted(line: Line, actual: number | string, { asked, about }: Setting): string {
  const fact = namesOf(line)(about);
  asked.set(fact, typeof actual === 'number' && comparesMagnitude(line) ? Math.abs(actual) : actual);
  return fact;
}

/** True when the comparison looks at the size of a signed fact, not at its direction. */
export function comparesMagnitude(line: Line): boolean {
  return (line.compare === 'at-most' || line.compare === 'below') && catalogueByPath.get(line.fact)?.signed === true;
}

type Threshold = Reading & { readonly path: string };

/** Key of the thresholds of a line that is held against a limit. */
const keyOf = remembered(({ fact, against }: Line): string | null =>
  against.kind === 'limit' ? thresholdKey(against.name, catalogueByPath.get(fact)!.unit) : null,
);

function thresholdFor(line: Line, which: Which, setting: Setting): Threshold {
  const { against } = line;
  if (against.kind !== 'limit') return { known: true, value: against.value, path: line.fact };
  const thresholds = setting.ruleset.thresholds.get(keyOf(line)!);
  const amount = thresholds?.[which] ?? null;
  if (thresholds === undefined || amount === null)
    return { known: false, path: line.fact, reason: `The limit ${against.name} has no amount to compare with.` };
  if (thresholds.of === null) return { known: true, value: amount, path: line.fact };
  const base = setting.table.read(thresholds.of, setting.about);
  if (!base.known) return { ...base, path: thresholds.of };
  const value = amount * Math.abs(Number(base.value));
  if (!Number.isFinite(value))
    return { known: false, path: thresholds.of, reason: 'It makes the limit no finite number.' };
  return { known: true, value, path: thresholds.of };
}

function usedOf(line: Line, actual: Reading, limit: Reading): number | null {
  if (!actual.known || !limit.known || typeof actual.value !== 'number' || typeof limit.value !== 'number') return null;
  const size = comparesMagnitude(line) ? Math.abs(actual.value) : actual.value;
  const used =
    line.compare === 'at-most' || line.compare === 'below'
      ? size / limit.value
      : line.compare === 'at-least' || line.compare === 'above'
        ? limit.value / size
        : Number.NaN;
  return Number.isFinite(used) && used >= 0 && limit.value > 0 ? used : null;
}
