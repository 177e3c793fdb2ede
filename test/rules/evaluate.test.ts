import { describe, expect, test } from 'vitest';
import type { Fact } from '../../src/facts/fact.js';
import { worstVerdict } from '../../src/findings/summary.js';
import { evaluateRules } from '../../src/rules/evaluate.js';
import { aboutInWords } from '../../src/rules/say/say.js';
import { limitValue } from '../../src/rules/limit-value.js';
import { fact, ofBars, rulesetFrom, rulesText } from './helpers.js';

const bow = rulesetFrom(rulesText(
  ['id: bars/bow, each: bar, applies: { fact: bar.span_mm, above: 300 mm }, require: { fact: bar.inward_bow_long_term_mm, at-most: { limit: bow } }, otherwise: caution'],
  ['bow: { value: 1/400, of: bar.span_mm, source: proposal }'],
));
const spans = ofBars('bar.span_mm', { top: 1200, bottom: 1200, left: 800, right: 250 });
const bows = { top: 3, bottom: 3.1, left: -2.5, right: 9 };

async function verdictsOf(facts: readonly Fact[], ruleset = bow): Promise<Record<string, string>> {
  const { findings } = await evaluateRules(ruleset, facts);
  return Object.fromEntries(findings.map((finding) => [finding.about, finding.verdict]));
}

describe('a rule asked of every bar', () => {
  test('is clear at the limit, a caution beyond it, compares the size of a signed fact, and is silent where it does not apply', async () => {
    const { findings, silent } = await evaluateRules(bow, [...spans, ...ofBars('bar.inward_bow_long_term_mm', bows)]);
    expect(findings.map(({ about, verdict, limit, used }) => [about, verdict, limit, used])).toEqual([
      ['top', 'clear', 3, 1],
      ['bottom', 'caution', 3, 3.1 / 3],
      ['left', 'caution', 2, 1.25],
    ]);
    expect(findings[1]).toMatchObject({ rule: 'bars/bow', fact: 'bar.inward_bow_long_term_mm', actual: 3.1, unit: 'mm', say: 'The bottom bar: 3.1 mm, limit 3 mm', do: ['Change it.'], source: 'proposal' });
    expect(findings[0]!.do).toEqual([]);
    expect(findings[2]!.actual).toBe(-2.5);
    expect(silent).toEqual([{ rule: 'bars/bow', about: 'right', why: 'Only asked when bar.span_mm is above 300 mm; here it is 250 mm.', why_read: 'Only asked when bar span is above 300 mm; here it is 250 mm.' }]);
  });

  test('speaks in inches to whoever wrote inches, and tells a value just beyond its limit from the limit', async () => {
    const facts = [...spans, ...ofBars('bar.inward_bow_long_term_mm', { ...bows, bottom: 3.02 })];
    const inch = await evaluateRules(bow, facts, { units: 'inch' });
    expect(inch.findings[2]!.say).toBe('The left bar: 3/32 in, limit 5/64 in');
    const metric = await evaluateRules(bow, facts);
    expect(metric.findings[1]!.say).toBe('The bottom bar: just over 3 mm, limit 3 mm');
  });
});

describe('how elements and chances are said', () => {
  test.each([['left', 'the left bar'], ['top-right', 'the top right corner'], ['crossbar-2', 'crossbar 2'], ['top-2', 'ply 2 of the top bar'], ['crossbar-1-2', 'ply 2 of crossbar 1'], ['ply-screws', 'the ply screws'], ['frame', 'the frame']])('%s is %s', (about, words) => {
    expect(aboutInWords(about)).toBe(words);
  });

  test('a chance is said in odds, its limit in per cent; advice is filled in too', async () => {
    const ruleset = rulesetFrom(rulesText(['id: a, each: frame, require: { fact: warp.corner_lift_chance, at-most: 10 % }, otherwise: caution'], ['corner-lift: { value: 1/150, of: frame.shorter_side_mm, source: proposal }']).replace('Change it.', '{limits.corner-lift} of {frame.width_mm}'));
    const { findings } = await evaluateRules(ruleset, [fact('warp.corner_lift_chance', 'frame', 1 / 6), fact('frame.shorter_side_mm', 'frame', 900), fact('frame.width_mm', 'frame', null)]);
    expect(findings[0]).toMatchObject({ say: 'The frame: about 1 in 6, limit 10 %', do: ['6 mm of an unknown amount'] });
  });
});

