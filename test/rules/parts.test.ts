/** Small parts of the rules, each alone and at its bounds. */
import { describe, expect, test } from 'vitest';
import type { Finding } from '../../src/findings/finding.js';
import { specOf } from '../../src/facts/catalogue.js';
import type { Fact } from '../../src/facts/fact.js';
import { factsGiven } from '../../src/facts/fact-source.js';
import { canSpeak } from '../../src/rules/check/can-speak.js';
import { checkRuleset } from '../../src/rules/check/check.js';
import { exampleAbout } from '../../src/rules/check/examples.js';
import { excludingRules } from '../../src/rules/check/excluding.js';
import { rulePage, rulePageText } from '../../src/rules/check/show.js';
import { evaluateRules } from '../../src/rules/evaluate.js';
import { rulesIn } from '../../src/rules/in-system.js';
import { decide, type EngineLine, type EnginePart } from '../../src/rules/judge/engine.js';
import { tabulate } from '../../src/rules/judge/fact-table.js';
import { comparesMagnitude, readyRules } from '../../src/rules/judge/ready-rule.js';
import { linesIn } from '../../src/rules/group.js';
import { isKnown, pose, question, type PosedLine } from '../../src/rules/judge/settle.js';
import { limitValue } from '../../src/rules/limit-value.js';
import { isAmount, thresholdKey, unitOfKey } from '../../src/rules/quantity.js';
import { followBestBranch } from '../../src/rules/read/best-branch.js';
import { loadRuleset, prepareLayer, prepareStack } from '../../src/rules/read/load-ruleset.js';
import { appliedOf } from '../../src/rules/say/applied.js';
import { compareVerdicts } from '../../src/rules/say/compare.js';
import { limitsOfRule } from '../../src/rules/say/limits-used.js';
import { placeholdersOf } from '../../src/rules/say/say.js';
import { linesOf, type Ruleset } from '../../src/rules/ruleset.js';
import { fact, problemsOf, rulesetFrom, rulesText } from './helpers.js';

const bar = (require: string, otherwise = 'caution', more = ''): string => `id: t/a, each: bar, ${more}require: ${require}, otherwise: ${otherwise}`;
const one = (rule: string, limits: readonly string[] = []): Ruleset => rulesetFrom(rulesText([rule], limits));
const bare = (more: string, say = 'Said.'): Ruleset => rulesetFrom(`ruleset: 1\nname: Test\nrules:\n  - { id: t/a, each: bar, ${more}, say: "${say}", do: [ "Do." ], source: proposal }\n`);

describe('the table of facts', () => {
  const read = (...facts: readonly Fact[]) => tabulate(factsGiven(facts)).read(specOf(facts[0]!.path), 'top');
  const why = (...facts: readonly Fact[]) => { const found = read(...facts); return typeof found === 'object' ? found.unknown : found; };
  test('a value said twice alike stands; twice differently, or once not known, it does not', () => {
    const three = fact('bar.span_mm', 'top', 3);
    const twice = 'It was given twice, with different values.';
    expect([why(three), why(three, three), why(three, fact('bar.span_mm', 'top', 4)), why(three, fact('bar.span_mm', 'top', null, 'Lost')), why(fact('bar.span_mm', 'top', null, 'Lost'), three), why(three, three, fact('bar.span_mm', 'top', 4))]).toEqual([3, 3, twice, twice, twice, twice]);
    const lost = fact('bar.span_mm', 'top', null, 'Lost');
    const heavy = { ...three, unit: 'kg' } as const;
    expect([why(lost, lost), why(three, heavy), why(heavy, three)]).toEqual([twice, twice, twice]);
  });
  test('reasons end as sentences do, and there is always one', () => {
    const lost = (reason?: string) => why(fact('bar.span_mm', 'top', null, reason));
    expect(['Lost', ' Lost. ', 'Lost!', 'Lost?', '', '  ', undefined].map(lost)).toEqual(['Lost.', 'Lost.', 'Lost!', 'Lost?', 'No reason was given.', 'No reason was given.', 'No reason was given.']);
  });
  test('units, words and numbers that are none of the fact’s', () => {
    const span = fact('bar.span_mm', 'top', 3);
    expect([why({ ...span, unit: 'kg' }), why({ ...span, value: 'three' }), why({ ...span, value: Infinity }), why(fact('bar.bond', 'top', 'glue')), why(fact('bar.bond', 'top', 'clue')), why(fact('bar.bond', 'top', 7)), why(fact('bar.stock', 'top', 'anything'))]).toEqual([
      'It came in kg, where mm was wanted.', 'It came as text where a number was wanted.', 'It came out as no finite number.', 'glue', 'It came as a word that means nothing here.', 'It came as a word that means nothing here.', 'anything',
    ]);
  });
  test('the elements of each kind: those that any frame has, those told of, and of crossbars as many whole ones as are counted', () => {
    const of = (each: Parameters<ReturnType<typeof tabulate>['elementsOf']>[0], ...facts: readonly Fact[]) => tabulate(factsGiven(facts)).elementsOf(each);
    const count = (value: number) => of('crossbar', fact('frame.crossbars_count', 'frame', value)).length;
    expect([of('bar'), of('frame'), of('cloth'), of('cutting'), of('hanging'), of('corner').length]).toEqual([['top', 'bottom', 'left', 'right'], ['frame'], ['cloth'], ['cutting'], [], 4]);
    expect(of('cloth', fact('cloth.overlap_mm', 'linen', 30))).toEqual(['linen']);
    expect(of('crossbar', fact('frame.crossbars_count', 'frame', 1), fact('crossbar.bow_mm', 'crossbar-2', 3))).toEqual(['crossbar-1', 'crossbar-2']);
    expect([0, 1, 2.9, -1, 999, 1000, 1001, 5000].map(count)).toEqual([0, 1, 2, 0, 999, 1000, 1000, 1000]);
  });
  test('what is known of the frame is known of every bar, what is known of a bar of no other', () => {
    const table = tabulate(factsGiven([fact('frame.weight_kg', 'frame', 4), fact('bar.span_mm', 'top', 5)]));
    expect([table.read(specOf('frame.weight_kg'), 'left'), table.read(specOf('bar.span_mm'), 'top'), table.read(specOf('bar.span_mm'), 'left')]).toEqual([4, 5, { unknown: 'It was not computed.' }]);
  });
});

