import { readFileSync } from 'node:fs';
import { Worker } from 'node:worker_threads';
import { expect, test } from 'vitest';
import { runExamples, type ExampleOutcome } from '../../src/rules/check/examples.js';
import { evaluateRules } from '../../src/rules/evaluate.js';
import { fact, rulesetFrom } from './helpers.js';

/**
 * Why this is here: a rule engine that only nods at what was worked out before it could be taken out, or go wrong, and
 * nobody would see. So the engine is bent, in one way after the other, and what the shipped rules make of their own
 * examples has to bend with it: each condition, each event and each priority goes through the engine.
 */
type Way = 'nothing holds' | 'other events, priorities upside down';
interface Said {
  readonly examples: readonly ExampleOutcome[];
  readonly verdict: string;
}

/** A rule of which it is not known whether it is asked, and is: both ways hold, and the engine puts one of them first. */
const rules = `ruleset: 1
name: Two ways to be asked
rules:
  - id: a
    each: bar
    applies: { any: [ { fact: bar.span_mm, above: 300 mm }, { fact: bar.roll_mrad, above: 1 deg } ] }
    require: { fact: bar.dish_mm, at-most: 2 mm }
    otherwise: stop
    say: x
    do: [ y ]
    source: proposal
`;
const facts = [fact('bar.span_mm', 'top', 900), fact('bar.roll_mrad', 'top', null, 'Not read.'), fact('bar.dish_mm', 'top', 3)];
const bent = (way: Way): Promise<Said> =>
  new Promise((resolve, reject) => {
    new Worker(new URL('bent-engine.mjs', import.meta.url), { workerData: { way, rules, facts } }).once('message', resolve).once('error', reject);
  });

test('the rule engine decides: bent, it bends far more than six comparisons of the shipped rules', async () => {
  const baseline = rulesetFrom({ 'baseline.yaml': readFileSync(new URL('../../rules/baseline.yaml', import.meta.url), 'utf8') });
  const [never, other] = await Promise.all([bent('nothing holds'), bent('other events, priorities upside down')]);
  const honest = (await Promise.all(baseline.rules.map(({ id }) => runExamples(baseline, id)))).flat();
  const changed = (after: Said): number => honest.filter(({ verdict }, i) => verdict !== after.examples[i]!.verdict).length;
  expect(honest.length).toBeGreaterThan(150);
  // An engine that never says yes clears nothing and stops nothing.
  expect(never.examples.filter(({ verdict }) => verdict !== 'unknown')).toEqual([]);
  expect(changed(never)).toBe(honest.length);
  // What becomes of a case is the event that it fires.
  expect(changed(other)).toBe(honest.length);
  // Of two that hold it is the one that the engine puts first.
  const two = await evaluateRules(rulesetFrom(rules), facts);
  expect(two.findings.find(({ about }) => about === 'top')!.verdict).toBe('stop');
  expect(other.verdict).toBe('unknown');
});