describe('what is not known is unknown, never clear', () => {
  const good = [...spans, ...ofBars('bar.inward_bow_long_term_mm', { top: 1, bottom: 1, left: 1, right: 1 })];
  const without = (path: string, about: string): readonly Fact[] => good.filter((one) => !(one.path === path && one.about === about));
  const changed = (value: unknown, extra: Partial<Fact> = {}, path = 'bar.inward_bow_long_term_mm'): readonly Fact[] =>
    good.map((one) => (one.path === path && one.about === 'top' ? { ...one, value: value as number, ...extra } : one));

  test.each([
    ['a missing fact', without('bar.inward_bow_long_term_mm', 'top')],
    ['a missing fact of `applies`, which is also what the limit is a share of', without('bar.span_mm', 'top')],
    ['null', changed(null)],
    ['undefined', changed(undefined)],
    ['NaN', changed(Number.NaN)],
    ['infinity', changed(Number.POSITIVE_INFINITY)],
    ['minus infinity', changed(Number.NEGATIVE_INFINITY)],
    ['a numeric string', changed('1')],
    ['an object', changed({ fact: 'bar.span_mm' })],
    ['another unit', changed(1, { unit: 'N' })],
    ['NaN in `applies`', changed(Number.NaN, {}, 'bar.span_mm')],
    ['a numeric string in `applies`', changed('1200', {}, 'bar.span_mm')],
    ['two different values', [...good, fact('bar.inward_bow_long_term_mm', 'top', 2)]],
  ])('%s', async (_, facts) => {
    expect(await verdictsOf(facts)).toMatchObject({ top: 'unknown', left: 'clear' });
    const { findings } = await evaluateRules(bow, facts);
    expect(worstVerdict(findings)).toBe('unknown');
    expect(findings[0]!.say).toMatch(/^The top bar cannot be judged, because this is not known: [a-z][^.]+\. [A-Z]/);
  });

  test('the reason of a missing fact is told', async () => {
    const { findings } = await evaluateRules(bow, changed(null, { reason: 'The frame is unstable' }));
    expect(findings[0]).toMatchObject({ verdict: 'unknown', actual: null, used: null });
    expect(findings[0]!.say).toMatch(/not known: the inward bow after years[^.]*\. The frame is unstable\.$/);
  });

  test('the same value given twice is no contradiction', async () => {
    expect(await verdictsOf([...good, fact('bar.inward_bow_long_term_mm', 'top', 1)])).toMatchObject({ top: 'clear' });
  });

  test('a bar of which nothing at all is known is unknown, not silent', async () => {
    expect(await verdictsOf(good.filter(({ about }) => about !== 'left'))).toMatchObject({ left: 'unknown' });
    expect(await verdictsOf([])).toEqual({ top: 'unknown', bottom: 'unknown', left: 'unknown', right: 'unknown' });
  });

  test('a word outside the catalogue is unknown', async () => {
    const ruleset = rulesetFrom(rulesText(['id: a, each: frame, require: { fact: frame.mode, is-not: sideways }, otherwise: stop']));
    expect(await verdictsOf([fact('frame.mode', 'frame', 'banana')], ruleset)).toEqual({ frame: 'unknown' });
    expect(await verdictsOf([fact('frame.mode', 'frame', 'propeller')], ruleset)).toEqual({ frame: 'clear' });
    expect(await verdictsOf([fact('frame.mode', 'frame', 'sideways')], ruleset)).toEqual({ frame: 'stop' });
  });

  test('a limit whose own fact makes it infinite is unknown', async () => {
    const huge = rulesetFrom(rulesText(['id: a, each: bar, require: { fact: bar.dish_mm, at-most: { limit: l } }, otherwise: stop'], ['l: { value: 1000, of: bar.span_mm, source: proposal }']));
    const facts = [...ofBars('bar.span_mm', { top: 1e306, bottom: 1, left: 1, right: 1 }), ...ofBars('bar.dish_mm', { top: 1, bottom: 1, left: 1, right: 1 })];
    expect(await verdictsOf(facts, huge)).toMatchObject({ top: 'unknown', bottom: 'clear' });
  });
});

