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
 *   without a cache, and questions that compare the same values in the same way are put to it once.
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

/**
 * Decides every case in one run of the engine: case → what became of it. A case of which no question holds is not among
 * the answers.
 * Throws when a group is empty, when two questions of a case have one priority, or when a fact asked for is missing or
 * not finite.
 */
export async function decide(
  questions: readonly Question[],
  facts: ReadonlyMap<string, number | string>,
): Promise<ReadonlyMap<string, Answer>> {
  const answers = new Map<string, Answer & { readonly priority: number }>();
  if (questions.length === 0) return answers;
  engineImport ??= importEngine();
  const { Engine, Fact } = await engineImport;
  const engine = new Engine();
  const names = new Set<string>();
  const askedOnce = new Map<string, Question[]>();
  const given = new Map<string, number>();
  const numbered = (fact: string): string => {
    const number = given.get(fact) ?? given.size;
    given.set(fact, number);
    return String(number);
  };
  for (const question of questions) {
    const { about, event, priority, when } = question;
    const name = `${about}, ${priority}`;
    if (names.has(name)) throw new Error(`${about} was asked twice with priority ${priority}`);
    names.add(name);
    const key = `${priority} ${event} ${settledKey(when, facts, `${event} of ${about}`)}`;
    const same = askedOnce.get(key);
    if (same !== undefined) {
      same.push(question);
      continue;
    }
    askedOnce.set(key, [question]);
    engine.addRule({ name: key, priority, conditions: inner(when, numbered) as never, event: { type: event } });
  }
  for (const [fact, number] of given) engine.addFact(new Fact(String(number), facts.get(fact), { cache: false }));
  const outcome = await engine.run();
  const run = outcome.results.length + outcome.failureResults.length;
  if (run !== askedOnce.size) throw new Error(`the engine answered ${run} of ${askedOnce.size} questions`);
  for (const { name, event, priority = 1, conditions } of outcome.results)
    for (const { about, when } of askedOnce.get(name)!) {
      const known = answers.get(about);
      if (known === undefined || priority > known.priority)
        answers.set(about, { event: event?.type ?? '', priority, held: heldLines(when, conditions) });
    }
  return answers;
}

type Traced = { readonly result?: boolean; readonly all?: readonly Traced[]; readonly any?: readonly Traced[] };

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

/** The lines that the engine found true, inside groups that it found true. */
function heldLines(group: EngineGroup, traced: unknown): readonly EngineLine[] {
  const inside = (traced as Traced)[group.join] ?? [];
  return group.parts.flatMap((part, i) =>
    inside[i]?.result !== true ? [] : 'parts' in part ? heldLines(part, inside[i]) : [part],
  );
}

/** What a group compares, and how: groups of one key have one answer. Throws on what the engine would take amiss. */
function settledKey(group: EngineGroup, facts: ReadonlyMap<string, number | string>, name: string): string {
  if (group.parts.length === 0) throw new Error(`${name} has an empty group`);
  let key = `${group.join} (`;
  for (const part of group.parts) {
    if ('parts' in part) {
      key += settledKey(part, facts, name);
      continue;
    }
    const { fact, operator, value } = part;
    const known = facts.get(fact);
    if (known === undefined) throw new Error(`${name} asks for ${fact}, which is missing`);
    if (typeof known !== typeof value) throw new Error(`${name} compares ${fact} with another kind of value`);
    if (typeof known === 'number' && !(Number.isFinite(known) && Number.isFinite(value)))
      throw new Error(`${name} meets a number that is not finite at ${fact}`);
    if (typeof known === 'string' && operator !== 'equal' && operator !== 'notEqual')
      throw new Error(`${name} measures the word ${fact}`);
    if (!engineOperators.includes(operator)) throw new Error(`${name} uses the unknown operator ${String(operator)}`);
    key +=
      typeof known === 'number' ? `${known} ${operator} ${value};` : `${JSON.stringify([known, operator, value])};`;
  }
  return `${key})`;
}