describe('what is put to the engine', () => {
  const posed = (require: string, facts: readonly Fact[], limits: readonly string[] = []) => {
    const ruleset = one(bar(require), limits);
    return linesIn(pose(readyRules(ruleset.rules)[0]!.clear, 'top', { ruleset, table: tabulate(factsGiven(facts)) }))[0]!;
  };
  test.each<[string, number, number | null]>([
    ['at-most: 8 mm', 2, 0.25], ['below: 8 mm', 2, 0.25], ['at-most: 8 mm', -2, 0.25], ['at-least: 8 mm', 32, 0.25], ['above: 8 mm', 32, 0.25], ['at-most: 8 mm', 0, 0], ['at-most: 8 mm', 16, 2],
    ['at-least: 8 mm', -4, null], ['at-least: 8 mm', 0, null], ['at-most: 0 mm', 3, null], ['at-least: 0 mm', 3, null], ['at-least: -8 mm', -4, null], ['at-least: 0.5 mm', 2, 0.25],
  ])('of %s a value of %d mm uses %s', (compare, value, used) => {
    expect(posed(`{ fact: bar.dish_mm, ${compare} }`, [fact('bar.dish_mm', 'top', value)]).used).toBe(used);
  });
  test('the size of what has a direction, where it must be at most or below; else the value itself', () => {
    const asked = (compare: string, wanted: 'holds' | 'fails') => {
      const part = question(posed(`{ fact: bar.dish_mm, ${compare} }`, [fact('bar.dish_mm', 'top', -3)]), wanted);
      return part === null || 'parts' in part ? null : [part.fact, part.actual, part.operator, part.value];
    };
    expect(['at-most: 8 mm', 'below: 8 mm', 'at-least: 8 mm', 'above: 8 mm'].flatMap((compare) => [asked(compare, 'holds'), asked(compare, 'fails')])).toEqual([
      ['bar.dish_mm', 3, 'lessThanInclusive', 8], ['bar.dish_mm', 3, 'greaterThan', 8], ['bar.dish_mm', 3, 'lessThan', 8], ['bar.dish_mm', 3, 'greaterThanInclusive', 8],
      ['bar.dish_mm', -3, 'greaterThanInclusive', 8], ['bar.dish_mm', -3, 'lessThan', 8], ['bar.dish_mm', -3, 'greaterThan', 8], ['bar.dish_mm', -3, 'lessThanInclusive', 8],
    ]);
    expect(linesOf(one(bar('{ fact: bar.span_mm, at-most: 8 mm }')).rules[0]!.require).map(comparesMagnitude)).toEqual([false]);
  });
  test('a share is one of the size of its fact; where that is not known, its path and reason are told', () => {
    const share = ['s: { value: 1/4, of: bar.dish_mm, source: proposal }'];
    const require = '{ fact: bar.span_mm, at-least: { limit: s } }';
    expect(posed(require, [fact('bar.span_mm', 'top', 9), fact('bar.dish_mm', 'top', -12)], share)).toMatchObject({ actual: 9, limit: 3, used: 1 / 3, reason: null });
    expect(posed(require, [fact('bar.span_mm', 'top', 9), fact('bar.dish_mm', 'top', null, 'Lost.')], share)).toMatchObject({ actual: 9, limit: null, used: null, reason: { path: 'bar.dish_mm', why: 'Lost.' } });
    expect(posed(require, [fact('bar.dish_mm', 'top', 8), fact('bar.span_mm', 'top', null, 'Gone.')], share)).toMatchObject({ actual: null, limit: 2, reason: { path: 'bar.span_mm', why: 'Gone.' } });
  });
  test('a group is asked as far as it is known, and only where that decides', () => {
    const whole = posed('{ fact: bar.span_mm, at-most: 1 mm }', [fact('bar.span_mm', 'top', 1)]);
    const line = (name: string, known: boolean): PosedLine => ({ ...whole, ready: { ...whole.ready, line: { ...whole.line, fact: name as 'bar.span_mm' } }, reason: known ? null : { path: 'p', why: 'w' } });
    const group = (join: 'all' | 'any', known: readonly boolean[]) => ({ join, parts: known.map((is, i) => line(`f${i}`, is)) });
    const asked = (join: 'all' | 'any', wanted: 'holds' | 'fails', ...known: readonly boolean[]) => {
      const part = question(group(join, known), wanted);
      const told = (one: NonNullable<typeof part>): string => ('parts' in one ? `${one.join}(${one.parts.map(told).join(' ')})` : `${one.fact}:${one.operator}`);
      return part === null ? null : told(part);
    };
    expect([asked('all', 'holds', true, true), asked('all', 'fails', true, true), asked('any', 'holds', true, true), asked('any', 'fails', true, true)]).toEqual(['all(f0:lessThanInclusive f1:lessThanInclusive)', 'any(f0:greaterThan f1:greaterThan)', 'any(f0:lessThanInclusive f1:lessThanInclusive)', 'all(f0:greaterThan f1:greaterThan)']);
    expect([asked('all', 'holds', true, false), asked('all', 'fails', true, false), asked('any', 'holds', true, false), asked('any', 'fails', true, false)]).toEqual([null, 'f0:greaterThan', 'f0:lessThanInclusive', null]);
    expect([asked('all', 'fails', true, false, true), asked('any', 'holds', false, false), asked('all', 'holds', false), asked('all', 'holds', true)]).toEqual(['any(f0:greaterThan f2:greaterThan)', null, null, 'f0:lessThanInclusive']);
    expect([isKnown(group('any', [true, true])), isKnown(group('all', [true, false])), isKnown(group('any', [false, true])), isKnown({ join: 'all', parts: [line('f', true), group('any', [true, false])] }), isKnown(line('f', true)), isKnown(line('f', false))]).toEqual([true, false, false, false, true, false]);
  });
  test.each<[string, (line: EngineLine) => EnginePart]>([['of one line', (line) => line], ['in groups', (line) => ({ join: 'any', parts: [line, line] })]])('words with words in them are not mixed up, %s', async (_, grouped) => {
    const ask = async (known: string, value: string) => (await decide([{ event: 'e', priority: 1, questions: [{ about: 0, when: grouped({ fact: 'f', actual: known, operator: 'equal', value }) }] }])).length;
    expect([await ask('a equal a', 'a equal a'), await ask('a', 'a equal a equal a'), await ask('a equal a equal a', 'a')]).toEqual([1, 0, 0]);
  });
});

