import { describe, expect, test } from 'vitest';
import type { Problem } from '../../src/base/problem.js';
import { checkRuleset } from '../../src/rules/check/check.js';
import { nearNames } from '../../src/rules/check/near-names.js';
import { possible } from '../../src/rules/check/possible.js';
import { rulePage } from '../../src/rules/check/show.js';
import { evaluateRules } from '../../src/rules/evaluate.js';
import { amountIn, isAmount, wordingOf } from '../../src/rules/quantity.js';
import { loadRuleset } from '../../src/rules/read/load-ruleset.js';
import { compareVerdicts } from '../../src/rules/say/compare.js';
import { catalogueByPath } from '../../src/facts/catalogue.js';
import type { Finding } from '../../src/findings/finding.js';
import { fact, ofBars, rulesetFrom, rulesText } from './helpers.js';

/** Everything said of a ruleset that is read, warnings too. */
function told(text: string): readonly Problem[] {
  const loaded = loadRuleset(new Map([['own.yaml', text]]), 'own.yaml');
  return loaded.ok ? loaded.warnings ?? [] : loaded.problems;
}
const codes = (text: string): readonly string[] => told(text).map(({ code }) => code);
const dish = (require: string, otherwise = 'caution', limits: readonly string[] = [], each = 'bar') => rulesText([`id: test/one, each: ${each}, require: { fact: bar.dish_mm, ${require} }, otherwise: ${otherwise}`], limits);

describe('texts of a ruleset: as long as they may be, and a letter more', () => {
  const rule = (more: object) => ({ id: 'test/one', each: 'bar', require: { fact: 'bar.span_mm', 'at-most': '9 mm' }, otherwise: 'caution', say: 'Said.', do: ['Do.'], source: 'proposal', ...more });
  const ruleset = (more: object, one: object = {}) => JSON.stringify({ ruleset: 1, name: 'Test', rules: [rule(one)], ...more });
  test.each<[string, number, (text: string) => string]>([
    ['name', 100, (name) => ruleset({ name })],
    ['version', 40, (version) => ruleset({ version })],
    ['say', 400, (say) => ruleset({}, { say })],
    ['say-clear', 400, (text) => ruleset({}, { 'say-clear': text })],
    ['say-stop', 400, (text) => ruleset({}, { 'say-stop': text, otherwise: { stop: '99 mm' } })],
    ['do', 200, (text) => ruleset({}, { do: [text] })],
    ['do, where something is not there', 200, (say) => ruleset({}, { do: [{ say, unless: { fact: 'bar.span_mm', below: '5 mm' } }] })],
    ['limit name', 60, (name) => ruleset({ limits: { [name]: { value: '3 mm', source: 'proposal' } } })],
  ])('%s: %i', (_, most, text) => {
    expect(codes(text('a'.repeat(most))).filter((code) => code !== 'limit-unused')).toEqual([]);
    expect(codes(text('a'.repeat(most + 1))).filter((code) => code !== 'limit-unused')).toHaveLength(1);
  });
  test('a reason to switch a rule off: 200 letters', () => {
    const off = (length: number) => {
      const loaded = loadRuleset(new Map([['base.yaml', dish('at-most: 3 mm')], ['own.yaml', JSON.stringify({ ruleset: 1, name: 'Own', 'builds-on': ['base'], rules: [{ id: 'test/one', off: 'not in this class at all '.padEnd(length, 'x') }] })]]), 'own.yaml');
      return loaded.ok ? [] : loaded.problems.map(({ code }) => code);
    };
    expect(off(200).filter((code) => code !== 'no-rules')).toEqual([]);
    expect(off(201)).not.toEqual(off(200));
  });
});

