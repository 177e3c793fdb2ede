// What the shipped rules make of their own examples, and one rule of two that are asked, where the rule engine is bent in one way: run as a thread, which has
// modules and a memory of its own. Says the verdicts.
import { readFileSync } from 'node:fs';
import { parentPort, workerData } from 'node:worker_threads';
import engine from 'json-rules-engine';
import { runExamples } from '../../dist/lib/rules/check/examples.js';
import { evaluateRules } from '../../dist/lib/rules/evaluate.js';
import { loadRuleset } from '../../dist/lib/rules/read/load-ruleset.js';

const exchanged = { clear: 'stop', stop: 'clear', caution: 'clear' };
const ways = {
  'nothing holds': ({ results, failureResults, ...rest }) => ({ ...rest, results: [], failureResults: [...results, ...failureResults] }),
  'other events, priorities upside down': (ran) => {
    for (const result of ran.results) {
      result.event.type = exchanged[result.event.type] ?? result.event.type;
      result.priority = 9 - (result.priority ?? 1);
    }
    return ran;
  },
};
const { run } = engine.Engine.prototype;
engine.Engine.prototype.run = async function (...given) {
  return ways[workerData.way](await run.apply(this, given));
};

const load = (text) => {
  const loaded = loadRuleset(new Map([['own.yaml', text]]), 'own.yaml');
  if (!loaded.ok) throw new Error(JSON.stringify(loaded.problems));
  return loaded.value;
};
const baseline = load(readFileSync(new URL('../../rules/baseline.yaml', import.meta.url), 'utf8'));
const examples = (await Promise.all(baseline.rules.map(({ id }) => runExamples(baseline, id)))).flat();
const { findings } = await evaluateRules(load(workerData.rules), workerData.facts);
parentPort.postMessage({ examples, verdict: findings.find(({ about }) => about === 'top').verdict });
