/**
 * The only door to json-rules-engine. Everything that passes has been settled before: known facts, finite numbers,
 * flat names. The engine's weak points, each pinned in `test/rules/engine.test.ts`:
 * - a NaN or undefined fact makes any comparison false, so a rule written as "too big" would pass;
 * - numeric strings are taken for numbers;
 * - a missing fact throws and loses the whole run, unless undefined facts are allowed: then it is just false;
 * - an empty `all` and an empty `any` both hold, inside other groups too;
 * - an unknown operator is accepted when added and fails only at run;
 * - `path` is evaluated by a JSONPath library, and a `value` that is an object may read another fact;
 * - `run()` is always asynchronous, and its handlers may be called in any order: results are read from its return value;
 * - unequal priorities of conditions leave holes in the trace: only whole questions have priorities here;
 * - it hashes the name of every fact, and copies every rule at each run: facts go by numbers and without a cache, all
 *   cases of one outcome are parts of one rule, and questions that compare the same values in the same way are put to
 *   it once, and not again for the next plan as long as its answer is remembered.
 * So this file refuses all of these itself, by throwing: they are bugs of the caller, never of the person who wrote a
 * rule.
 */

import type { Tree } from '../group.js';

export const engineOperators = [
  'lessThanInclusive',
  'greaterThanInclusive',
  'greaterThan',
  'lessThan',
  'equal',
  'notEqual',
] as const;
export type EngineOperator = (typeof engineOperators)[number];

/** One comparison of the value of a fact with a constant. */
export interface EngineLine {
  /** Its path, for whoever reads why it was refused. */
  readonly fact: string;
  readonly actual: number | string;
  readonly operator: EngineOperator;
  readonly value: number | string;
}

/** Comparisons, and groups of which all or any must hold. */
export type EnginePart = Tree<EngineLine>;

/** What is asked of one case, which goes by its number. */
export interface Question {
  readonly about: number;
  readonly when: EnginePart;
}

/**
 * A rule for the engine: its event is what becomes of every case whose question holds, unless a rule of a higher
 * priority holds for that case too. Cases come in rising order.
 */
export interface EngineRule {
  readonly event: string;
  readonly priority: number;
  readonly questions: readonly Question[];
}

/** What became of a case: the event of the highest priority, its question, and what of it was found true. */
export interface Answer {
  readonly event: string;
  readonly priority: number;
  readonly when: EnginePart;
  readonly trace: Trace;
}

/** By the number of the case; nothing where no question holds. */
export type Answers = readonly (Answer | undefined)[];

type EngineModule = typeof import('json-rules-engine');

/** The engine is CommonJS: some loaders put its exports only under `default`. */
async function importEngine(): Promise<EngineModule> {
  const module = (await import('json-rules-engine')) as EngineModule & { readonly default?: EngineModule };
  return module.Engine === undefined ? (module.default as EngineModule) : module;
}
/** Imported once, and only when there is something to judge. */
let engineImport: Promise<EngineModule> | null = null;

/** What the engine found true: of a line nothing but that, of a group what it found of each part. */
type Trace = boolean | readonly Trace[];

/** What the engine said of a question: the event it fired, its priority and why; null where it did not hold. */
type Said = { readonly event: string; readonly priority: number; readonly trace: Trace } | null;

/** One question: what was said of it, once that is known, and the number of the run that puts it. */
interface Entry {
  said: Said | undefined;
  run: number;
}

type ByActual = Map<number | string, Entry>;

/** What was said of the questions of one event and priority: of lines by what they compare, of groups by text. */
interface Memory {
  readonly lines: Map<EngineOperator, Map<number | string, ByActual>>;
  readonly groups: Map<string, Entry>;
}

const memories = new Map<string, Memory>();
/**
 * Kept at most; all are forgotten when more come. Of a hundred plans of one kind each puts 53 questions to the engine
 * so, 60 with 300 kept, and hardly fewer with 4,000: 51.
 */
const most = 1000;
let kept = 0;
let runs = 0;

/** A question that has to be put, and the place for what is said of it. */
interface Open {
  readonly when: EnginePart;
  readonly entry: Entry;
}

/** What has to be put of a rule. */
interface OpenRule {
  readonly event: string;
  readonly priority: number;
  readonly open: readonly Open[];
}

/**
 * Decides every case in one run of the engine, or in none where it was asked all of it before.
 * Throws when a group is empty, when a rule asks twice about a case, when two rules have one priority, or when a value
 * asked for is missing or not finite.
 */
export async function decide(rules: readonly EngineRule[]): Promise<Answers> {
  const run = ++runs;
  const entries: Entry[] = [];
  const fresh: OpenRule[] = [];
  for (const [i, { event, priority, questions }] of rules.entries()) {
    if (rules.findIndex((other) => other.priority === priority) < i)
      throw new Error(`${event} has the priority ${priority} of another rule`);
    const memory = madeIn(memories, `${priority} ${event}`, newMemory);
    const open: Open[] = [];
    let last = -1;
    for (const { about, when } of questions) {
      if (about <= last) throw new Error(`${event} of case ${about} was asked twice or out of order`);
      last = about;
      check(when, event);
      const entry = entryOf(memory, when);
      entries.push(entry);
      if (entry.said !== undefined || entry.run === run) continue;
      entry.run = run;
      open.push({ when, entry });
    }
    if (open.length > 0) fresh.push({ event, priority, open });
  }
  if (fresh.length > 0) await put(fresh);
  const answers: (Answer | undefined)[] = [];
  let at = 0;
  for (const { event: rule, questions } of rules)
    for (const { about, when } of questions) {
      const { said } = entries[at++]!;
      if (said === undefined) throw new Error(`the engine left ${rule} of case ${about} unanswered`);
      if (said === null) continue;
      const { event, priority, trace } = said;
      const before = answers[about];
      if (before === undefined || priority > before.priority) answers[about] = { event, priority, when, trace };
    }
  return answers;
}

