import type { About } from '../base/names.js';
import { catalogueByPath } from '../facts/catalogue.js';
import type { EngineLine, EngineOperator, Question } from './engine.js';
import type { FactTable, Reading } from './fact-table.js';
import { thresholdKey } from './quantity.js';
import type { Compare, Condition, Line, Ruleset } from './ruleset.js';

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
  /** Name of the engine's question about this line alone; null when the whole condition is that question. */
  readonly question: string | null;
}

/** A condition with unknowns settled: what is known has gone to the engine, what is not is listed. */
export interface PosedCondition {
  readonly join: 'all' | 'any';
  readonly lines: readonly PosedLine[];
  readonly unknown: readonly PosedLine[];
  /** Name of the engine's question about the known lines; null when none is known. */
  readonly question: string | null;
}

/** Where facts and limits are looked up, and where questions for the engine are gathered. */
export interface Setting {
  readonly ruleset: Ruleset;
  readonly table: FactTable;
  readonly about: About;
  readonly questions: Question[];
  readonly asked: Map<string, number | string>;
}

const operators: Readonly<Record<Compare, EngineOperator>> = {
  'at-most': 'lessThanInclusive',
  'at-least': 'greaterThanInclusive',
  'above': 'greaterThan',
  'below': 'lessThan',
  'is': 'equal',
  'is-not': 'notEqual',
};

/** Turns a condition into questions for the engine, leaving out whatever is not known. */
export function pose(condition: Condition, which: Which, setting: Setting): PosedCondition {
  const engineLines: EngineLine[] = [];
  const lines: PosedLine[] = [];
  const several = condition.lines.length > 1;
  for (const line of condition.lines) {
    const actual = setting.table.read(line.fact, setting.about);
    const limit = thresholdFor(line, which, setting);
    const missing = !actual.known ? { path: line.fact, why: actual.reason } : !limit.known ? { path: limit.path, why: limit.reason } : null;
    let question: string | null = null;
    if (actual.known && limit.known) {
      const engineLine = engineLineOf(line, actual.value, limit.value, setting);
      engineLines.push(engineLine);
      if (several) question = ask(setting.questions, 'all', [engineLine]);
    }
    lines.push({ line, actual: actual.known ? actual.value : null, limit: limit.known ? limit.value : null, used: usedOf(line, actual, limit), reason: missing, question });
  }
  const question = engineLines.length === 0 ? null : ask(setting.questions, condition.join, engineLines);
  return { join: condition.join, lines, unknown: lines.filter((line) => line.reason !== null), question };
}

/**
 * Whether a condition holds, null = unknown.
 * All: false if any line is false, else unknown if any is unknown. Any: true if any line is true, else unknown if any is unknown.
 */
export function truthOf(condition: PosedCondition, answers: ReadonlyMap<string, boolean>): boolean | null {
  if (condition.question === null) return null;
  const known = answers.get(condition.question);
  if (known === undefined) throw new Error(`question ${condition.question} was never answered`);
  if (known === (condition.join === 'any')) return known;
  return condition.unknown.length > 0 ? null : known;
}

/** Whether one line of a condition holds; the engine was asked. Null for an unknown line. */
export function askedLine(line: PosedLine, condition: PosedCondition, answers: ReadonlyMap<string, boolean>): boolean | null {
  if (line.reason !== null) return null;
  return answers.get(line.question ?? condition.question ?? '') ?? null;
}

/** True when the comparison looks at the size of a signed fact, not at its direction. */
export function comparesMagnitude(line: Line): boolean {
  return (line.compare === 'at-most' || line.compare === 'below') && catalogueByPath.get(line.fact)?.signed === true;
}

function ask(questions: Question[], join: 'all' | 'any', lines: readonly EngineLine[]): string {
  const name = `q${questions.length}`;
  questions.push({ name, join, lines });
  return name;
}

function engineLineOf(line: Line, actual: number | string, limit: number | string, setting: Setting): EngineLine {
  const magnitude = comparesMagnitude(line) && typeof actual === 'number';
  const fact = `${magnitude ? 'size of ' : ''}${line.fact} @ ${setting.about}`;
  setting.asked.set(fact, magnitude ? Math.abs(actual) : actual);
  return { fact, operator: operators[line.compare], value: limit };
}

type Threshold = Reading & { readonly path: string };

function thresholdFor(line: Line, which: Which, setting: Setting): Threshold {
  const { against } = line;
  if (against.kind !== 'limit') return { known: true, value: against.value, path: line.fact };
  const unit = catalogueByPath.get(line.fact)!.unit;
  const thresholds = setting.ruleset.thresholds.get(thresholdKey(against.name, unit));
  const amount = thresholds?.[which] ?? null;
  if (thresholds === undefined || amount === null) return { known: false, path: line.fact, reason: `The limit ${against.name} has no amount to compare with.` };
  if (thresholds.of === null) return { known: true, value: amount, path: line.fact };
  const base = setting.table.read(thresholds.of, setting.about);
  if (!base.known) return { ...base, path: thresholds.of };
  const value = amount * Math.abs(Number(base.value));
  if (!Number.isFinite(value)) return { known: false, path: thresholds.of, reason: 'It makes the limit no finite number.' };
  return { known: true, value, path: thresholds.of };
}

function usedOf(line: Line, actual: Reading, limit: Reading): number | null {
  if (!actual.known || !limit.known || typeof actual.value !== 'number' || typeof limit.value !== 'number') return null;
  const size = comparesMagnitude(line) ? Math.abs(actual.value) : actual.value;
  const used = line.compare === 'at-most' || line.compare === 'below' ? size / limit.value : line.compare === 'at-least' || line.compare === 'above' ? limit.value / size : Number.NaN;
  return Number.isFinite(used) && used >= 0 && limit.value > 0 ? used : null;
}