describe('elements', () => {
  const slender = rulesetFrom(rulesText(['id: c, each: crossbar, require: { fact: crossbar.bow_mm, at-most: 1 mm }, otherwise: caution']));

  test('a rule about crossbars is silent without crossbars', async () => {
    const { findings, silent } = await evaluateRules(slender, [fact('frame.crossbars_count', 'frame', 0)]);
    expect(findings).toEqual([]);
    expect(silent).toEqual([{ rule: 'c', about: null, why: 'The plan has no crossbars.', why_read: 'The plan has no crossbars.' }]);
  });

  test('a crossbar that the frame counts but nobody computed is unknown', async () => {
    expect(await verdictsOf([fact('frame.crossbars_count', 'frame', 2), fact('crossbar.bow_mm', 'crossbar-1', 0.5)], slender)).toEqual({ 'crossbar-1': 'clear', 'crossbar-2': 'unknown' });
  });

  test('facts of the frame are seen from every element, facts of other elements are not', async () => {
    const ruleset = rulesetFrom(rulesText(['id: c, each: corner, require: { fact: frame.weight_kg, at-most: 5 kg }, otherwise: caution']));
    expect(await verdictsOf([fact('frame.weight_kg', 'frame', 6)], ruleset)).toEqual({ 'top-left': 'caution', 'top-right': 'caution', 'bottom-left': 'caution', 'bottom-right': 'caution' });
  });

  test('cloth that nobody computed is unknown; a piece that does not hang is silent', async () => {
    const ruleset = rulesetFrom(rulesText([
      'id: a, each: cloth, require: { fact: cloth.overlap_mm, at-least: 20 mm }, otherwise: caution',
      'id: b, each: hanging, require: { fact: hanging.lean_deg, at-most: 5 deg }, otherwise: caution',
    ]));
    const { findings, silent } = await evaluateRules(ruleset, []);
    expect(findings.map(({ about, verdict }) => [about, verdict])).toEqual([['cloth', 'unknown']]);
    expect(silent).toEqual([{ rule: 'b', about: null, why: 'The plan does not hang the piece.', why_read: 'The plan does not hang the piece.' }]);
  });
});

describe('two thresholds', () => {
  const byLimit = rulesetFrom(rulesText(['id: t, each: frame, require: { fact: frame.twist_reserve, at-least: { limit: t } }, otherwise: by-limit'], ['t: { stop: 1.5, caution: 2.5, source: proposal }']));
  const written = rulesetFrom(rulesText(['id: t, each: frame, require: { fact: frame.twist_reserve, at-least: 2.5 }, otherwise: { caution: 2.5, stop: 1.5 }']));
  const named = rulesetFrom(rulesText(['id: t, each: frame, require: { fact: frame.twist_reserve, at-least: { limit: c } }, otherwise: { stop: { limit: s } }'], ['c: { value: 2.5, source: proposal }', 's: { value: 1.5, source: proposal }']));

  test.each([['by-limit', byLimit], ['thresholds in the rule', written], ['thresholds by name', named]])('%s: stop beyond the one, caution beyond the other', async (_, ruleset) => {
    const outcome = async (reserve: number | null) => (await evaluateRules(ruleset, [fact('frame.twist_reserve', 'frame', reserve)])).findings.map(({ verdict, limit, used }) => [verdict, limit, used])[0];
    expect(await outcome(4)).toEqual(['clear', 2.5, 0.625]);
    expect(await outcome(2.5)).toEqual(['clear', 2.5, 1]);
    expect(await outcome(2)).toEqual(['caution', 2.5, 1.25]);
    expect(await outcome(1.5)).toEqual(['caution', 2.5, 2.5 / 1.5]);
    expect(await outcome(1.2)).toEqual(['stop', 1.5, 1.25]);
    expect((await outcome(null))?.[0]).toBe('unknown');
  });

  test('in a group, a line with one threshold counts for both', async () => {
    const group = rulesetFrom(rulesText(['id: t, each: frame, require: { all: [ { fact: frame.twist_reserve, at-least: { limit: t } }, { fact: frame.weight_kg, at-most: 5 kg } ] }, otherwise: by-limit'], ['t: { stop: 1.5, caution: 2.5, source: proposal }']));
    const of = async (reserve: number, kg: number) => (await evaluateRules(group, [fact('frame.twist_reserve', 'frame', reserve), fact('frame.weight_kg', 'frame', kg)])).findings[0]!.verdict;
    expect([await of(3, 4), await of(2, 4), await of(1, 4), await of(3, 6)]).toEqual(['clear', 'caution', 'stop', 'stop']);
  });

  test('`used` is null where it makes no sense: nothing, negative, or a limit of zero', async () => {
    const exit = rulesetFrom(rulesText(['id: e, each: fastening, require: { fact: fastening.exit_mm, at-least: 3 mm }, otherwise: { stop: 0 mm }']));
    const outcome = async (value: number) => (await evaluateRules(exit, [fact('fastening.exit_mm', 'ply-screws', value)])).findings.map(({ verdict, used, say }) => [verdict, used, say])[0];
    expect(await outcome(-26)).toEqual(['stop', null, 'The ply screws: −26 mm, limit 0 mm']);
    expect((await outcome(0))?.slice(0, 2)).toEqual(['caution', null]);
    expect((await outcome(6))?.slice(0, 2)).toEqual(['clear', 0.5]);
    // Nothing of a limit is a use, of none of it.
    const weight = rulesetFrom(rulesText(['id: w, each: frame, require: { fact: frame.weight_kg, at-most: 5 kg }, otherwise: stop']));
    const used = async (kg: number) => (await evaluateRules(weight, [fact('frame.weight_kg', 'frame', kg)])).findings[0]!.used;
    expect([await used(0), await used(5), await used(-1)]).toEqual([0, 1, null]);
  });
});

