/** Files of a ruleset: what is left of one of which a part is broken, what it builds on, whom its limits hold. */
import { describe, expect, test } from 'vitest';
import { catalogue } from '../../src/facts/catalogue.js';
import { limitsAskedByPlans } from '../../src/rules/check/asked-by-plans.js';
import { loadRuleset } from '../../src/rules/read/load-ruleset.js';
import { problemsOf, rulesetFrom, rulesText } from './helpers.js';

const heavy = 'id: a/heavy, each: frame, require: { fact: frame.weight_kg, at-most: 8 kg }, otherwise: stop';
const codes = (text: string): readonly string[] => problemsOf(text).map(({ code }) => code).sort();

describe('a file with a broken part', () => {
  test('is told of everything else that is wrong, and of nothing that hangs on the broken part', () => {
    expect(codes(rulesText([`${heavy}, colour: red`, heavy.replace('8 kg', '8 mm')]))).toEqual(['unit-misfit', 'unknown-key']);
    expect(codes(rulesText([heavy.replace('8 kg', '{ limit: w }')], ['w: { source: proposal }', 'x: { value: much, source: proposal }']))).toEqual(['missing', 'not-an-amount']);
    expect(codes(rulesText([heavy]).replace('rules:', 'builds-on: [ 3 ]\nrules:'))).toEqual(['wrong-kind']);
    expect(codes(rulesText([heavy]).replace('rules:', 'builds-on: base\nrules:'))).toEqual(['wrong-kind']);
    expect(codes(rulesText([heavy]).replace('rules:', 'limits: none\nrules:'))).toEqual(['wrong-kind']);
    expect(codes(rulesText([heavy]).replace('rules:', 'points: none\nrules:'))).toEqual(['wrong-kind']);
    expect(codes(rulesText([heavy]).replace('name: Test rules', 'name: [ a ]\ndate: 2026-02-30'))).toEqual(['not-a-day', 'wrong-kind']);
  });
  test('of a later format, by one, is not read; a text where the number belongs is wrong', () => {
    expect(codes(rulesText([heavy]).replace('ruleset: 1', 'ruleset: 2'))).toEqual(['later-format']);
    expect(codes(rulesText([heavy]).replace('ruleset: 1', 'ruleset: 0'))).not.toContain('later-format');
    expect(codes(rulesText([heavy]).replace('ruleset: 1', 'ruleset: 1.5'))).not.toContain('later-format');
  });
  test('builds on what it builds on through others, so that it knows what it says anew', () => {
    const over = (name: string, below: string, kg: string) => `ruleset: 1\nname: ${name}\nbuilds-on: [ ${below} ]\nlimits:\n  w: { value: ${kg} kg, source: proposal }\n`;
    const base = rulesText([heavy.replace('8 kg', '{ limit: w }')], ['w: { value: 8 kg, source: proposal }']);
    const loaded = loadRuleset(new Map([['base.yaml', base], ['mid.yaml', 'ruleset: 1\nname: Mid\nbuilds-on: [ base ]\n'], ['top.yaml', over('Top', 'mid', '7')]]), 'top.yaml');
    expect(loaded).toMatchObject({ ok: true, warnings: [] });
    const beside = loadRuleset(new Map([['base.yaml', base], ['a.yaml', over('A', 'base', '6')], ['b.yaml', over('B', 'base', '5')], ['top.yaml', 'ruleset: 1\nname: Top\nbuilds-on: [ a, b ]\n']]), 'top.yaml');
    expect(beside).toMatchObject({ ok: true, warnings: [{ code: 'overlay-conflict', file: 'b.yaml' }] });
  });
});

describe('limits to which only plans are held that ask for it', () => {
  const fact = catalogue.find(({ meaning, words }) => meaning.startsWith('Whether the plan ') && words?.includes('yes'))!;
  const asking = `id: a/asked, each: ${fact.each}, applies: { fact: ${fact.path}, is: yes }, require: { fact: frame.weight_kg, at-most: { limit: w } }, otherwise: stop`;
  const told = (base: readonly string[], limit: string) => limitsAskedByPlans(rulesetFrom({ 'base.yaml': rulesText(base, ['w: { value: 8 kg, source: proposal }', 'v: { value: 9 kg, source: proposal }']), 'own.yaml': `ruleset: 1\nname: Own\nbuilds-on: [ base ]\nlimits:\n  ${limit}: { value: 7 kg, source: proposal }\n` })).map(({ found, severity }) => [found, severity]);
  const always = asking.replace('a/asked', 'a/always').replace(/applies: \{[^}]*\}, /u, '');
  test('are told where one’s own file sets them, every rule that uses them asks the plan, and some rule does', () => {
    expect(told([asking], 'w')).toHaveLength(1);
    expect(told([asking], 'w')[0]![1]).toBe('warning');
    expect([told([asking, always], 'w'), told([asking], 'v'), told([always], 'w'), told([asking.replace('is: yes', 'is: no')], 'w'), told([asking.replace('is: yes', 'is-not: yes')], 'w')]).toEqual([[], [], [], [], []]);
    expect(limitsAskedByPlans(rulesetFrom(rulesText([asking], ['w: { value: 8 kg, source: proposal }'])))).toEqual([]);
  });
});
