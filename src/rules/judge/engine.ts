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
 * - it hashes the name of every fact, and copies the conditions of every rule at each run: facts go by numbers and
 *   without a cache, and questions that compare the same values in the same way are put to it once, and not again for
 *   the next plan as long as its answer is remembered.
 * So this file refuses all of these itself, by throwing: they are bugs of the caller, never of the person who wrote a
 * rule.
 */

export const engineOperators = [
  'lessThanInclusive',
  'greaterThanInclusive',
  'greaterThan',
  'lessThan',
  'equal',
  'notEqual',
] as const;
export type EngineOperator = (typeof engineOperators)[number];

/** One comparison of a flat fact with a constant. */
export interface EngineLine {
  readonly fact: string;
  readonly operator: EngineOperator;
  readonly value: number | string;
}

/** Comparisons and further groups, of which all or any must hold. */
export interface EngineGroup {
  readonly join: 'all' | 'any';
  readonly parts: readonly EnginePart[];
}

export type EnginePart = EngineLine | EngineGroup;

/**
 * A rule for the engine: when it holds, its event is what becomes of its case, unless one of a higher priority holds
 * too.
 */
export interface Question {
  readonly about: string;
  readonly event: string;
  readonly priority: number;
  readonly when: EngineGroup;
}

/** What became of a case: the event of the highest priority, and the lines of its question that made it hold. */
export interface Answer {
  readonly event: string;
  readonly held: readonly EngineLine[];
}

type EngineModule = typeof import('json-rules-engine');

/** The engine is CommonJS: some loaders put its exports only under `default`. */
async function importEngine(): Promise<EngineModule> {
  const module = (await import('json-rules-engine')) as EngineModule & { readonly default?: EngineModule };
  return module.Engine === undefined ? (module.default as EngineModule) : module;
}
/** Imported once, and only when there is something to judge. */
let engineImport: Promise<EngineModule> | null = null;

/** What the engine found true of a group, part by part. */
type Trace = readonly (boolean | Trace)[];

/** What the engine said of a question: the event it fired and its priority; null where it did not hold. */
type Said = { readonly event: string; readonly priority: number; readonly trace: Trace } | null;

/** What it said before, by all that the question compares. */
const said = new Map<string, Said>();
/**
 * Kept at most; all are forgotten when more come. Of a hundred plans of one kind each puts 52 questions to the engine
 * so, 60 with 300 kept, and no fewer with 4,000, which take 1.6 MB more.
 */
const most = 1000;

/**
 * Decides every case in one run of the engine, or in none where it was asked all of it before: case → what became of
 * it. A case of which no question holds is not among the answers.
 * Throws when a group is empty, when two questions of a case have one priority, or when a fact asked for is missing or
 * not finite.
 */
export async function decide(
  questions: readonly Question[],
  facts: ReadonlyMap<string, number | string>,
): Promise<ReadonlyMap<string, Answer>> {
  const priorities = new Map<string, number[]>();
  const fresh = new Map<string, Question>();
  const known = new Map<string, Said>();
  const keys: string[] = [];
  for (const one of questions) {
    const { about, event, priority, when } = one;
    const others = priorities.get(about);
    if (others === undefined) priorities.set(about, [priority]);
    else if (others.includes(priority)) throw new Error(`${about} was asked twice with priority ${priority}`);
    else others.push(priority);
    const key = `${priority} ${event} ${settledKey(when, facts, one)}`;
    keys.push(key);
    const before = said.get(key);
    if (before === undefined) fresh.set(key, one);
    else known.set(key, before);
  }
  if (fresh.size > 0) for (const [key, one] of await run(fresh, facts)) known.set(key, one);
  const answers = new Map<string, Answer & { readonly priority: number }>();
  for (let i = 0; i < keys.length; i++) {
    const { about, when } = questions[i]!;
    const one = known.get(keys[i]!)!;
    if (one === null) continue;
    const before = answers.get(about);
    if (before === undefined || one.priority > before.priority)
      answers.set(about, { event: one.event, priority: one.priority, held: heldLines(when, one.trace, []) });
  }
  return answers;
}