describe('limits', () => {
  const rules = one(bar('{ fact: bar.dish_mm, at-most: { limit: l } }', 'by-limit'), ['l: { stop: 4 mm, caution: 3 mm, inches: { stop: 1/4 in, caution: 1/8 in }, source: proposal }', 'part: { value: 1/4, of: bar.span_mm, source: proposal }', 'plain: { value: 7 mm, source: proposal }']);
  test('as numbers, and as shares of what another fact measures, whichever way that points', () => {
    const of = (name: string, span: number | null) => limitValue(rules, name, () => span);
    expect([of('l', null), of('plain', null), of('part', 8), of('part', -8), of('part', 0), of('part', null), of('part', Infinity), of('none', 8), limitValue(rules, 'plain', () => 1, 'kg')]).toEqual([{ stop: 4, caution: 3 }, { value: 7 }, { value: 2 }, { value: 2 }, { value: 0 }, null, null, null, null]);
  });
  test('in inches are their twins, worked out once; in millimetres nothing changes', () => {
    const inch = rulesIn(rules, 'inch');
    expect(inch.thresholds.get('l in mm')).toEqual({ of: null, value: null, stop: 6.35, caution: 3.175 });
    expect([rulesIn(rules, 'metric') === rules, rulesIn(rules, 'inch').limits === inch.limits, rulesIn(inch, 'inch').thresholds === inch.thresholds, inch.limits.get('plain') === rules.limits.get('plain')]).toEqual([true, true, true, true]);
  });
  test('keys tell name and unit, both ways', () => {
    expect([thresholdKey('a-b', 'N/m'), unitOfKey('a-b in N/m')]).toEqual(['a-b in N/m', { name: 'a-b', unit: 'N/m' }]);
    expect(['3', '3 N', '3 Nm', '3 deg', '3 Hz', '3 days', '3 MPa', '3 parsec', ''].map(isAmount)).toEqual([true, true, true, true, true, true, true, false, false]);
  });
  test('named by a rule: in its lines, its stop and its sentences, each once', () => {
    const rule = rulesetFrom(rulesText([bar('{ fact: bar.dish_mm, at-most: { limit: a } }', '{ stop: { limit: b } }', 'applies: { fact: bar.span_mm, above: { limit: c } }, ')], ['a', 'b', 'c', 'd'].map((name, i) => `${name}: { value: ${i + 1} mm, source: proposal }`)).replace('Change it.', '{limits.d} {limits.a} {about}')).rules[0]!;
    expect([limitsOfRule(rule), placeholdersOf('{a} and {limits.b}: {}')]).toEqual([['a', 'c', 'b', 'd'], ['a', 'limits.b', '']]);
  });
  test('that define a chance are one length above nought', () => {
    const found = (limit: string) => { const loaded = loadRuleset(new Map([['own.yaml', rulesText([bar('{ fact: bar.dish_mm, at-most: 3 mm }')], [`corner-lift: { ${limit}, source: proposal }`])]]), 'own.yaml'); return loaded.ok ? [] : loaded.problems.map(({ code }) => code); };
    expect(['value: 5 mm', 'value: 0.5 mm', 'value: 0 mm', 'value: -1 mm', 'value: 5 kg', 'stop: 5 mm, caution: 3 mm', 'value: 1/150, of: frame.shorter_side_mm', 'value: 1/150, of: frame.weight_kg'].map(found)).toEqual([[], [], ...Array<string[]>(4).fill(['limit-misfit']), [], ['limit-misfit']]);
  });
  test('of signed facts are no less than nought either way they are told; nought itself may be', () => {
    const found = (compare: string, limit: string) => { const loaded = loadRuleset(new Map([['own.yaml', rulesText([bar(`{ fact: bar.dish_mm, ${compare}: { limit: l } }`)], [`l: { ${limit}, source: proposal }`])]]), 'own.yaml'); return loaded.ok ? [] : loaded.problems.map(({ code }) => code); };
    expect([found('at-most', 'value: 0 mm'), found('at-most', 'value: -0.5 mm'), found('below', 'value: -0.5 mm'), found('at-least', 'value: -0.5 mm'), found('above', 'value: -0.5 mm'), found('at-most', 'value: 1 mm, inches: -1/8 in'), found('at-most', 'value: 1 mm, inches: 1/8 in'), found('at-most', 'value: 1 mm, inches: 1 lb')]).toEqual([[], ['limit-misfit'], ['limit-misfit'], [], [], ['limit-misfit'], [], ['limit-misfit']]);
  });
});

