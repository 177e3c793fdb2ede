import { describe, expect, it } from 'vitest';
import { loadRuleset } from '../../src/rules/read/load-ruleset.js';
import { evaluateRules } from '../../src/rules/evaluate.js';
import { limitValue } from '../../src/rules/limit-value.js';
import { rulesIn } from '../../src/rules/in-system.js';
import type { Fact } from '../../src/facts/fact.js';
import { fileText } from '../plan/shelf-for-tests.js';

const load = (limits: string) => loadRuleset(() => `ruleset: 1
name: Twins
limits:
  ${limits}
rules:
  - { id: cloth/staples, each: cloth, require: { fact: cloth.staple_spacing_mm, at-most: { limit: gap } }, otherwise: caution,
      say: "Every {actual}, at most {limit}, that is {limits.gap}.", do: [ "Closer." ], source: practice }
`, 'twins.yaml');

const loaded = (limits: string) => {
  const read = load(limits);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
};

const spaced = (mm: number): Fact[] => [{ path: 'cloth.staple_spacing_mm', about: 'cloth', value: mm, unit: 'mm' }];

describe('a limit with a shop twin', () => {
  const ruleset = loaded('gap: { value: 75 mm, inches: 3 in, source: practice }');

  it('holds a plan to the amount of its own system, and prints that one', async () => {
    // 75.9 mm lies between 75 mm and 3 in = 76.2 mm
    const metric = (await evaluateRules(ruleset, spaced(75.9), { units: 'metric' })).findings[0];
    const inch = (await evaluateRules(ruleset, spaced(75.9), { units: 'inch' })).findings[0];
    expect([metric?.verdict, metric?.limit]).toEqual(['caution', 75]);
    expect([inch?.verdict, inch?.limit]).toEqual(['clear', 76.2]);
    expect(inch?.say).toBe('Every 3 in, at most 3 in, that is 3 in.'.replace('Every 3 in', 'Every just under 3 in'));
    expect(metric?.say).toContain('at most 75 mm, that is 75 mm.');
  });

  it('is read where facts ask for limits too, and is the same when asked twice', () => {
    const inches = rulesIn(ruleset, 'inch');
    expect(limitValue(inches, 'gap', () => null)?.value).toBeCloseTo(76.2, 9);
    expect(limitValue(rulesIn(inches, 'inch'), 'gap', () => null)?.value).toBeCloseTo(76.2, 9);
    expect(rulesIn(ruleset, 'metric')).toBe(ruleset);
  });

  it('a twin that does not fit the fact is refused', () => {
    for (const twin of ['3 N', 'wide', '3']) {
      const read = load(`gap: { value: 75 mm, inches: ${twin}, source: practice }`);
      expect(read.ok, twin).toBe(false);
    }
  });
});

it('every length among the baseline’s limits has its twin', () => {
  const lines = fileText('rules/baseline.yaml').split('\n').filter((line) => /^ {2}[a-z-]+: \{.*\d (mm|cm|m)\b/u.test(line));
  expect(lines.length).toBeGreaterThan(10);
  expect(lines.filter((line) => !line.includes('inches:'))).toEqual([]);
  expect(fileText('rules/baseline.yaml')).not.toMatch(/(above|below|at-most|at-least): [1-9][\d.]* mm/u);
});
