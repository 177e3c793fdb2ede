import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Problem } from '../../src/base/problem.js';
import { checkRuleset } from '../../src/rules/check/check.js';
import { examplesThatHold } from '../../src/rules/check/examples.js';
import { loadRuleset } from '../../src/rules/read/load-ruleset.js';
import { rulePage, rulePageText } from '../../src/rules/check/show.js';
import { problemsOf, rulesetFrom, rulesText } from './helpers.js';

const shipped = (name: string): string => readFileSync(new URL(`../../rules/${name}`, import.meta.url), 'utf8');
const onBaseline = (lines: string) => (name: string): string | null => (name === 'own.yaml' ? `ruleset: 1\nname: Own\nbuilds-on: [ baseline ]\n${lines}` : name === 'baseline.yaml' ? shipped(name) : null);
const check = async (rules: readonly string[], limits: readonly string[] = []): Promise<readonly Problem[]> => (await checkRuleset(new Map([['own.yaml', rulesText(rules, limits)]]), 'own.yaml')).problems;
const codes = async (...rules: readonly string[]): Promise<readonly string[]> => (await check(rules)).map(({ code }) => code);
const bar = (id: string, require: string, more = ''): string => `id: ${id}, each: bar, ${more}require: ${require}, otherwise: stop`;

describe('rules that nothing can meet', () => {
  test.each([
    ['two bounds that exclude each other', '{ all: [ { fact: bar.w_mm, at-least: 40 mm }, { fact: bar.w_mm, below: 40 mm } ] }'],
    ['the same in a group', '{ all: [ { fact: bar.d_mm, above: 5 mm }, { all: [ { fact: bar.w_mm, above: 40 mm }, { fact: bar.w_mm, at-most: 30 mm } ] } ] }'],
    ['two words at once', '{ all: [ { fact: bar.bond, is: glue }, { fact: bar.bond, is: screws } ] }'],
    ['two keys of the shelf at once', '{ all: [ { fact: bar.stock, is: a }, { fact: bar.stock, is: b } ] }'],
    ['a size below zero', '{ fact: bar.w_mm, below: 0 mm }'],
  ])('%s', async (_, require) => expect(await codes(bar('a', require))).toEqual(['never-clear']));

  test.each([
    ['bounds that touch', '{ all: [ { fact: bar.w_mm, at-least: 40 mm }, { fact: bar.w_mm, at-most: 40 mm } ] }'],
    ['one of two keys', '{ any: [ { fact: bar.stock, is: a }, { fact: bar.stock, is: b } ] }'],
    ['not this key', '{ fact: bar.stock, is-not: a }'],
  ])('%s can be met and missed', async (_, require) => expect(await codes(bar('a', require))).toEqual([]));
});

describe('rules that exclude each other', () => {
  test.each<[what: string, one: string, other: string, found: boolean]>([
    ['a least above a most', '{ fact: bar.d_mm, at-least: 60 mm }', '{ fact: bar.d_mm, at-most: 50 mm }', true],
    ['the same, the other way about', '{ fact: bar.d_mm, at-most: 50 mm }', '{ fact: bar.d_mm, at-least: 60 mm }', true],
    ['above what must be below', '{ fact: bar.d_mm, above: 50 mm }', '{ fact: bar.d_mm, at-most: 50 mm }', true],
    ['two words', '{ fact: bar.bond, is: glue }', '{ fact: bar.bond, is: screws }', true],
    ['a word and not that word', '{ fact: bar.bond, is: glue }', '{ fact: bar.bond, is-not: glue }', true],
    ['bounds that touch', '{ fact: bar.d_mm, at-least: 50 mm }', '{ fact: bar.d_mm, at-most: 50 mm }', false],
    ['two leasts', '{ fact: bar.d_mm, at-least: 60 mm }', '{ fact: bar.d_mm, at-least: 50 mm }', false],
    ['bounds of one among several', '{ any: [ { fact: bar.d_mm, at-least: 60 mm }, { fact: bar.w_mm, at-least: 60 mm } ] }', '{ fact: bar.d_mm, at-most: 50 mm }', false],
    ['sizes of a signed fact', '{ fact: bar.dish_mm, at-least: 4 mm }', '{ fact: bar.dish_mm, at-most: 3 mm }', false],
  ])('%s', async (_, one, other, found) => {
    expect(await codes(bar('a', one), bar('b', other))).toEqual(found ? ['rules-exclude'] : []);
    expect((await codes(bar('a', one, 'applies: { fact: bar.plies_count, above: 1 }, '), bar('b', other))).includes('rules-exclude')).toBe(false);
  });

  test('a line among several that must all hold excludes as well; one of several of which any will do does not', async () => {
    const group = (join: string, id: string) => bar(id, `{ ${join}: [ { fact: bar.d_mm, at-least: 60 mm }, { fact: bar.w_mm, at-least: 10 mm } ] }`);
    const deep = bar('b', '{ fact: bar.d_mm, at-most: 50 mm }');
    const excludes = async (rule: string): Promise<boolean> => (await codes(rule, deep)).includes('rules-exclude');
    expect([await excludes(group('all', 'a')), await excludes(group('any', 'a')), await excludes(bar('a', '{ any: [ { fact: bar.d_mm, at-least: 60 mm } ] }'))]).toEqual([true, false, true]);
  });

  test('says both bounds', async () => {
    expect(await check([bar('a', '{ fact: bar.d_mm, at-least: 60 mm }'), bar('b', '{ fact: bar.d_mm, at-most: 50 mm }')])).toMatchObject([{ severity: 'warning', found: '`b` and `a`, which cannot both be met: bar.d_mm at-most 50 mm, and bar.d_mm at-least 60 mm' }]);
  });
});

