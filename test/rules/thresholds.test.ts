import { describe, expect, test } from 'vitest';
import type { FactPath } from '../../src/facts/fact.js';
import { evaluateRules } from '../../src/rules/evaluate.js';
import { limitValue } from '../../src/rules/limit-value.js';
import { fact, ofBars, rulesetFrom, rulesText } from './helpers.js';

const verdict = async (rule: string, limits: readonly string[], ...facts: readonly (readonly [path: FactPath, about: string, value: number | null])[]): Promise<string | undefined> => {
  const { findings } = await evaluateRules(rulesetFrom(rulesText([rule], limits)), facts.map(([path, about, value]) => fact(path, about, value)));
  return findings[0]?.verdict;
};

describe('what would make it a stop must be known too', () => {
  const rule = 'id: a, each: bar, require: { fact: bar.dish_mm, at-most: 2 mm }, otherwise: { stop: { limit: most } }';
  const limits = ['most: { value: 1/100, of: bar.span_mm, source: proposal }'];
  test('a bar within its requirement is unknown, not clear, while the stop beyond it cannot be worked out', async () => {
    expect(await verdict(rule, limits, ['bar.dish_mm', 'top', 1], ['bar.span_mm', 'top', 900])).toBe('clear');
    expect(await verdict(rule, limits, ['bar.dish_mm', 'top', 1], ['bar.span_mm', 'top', null])).toBe('unknown');
    expect(await verdict(rule, limits, ['bar.dish_mm', 'top', 3], ['bar.span_mm', 'top', null])).toBe('unknown');
  });
  test('the reason names the fact that is missing', async () => {
    const { findings } = await evaluateRules(rulesetFrom(rulesText([rule], limits)), [fact('bar.dish_mm', 'top', 1), fact('bar.span_mm', 'top', null, 'Nobody measured it.')]);
    expect(findings[0]!.say).toContain('Nobody measured it.');
  });
  test('a requirement met on the wrong side of a stop is a stop', async () => {
    expect(await verdict(rule, limits, ['bar.dish_mm', 'top', 1], ['bar.span_mm', 'top', 50])).toBe('stop');
  });
});

describe('signed facts', () => {
  const asked = (compare: string, value: number) => verdict(`id: a, each: bar, require: { fact: bar.inward_bow_mm, ${compare}: 3 mm }, otherwise: caution`, [], ['bar.inward_bow_mm', 'top', value]);
  test('“below” and “at most” look at the size, whichever way the bar bows, and differ at the limit alone', async () => {
    expect(await Promise.all([-2.9, 2.9, -3.1, 3.1].map((mm) => asked('below', mm)))).toEqual(['clear', 'clear', 'caution', 'caution']);
    expect(await Promise.all([-3, 3].map((mm) => asked('below', mm)))).toEqual(['caution', 'caution']);
    expect(await Promise.all([-3, 3, -3.1].map((mm) => asked('at-most', mm)))).toEqual(['clear', 'clear', 'caution']);
  });
  test('“above” and “at least” look at the direction', async () => {
    expect(await Promise.all([-9, 3, 3.1].map((mm) => asked('above', mm)))).toEqual(['caution', 'caution', 'clear']);
    expect(await Promise.all([-9, 3].map((mm) => asked('at-least', mm)))).toEqual(['caution', 'clear']);
  });
  test('a share of a signed fact is a share of its size, before the rules and in them', async () => {
    const ruleset = rulesetFrom(rulesText(['id: a, each: bar, require: { fact: bar.dish_mm, at-most: { limit: part } }, otherwise: caution'], ['part: { value: 1/4, of: bar.inward_bow_mm, source: proposal }']));
    expect(limitValue(ruleset, 'part', () => -6)).toEqual({ value: 1.5 });
    expect(limitValue(ruleset, 'part', () => 6)).toEqual({ value: 1.5 });
    const { findings } = await evaluateRules(ruleset, [...ofBars('bar.dish_mm', { top: 1.4, bottom: 1.6, left: 0, right: 0 }), ...ofBars('bar.inward_bow_mm', { top: -6, bottom: -6, left: 6, right: 6 })]);
    expect(findings.map(({ verdict: one, limit }) => [one, limit])).toEqual([['clear', 1.5], ['caution', 1.5], ['clear', 1.5], ['clear', 1.5]]);
  });
});