describe('what a fact may be compared with', () => {
  test('no size is below nought: nought itself may be asked, less is never met; of an unsigned fact and the other way it may', () => {
    expect(codes(dish('at-most: 0 mm'))).toEqual([]);
    expect(codes(dish('at-most: -0.1 mm'))).toEqual(['never-met']);
    expect(codes(dish('below: -0.1 mm'))).toEqual(['never-met']);
    expect(codes(dish('at-least: -0.1 mm'))).toEqual([]);
  });
  test('a key of the shelf where the fact has no list of words, else one of its own', () => {
    const word = (path: string, is: string) => told(rulesText([`id: test/one, each: bar, require: { fact: ${path}, is: ${is} }, otherwise: caution`]))[0];
    expect(word('bar.stock', '3')).toMatchObject({ code: 'not-its-word', allowed: 'a key of the shelf' });
    expect(word('bar.bond', 'clue')).toMatchObject({ code: 'not-its-word', hint: 'Did you mean `glue`?' });
    expect(word('bar.bond', 'clue')!.allowed).toContain('screws');
    expect(word('bar.bond', 'glue')).toBeUndefined();
  });
  test('amounts are numbers in a unit of the fact; chances between 0 and 1', () => {
    expect([['0', 'chance'], ['1', 'chance'], ['100 %', 'chance'], ['1.01', 'chance'], ['-0.01', 'chance'], ['1/400', 'ratio'], ['3 mm', 'mm'], ['3', 'mm'], ['3 kg', 'mm'], ['glue', 'word'], ['words', 'ratio']].map(([text, unit]) => amountIn(text!, unit as never))).toEqual([0, 1, 1, null, null, 1 / 400, 3, null, null, null, null]);
    expect(['3 mm', '1/400', '10 %', '2.5', '4 kg', 'a lot', '3 furlongs'].map(isAmount)).toEqual([true, true, true, true, true, false, false]);
    expect([wordingOf('chance'), wordingOf('share'), wordingOf('ratio')]).toEqual(['a chance between 0 and 1, such as 10 % or 0.1', 'a plain number or a fraction, such as 1.5 or 1/400', 'a plain number or a fraction, such as 1.5 or 1/400']);
    expect(wordingOf('mm')).toMatch(/^a number with a unit, one of mm, /u);
    expect(wordingOf('mm').split(', ')).toHaveLength(7);
  });
});

describe('two thresholds', () => {
  test.each([
    ['at-most: 3 mm', '3 mm', []], ['at-most: 3 mm', '2.9 mm', ['turned-thresholds']], ['at-most: 3 mm', '3.1 mm', []],
    ['at-least: 3 mm', '3 mm', []], ['at-least: 3 mm', '3.1 mm', ['turned-thresholds']], ['at-least: 3 mm', '2.9 mm', []],
    ['below: 3 mm', '2 mm', ['turned-thresholds']], ['above: 3 mm', '4 mm', ['turned-thresholds']],
  ])('%s, a stop at %s', (require, stop, wanted) => {
    expect(codes(dish(require, `{ stop: ${stop} }`))).toEqual(wanted);
  });
  test('which way round they should be is said', () => {
    expect(told(dish('at-most: 3 mm', '{ stop: 2 mm }'))[0]!.allowed).toBe('a stop above the caution, because `bar.dish_mm` must be at-most it');
    expect(told(dish('at-least: 3 mm', '{ stop: 4 mm }'))[0]!.allowed).toBe('a stop below the caution, because `bar.dish_mm` must be at-least it');
  });
  test('with their units, a share with what it is of, and two that read alike told apart', () => {
    const found = (...of: Parameters<typeof dish>) => told(dish(...of))[0]!.found;
    expect(found('at-most: 3 mm', '{ stop: 2 mm }')).toBe('a stop at 2 mm and a caution at 3 mm');
    expect(found('at-most: 3 mm', '{ stop: 2.9999 mm }')).toBe('a stop at just under 3 mm and a caution at 3 mm');
    const limits = ['part: { value: 1/400, of: bar.span_mm, source: proposal }', 'small: { value: 1/800, of: bar.span_mm, source: proposal }'];
    expect(found('at-most: { limit: part }', '{ stop: { limit: small } }', limits)).toBe('a stop at 0.00125 of bar.span_mm and a caution at 0.0025 of bar.span_mm');
  });
  test('a stop that is a share of another fact cannot be held against an amount, nor one of two thresholds', () => {
    const limits = ['part: { value: 1/400, of: bar.span_mm, source: proposal }', 'small: { value: 1/900, of: bar.span_mm, source: proposal }', 'two: { stop: 5 mm, caution: 2 mm, source: proposal }'];
    expect(codes(dish('at-most: 3 mm', '{ stop: { limit: part } }', limits.slice(0, 1)))).toEqual([]);
    expect(codes(dish('at-most: { limit: small }', '{ stop: { limit: part } }', limits.slice(0, 2)))).toEqual([]);
    expect(codes(dish('at-most: { limit: part }', '{ stop: { limit: small } }', limits.slice(0, 2)))).toEqual(['turned-thresholds']);
    expect(codes(dish('at-most: 3 mm', '{ stop: { limit: two } }', limits.slice(2)))).toEqual(['two-thresholds']);
    expect(codes(dish('at-most: { limit: nowhere }', '{ stop: 4 mm }'))).toHaveLength(1);
  });
  test('a caution that differs from what is required says what that is', () => {
    const limits = ['three: { value: 3 mm, source: proposal }'];
    expect(codes(dish('at-most: 3 mm', '{ stop: 5 mm, caution: 3 mm }'))).toEqual([]);
    expect(told(dish('at-most: 3 mm', '{ stop: 5 mm, caution: 4 mm }'))).toMatchObject([{ code: 'caution-differs', allowed: 'the same as `require` says, 3 mm' }]);
    expect(told(dish('at-most: { limit: three }', '{ stop: 5 mm, caution: 4 mm }', limits))).toMatchObject([{ code: 'caution-differs', allowed: 'the same as `require` says, the limit three' }]);
    expect(codes(rulesText(['id: test/one, each: bar, require: { fact: bar.bond, is: glue }, otherwise: { stop: 3 mm }']))).toEqual(['thresholds-of-one-line']);
    expect(codes(rulesText(['id: test/one, each: bar, require: { all: [ { fact: bar.dish_mm, at-most: 3 mm }, { fact: bar.span_mm, at-most: 900 mm } ] }, otherwise: { stop: 4 mm }']))).toEqual(['thresholds-of-one-line']);
    expect(codes(rulesText(['id: test/one, each: bar, require: { fact: bar.nosuch_mm, at-most: 3 mm }, otherwise: { stop: 4 mm }']))).toContain('unknown-fact');
  });
});

