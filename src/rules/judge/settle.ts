import type { About } from '../../base/names.js';
import { specOf } from '../../facts/catalogue.js';
import type { Tree } from '../group.js';
import type { Line, Ruleset } from '../ruleset.js';
import type { EngineLine, EnginePart } from './engine.js';
import type { FactTable } from './fact-table.js';
import type { Ready, ReadyLine } from './ready-rule.js';

/** The path of a fact that is not known, and the sentence that says why. */
interface Missing {
  readonly path: string;
  readonly why: string;
}

/** A line with its numbers in place, or with the reason why it cannot be judged. */
export interface PosedLine {
  readonly ready: ReadyLine;
  readonly line: Line;
  readonly actual: number | string | null;
  readonly limit: number | string | null;
  readonly used: number | null;
  /** Null when the line is known. */
  readonly reason: Missing | null;
}

/** A condition with its numbers in place: what is known and what is not is settled before the engine is asked. */
export type Posed = Tree<PosedLine>;

/** A line as the engine is asked it, and the line of the rule it comes from. */
export interface AskedLine extends EngineLine {
  readonly posed: PosedLine;
}

/** Where facts and limits are looked up. */
export interface Setting {
  readonly ruleset: Ruleset;
  readonly table: FactTable;
}

/** Puts the numbers of one element into a condition. */
export function pose(of: Ready, about: About, setting: Setting): Posed {
  return 'parts' in of
    ? { join: of.join, parts: of.parts.map((part) => pose(part, about, setting)) }
    : poseLine(of, about, setting);
}

/**
 * What to ask the engine so that the answer yes means: this condition surely holds (or, with `fails`, surely does not).
 * Lines that are not known
 * are left out where others can decide without them; null where none can. A condition of which neither can be asked, or
 * neither is answered yes, is unknown.
 */
export function question(of: Posed, wanted: 'holds' | 'fails'): EnginePart | null {
  if (!('parts' in of)) return lineQuestion(of, wanted);
  const join = wanted === 'holds' ? of.join : of.join === 'all' ? 'any' : 'all';
  const parts: EnginePart[] = [];
  for (const part of of.parts) {
    const one = question(part, wanted);
    if (one !== null) parts.push(one);
    else if (join === 'all') return null;
  }
  return parts.length === 0 ? null : parts.length === 1 ? parts[0]! : { join, parts };
}

function lineQuestion(posed: PosedLine, wanted: 'holds' | 'fails'): AskedLine | null {
  const { ready, actual, limit, reason } = posed;
  return reason === null
    ? { fact: ready.line.fact, actual: sizeOf(ready, actual!), operator: ready[wanted], value: limit!, posed }
    : null;
}

/** Whether every line of a condition is known. */
export const isKnown = (of: Posed): boolean => ('parts' in of ? of.parts.every(isKnown) : of.reason === null);

function poseLine(ready: ReadyLine, about: About, setting: Setting): PosedLine {
  const { line } = ready;
  const actual = setting.table.read(ready.spec, about);
  const limit = thresholdFor(ready, about, setting);
  const missing = typeof actual === 'object';
  const unlimited = typeof limit === 'object';
  return {
    ready,
    line,
    actual: missing ? null : actual,
    limit: unlimited ? null : limit,
    used: missing || unlimited ? null : usedOf(ready, actual, limit),
    reason: missing ? { path: line.fact, why: actual.unknown } : unlimited ? limit : null,
  };
}

/** What is compared of a value. */
const sizeOf = <V extends number | string>({ sized }: ReadyLine, value: V): V =>
  sized && typeof value === 'number' ? (Math.abs(value) as V) : value;

function thresholdFor(ready: ReadyLine, about: About, setting: Setting): number | string | Missing {
  const { against, fact } = ready.line;
  if (against.kind !== 'limit') return against.value;
  const thresholds = setting.ruleset.thresholds.get(ready.thresholds!);
  const amount = thresholds?.[ready.which] ?? null;
  if (thresholds === undefined || amount === null)
    return { path: fact, why: `The limit ${against.name} has no amount to compare with.` };
  const { of } = thresholds;
  if (of === null) return amount;
  const base = setting.table.read(specOf(of), about);
  if (typeof base === 'object') return { path: of, why: base.unknown };
  const value = amount * Math.abs(Number(base));
  return Number.isFinite(value) ? value : { path: of, why: 'It makes the limit no finite number.' };
}

function usedOf(ready: ReadyLine, actual: number | string, limit: number | string): number | null {
  const { compare } = ready.line;
  if (typeof actual !== 'number' || typeof limit !== 'number' || compare === 'is' || compare === 'is-not') return null;
  const size = sizeOf(ready, actual);
  const used = compare === 'at-most' || compare === 'below' ? size / limit : limit / size;
  return Number.isFinite(used) && used >= 0 && limit > 0 ? used : null;
}
