import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Finding } from '../../src/findings/finding.js';
import { checkRuleset } from '../../src/rules/check/check.js';
import { changeInWords, compareVerdicts } from '../../src/rules/say/compare.js';
import { evaluateRules } from '../../src/rules/evaluate.js';
import { ruleList, rulePage, rulePageText } from '../../src/rules/check/show.js';
import { fact, rulesetFrom, rulesText } from './helpers.js';

const shipped = (name: string): string => readFileSync(new URL(`../../rules/${name}`, import.meta.url), 'utf8');
const check = (text: string) => checkRuleset(new Map([['own.yaml', text]]), 'own.yaml');

describe('checking a ruleset', () => {
  test.each(['baseline.yaml', 'class-first-year.yaml', 'class-advanced.yaml'])('%s: nothing to complain of, every example tried', async (file) => {
    const { ruleset, problems, examples } = await checkRuleset(shipped, file, { examplesRequired: true });
    expect(problems).toEqual([]);
    expect(examples.every(({ ok }) => ok)).toBe(true);
    expect(new Set(examples.map(({ rule }) => rule))).toEqual(new Set(ruleset!.rules.map(({ id }) => id)));
  });

  test('an example that does not come out as it says is an error at its rule', async () => {
    const rule = (examples: string): string => rulesText([`id: a, each: bar, applies: { fact: bar.span_mm, above: 300 mm }, require: { fact: bar.dish_mm, at-most: 3 mm }, otherwise: stop, examples: ${examples}`]);
    const of = async (examples: string) => (await check(rule(examples))).problems.map(({ code, line, column, found }) => [code, line, column, found.slice(0, 44)]);
    expect(await of('{ clear: 1 mm, edge: 3 mm, fails: -4 mm, with: { bar.span_mm: 400 } }')).toEqual([]);
    expect(await of('{ clear: 1 mm, edge: 3.1 mm, fails: -4 mm, with: { bar.span_mm: 400 } }')).toEqual([['example-fails', 4, 11, 'a: the example `edge` is stop. The top bar: ']]);
    expect(await of('{ clear: 1 mm, edge: 3 mm, fails: 2 mm, with: { bar.span_mm: 400 } }')).toEqual([['example-fails', 4, 11, 'a: the example `fails` is clear. The top bar']]);
    expect((await of('{ clear: 1 mm, edge: 3 mm, fails: 4 mm, with: { bar.span_mm: 300 } }')).map(([, , , found]) => found)).toEqual([expect.stringContaining('is silent'), expect.stringContaining('is silent'), expect.stringContaining('is silent')]);
    expect((await of('{ clear: 1 mm, edge: 3 mm, fails: 4 mm }')).map(([, , , found]) => found)).toEqual([expect.stringContaining('is unknown'), expect.stringContaining('is unknown'), expect.stringContaining('is unknown')]);
  });

  test('examples of a rule whose limit a file above sets anew need not hold there; those of all others must', async () => {
    const base = rulesText(['id: a, each: bar, require: { fact: bar.dish_mm, at-most: { limit: dish } }, otherwise: stop, examples: { clear: 1 mm, edge: 3 mm, fails: 4 mm }'], ['dish: { value: 3 mm, source: proposal }', 'other: { value: 3 mm, source: proposal }']);
    const above = (limit: string) => `ruleset: 1\nname: Above\nbuilds-on: [ base ]\nlimits:\n  ${limit}: { value: 9 mm, source: proposal }\n`;
    const fails = async (limit: string, from = base) => (await checkRuleset(new Map([['base.yaml', from], ['above.yaml', above(limit)]]), 'above.yaml')).problems.filter(({ code }) => code === 'example-fails').length;
    // A limit set anew may silence a rule whose examples still show it speaking by its own.
    const taller = rulesText(['id: a, each: bar, applies: { fact: bar.span_mm, above: 100 mm }, require: { fact: bar.span_mm, at-least: { limit: dish } }, otherwise: stop, examples: { clear: 300 mm, edge: 200 mm, fails: 150 mm }'], ['dish: { value: 200 mm, source: proposal }']);
    const mute = async (value: string) => (await checkRuleset(new Map([['base.yaml', taller], ['above.yaml', above('dish').replace('9 mm', value)]]), 'above.yaml')).problems.filter(({ code }) => code === 'never-speaks').length;
    expect([await mute('50 mm'), await mute('210 mm')]).toEqual([1, 0]);
    expect([await fails('dish'), await fails('other'), await fails('other', base.replace('fails: 4 mm', 'fails: 2 mm'))]).toEqual([0, 0, 1]);
  });

  test.each([
    ['never-asked', 'applies: { all: [ { fact: bar.span_mm, above: 300 mm }, { fact: bar.span_mm, below: 200 mm } ] }, require: { fact: bar.dish_mm, at-most: 3 mm }'],
    ['never-asked', 'applies: { all: [ { fact: bar.bond, is: glue }, { fact: bar.bond, is: none } ] }, require: { fact: bar.dish_mm, at-most: 3 mm }'],
    ['never-speaks', 'require: { fact: bar.span_mm, at-least: 0 mm }'],
    ['never-speaks', 'require: { fact: warp.corner_lift_chance, at-most: 100 % }'],
    ['never-speaks', 'applies: { fact: bar.span_mm, above: 300 mm }, require: { fact: bar.span_mm, at-least: 200 mm }'],
    ['never-speaks', 'require: { any: [ { fact: frame.mode, is: sideways }, { fact: frame.mode, is: propeller } ] }'],
    ['never-speaks', 'applies: { fact: bar.dish_mm, below: { limit: little } }, require: { fact: bar.dish_mm, at-most: { limit: much } }'],
  ])('%s: %s', async (code, rule) => {
    const { problems } = await check(rulesText([`id: a, each: bar, ${rule}, otherwise: stop`], ['little: { value: 1/400, of: bar.span_mm, source: proposal }', 'much: { value: 1/200, of: bar.span_mm, source: proposal }']));
    expect(problems.filter(({ code: one }) => one !== 'limit-unused')).toMatchObject([{ code, severity: 'warning', line: 7, column: 11 }]);
  });

  test.each([
    'require: { fact: bar.dish_mm, at-least: 0 mm }',
    'require: { fact: frame.mode, is: propeller }',
    'applies: { fact: frame.mode, is: sideways }, require: { fact: bar.dish_mm, at-most: { limit: l } }',
    'require: { any: [ { fact: bar.bond, is: glue }, { fact: bar.dish_mm, below: 2 mm } ] }',
  ])('can speak: %s', async (rule) => {
    expect((await check(rulesText([`id: a, each: bar, ${rule}, otherwise: stop`], ['l: { value: 1/400, of: bar.span_mm, source: proposal }']))).problems.filter(({ code }) => code !== 'limit-unused')).toEqual([]);
  });

  test('limits that nothing uses, but not those the facts read or a sentence names', async () => {
    const { problems } = await check(rulesText(
      ['id: a, each: frame, require: { fact: frame.weight_kg, at-most: { limit: used } }, otherwise: stop'],
      ['used: { value: 3 kg, source: proposal }', 'usedd: { value: 3 kg, source: proposal }', 'corner-lift: { value: 5 mm, source: proposal }', 'told: { value: 5 mm, source: proposal }'],
    ).replace('{about}:', '{limits.told} {about}:'));
    expect(problems).toMatchObject([{ code: 'limit-unused', severity: 'warning', line: 5, hint: 'Did you mean `used`?' }]);
  });

  test('a ruleset that does not load is told as it is', async () => {
    expect(await check('ruleset: 1\n')).toMatchObject({ ruleset: null, problems: [{ code: 'missing' }], examples: [] });
  });
});