describe('names a hair apart', () => {
  const near = (...names: readonly string[]) => nearNames(rulesetFrom(rulesText(['id: test/one, each: bar, require: { fact: bar.span_mm, at-most: 9 mm }, otherwise: caution'], names.map((name) => `${name}: { value: 3 mm, source: proposal }`)))).map(({ found }) => found.replaceAll('`', ''));
  test.each<[string, string, boolean]>([
    ['inward-bow', 'inward-bows', true], ['inward-bow', 'inwards-bow', true], ['inward-bow', 'inwrad-bow', true], ['inward-bow', 'inward-low', true],
    ['inward-bow', 'inward-law', false], ['inward-bow', 'inward-bowls', false], ['dish', 'fish', true], ['dis', 'dish', false], ['dis', 'fis', false], ['lift-1', 'lift-2', false], ['abcd', 'abdc', true], ['abcdef', 'abcdgh', false], ['abcde', 'abdf', false],
  ])('%s and %s: %s', (one, other, meant) => {
    expect(near(one, other)).toEqual(meant ? [`${other}, a hair from ${one}`] : []);
  });
});

describe('examples', () => {
  test('values that no frame can have: chances above 1, sizes below nought; temperatures and per cents may be', () => {
    const may = (path: string, value: number | string) => possible(value, catalogueByPath.get(path)!);
    expect([may('warp.corner_lift_chance', 1), may('warp.corner_lift_chance', 1.001), may('warp.corner_lift_chance', 0), may('bar.span_mm', 0), may('bar.span_mm', -1), may('bar.dish_mm', -1), may('lumber.moisture_gap_pct', -1), may('bar.bond', 'glue')]).toEqual([true, false, true, true, false, true, true, true]);
  });
  test('are told with what they are, and what they ought to be', async () => {
    const said = async (rule: string) => (await checkRuleset(new Map([['own.yaml', rulesText([rule])]]), 'own.yaml')).problems.filter(({ code }) => code === 'impossible-example').map(({ found, allowed }) => `${found}: ${allowed}`);
    expect(await said('id: t/a, each: frame, require: { fact: warp.corner_lift_chance, at-most: 10 % }, otherwise: caution, examples: { clear: 0.05, edge: 0.1, fails: 1 }')).toEqual([]);
    expect(await said('id: t/a, each: bar, require: { fact: bar.span_mm, at-least: 10 mm }, otherwise: caution, examples: { clear: 20 mm, edge: 10 mm, fails: -1 mm }')).toEqual([expect.stringMatching(/bar\.span_mm: zero or more$/u)]);
    expect(await said('id: t/a, each: bar, require: { fact: bar.plies_count, at-most: 2 }, otherwise: caution, examples: { clear: 1.5, edge: 2, fails: 3 }')).toEqual([expect.stringMatching(/bar\.plies_count: a whole number$/u)]);
  });
  test('the page of a rule tells those that hold, with what is given, and that others were made for other limits', () => {
    const page = (examples: string, holding?: readonly ('clear' | 'edge' | 'fails')[]) => rulePage(rulesetFrom(rulesText([`id: t/a, each: bar, applies: { fact: bar.span_mm, above: 300 mm }, require: { fact: bar.dish_mm, at-most: 3 mm }, otherwise: caution, examples: ${examples}`])), 't/a', ...(holding === undefined ? [] : [new Set(holding)] as const))!.examples;
    const full = '{ clear: 1 mm, edge: 3 mm, fails: 4 mm, with: { bar.span_mm: 400 } }';
    const given = ', given bar.span_mm 400 mm';
    const all = [`clear: bar.dish_mm 1 mm${given}`, `still clear, at the edge: bar.dish_mm 3 mm${given}`, `fails: bar.dish_mm 4 mm${given}`];
    expect(page(full).map((one) => one.replaceAll('.0 mm', ' mm'))).toEqual(all);
    expect(page('{ clear: 1 mm, fails: 4 mm }').map((one) => one.replaceAll('.0 mm', ' mm'))).toEqual(['clear: bar.dish_mm 1 mm', 'fails: bar.dish_mm 4 mm']);
    const others = 'the others were made for limits that a later file has changed';
    expect(page(full, ['edge', 'fails']).map((one) => one.replaceAll('.0 mm', ' mm'))).toEqual([all[1], all[2], `no more: ${others}`]);
    expect(page(full, ['clear', 'fails'])).toHaveLength(3);
    expect(page('{ clear: 1 mm, fails: 4 mm }', ['clear'])).toHaveLength(2);
    expect(page(full, [])).toEqual([`none: ${others}`]);
  });
});

