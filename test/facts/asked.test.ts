import { expect, test } from 'vitest';
import { catalogue } from '../../src/facts/catalogue.js';
import type { FactSpec } from '../../src/facts/fact.js';
import { evaluateRules } from '../../src/rules/evaluate.js';
import { auditOf, everything, inches, smallest } from '../report/audits.js';
import { rulesetFrom } from '../rules/helpers.js';

/** What a teacher would write to ask for at most so much, or for the first word, of any fact there is. */
function requirement({ unit, words }: FactSpec): string {
  if (unit === 'word') return `is: ${words?.[0] ?? 'strip-19x38'}`;
  if (unit === 'chance') return 'at-most: 100 %';
  if (unit === 'share' || unit === 'ratio' || unit === 'count' || unit === 'cost') return 'at-most: 1000000';
  return `at-most: ${unit === 'pct' ? '1000 pct' : `1000000 ${unit}`}`;
}

/** Facts of one value an element; what is split by causes is for reading. */
const asked = catalogue.filter(({ path }) => path !== 'warp.cause_share');

/** A ruleset of one’s own that asks of every fact in the catalogue. */
const asksAll = rulesetFrom([
  'ruleset: 1', 'name: Asks all', 'rules:',
  ...asked.map((spec, i) => `  - { id: all/r${i}, each: ${spec.each}, require: { fact: ${spec.path}, ${requirement(spec)} }, otherwise: caution, say: "{about}: {actual}", do: [ "Look." ], source: proposal }`),
  '',
].join('\n'));

test('a ruleset of one’s own can ask for any fact, those too that the shipped rules leave alone, and on some plan each is known', async () => {
  const known = new Set<string>();
  const found = new Set<string>();
  for (const text of [everything, inches, smallest]) {
    const { facts, plan } = await auditOf(text);
    const { findings } = await evaluateRules(asksAll, facts, { units: plan.units });
    for (const { fact, verdict, actual } of findings) {
      found.add(fact);
      if (verdict === 'clear' || verdict === 'caution') known.add(fact);
      expect(verdict === 'unknown', `${fact} of ${plan.name}`).toBe(actual === null);
    }
  }
  const missing = (in_: ReadonlySet<string>): readonly string[] => asked.map(({ path }) => path as string).filter((path) => !in_.has(path));
  expect({ neverAsked: missing(found), neverKnown: missing(known) }).toEqual({ neverAsked: [], neverKnown: [] });
});
