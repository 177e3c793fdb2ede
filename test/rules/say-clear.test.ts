import { expect, test } from 'vitest';
import { evaluateRules } from '../../src/rules/evaluate.js';
import { loadRuleset } from '../../src/rules/read/load-ruleset.js';

const text = `
ruleset: 1
name: Two sentences
rules:
  - id: cloth/roll
    each: cloth
    require: { fact: cloth.roll_short_mm, at-most: 0 mm }
    otherwise: stop
    say: "The roll is {actual} too narrow."
    say-clear: "The roll is wide enough."
    do: [ "Buy a wider roll." ]
    source: practice
    examples: { clear: -5 mm, edge: 0 mm, fails: 9 mm }
`;

async function said(value: number | null, rules = text): Promise<string> {
  const ruleset = loadRuleset(new Map([['two.yaml', rules]]), 'two.yaml');
  if (!ruleset.ok) throw new Error(JSON.stringify(ruleset.problems));
  const { findings } = await evaluateRules(ruleset.value, [{ path: 'cloth.roll_short_mm', about: 'cloth', value, unit: 'mm', ...(value === null ? { reason: 'Nobody measured it.' } : {}) }]);
  return findings[0]?.say ?? '';
}

test('a rule with two sentences says the one that fits, and neither when it cannot know', async () => {
  expect(await said(-5)).toBe('The roll is wide enough.');
  expect(await said(9)).toBe('The roll is 9 mm too narrow.');
  expect(await said(null)).toContain('Nobody measured it.');
});

test('a value below nought and a stop may have sentences of their own; the size below nought is told without its sign', async () => {
  const rule = text
    .replace('at-most: 0 mm', 'at-least: 2 mm').replace('otherwise: stop', 'otherwise: { stop: -50 mm }').replace('{ clear: -5 mm, edge: 0 mm, fails: 9 mm }', '{ clear: 5 mm, edge: 2 mm, fails: 1 mm }')
    .replace('    say-clear:', '    say-below-zero: "It lies {actual} too deep."\n    say-stop: "It is lost at {actual}."\n    say-clear:');
  expect(await said(1, rule)).toBe('The roll is 1 mm too narrow.');
  expect(await said(-7, rule)).toBe('It lies 7 mm too deep.');
  expect(await said(-60, rule)).toBe('It is lost at −60 mm.');
  expect(await said(5, rule)).toBe('The roll is wide enough.');
});

test('a placeholder nobody knows is refused in the second sentence too', () => {
  const broken = loadRuleset(new Map([['two.yaml', text.replace('wide enough', 'wide {enough}')]]), 'two.yaml');
  expect(broken.ok ? [] : broken.problems.map(({ code, line }) => [code, line])).toEqual([['unknown-placeholder', 10]]);
});
