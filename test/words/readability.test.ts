import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { runExamples } from '../../src/rules/check/examples.js';
import { loadRuleset } from '../../src/rules/read/load-ruleset.js';
import { median, readingGrade } from './reading-grade.js';

test('the formula gives what its source gives by hand', () => {
  // 10 words, 1 sentence, 11 syllables; then 5 words, 2 sentences, 5 syllables.
  expect(readingGrade('The cloth is too slack; pull it a little more.')).toBeCloseTo(3.9 + 11.8 * 1.1 - 15.59, 6);
  expect(readingGrade('Cut it. Then glue it.')).toBeCloseTo(0.39 * 2.5 + 11.8 - 15.59, 6);
});

test('what the rules say when something is wrong reads like a school book, not like a standard', async () => {
  const loaded = loadRuleset(() => readFileSync(new URL('../../rules/baseline.yaml', import.meta.url), 'utf8'), 'baseline.yaml');
  if (!loaded.ok) throw new Error('the baseline must load');
  const graded: { readonly id: string; readonly say: number; readonly next: number }[] = [];
  for (const rule of loaded.value.rules) {
    const fails = (await runExamples(loaded.value, rule.id)).find(({ example }) => example === 'fails');
    if (fails !== undefined) graded.push({ id: rule.id, say: readingGrade(fails.say), next: median(rule.do.map(({ say }) => readingGrade(say))) });
  }
  const [say, next, worst] = [median(graded.map((one) => one.say)), median(graded.map((one) => one.next)), Math.max(...graded.map((one) => one.say))];
  expect(graded.length).toBeGreaterThan(50);
  expect(say).toBeLessThan(4);
  expect(next).toBeLessThan(4);
  expect(worst).toBeLessThan(11);
});
