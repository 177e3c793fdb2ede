import { readFileSync } from 'node:fs';
import type { Engine as RuleEngine } from 'json-rules-engine';
import { describe, expect, test, vi } from 'vitest';
import type { ExampleOutcome } from '../../src/rules/check/examples.js';
import { fact, rulesetFrom } from './helpers.js';

/**
 * Why this is here: a rule engine that only nods at what was worked out before it could be taken out, or go wrong, and
 * nobody would see. So the engine is bent here, in one way after the other, and what the shipped rules make of their own
 * examples has to bend with it: each condition, each event and each priority goes through the engine.
 */
type Ran = Awaited<ReturnType<RuleEngine['run']>>;
const bent = vi.hoisted(() => ({ by: (ran: unknown): unknown => ran }));
vi.mock('json-rules-engine', async (original) => {
  const actual = await original<typeof import('json-rules-engine')>();
  return {
    ...actual,
    Engine: class extends actual.Engine {
      override async run(...given: Parameters<RuleEngine['run']>): Promise<Ran> {
        return bent.by(await super.run(...given)) as Ran;
      }
    },
  };
});

/** What the rules say with an engine that is bent: what it remembers of an engine before goes with the modules. */
async function withEngine<T>(bend: (ran: Ran) => Ran, ask: (rules: typeof import('../../src/rules/evaluate.js')) => Promise<T>): Promise<T> {
  vi.resetModules();
  bent.by = bend as (ran: unknown) => unknown;
  return ask(await import('../../src/rules/evaluate.js'));
}
const baseline = rulesetFrom({ 'baseline.yaml': readFileSync(new URL('../../rules/baseline.yaml', import.meta.url), 'utf8') });
const examples = (bend: (ran: Ran) => Ran): Promise<readonly ExampleOutcome[]> =>
  withEngine(bend, async () => {
    const { runExamples } = await import('../../src/rules/check/examples.js');
    return (await Promise.all(baseline.rules.map(({ id }) => runExamples(baseline, id)))).flat();
  });

const honest = (ran: Ran): Ran => ran;
const nothingHolds = ({ results, failureResults, ...rest }: Ran): Ran => ({ ...rest, results: [], failureResults: [...results, ...failureResults] });
type Group = { result?: boolean; all?: Group[]; any?: Group[] };
const allTrue = (group: Group): void => {
  group.result = true;
  for (const part of [...(group.all ?? []), ...(group.any ?? [])]) allTrue(part);
};
const everythingHolds = ({ results, failureResults, ...rest }: Ran): Ran => {
  const all = [...results, ...failureResults];
  all.forEach(({ conditions }) => allTrue(conditions as unknown as Group));
  return { ...rest, results: all, failureResults: [] };
};
const exchanged: Readonly<Record<string, string>> = { clear: 'stop', stop: 'clear', caution: 'clear' };
const otherEvents = (ran: Ran): Ran => {
  for (const { event } of ran.results) if (event !== undefined) event.type = exchanged[event.type] ?? event.type;
  return ran;
};

describe('the rule engine decides: bent, it bends the verdicts', () => {
  test('conditions and events: far more than six comparisons of the shipped rules change', async () => {
    const before = await examples(honest);
    expect(before.length).toBeGreaterThan(150);
    expect(before.filter(({ ok }) => !ok)).toEqual([]);
    const changed = (after: readonly ExampleOutcome[]): number => before.filter(({ verdict }, i) => verdict !== after[i]!.verdict).length;
    // An engine that never says yes clears nothing and stops nothing.
    const never = await examples(nothingHolds);
    expect(never.filter(({ verdict }) => verdict !== 'unknown')).toEqual([]);
    expect(changed(never)).toBe(before.length);
    // One that always says yes finds fault with nothing.
    const always = await examples(everythingHolds);
    expect(always.filter(({ verdict }) => verdict === 'caution' || verdict === 'stop')).toEqual([]);
    expect(changed(always)).toBeGreaterThan(50);
    // What becomes of a case is the event that it fires.
    expect(changed(await examples(otherEvents))).toBe(before.length);
  });

  test('priorities: of two questions that hold, the one the engine puts first', async () => {
    const rules = rulesetFrom(`ruleset: 1
name: Two ways to be asked
rules:
  - { id: a, each: bar, applies: { any: [ { fact: bar.span_mm, above: 300 mm }, { fact: bar.roll_mrad, above: 1 deg } ] }, require: { fact: bar.dish_mm, at-most: 2 mm }, otherwise: stop, say: x, do: [ y ], source: proposal }
`);
    const facts = [fact('bar.span_mm', 'top', 900), fact('bar.roll_mrad', 'top', null, 'Not read.'), fact('bar.dish_mm', 'top', 3)];
    const verdict = (bend: (ran: Ran) => Ran): Promise<string> => withEngine(bend, async ({ evaluateRules }) => (await evaluateRules(rules, facts)).findings.find(({ about }) => about === 'top')!.verdict);
    const upsideDown = (ran: Ran): Ran => {
      for (const result of ran.results) result.priority = 9 - (result.priority ?? 1);
      return ran;
    };
    expect(await verdict(honest)).toBe('stop');
    expect(await verdict(upsideDown)).toBe('unknown');
  });
});