describe('sentences', () => {
  const said = async (ruleset: Ruleset, value: number | null, more: readonly Fact[] = []) => (await evaluateRules(ruleset, [fact('bar.dish_mm', 'top', value), ...more])).findings.find(({ about }) => about === 'top')!.say;
  test('below nought only below nought, told with its size; a stop and a clear in words of their own', async () => {
    const ruleset = bare('require: { fact: bar.dish_mm, at-least: 4 mm }, otherwise: caution, say-below-zero: "Turned {actual}.", say-clear: "Good {actual}."', 'Short {actual}.');
    expect([await said(ruleset, 0.5), await said(ruleset, 0), await said(ruleset, -2), await said(ruleset, 4)]).toEqual(['Short 0.5 mm.', 'Short 0 mm.', 'Turned 2 mm.', 'Good 4 mm.']);
    const stopping = bare('require: { fact: bar.dish_mm, at-most: 3 mm }, otherwise: { stop: 5 mm }, say-stop: "Stop {actual}."', 'Much {actual}.');
    expect([await said(stopping, 2), await said(stopping, -4), await said(stopping, 6)]).toEqual(['Much 2 mm.', 'Much 4 mm.', 'Stop 6 mm.']);
  });
  test('how much of a limit is used is told up to 999 per cent itself', async () => {
    const ruleset = bare('require: { fact: bar.dish_mm, at-most: 10 mm }, otherwise: caution', '{used}');
    expect([await said(ruleset, 99.9), await said(ruleset, 99.91), await said(ruleset, 0)]).toEqual(['999 %', 'Over 999 %', '0 %']);
  });
  test('amounts of limits in the unit they are used in, of two thresholds the caution; what is not known says so', async () => {
    const limits = '\nlimits:\n  two: { stop: 9 mm, caution: 6 mm, source: proposal }\n  part: { value: 1/4, of: bar.span_mm, source: proposal }\n  load: { value: 7 kg, source: proposal }\nrules:';
    const ruleset = rulesetFrom(`ruleset: 1\nname: Test${limits}\n  - { id: t/a, each: bar, require: { fact: bar.dish_mm, at-most: { limit: two } }, otherwise: by-limit, say: "{limits.two}, {limits.part}, {limits.load}, {bar.span_mm}", do: [ "Do." ], source: proposal }\n`);
    expect([await said(ruleset, 1, [fact('bar.span_mm', 'top', 32)]), await said(ruleset, 1)]).toEqual(['6 mm, 8 mm, 7 kg, 32 mm', '6 mm, unknown, 7 kg, an unknown amount']);
  });
  test('so many times a thing, with the small word that the thing begins with; once is the thing itself', async () => {
    const ruleset = rulesetFrom('ruleset: 1\nname: Test\nrules:\n  - { id: t/a, each: frame, require: { fact: frame.twist_reserve, at-least: 1 }, otherwise: stop, say: "Carries {actual} times what it must, {actual} times.", do: [ x ], source: proposal }\n');
    const told = async (value: number) => (await evaluateRules(ruleset, [fact('frame.twist_reserve', 'frame', value)])).findings[0]!.say;
    expect([await told(2.5), await told(1)]).toEqual(['Carries 2.5 times what it must, 2.5 times.', 'Carries what it must, as much.']);
  });
  test('of several lines the one that uses most is shown, the first of equals', async () => {
    const ruleset = bare('require: { all: [ { fact: bar.dish_mm, at-most: 10 mm }, { fact: bar.span_mm, at-most: 100 mm }, { fact: bar.d_mm, at-most: 50 mm } ] }, otherwise: caution');
    const shown = async (dish: number, span: number, d: number) => { const [finding] = (await evaluateRules(ruleset, [fact('bar.dish_mm', 'top', dish), fact('bar.span_mm', 'top', span), fact('bar.d_mm', 'top', d)])).findings; return [finding!.verdict, finding!.fact, finding!.used]; };
    expect([await shown(1, 30, 10), await shown(5, 50, 25), await shown(12, 130, 60), await shown(9, 99, 55)]).toEqual([['clear', 'bar.span_mm', 0.3], ['clear', 'bar.dish_mm', 0.5], ['caution', 'bar.span_mm', 1.3], ['caution', 'bar.d_mm', 1.1]]);
  });
  test('advice that a plan follows already is left away, only that, and only where it is known to', async () => {
    const ruleset = rulesetFrom('ruleset: 1\nname: Test\nrules:\n  - { id: t/a, each: bar, require: { fact: bar.dish_mm, at-most: 3 mm }, otherwise: stop, say: x, do: [ { say: "One.", unless: { fact: bar.bond, is: glue } }, "Two.", { say: "Three.", unless: { fact: bar.span_mm, below: 9 mm } } ], source: proposal }\n');
    const advice = async (...facts: readonly Fact[]) => (await evaluateRules(ruleset, [fact('bar.dish_mm', 'top', 4), ...facts])).findings[0]!.do;
    expect([await advice(), await advice(fact('bar.bond', 'top', 'glue')), await advice(fact('bar.bond', 'top', 'screws'), fact('bar.span_mm', 'top', 8)), await advice(fact('bar.bond', 'top', 'glue'), fact('bar.span_mm', 'top', 9))]).toEqual([['One.', 'Two.', 'Three.'], ['Two.', 'Three.'], ['One.', 'Two.'], ['Two.', 'Three.']]);
  });
  test('what was unknown, or becomes so, is told in a comparison by that alone', () => {
    const finding = (verdict: Finding['verdict'], say: string, path = 'bar.span_mm'): Finding => ({ rule: 'a', about: 'top', verdict, fact: path, actual: 5, limit: 10, unit: 'mm', used: null, say, do: [], cautions: [], source: 'proposal' }) as unknown as Finding;
    const why = (before: readonly Finding[], after: readonly Finding[]) => compareVerdicts(before, after).changes.map((change) => change.why);
    expect([why([finding('unknown', 'A.')], [finding('stop', 'B.')]), why([finding('stop', 'A.')], [finding('unknown', 'B.')]), why([], [finding('stop', 'B.')]), why([finding('stop', 'A.')], []), why([finding('stop', 'A.')], [finding('clear', 'B.', 'bar.d_mm')])]).toEqual([
      ['It was not known before. B.'], ['B.'], ['The rule was not asked before.'], ['The rule is not asked any more.'], ['The rule looks at bar.d_mm where it looked at bar.span_mm.'],
    ]);
  });
});

