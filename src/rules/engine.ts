/**
 * The only door to json-rules-engine. Everything that passes has been settled before: known facts, finite numbers,
 * flat names. The engine's weak points, each pinned in `test/rules/engine.test.ts`:
 * - a NaN or undefined fact makes any comparison false, so a rule written as "too big" would pass;
 * - numeric strings are taken for numbers;
 * - a missing fact throws and loses the whole run, unless undefined facts are allowed: then it is just false;
 * - an empty `all` and an empty `any` both hold;
 * - an unknown operator is accepted when added and fails only at run;
 * - `path` is evaluated by a JSONPath library, and a `value` that is an object may read another fact;
 * - `run()` is always asynchronous, and its handlers may be called in any order: results are read from its return value.
 * So this file refuses all of these itself, by throwing: they are bugs of the caller, never of the person who wrote a rule.
 */

export const engineOperators = ['lessThanInclusive', 'greaterThanInclusive', 'greaterThan', 'lessThan', 'equal', 'notEqual'] as const;
export type EngineOperator = (typeof engineOperators)[number];

/** One comparison of a flat fact with a constant. */
export interface EngineLine {
  readonly fact: string;
  readonly operator: EngineOperator;
  readonly value: number | string;
}

/** A named question of one or more lines. */
export interface Question {
  readonly name: string;
  readonly join: 'all' | 'any';
  readonly lines: readonly EngineLine[];
}

type EngineModule = typeof import('json-rules-engine');

/** The engine is CommonJS: some loaders put its exports only under `default`. */
async function importEngine(): Promise<EngineModule['Engine']> {
  const module = (await import('json-rules-engine')) as EngineModule & { readonly default?: EngineModule };
  return module.Engine ?? (module.default as EngineModule).Engine;
}
/** Imported once, and only when there is something to judge. */
let engineImport: Promise<EngineModule['Engine']> | null = null;

/**
 * Answers every question in one run of the engine: name → whether it holds.
 * Throws when a question is empty, repeated, or asks for a fact that is missing or not finite.
 */
export async function answer(questions: readonly Question[], facts: ReadonlyMap<string, number | string>): Promise<ReadonlyMap<string, boolean>> {
  const answers = new Map<string, boolean>();
  if (questions.length === 0) return answers;
  engineImport ??= importEngine();
  const Engine = await engineImport;
  const engine = new Engine();
  const names = new Set<string>();
  for (const question of questions) {
    refuseUnsettled(question, facts, names);
    const lines = question.lines.map(({ fact, operator, value }) => ({ fact, operator, value }));
    engine.addRule({ name: question.name, conditions: question.join === 'all' ? { all: lines } : { any: lines }, event: { type: 'answered' } });
  }
  const outcome = await engine.run(Object.fromEntries(facts));
  for (const { name, result } of [...outcome.results, ...outcome.failureResults]) answers.set(name, result === true);
  if (answers.size !== questions.length) throw new Error(`the engine answered ${answers.size} of ${questions.length} questions`);
  return answers;
}

function refuseUnsettled(question: Question, facts: ReadonlyMap<string, number | string>, names: Set<string>): void {
  const { name, lines } = question;
  if (names.has(name)) throw new Error(`question ${name} was asked twice`);
  names.add(name);
  if (lines.length === 0) throw new Error(`question ${name} is empty`);
  for (const { fact, operator, value } of lines) {
    const known = facts.get(fact);
    if (known === undefined) throw new Error(`question ${name} asks for ${fact}, which is missing`);
    if (typeof known !== typeof value) throw new Error(`question ${name} compares ${fact} with another kind of value`);
    if (typeof known === 'number' && !(Number.isFinite(known) && Number.isFinite(value))) throw new Error(`question ${name} meets a number that is not finite at ${fact}`);
    if (typeof known === 'string' && operator !== 'equal' && operator !== 'notEqual') throw new Error(`question ${name} measures the word ${fact}`);
    if (!engineOperators.includes(operator)) throw new Error(`question ${name} uses the unknown operator ${String(operator)}`);
  }
}
