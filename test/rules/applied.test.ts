import { describe, expect, test } from 'vitest';
import { appliedOf } from '../../src/rules/say/applied.js';
import type { Ruleset } from '../../src/rules/ruleset.js';
import { problemsOf, rulesetFrom } from './helpers.js';

const base = `ruleset: 1
name: Base
limits:
  most-dish: { value: 1/300, of: bar.span_mm, source: proposal }
  reserve: { stop: 1.5, caution: 2.5, source: proposal }
  asked-from: { value: 500 mm, source: proposal }
  idle: { value: 5 mm, source: proposal }
rules:
  - { id: a/dish, each: bar, applies: { fact: bar.span_mm, above: { limit: asked-from } }, require: { fact: bar.dish_mm, at-most: { limit: most-dish } }, otherwise: caution, say: x, do: [ y ], source: proposal }
  - { id: a/reserve, each: frame, require: { fact: frame.twist_reserve, at-least: { limit: reserve } }, otherwise: by-limit, say: x, do: [ y ], source: proposal }
  - { id: a/lift, each: frame, require: { fact: frame.lift_people, at-most: 2 }, otherwise: stop, say: x, do: [ y ], source: proposal }
`;
const baseline = rulesetFrom({ 'base.yaml': base });
const own = (text: string): Ruleset => rulesetFrom({ 'base.yaml': base, 'own.yaml': `ruleset: 1\nname: Own\nbuilds-on: [ base ]\n${text}` });
const limits = (...lines: readonly string[]): Ruleset => own(`limits:\n${lines.map((line) => `  ${line}\n`).join('')}`);
const loosened = (ruleset: Ruleset) => appliedOf(ruleset, baseline).loosened.map(({ limit, surely }) => [limit, surely]);