describe('groups, with three values', () => {
  const ruleset = (join: string) => rulesetFrom(rulesText([`id: g, each: frame, require: { ${join}: [ { fact: frame.weight_kg, at-most: 5 kg }, { fact: frame.dish_mm, at-most: 2 mm } ] }, otherwise: stop`]));
  const value = { T: [4, 1], F: [6, 3], U: [null, null] } as const;
  // Columns: first line, second line, all, any (T = holds, F = does not, U = unknown).
  test.each([
    ['T', 'T', 'clear', 'clear'],
    ['T', 'F', 'stop', 'clear'],
    ['T', 'U', 'unknown', 'clear'],
    ['F', 'T', 'stop', 'clear'],
    ['F', 'F', 'stop', 'stop'],
    ['F', 'U', 'stop', 'unknown'],
    ['U', 'T', 'unknown', 'clear'],
    ['U', 'F', 'stop', 'unknown'],
    ['U', 'U', 'unknown', 'unknown'],
  ] as const)('%s and %s: all is %s, any is %s', async (first, second, all, any) => {
    const facts = [fact('frame.weight_kg', 'frame', value[first][0]), fact('frame.dish_mm', 'frame', value[second][1])];
    expect(await verdictsOf(facts, ruleset('all'))).toEqual({ frame: all });
    expect(await verdictsOf(facts, ruleset('any'))).toEqual({ frame: any });
  });

  test('the failing line that uses most of its limit is shown', async () => {
    const { findings } = await evaluateRules(ruleset('all'), [fact('frame.weight_kg', 'frame', 6), fact('frame.dish_mm', 'frame', -5)]);
    expect(findings[0]).toMatchObject({ fact: 'frame.dish_mm', actual: -5, limit: 2, used: 2.5 });
    const one = await evaluateRules(ruleset('all'), [fact('frame.weight_kg', 'frame', 6), fact('frame.dish_mm', 'frame', 1.9)]);
    expect(one.findings[0]).toMatchObject({ fact: 'frame.weight_kg' });
  });
});

describe('limits outside rules', () => {
  const ruleset = rulesetFrom(rulesText(
    ['id: a, each: frame, require: { fact: frame.weight_kg, at-most: 5 kg }, otherwise: stop'],
    ['corner-lift: { value: 1/150, of: frame.shorter_side_mm, source: proposal }', 'flat: { value: 1/4 in, source: proposal }', 'two: { stop: 40 %, caution: 10 %, source: proposal }'],
  ));
  test('a share of a fact, a plain amount, two thresholds', () => {
    expect(limitValue(ruleset, 'corner-lift', (path) => (path === 'frame.shorter_side_mm' ? 900 : null))).toEqual({ value: 6 });
    expect(limitValue(ruleset, 'flat', () => null)).toEqual({ value: 6.35 });
    expect(limitValue(ruleset, 'two', () => null, 'chance')).toEqual({ stop: 0.4, caution: 0.1 });
  });
  test('null when the limit is not there, its fact is not known, or the unit does not fit', () => {
    expect(limitValue(ruleset, 'none', () => 1)).toBeNull();
    expect(limitValue(ruleset, 'corner-lift', () => null)).toBeNull();
    expect(limitValue(ruleset, 'corner-lift', () => Number.NaN)).toBeNull();
    expect(limitValue(ruleset, 'flat', () => null, 'N')).toBeNull();
  });
});