describe('what shows nothing or means another', () => {
  test.each([['{ clear: -3 mm, fails: 60 mm }', 'bar.d_mm', '−3 mm'], ['{ clear: 3 mm, fails: 60 mm, with: { bar.plies_count: 1.5 } }', 'bar.d_mm', '2'], ['{ clear: 3 mm, fails: 60 mm, with: { warp.corner_lift_chance: 1.4 } }', 'bar.d_mm', '140 %']])('an example that no frame can be: %s', async (examples, fact, value) => {
    expect((await check([`${bar('a', `{ fact: ${fact}, at-most: 50 mm }`)}, examples: ${examples}`])).filter(({ code }) => code === 'impossible-example').map(({ found }) => found)).toEqual([expect.stringContaining(`\`${value}\``)]);
  });

  test('a name a hair from another, of rules and of limits; one told as a slip already is not told twice', async () => {
    const found = await check([bar('a/deep', '{ fact: bar.d_mm, at-most: { limit: depth } }'), bar('a/deap', '{ fact: bar.w_mm, at-most: { limit: detph } }'), bar('a/wide', '{ fact: bar.w_mm, at-most: { limit: width } }')], ['depth: { value: 50 mm, source: practice }', 'detph: { value: 50 mm, source: practice }', 'width: { value: 90 mm, source: practice }', 'widht: { value: 90 mm, source: practice }']);
    expect(found.map(({ code, found: words }) => `${code}: ${words}`)).toEqual(['limit-unused: the limit `widht`, which no rule uses', 'near-name: `a/deap`, a hair from `a/deep`', 'near-name: `detph`, a hair from `depth`']);
  });

  test('a mistyped limit is told whenever the ruleset is loaded, not only when it is checked', () => {
    const loaded = loadRuleset(onBaseline('limits:\n  staple-spacng: { value: 40 mm, source: practice }\n'), 'own.yaml');
    expect(loaded.ok && loaded.warnings).toMatchObject([{ code: 'limit-unused', file: 'own.yaml', line: 5, hint: 'Did you mean `staple-spacing`?' }]);
  });

  test('a limit to which only plans are held that ask for it says so', async () => {
    const { problems } = await checkRuleset(onBaseline('limits:\n  spend: { value: 40, source: practice }\n'), 'own.yaml');
    expect(problems).toMatchObject([{ code: 'limit-asked-by-plan', severity: 'warning', file: 'own.yaml', line: 5, hint: expect.stringContaining('cutting/spend is silent about every other plan') }]);
  });
});

describe('the page of a rule under a changed limit', () => {
  test('prints only examples that hold under the limit in force', async () => {
    const tight = rulesetFrom({ 'baseline.yaml': shipped('baseline.yaml'), 'own.yaml': 'ruleset: 1\nname: Own\nbuilds-on: [ baseline ]\nlimits:\n  staple-spacing: { value: 40 mm, source: practice }\n' });
    const baseline = rulesetFrom(shipped('baseline.yaml'));
    expect([...await examplesThatHold(baseline, 'cloth/staple-spacing')]).toEqual(['clear', 'edge', 'fails']);
    const holding = await examplesThatHold(tight, 'cloth/staple-spacing');
    expect([...holding]).toEqual(['fails']);
    const text = rulePageText(rulePage(tight, 'cloth/staple-spacing', holding)!);
    expect(text).toContain('- fails: cloth.staple_spacing_mm 80 mm');
    expect(text).not.toContain('still clear');
    expect(text).toContain('no more: the others were made for limits that a later file has changed');
  });
});

describe('slips a teacher makes are told at the teacher’s own line', () => {
  const limit = (text: string) => problemsOf({ 'baseline.yaml': shipped('baseline.yaml'), 'own.yaml': `ruleset: 1\nname: Own\nbuilds-on: [ baseline ]\nlimits:\n  ${text}\n` });

  test.each([
    ['one value for two thresholds', 'twist-reserve: { value: 3, source: practice }', 'limit-form', 'both `stop` and `caution`, as the rule frame/twist-reserve uses it'],
    ['two thresholds for one value', 'staple-spacing: { stop: 90 mm, caution: 50 mm, source: practice }', 'limit-form', 'one `value`, as the rule cloth/staple-spacing uses it'],
    ['an amount alone', 'staple-spacing: 50 mm', 'bare-limit', 'a block with the amount and its source'],
  ])('%s', (_, text, code, allowed) => expect(limit(text)).toMatchObject([{ code, file: 'own.yaml', line: 5, allowed }]));

  test('a decimal comma', () => {
    expect(limit('staple-spacing: { value: "40,5 mm", source: practice }')).toMatchObject([{ code: 'not-an-amount', line: 5, hint: 'Write a point for the decimals: 40.5, not 40,5.' }]);
    expect(problemsOf(rulesText([bar('a', '{ fact: bar.d_mm, at-most: "40,5 mm" }')]))).toMatchObject([{ code: 'unit-misfit', hint: 'Write a point for the decimals: 40.5, not 40,5.' }]);
  });

  test('an empty file, and a rule switched off for no reason', () => {
    expect(problemsOf('')).toMatchObject([{ code: 'empty-ruleset', hint: expect.stringContaining('ruleset: 1') }]);
    for (const off of ['""', '', '"  "']) expect(problemsOf(`ruleset: 1\nname: X\nrules:\n  - { id: a, off: ${off} }\n`).map(({ code }) => code)).toContain('thin-reason');
  });

  test('a ruleset misnamed is told its neighbour', () => {
    expect(problemsOf('ruleset: 1\nname: X\nbuilds-on: [ basline ]\n', { names: () => ['baseline', 'class-first-year'] })).toMatchObject([{ code: 'no-such-ruleset', hint: 'Did you mean `baseline`?' }]);
  });
});