describe('the page of a rule', () => {
  const first = rulesetFrom({ 'baseline.yaml': shipped('baseline.yaml'), 'class-first-year.yaml': shipped('class-first-year.yaml') });

  test('says in words what is asked, with the limit and its history', () => {
    const page = rulePage(first, 'bars/inward-bow')!;
    expect(page.applies).toBe('bar.span_mm is above the limit bow-counts-from (300 mm (in inches 12 in))');
    expect(page.requires).toBe('bar.inward_bow_long_term_mm is at most the limit inward-bow (1/500 of bar.span_mm)');
    expect(page.limits).toEqual([
      { name: 'inward-bow', said: '1/500 of bar.span_mm', source: 'proposal', history: ['Studio baseline (baseline.yaml): 1/400 of bar.span_mm', 'Gullmark Street Studio, first year (class-first-year.yaml): 1/500 of bar.span_mm'] },
      { name: 'bow-counts-from', said: '300 mm (in inches 12 in)', source: 'proposal', history: ['Studio baseline (baseline.yaml): 300 mm (in inches 12 in)'] },
      { name: 'inward-bow-stop', said: '1/100 of bar.span_mm', source: 'practice', history: ['Studio baseline (baseline.yaml): 1/100 of bar.span_mm'] },
    ]);
    const text = rulePageText(page);
    expect(page.history).toEqual(['Studio baseline (baseline.yaml): when bar.span_mm is above the limit bow-counts-from (300 mm (in inches 12 in)): bar.inward_bow_long_term_mm is at most the limit inward-bow (1/400 of bar.span_mm); otherwise caution, or stop unless bar.inward_bow_long_term_mm is at most the limit inward-bow-stop (1/100 of bar.span_mm)']);
    expect(text).toContain(`\nOnly when ${page.applies}.\n`);
    expect(rulePageText({ ...page, applies: null })).not.toContain('Only when');
    for (const part of ['# bars/inward-bow', 'Asked of each bar, one by one.', '## What to do next', '- fails: bar.inward_bow_long_term_mm 3.1 mm, given bar.span_mm 1200 mm', 'Source: proposal.']) expect(text).toContain(part);
  });

  test('of a rule switched off says by whom and why', () => {
    expect(rulePage(first, 'cloth/keys')!.otherwise).toBe('nothing: the rule is switched off by class-first-year.yaml. First-year frames are stretched again, not keyed out.');
    expect(ruleList(first)).toContainEqual({ id: 'cloth/keys', requires: 'switched off: First-year frames are stretched again, not keyed out.' });
  });

  test('is written for every rule, and for no other', () => {
    for (const { id } of ruleList(first)) expect(rulePageText(rulePage(first, id)!)).toMatch(/^# .+\n\nAsked of each /);
    expect(rulePage(first, 'bars/none')).toBeNull();
  });
});

describe('comparing two rulesets on one plan', () => {
  const rules = (limit: string, id = 'a'): ReturnType<typeof rulesetFrom> => rulesetFrom(rulesText([`id: ${id}, each: bar, require: { fact: bar.dish_mm, at-most: { limit: l } }, otherwise: caution`], [`l: { value: ${limit}, source: proposal }`]));
  const facts = [fact('bar.dish_mm', 'top', -2.5), fact('bar.dish_mm', 'bottom', 4), fact('bar.dish_mm', 'left', 1), fact('bar.dish_mm', 'right', null, 'Not solved.')];
  const judge = async (limit: string, id?: string): Promise<readonly Finding[]> => (await evaluateRules(rules(limit, id), facts)).findings;

  test('names the verdicts that change and the limit that moved', async () => {
    const { before, after, changes } = compareVerdicts(await judge('3 mm'), await judge('2 mm'));
    expect([before, after]).toEqual(['unknown', 'unknown']);
    expect(changes).toEqual([{ rule: 'a', about: 'top', before: 'clear', after: 'caution', why: 'The limit was 3 mm and is 2 mm; bar.dish_mm is −2.5 mm under both.' }]);
    expect(changeInWords(changes[0]!)).toBe('a, the top bar: clear → caution. The limit was 3 mm and is 2 mm; bar.dish_mm is −2.5 mm under both.');
  });

  test('nothing changes under the same rules; rules come and go', async () => {
    expect(compareVerdicts(await judge('3 mm'), await judge('3 mm')).changes).toEqual([]);
    const { changes } = compareVerdicts(await judge('3 mm', 'a'), await judge('3 mm', 'b'));
    expect(changes).toHaveLength(8);
    expect(changes.filter(({ rule }) => rule === 'a').map(({ after, why }) => [after, why])).toEqual(Array(4).fill([null, 'The rule is not asked any more.']));
    expect(changes[0]).toMatchObject({ rule: 'b', about: 'right', before: null, after: 'unknown' });
  });
});