/** Puts to the engine what was not asked before, one rule for each outcome, and notes what it says of each question. */
async function put(rules: readonly OpenRule[]): Promise<void> {
  engineImport ??= importEngine();
  const { Engine, Fact } = await engineImport;
  const engine = new Engine();
  const given = new Map<number | string, string>();
  const numbered = (value: number | string): string => {
    let number = given.get(value);
    if (number === undefined) {
      number = String(given.size);
      given.set(value, number);
      engine.addFact(new Fact(number, value, { cache: false }));
    }
    return number;
  };
  for (const [i, { event, priority, open }] of rules.entries()) {
    const conditions = { any: open.map(({ when }) => inner(when, numbered)) };
    engine.addRule({ name: String(i), priority, conditions: conditions as never, event: { type: event } });
  }
  const { results, failureResults } = await engine.run();
  for (const { name } of failureResults) for (const { entry } of rules[Number(name)]!.open) entry.said = null;
  for (const { name, event, priority = 1, conditions } of results) {
    const parts = (conditions as Traced).any!;
    const saidOf = (trace: Trace): Said => ({ event: event!.type, priority, trace });
    const ofLine = saidOf(true);
    rules[Number(name)]!.open.forEach(({ when, entry }, at) => {
      const part = parts[at]!;
      if (part.result === true) entry.said = 'parts' in when ? saidOf(traceOf(when, part)) : ofLine;
      else if (part.result === false) entry.said = null;
    });
  }
}

type Traced = { readonly result?: boolean; readonly all?: readonly Traced[]; readonly any?: readonly Traced[] };

/** What the engine found true of a part. */
const traceOf = (part: EnginePart, traced: Traced | undefined): Trace =>
  traced?.result === true && 'parts' in part
    ? part.parts.map((one, i) => traceOf(one, traced[part.join]?.[i]))
    : traced?.result === true;

/** A part in the engine's own shape; nothing but fact, operator and value of a line goes in. */
const inner = (part: EnginePart, numbered: (value: number | string) => string): object =>
  'parts' in part
    ? { [part.join]: part.parts.map((one) => inner(one, numbered)) }
    : { fact: numbered(part.actual), operator: part.operator, value: part.value };

/** The lines of a question that the engine found true, inside groups that it found true. */
export function heldLines(part: EnginePart, trace: Trace): readonly EngineLine[] {
  if (trace === false) return [];
  return 'parts' in part ? part.parts.flatMap((one, i) => heldLines(one, (trace as readonly Trace[])[i]!)) : [part];
}

/** The place for what is said of a question: one for all that compare the same. */
function entryOf(memory: Memory, when: EnginePart): Entry {
  if ('parts' in when) return madeIn(memory.groups, JSON.stringify(when, comparing), newEntry);
  const ofOperator = madeIn(memory.lines, when.operator, newMap<number | string, ByActual>);
  return madeIn(madeIn(ofOperator, when.value, newMap<number | string, Entry>), when.actual, newEntry);
}

/** All of a group that its answer hangs on. */
const comparing = ['join', 'parts', 'actual', 'operator', 'value'];

function madeIn<K, V>(map: Map<K, V>, key: K, make: () => V): V {
  let value = map.get(key);
  if (value === undefined) map.set(key, (value = make()));
  return value;
}

const newMap = <K, V>(): Map<K, V> => new Map();
const newMemory = (): Memory => ({ lines: new Map(), groups: new Map() });
function newEntry(): Entry {
  if (++kept > most) {
    memories.clear();
    kept = 1;
  }
  return { said: undefined, run: 0 };
}

/** Refuses what the engine would take amiss. */
function check(part: EnginePart, name: string): void {
  if ('parts' in part) {
    if (part.parts.length === 0) throw new Error(`${name} has an empty group`);
    for (const one of part.parts) check(one, name);
    return;
  }
  const { fact, actual, operator, value } = part;
  if (actual === undefined) throw new Error(`${name} asks for ${fact}, which is missing`);
  if (typeof actual !== typeof value) throw new Error(`${name} compares ${fact} with another kind of value`);
  if (typeof actual === 'number' && !(Number.isFinite(actual) && Number.isFinite(value)))
    throw new Error(`${name} meets a number that is not finite at ${fact}`);
  if (typeof actual === 'string' && operator !== 'equal' && operator !== 'notEqual')
    throw new Error(`${name} measures the word ${fact}`);
  if (!engineOperators.includes(operator)) throw new Error(`${name} uses the unknown operator ${String(operator)}`);
}
