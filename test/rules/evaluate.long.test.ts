import { expect, test } from 'vitest';
import { evaluateRules } from '../../src/rules/evaluate.js';
import { fact, rulesetFrom, rulesText } from './helpers.js';

/** More than may be handed to one call of a function at once. */
const [rules, crossbars] = [140, 1000];

test('however many fail, each is a finding', async () => {
  const ruleset = rulesetFrom(rulesText(Array.from({ length: rules }, (_, i) => `id: a/${i}, each: crossbar, require: { fact: crossbar.span_mm, at-most: 5 mm }, otherwise: stop`)));
  const spans = Array.from({ length: crossbars }, (_, i) => fact('crossbar.span_mm', `crossbar-${i + 1}`, 10));
  const { findings } = await evaluateRules(ruleset, [fact('frame.crossbars_count', 'frame', crossbars), ...spans]);
  expect([findings.length, findings.filter(({ verdict }) => verdict === 'stop').length]).toEqual([rules * crossbars, rules * crossbars]);
});