describe('checks of a ruleset', () => {
  const speech = (rule: string, limits: readonly string[] = []) => { const ruleset = one(rule, limits); return canSpeak(ruleset, ruleset.rules[0]!); };
  test('a rule that can speak, is never asked, never speaks or is never clear', async () => {
    expect(await speech(bar('{ fact: bar.dish_mm, at-most: 3 mm }'))).toBe('speaks');
    expect(await speech(bar('{ all: [ { fact: bar.span_mm, above: 5 mm }, { fact: bar.span_mm, below: 4 mm } ] }'))).toBe('never-clear');
    expect(await speech(bar('{ fact: bar.span_mm, at-least: 0 mm }'))).toBe('never-speaks');
    expect(await speech(bar('{ fact: bar.span_mm, at-least: 1 mm }', 'caution', 'applies: { fact: bar.span_mm, below: 0 mm }, '))).toBe('never-asked');
    expect(await speech(bar('{ fact: bar.stock, is: oak }'))).toBe('speaks');
    expect(await speech(bar('{ fact: bar.stock, is-not: oak }', 'stop', 'applies: { fact: bar.stock, is: oak }, '))).toBe('never-clear');
    expect(await speech(bar('{ fact: bar.span_mm, at-most: { limit: l } }', 'by-limit', 'applies: { fact: bar.span_mm, below: 8.5 mm }, '), ['l: { stop: 9 mm, caution: 8 mm, source: proposal }'])).toBe('speaks');
    expect(await speech(bar('{ fact: bar.span_mm, at-most: { limit: l } }', 'by-limit', 'applies: { fact: bar.span_mm, below: 7.5 mm }, '), ['l: { stop: 9 mm, caution: 8 mm, source: proposal }'])).toBe('never-speaks');
  });
  test('is tried on so many values at most: beyond them it is believed', async () => {
    // Five amounts of a size (nought, the largest, three about the bound): of n facts 5 to the power of n.
    const never = (facts: readonly string[]) => speech(bar(`{ any: [ ${facts.map((path) => `{ fact: ${path}, at-least: 0 mm }`).join(', ')} ] }`));
    expect([await never(['bar.span_mm']), await never(['bar.span_mm', 'bar.d_mm', 'bar.w_mm'])]).toEqual(['never-speaks', 'never-speaks']);
  });
  test('the element that examples are tried on', () => {
    expect((['bar', 'corner', 'crossbar', 'fastening', 'board', 'frame', 'cloth'] as const).map(exampleAbout)).toEqual(['top', 'top-left', 'crossbar-1', 'ply-screws', 'top-1', 'frame', 'cloth']);
  });
  test('two demands that no frame meets together: at the very bound, one just beyond it, and words', () => {
    const both = (p: string, q: string, path = 'bar.span_mm') => excludingRules(rulesetFrom(rulesText([`id: a, each: bar, require: { fact: ${path}, ${p} }, otherwise: stop`, `id: b, each: bar, require: { fact: ${path}, ${q} }, otherwise: stop`]))).length;
    expect([both('at-least: 5 mm', 'at-most: 5 mm'), both('at-most: 5 mm', 'at-least: 5 mm'), both('at-least: 5.1 mm', 'at-most: 5 mm'), both('at-most: 5 mm', 'at-least: 5.1 mm'), both('above: 5 mm', 'at-most: 5 mm'), both('at-least: 5 mm', 'below: 5 mm'), both('above: 4 mm', 'below: 5 mm'), both('at-least: 5 mm', 'above: 9 mm'), both('at-most: 5 mm', 'below: 2 mm')]).toEqual([0, 0, 1, 1, 1, 1, 0, 0, 0]);
    expect([both('is: glue', 'is: glue', 'bar.bond'), both('is: glue', 'is: screws', 'bar.bond'), both('is: glue', 'is-not: glue', 'bar.bond'), both('is-not: glue', 'is: glue', 'bar.bond'), both('is: glue', 'is-not: screws', 'bar.bond'), both('is-not: glue', 'is-not: glue', 'bar.bond')]).toEqual([0, 1, 1, 1, 0, 0]);
    expect([both('is: 2', 'is: 2', 'bar.plies_count'), both('is: 2', 'is: 3', 'bar.plies_count'), both('is: 2', 'at-least: 2', 'bar.plies_count'), both('is: 2', 'at-least: 3', 'bar.plies_count'), both('at-most: 1', 'is: 2', 'bar.plies_count')]).toEqual([0, 1, 0, 1, 1]);
  });
  test('an example is told with what came of it, and what it ought to be', async () => {
    const found = async (examples: string) => (await checkRuleset(new Map([['own.yaml', rulesText([`${bar('{ fact: bar.span_mm, at-most: 5 mm }', 'stop', 'applies: { fact: bar.d_mm, above: 2 mm }, ')}, examples: ${examples}`])]]), 'own.yaml')).problems.map(({ code, found, allowed }) => `${code} ${found} ${allowed}`.replace(/`/gu, ''));
    expect(await found('{ clear: 4 mm, edge: 5 mm, fails: 6 mm, with: { bar.d_mm: 3 } }')).toEqual([]);
    expect(await found('{ clear: 6 mm, edge: 5 mm, fails: 4 mm, with: { bar.d_mm: 3 } }')).toEqual([expect.stringMatching(/example-fails .*the example clear is stop.* an example that is clear/u), expect.stringMatching(/example-fails .*the example fails is clear.* an example that is not clear/u)]);
    expect(await found('{ clear: 4 mm, fails: 6 mm, with: { bar.d_mm: 2 } }')).toEqual([expect.stringMatching(/clear is silent.*here it is 2 mm/u), expect.stringMatching(/fails is silent/u)]);
  });
  test('the page of a rule says all that it says, and of a limit its history only where it has one', () => {
    const base = rulesText([bar('{ fact: bar.dish_mm, at-most: { limit: l } }', 'caution', 'say-clear: "All well.", say-below-zero: "Turned.", ')], ['l: { value: 3 mm, source: practice }']);
    const text = (files: Readonly<Record<string, string>>) => rulePageText(rulePage(rulesetFrom(files), 't/a')!);
    const alone = text({ 'base.yaml': base });
    expect(alone).toContain('## What it says\n\n{about}: {actual}, limit {limit}\n\nWhen the requirement holds: All well.\n\nWhen the value is below nought: Turned.\n');
    expect(alone).not.toContain('When it is a stop');
    expect(alone).toContain('## Limits\n\n- l: 3 mm. Source: practice.\n\n');
    expect(alone).not.toContain('## Examples');
    expect(text({ 'base.yaml': base, 'own.yaml': 'ruleset: 1\nname: Own\nbuilds-on: [ base ]\nlimits:\n  l: { value: 2 mm, source: measured }\n' })).toContain('- l: 2 mm. Source: measured.\n  - Test rules (base.yaml): 3 mm\n  - Own (own.yaml): 2 mm\n');
  });
});

describe('reading', () => {
  test('of the branches of a choice the one with least to complain of is followed, a complaint at the top weighing more', () => {
    const issue = (code: string, path: readonly (string | number)[], more: object = {}) => ({ code, path, message: '', ...more }) as never;
    const follow = (...errors: readonly (readonly never[])[]) => followBestBranch([issue('invalid_union', ['rules', 0], { errors })]).map((one) => `${one.code} ${one.path.join('.')}`);
    const wrong = (...path: readonly string[]) => issue('too_big', path);
    expect(follow([wrong('a'), wrong('b')], [wrong('c')])).toEqual(['too_big rules.0.c']);
    expect(follow([wrong('a')], [wrong('b', 'c')])).toEqual(['too_big rules.0.b.c']);
    expect(follow([wrong('b', 'c')], [wrong('a')])).toEqual(['too_big rules.0.b.c']);
    expect(follow([wrong('a')], [wrong('b')])).toEqual(['too_big rules.0.a']);
    // Two at depth one weigh 3, two unknown keys at the top 4, three 6; one at the top 2.
    expect(follow([issue('unrecognized_keys', [], { keys: ['x', 'y'] })], [wrong('a'), wrong('b')])).toEqual(['too_big rules.0.a', 'too_big rules.0.b']);
    expect(follow([issue('unrecognized_keys', [], { keys: ['x'] })], [wrong('a'), wrong('b')])).toEqual(['unrecognized_keys rules.0']);
    expect(follow([issue('invalid_type', [])], [wrong('a'), wrong('b')])).toEqual(['too_big rules.0.a', 'too_big rules.0.b']);
    expect(follow([issue('invalid_type', [])])).toEqual(['invalid_union rules.0']);
    expect(follow([issue('invalid_value', [])], [wrong('a'), wrong('b')])).toEqual(['invalid_union rules.0']);
    // A choice within a branch weighs as its best branch, at most as one complaint where it stands.
    expect(follow([issue('invalid_union', ['x'], { errors: [[wrong('d', 'e', 'f')], [wrong('g'), wrong('h')]] })], [wrong('a', 'b')])).toEqual(['too_big rules.0.x.d.e.f']);
  });
  test('a ruleset without a rule is told at its beginning, and what to write where a word means nothing by its first', () => {
    expect(problemsOf('ruleset: 1\nname: Empty\n')).toMatchObject([{ code: 'no-rules', file: 'own.yaml', path: 'rules', line: 1, column: 1, severity: 'error' }]);
    const hint = (rule: string) => problemsOf(rulesText([rule]))[0]!.hint;
    expect(hint(bar('{ fact: bar.bond, is: zzzzzzzzzz }'))).toMatch(/^Write one of its words, such as `[a-z+-]+`\.$/u);
    expect(hint(bar('{ fact: bar.stock, is: 3 }'))).toBe('Write one of its words, such as `a key of the shelf`.');
    expect(hint(`${bar('{ fact: bar.span_mm, below: 3 mm }')}, cautions: [ zzzzzzzzzzzzzz ]`)).toMatch(/^Write one of these, such as `[a-z-]+`, or leave the caution out\.$/u);
  });
  test('names, ids and points up to their bounds', () => {
    const points = (value: number) => { const loaded = loadRuleset(new Map([['own.yaml', rulesText([bar('{ fact: bar.dish_mm, at-most: 3 mm }')]).replace('rules:', `points: { t/a: ${value} }\nrules:`)]]), 'own.yaml'); return loaded.ok; };
    expect([0, 1000, 1000.5, -0.5].map(points)).toEqual([true, true, false, false]);
    const source = (key: string) => { const loaded = loadRuleset(new Map([['own.yaml', rulesText([bar('{ fact: bar.dish_mm, at-most: 3 mm }')]).replace('source: proposal', `source: "${key}"`)]]), 'own.yaml'); return loaded.ok; };
    expect(['a'.repeat(60), 'a'.repeat(61), ' ', 'a b', 'nds-2018'].map(source)).toEqual([true, false, false, false, true]);
    const title = (length: number) => { const loaded = loadRuleset(new Map([['own.yaml', rulesText([`${bar('{ fact: bar.dish_mm, at-most: 3 mm }')}, title: ${'t'.repeat(length)}`])]]), 'own.yaml'); return loaded.ok; };
    expect([title(80), title(81)]).toEqual([true, false]);
    const below = (length: number) => { const loaded = loadRuleset(new Map([['own.yaml', rulesText([`${bar('{ fact: bar.dish_mm, at-most: 3 mm }')}, say-below-zero: ${'t'.repeat(length)}`])]]), 'own.yaml'); return loaded.ok; };
    expect([below(400), below(401)]).toEqual([true, false]);
  });
  test('an edition and a day that are not told are none; a file with anything to say of it is not taken as sound', () => {
    const plain = rulesText([bar('{ fact: bar.dish_mm, at-most: { limit: dish } }')], ['dish: { value: 3 mm, source: proposal }']);
    expect(rulesetFrom(plain)).toMatchObject({ name: 'Test rules', version: null, date: null });
    const stack = (text: string) => prepareStack(new Map([['own.yaml', text]]), 'own.yaml', { prepared: [prepareLayer(text, 'own.yaml')!] });
    expect([stack(plain), stack(plain.replace('rules:', '  dihs: { value: 3 mm, source: proposal }\nrules:'))]).toEqual([{ of: [0], thresholds: [['dish in mm', { of: null, value: 3, stop: null, caution: null }]] }, null]);
  });
  test('words of examples: any where the fact has no list of them, else one of it', () => {
    const codes = (rule: string) => { const loaded = loadRuleset(new Map([['own.yaml', rulesText([rule])]]), 'own.yaml'); return loaded.ok ? [] : loaded.problems.map(({ code }) => code); };
    expect([codes(`${bar('{ fact: bar.stock, is: oak }')}, examples: { clear: oak, fails: 3 }`), codes(`${bar('{ fact: bar.bond, is: glue }')}, examples: { clear: glue, fails: none }`), codes(`${bar('{ fact: bar.bond, is: glue }')}, examples: { clear: glue, fails: clue }`)]).toEqual([[], [], ['not-its-word']]);
    expect(one(`${bar('{ fact: bar.span_mm, at-most: 3 mm }')}, examples: { clear: 1 in, edge: 3, fails: { bar.span_mm: 4 cm } }`).rules[0]!.examples).toEqual({ clear: { 'bar.span_mm': 25.4 }, edge: { 'bar.span_mm': 3 }, fails: { 'bar.span_mm': 40 }, with: {} });
  });
  test('a limit loosened by one of its amounts alone, of a rule’s own stop, or in inches alone, is told', () => {
    const base = (l: string) => rulesetFrom(rulesText([bar('{ fact: bar.dish_mm, at-most: 2 mm }', '{ stop: { limit: l } }')], [`l: { ${l}, source: proposal }`]));
    const looser = (was: string, is: string) => appliedOf(base(is), base(was)).loosened.map(({ surely }) => surely);
    expect([looser('value: 5 mm', 'value: 6 mm'), looser('value: 5 mm', 'value: 4 mm'), looser('value: 5 mm, inches: 1/4 in', 'value: 5 mm, inches: 5/16 in'), looser('value: 5 mm, inches: 1/4 in', 'value: 5 mm, inches: 3/16 in'), looser('value: 5 mm', 'value: 5.0 mm')]).toEqual([[true], [], [true], [], []]);
  });
});