describe('findings and sentences', () => {
  test('how much of a limit is used, in per cent, up to 999', async () => {
    const used = async (mm: number, limit = '10 mm') => {
      const ruleset = rulesetFrom(`ruleset: 1\nname: Test\nrules:\n  - { id: t/a, each: bar, require: { fact: bar.span_mm, at-most: ${limit} }, otherwise: caution, say: "{used}", do: [ "Do." ], source: proposal }\n`);
      return (await evaluateRules(ruleset, [fact('bar.span_mm', 'top', mm)])).findings[0]!.say;
    };
    expect([await used(5), await used(99.9), await used(100), await used(5, '0 mm')]).toEqual(['50 %', '999 %', 'Over 999 %', 'An unknown share']);
  });

  test('crossbars are asked one by one, as many as the frame has', async () => {
    const ruleset = rulesetFrom(rulesText(['id: t/a, each: crossbar, require: { fact: crossbar.bow_mm, at-most: 3 mm }, otherwise: caution']));
    const about = async (count: number | string | null) => (await evaluateRules(ruleset, [fact('frame.crossbars_count', 'frame', count)])).findings.map((one) => `${one.about} ${one.verdict}`);
    expect(await about(2)).toEqual(['crossbar-1 unknown', 'crossbar-2 unknown']);
    for (const none of [0, null, -1]) expect(await about(none)).toEqual([]);
  });

  test('a comparison of verdicts goes by what became worst, then by rule, then by part', () => {
    const finding = (rule: string, about: string, verdict: Finding['verdict'], actual: number, limit: number): Finding => ({ rule, about, verdict, fact: 'bar.span_mm', actual, limit, unit: 'mm', used: null, say: 'Said.', do: [], cautions: [], source: 'proposal' }) as unknown as Finding;
    const before = ['b', 'a', 'c'].flatMap((rule) => ['top', 'left'].map((about) => finding(rule, about, 'clear', 5, 10)));
    const after = [finding('b', 'top', 'caution', 12, 10), finding('b', 'left', 'caution', 5, 4), finding('a', 'top', 'caution', 12, 11), finding('a', 'left', 'clear', 5, 10), finding('c', 'top', 'stop', 5, 10), finding('c', 'left', 'clear', 9, 10)];
    const { changes } = compareVerdicts(before, after);
    expect(changes.map(({ rule, about, why }) => [rule, about, why])).toEqual([
      ['c', 'top', 'What the rule makes of it has changed; limit and value have not.'],
      ['a', 'top', 'The limit was 10 mm and is 11 mm; bar.span_mm was 5 mm and is 12 mm.'],
      ['b', 'left', 'The limit was 10 mm and is 4 mm; bar.span_mm is 5 mm under both.'],
      ['b', 'top', 'The limit is 10 mm under both; bar.span_mm was 5 mm and is 12 mm.'],
    ]);
    expect(compareVerdicts(after, [...after].reverse()).changes).toEqual([]);
    expect(compareVerdicts([...before].reverse(), [...after].reverse()).changes.map(({ rule, about }) => `${rule} ${about}`)).toEqual(['c top', 'a top', 'b left', 'b top']);
  });

  test('bars are each asked, and what is clear of one says nothing of another', async () => {
    const ruleset = rulesetFrom(rulesText(['id: t/a, each: bar, require: { fact: bar.dish_mm, at-most: 3 mm }, otherwise: caution']));
    const { findings } = await evaluateRules(ruleset, ofBars('bar.dish_mm', { top: 4, bottom: -4, left: 1, right: null }));
    expect(findings.map(({ about, verdict }) => `${about} ${verdict}`).sort()).toEqual(['bottom caution', 'left clear', 'right unknown', 'top caution']);
  });
});
