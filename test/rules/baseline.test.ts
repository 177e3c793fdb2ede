import { readFileSync } from 'node:fs';
import { parse } from 'yaml';
import { describe, expect, test } from 'vitest';
import { runExamples } from '../../src/rules/check/examples.js';
import { loadRuleset } from '../../src/rules/read/load-ruleset.js';
import { limitsReadByFacts, type Ruleset } from '../../src/rules/ruleset.js';

const rulesFolder = new URL('../../rules/', import.meta.url);
const read = (file: string): string => readFileSync(new URL(file, rulesFolder), 'utf8');
const sources = new Set((parse(read('sources.yaml')) as { readonly list: readonly { readonly key: string }[] }).list.map(({ key }) => key));

function baseline(): Ruleset {
  const loaded = loadRuleset((name) => (name === 'baseline.yaml' ? read(name) : null), 'baseline.yaml', { sources, examplesRequired: true });
  if (!loaded.ok) throw new Error(JSON.stringify(loaded.problems, null, 1));
  return loaded.value;
}

describe('baseline', () => {
  test('loads with examples and listed sources for every rule, without a warning', () => {
    const loaded = loadRuleset((name) => read(name), 'baseline.yaml', { sources, examplesRequired: true });
    expect(loaded).toMatchObject({ ok: true, warnings: [] });
    expect(baseline().rules.length).toBeGreaterThan(40);
  });

  test('sets the limits that define the chances of warp', () => {
    const { limits } = baseline();
    expect(limitsReadByFacts.filter((name) => !limits.has(name))).toEqual([]);
  });

  const ruleset = baseline();
  test.each(ruleset.rules.map((rule) => rule.id))('%s: its examples are clear, clear at the edge, and not clear', async (id) => {
    const outcomes = await runExamples(ruleset, id);
    expect(outcomes.map(({ example }) => example)).toEqual(expect.arrayContaining(['clear', 'fails']));
    for (const { example, verdict, say } of outcomes) {
      if (example === 'fails') expect(['caution', 'stop'], say).toContain(verdict);
      else expect(verdict, say).toBe('clear');
    }
  });
});