describe('what a ruleset relaxes', () => {
  test.each<[what: string, limit: string, told: readonly (readonly [string, boolean])[]]>([
    ['an upper bound raised', 'most-dish: { value: 1/250, of: bar.span_mm, source: proposal }', [['most-dish', true]]],
    ['an upper bound lowered', 'most-dish: { value: 1/350, of: bar.span_mm, source: proposal }', []],
    ['the same said in other digits', 'most-dish: { value: 2/600, of: bar.span_mm, source: proposal }', []],
    ['a share of another length', 'most-dish: { value: 1/300, of: frame.shorter_side_mm, source: proposal }', [['most-dish', false]]],
    ['an amount instead of a share', 'most-dish: { value: 1 mm, source: proposal }', [['most-dish', false]]],
    ['a lower bound lowered, the caution only', 'reserve: { stop: 1.5, caution: 2.4, source: proposal }', [['reserve', true]]],
    ['a lower bound raised', 'reserve: { stop: 1.6, caution: 2.6, source: proposal }', []],
    ['a stop lowered and a caution raised', 'reserve: { stop: 1.4, caution: 3, source: proposal }', [['reserve', true]]],
    ['a rule asked of fewer bars', 'asked-from: { value: 600 mm, source: proposal }', [['asked-from', true]]],
    ['a rule asked of more bars', 'asked-from: { value: 400 mm, source: proposal }', []],
    ['a limit that nothing uses', 'idle: { value: 9 mm, source: proposal }', []],
  ])('%s', (_, limit, told) => expect(loosened(limits(limit))).toEqual(told));

  test('a limit that defines a chance is looser when it is longer, whether a rule names it or not', () => {
    const chance = (value: string): Ruleset => rulesetFrom(base.replace('limits:', `limits:\n  corner-lift: { value: ${value}, source: proposal }`));
    expect(appliedOf(chance('6 mm'), chance('5 mm')).loosened).toEqual([{ limit: 'corner-lift', was: '5 mm', is: '6 mm', read: { was: '5 mm', is: '6 mm' }, surely: true }]);
    expect(appliedOf(chance('4 mm'), chance('5 mm')).loosened).toEqual([]);
  });

  test('a rule switched off, a rule asked otherwise, and a rule that is not there', () => {
    const off = appliedOf(own('rules:\n  - { id: a/lift, off: "We lift with a hoist." }\n'), baseline);
    expect(off).toMatchObject({ switched_off: [{ rule: 'a/lift', reason: 'We lift with a hoist.' }], loosened: [], replaced: [] });
    const three = own('rules:\n  - { id: a/lift, each: frame, require: { fact: frame.lift_people, at-most: 3 }, otherwise: stop, say: z, do: [ y ], source: proposal }\n');
    expect(appliedOf(three, baseline).replaced).toEqual([{ rule: 'a/lift', was: 'frame.lift_people is at most 2; otherwise stop', is: 'frame.lift_people is at most 3; otherwise stop', read: { was: 'frame lift people is at most 2; otherwise stop', is: 'frame lift people is at most 3; otherwise stop' } }]);
    const reworded = own('rules:\n  - { id: a/lift, each: frame, require: { fact: frame.lift_people, at-most: 2 }, otherwise: stop, say: "Other words.", do: [ y ], source: proposal }\n');
    expect(appliedOf(reworded, baseline).replaced).toEqual([]);
    const alone = rulesetFrom(base.replace(/ {2}- \{ id: a\/reserve.*\n/u, ''));
    expect(appliedOf(alone, baseline).replaced).toMatchObject([{ rule: 'a/reserve', is: 'not asked' }]);
  });

  test('a ruleset relaxes nothing against itself; without a baseline the lowest file counts', () => {
    expect(appliedOf(baseline, baseline)).toMatchObject({ switched_off: [], loosened: [], replaced: [] });
    expect(appliedOf(limits('most-dish: { value: 1/250, of: bar.span_mm, source: proposal }'), null).loosened).toHaveLength(1);
  });

  test('the fingerprint changes with what decides, and with nothing else', () => {
    const of = (text: string): string => appliedOf(rulesetFrom(text), null).fingerprint;
    expect(of(base)).toMatch(/^[0-9a-f]{8}$/u);
    expect(of(base.replace('say: x', 'say: other words').replace('name: Base', 'name: Other\nversion: 7\ndate: 2027-02-28'))).toBe(of(base));
    const changed = [base.replace('1/300', '1/299'), base.replace('otherwise: caution', 'otherwise: stop'), base.replace('above: {', 'at-least: {'), base.replace('caution: 2.5', 'caution: 2.6')];
    expect(new Set([base, ...changed].map(of)).size).toBe(5);
  });
});

describe('the edition of a ruleset', () => {
  const edition = (lines: string): Ruleset => rulesetFrom(base.replace('name: Base', `name: Base\n${lines}`));

  test('is kept as written; a number will do', () => {
    expect(appliedOf(edition('version: 2.1\ndate: 2028-02-29'), null)).toMatchObject({ version: '2.1', date: '2028-02-29' });
    expect(appliedOf(edition('version: "spring, second"'), null)).toMatchObject({ version: 'spring, second', date: null });
  });

  test.each(['2027-02-29', '2027-13-01', '1.9.2027', 'today', '2027-1-5'])('%s is no day', (date) => {
    expect(problemsOf(base.replace('name: Base', `name: Base\ndate: ${date}`))).toMatchObject([{ code: 'not-a-day', line: 3, column: 7 }]);
  });
});

describe('switching off', () => {
  const reason = (text: string) => problemsOf({ 'base.yaml': base, 'own.yaml': `ruleset: 1\nname: Own\nbuilds-on: [ base ]\nrules:\n  - { id: a/lift, off: "${text}" }\n` });

  test.each(['No.', 'not needed', '- - - -', 'because.'])('for “%s” is refused: nobody learns why', (text) => {
    expect(reason(text)).toMatchObject([{ code: 'thin-reason', line: 5, column: 24, allowed: 'a reason of at least 3 words' }]);
  });
});

describe('points', () => {
  test('are given by rule, in any file; a rule that is not there is told with its neighbour', () => {
    expect([...own('points: { a/lift: 2, a/dish: 0.5 }').points]).toEqual([['a/lift', 2], ['a/dish', 0.5]]);
    expect(problemsOf(base.replace('limits:', 'points: { a/lifd: 2 }\nlimits:'))).toMatchObject([{ code: 'points-unknown', line: 3, column: 11, hint: 'Did you mean `a/lift`?' }]);
  });
});