/** Puts questions to the engine, by their keys, and remembers what it says. */
async function run(
  questions: ReadonlyMap<string, Question>,
  facts: ReadonlyMap<string, number | string>,
): Promise<ReadonlyMap<string, Said>> {
  engineImport ??= importEngine();
  const { Engine, Fact } = await engineImport;
  const engine = new Engine();
  const given = new Map<string, string>();
  const numbered = (fact: string): string => {
    let number = given.get(fact);
    if (number === undefined) {
      number = String(given.size);
      given.set(fact, number);
      engine.addFact(new Fact(number, facts.get(fact), { cache: false }));
    }
    return number;
  };
  for (const [name, { event, priority, when }] of questions)
    engine.addRule({ name, priority, conditions: inner(when, numbered) as never, event: { type: event } });
  const { results, failureResults } = await engine.run();
  const found = new Map<string, Said>();
  for (const { name } of failureResults) found.set(name, null);
  for (const { name, event, priority = 1, conditions } of results)
    found.set(name, { event: event!.type, priority, trace: traceOf(questions.get(name)!.when, conditions) });
  if (found.size !== questions.size)
    throw new Error(`the engine answered ${found.size} of ${questions.size} questions`);
  if (said.size + found.size > most) said.clear();
  if (found.size <= most) for (const [key, one] of found) said.set(key, one);
  return found;
}

type Traced = { readonly result?: boolean; readonly all?: readonly Traced[]; readonly any?: readonly Traced[] };

/** What the engine found of each part of a group that holds. */
function traceOf(group: EngineGroup, traced: unknown): Trace {
  const inside = (traced as Traced)[group.join] ?? [];
  return group.parts.map((part, i) =>
    inside[i]?.result !== true ? false : 'parts' in part ? traceOf(part, inside[i]) : true,
  );
}

/** A group in the engine's own shape; nothing but fact, operator and value of a line goes in. */
function inner({ join, parts }: EngineGroup, numbered: (fact: string) => string): object {
  return {
    [join]: parts.map((part) =>
      'parts' in part
        ? inner(part, numbered)
        : { fact: numbered(part.fact), operator: part.operator, value: part.value },
    ),
  };
}

/** The lines that the engine found true, inside groups that it found true, added to `held`. */
function heldLines({ parts }: EngineGroup, trace: Trace, held: EngineLine[]): readonly EngineLine[] {
  for (let i = 0; i < parts.length; i++) {
    const [part, here] = [parts[i]!, trace[i]!];
    if (here === false) continue;
    if ('parts' in part) heldLines(part, here as Trace, held);
    else held.push(part);
  }
  return held;
}

/** What a group compares, and how: groups of one key have one answer. Throws on what the engine would take amiss. */
function settledKey(group: EngineGroup, facts: ReadonlyMap<string, number | string>, asked: Question): string {
  if (group.parts.length === 0) throw new Error(`${nameOf(asked)} has an empty group`);
  let key = group.join === 'all' ? 'all (' : 'any (';
  for (const part of group.parts) {
    if ('parts' in part) {
      key += settledKey(part, facts, asked);
      continue;
    }
    const { fact, operator, value } = part;
    const known = facts.get(fact);
    if (known === undefined) throw new Error(`${nameOf(asked)} asks for ${fact}, which is missing`);
    if (typeof known !== typeof value) throw new Error(`${nameOf(asked)} compares ${fact} with another kind of value`);
    if (typeof known === 'number' && !(Number.isFinite(known) && Number.isFinite(value)))
      throw new Error(`${nameOf(asked)} meets a number that is not finite at ${fact}`);
    if (typeof known === 'string' && operator !== 'equal' && operator !== 'notEqual')
      throw new Error(`${nameOf(asked)} measures the word ${fact}`);
    if (!engineOperators.includes(operator))
      throw new Error(`${nameOf(asked)} uses the unknown operator ${String(operator)}`);
    key +=
      typeof known === 'number' ? `${known} ${operator} ${value};` : `${JSON.stringify([known, operator, value])};`;
  }
  return `${key})`;
}

const nameOf = ({ event, about }: Question): string => `${event} of ${about}`;
