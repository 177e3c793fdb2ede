/** What is asked of a case for each of its outcomes, and that nothing is lost where less is asked. */
import { describe, expect, test } from 'vitest';
import { factsGiven } from '../../src/facts/fact-source.js';
import { evaluateRules } from '../../src/rules/evaluate.js';
import { caseOf, conditionFor, silenceFor, type Case } from '../../src/rules/judge/case.js';
import type { EnginePart } from '../../src/rules/judge/engine.js';
import { tabulate } from '../../src/rules/judge/fact-table.js';
import { readyRules } from '../../src/rules/judge/ready-rule.js';
import { pose } from '../../src/rules/judge/settle.js';
import type { Compare, Ruleset } from '../../src/rules/ruleset.js';
import { fact, rulesetFrom, rulesText } from './helpers.js';

const one = (rule: string): Ruleset => rulesetFrom(rulesText([`id: t/a, each: bar, ${rule}`]));
const span = (value: number | null) => fact('bar.span_mm', 'top', value, 'Lost.');
const dish = (value: number | null) => fact('bar.dish_mm', 'top', value, 'Lost.');

/** A rule with a bound for a caution and one for a stop, in whatever order: a file must give the stop last. */
function withBounds(compare: Compare, value: number, stop: number): Ruleset {
  const plain = one('require: { fact: bar.span_mm, at-most: 5 mm }, otherwise: { stop: 9 mm }');
  const rule = plain.rules[0]!;
  const line = { ...(rule.require.parts[0] as object), compare, against: { kind: 'number', value } } as never;
  return { ...plain, rules: [{ ...rule, require: { join: 'all', parts: [line] }, otherwise: { kind: 'stop-beyond', stop: { kind: 'number', value: stop } } }] };
}

/** A question in words, such as `all(8<=9 3>2)`. */
const signs = { lessThanInclusive: '<=', lessThan: '<', greaterThanInclusive: '>=', greaterThan: '>', equal: '=', notEqual: '!=' };
const told = (part: EnginePart | null): string | null =>
  part === null ? null : 'parts' in part ? `${part.join}(${part.parts.map(told).join(' ')})` : `${part.actual}${signs[part.operator]}${part.value}`;

function outcomes(ruleset: Ruleset, ...facts: Parameters<typeof factsGiven>[0]): readonly (string | null)[] {
  const setting = { ruleset, table: tabulate(factsGiven(facts)) };
  const ready = readyRules(ruleset.rules)[0]!;
  const asked = { number: 0, ready, about: 'top', applies: ready.applies === null ? null : pose(ready.applies, 'top', setting) };
  const posed: Case = caseOf(asked, setting);
  return [silenceFor(asked), ...(['clear', 'stop', 'caution', 'asked'] as const).map((event) => conditionFor(posed, event))].map(told);
}

describe('what is asked: silence, and then clear, stop, caution, asked', () => {
  const requires = (otherwise: string) => one(`applies: { any: [ { fact: bar.span_mm, above: 300 mm }, { fact: bar.dish_mm, below: 2 mm } ] }, require: { fact: bar.dish_mm, at-most: 5 mm }, otherwise: ${otherwise}`);
  test('of a condition to be asked at all that is known nothing more than whether it fails', () => {
    expect(outcomes(requires('stop'), span(400), dish(-4))).toEqual(['all(400<=300 4>=2)', '4<=5', '4>5', null, null]);
    expect(outcomes(requires('caution'), span(400), dish(-4))).toEqual(['all(400<=300 4>=2)', '4<=5', null, '4>5', null]);
  });
  test('of one that is known in part, that it holds, beside everything; of an unknown one nothing can be asked', () => {
    expect(outcomes(requires('stop'), span(null), dish(-4))).toEqual([null, 'all(4<2 4<=5)', 'all(4<2 4>5)', null, '4<2']);
    expect(outcomes(requires('{ stop: 9 mm }'), span(null), dish(7))).toEqual([null, 'all(all(7<2 7<=9) 7<=5)', 'all(7<2 7>9)', 'all(all(7<2 7<=9) 7>5)', '7<2']);
    // One of another fact, and one of the same fact compared the other way, are no bounds that the last could say.
    const applies = (line: string) => one(`applies: { any: [ { fact: bar.span_mm, above: 300 mm }, ${line} ] }, require: { fact: bar.dish_mm, at-most: 3 mm }, otherwise: stop`);
    expect(outcomes(applies('{ fact: bar.w_mm, at-most: 4 mm }'), span(null), dish(2), fact('bar.w_mm', 'top', 10))[1]).toBe('all(10<=4 2<=3)');
    expect(outcomes(applies('{ fact: bar.dish_mm, above: 1 mm }'), span(null), dish(2))[1]).toBe('all(2>1 2<=3)');
    expect(outcomes(requires('stop'), span(400), dish(null))).toEqual([null, null, null, null, '400>300']);
    expect(outcomes(requires('stop'), span(null), dish(null))).toEqual([null, null, null, null, null]);
  });
  test('of two bounds on one value the last alone where it is the tighter, else both', () => {
    const bounds = (compare: Compare, value: number, stop: number) => outcomes(one(`require: { fact: bar.span_mm, ${compare}: ${value} mm }, otherwise: { stop: ${stop} mm }`), span(7))[1];
    expect([bounds('at-most', 5, 9), bounds('below', 5, 9), bounds('at-least', 9, 5), bounds('above', 9, 5)]).toEqual(['7<=5', '7<5', '7>=9', '7>9']);
    const twoLimits = (compare: Compare, value: number, stop: number) => outcomes(withBounds(compare, value, stop), span(7))[1];
    expect([twoLimits('at-most', 5, 5), twoLimits('at-most', 5, 4), twoLimits('at-least', 5, 5), twoLimits('at-least', 5, 6)]).toEqual(['7<=5', 'all(7<=4 7<=5)', '7>=5', 'all(7>=6 7>=5)']);
    expect([twoLimits('is', 5, 5), twoLimits('is-not', 5, 5)]).toEqual(['all(7=5 7=5)', 'all(7!=5 7!=5)']);
  });
});

describe('bounds in any order judge as each by itself does', () => {
  const holds: Readonly<Record<Compare, (a: number, b: number) => boolean>> = { 'at-most': (a, b) => a <= b, below: (a, b) => a < b, 'at-least': (a, b) => a >= b, above: (a, b) => a > b, is: (a, b) => a === b, 'is-not': (a, b) => a !== b };
  test.each(Object.keys(holds) as Compare[])('%s', async (compare) => {
    for (const value of [1, 2, 3]) for (const stop of [1, 2, 3]) for (const actual of [0.5, 1, 1.5, 2, 2.5, 3, 3.5]) {
      const { findings } = await evaluateRules(withBounds(compare, value, stop), [span(actual)]);
      const [spared, clear] = [holds[compare](actual, stop), holds[compare](actual, value)];
      expect([actual, value, stop, findings.find(({ about }) => about === 'top')?.verdict]).toEqual([actual, value, stop, spared ? (clear ? 'clear' : 'caution') : 'stop']);
    }
  });
});
