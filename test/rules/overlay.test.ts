import { describe, expect, test } from 'vitest';
import { loadRuleset, prepareLayer, prepareStack, type PreparedStack } from '../../src/rules/read/load-ruleset.js';
import { evaluateRules } from '../../src/rules/evaluate.js';
import { linesOf, type Ruleset } from '../../src/rules/ruleset.js';
import { fact, problemsOf, rulesetFrom } from './helpers.js';

const rule = (id: string, most: string, say = 'x'): string => `{ id: ${id}, each: frame, require: { fact: frame.weight_kg, at-most: ${most} }, otherwise: stop, say: "${say}", do: [ y ], source: proposal }`;
const file = (name: string, below: readonly string[], limits: readonly string[] = [], rules: readonly string[] = []): string =>
  [`ruleset: 1`, `name: ${name}`, `builds-on: [ ${below.join(', ')} ]`, ...(limits.length ? ['limits:', ...limits.map((one) => `  ${one}`)] : []), ...(rules.length ? ['rules:', ...rules.map((one) => `  - ${one}`)] : [])].join('\n');
const limitText = (ruleset: Ruleset, name: string): unknown => ruleset.limits.get(name)?.amounts;
const verdict = async (ruleset: Ruleset, kg: number): Promise<string | undefined> => (await evaluateRules(ruleset, [fact('frame.weight_kg', 'frame', kg)])).findings[0]?.verdict;

const base = file('Base', [], ['weight: { value: 8 kg, source: proposal }', 'other: { value: 1 kg, source: practice }'], [rule('heavy', '{ limit: weight }'), rule('light', '90 kg')]);

describe('one ruleset over another', () => {
  test('replaces a limit by name, and the rule that uses it follows', async () => {
    const own = rulesetFrom({ 'base.yaml': base, 'own.yaml': file('Own', ['base'], ['weight: { value: 5 kg, source: measured }']) });
    expect([await verdict(rulesetFrom({ 'base.yaml': base }), 6), await verdict(own, 6)]).toEqual(['clear', 'stop']);
    expect(own.name).toBe('Own');
    expect(own.history.get('limit weight')).toEqual([
      { file: 'base.yaml', ruleset: 'Base', said: '8 kg' },
      { file: 'own.yaml', ruleset: 'Own', said: '5 kg' },
    ]);
    expect(own.history.get('limit other')).toHaveLength(1);
  });

  test('replaces a rule by id, in its old place', () => {
    const own = rulesetFrom({ 'base.yaml': base, 'own.yaml': file('Own', ['base'], [], [rule('new', '1 kg'), rule('heavy', '3 kg')]) });
    expect(own.rules.map(({ id, place }) => [id, place.file])).toEqual([['heavy', 'own.yaml'], ['light', 'base.yaml'], ['new', 'own.yaml']]);
  });

  test('switches a rule off with a reason, and on again', () => {
    const off = file('Off', ['base'], [], ['{ id: heavy, off: "We have a hoist." }']);
    const own = rulesetFrom({ 'base.yaml': base, 'off.yaml': off });
    expect(own.rules.map(({ id }) => id)).toEqual(['light']);
    expect(own.off).toMatchObject([{ id: 'heavy', reason: 'We have a hoist.', place: { file: 'off.yaml', line: 5 } }]);
    expect(own.history.get('rule heavy')?.map(({ said }) => said)).toEqual(['frame.weight_kg is at most the limit weight (8 kg); otherwise stop', 'switched off: We have a hoist.']);
    const again = rulesetFrom({ 'base.yaml': base, 'off.yaml': off, 'on.yaml': file('On', ['off'], [], [rule('heavy', '2 kg')]) });
    expect(again.rules.map(({ id }) => id)).toEqual(['heavy', 'light']);
    expect(again.off).toEqual([]);
  });

  test('a rule that does not exist cannot be switched off; the nearest is named', () => {
    expect(problemsOf({ 'base.yaml': base, 'own.yaml': file('Own', ['base'], [], ['{ id: heavvy, off: "We have no need." }']) })).toMatchObject([{ code: 'off-unknown', file: 'own.yaml', line: 5, hint: 'Did you mean `heavy`?' }]);
  });

  test('a limit that no longer fits its rule is told where it was changed', () => {
    const own = file('Own', ['base'], ['weight: { value: 5 mm, source: proposal }']);
    expect(problemsOf({ 'base.yaml': base, 'own.yaml': own })).toMatchObject([{ code: 'limit-misfit', file: 'own.yaml', line: 5, column: 3 }]);
  });

  test('a broken file below is not followed by complaints about what it would have held', () => {
    const problems = problemsOf({ 'base.yaml': base.replace('at-most: 90 kg', 'at-most: 90 mm'), 'own.yaml': file('Own', ['base'], [], ['{ id: light, off: "We have no need." }', rule('mine', '{ limit: weight }')]) });
    expect(problems.map(({ code, file: where }) => [code, where])).toEqual([['unit-misfit', 'base.yaml']]);
  });
});

describe('several rulesets below one', () => {
  const a = file('A', ['base'], ['weight: { value: 6 kg, source: proposal }']);
  const b = file('B', ['base'], ['weight: { value: 4 kg, source: proposal }']);
  const load = (own: string, extra: Readonly<Record<string, string>> = {}) => loadRuleset(new Map(Object.entries({ 'base.yaml': base, 'a.yaml': a, 'b.yaml': b, ...extra, 'own.yaml': own })), 'own.yaml');

  test('the one named later wins, whichever that is, and the conflict is told', () => {
    for (const [order, kg, at] of [[['a', 'b'], '4 kg', 'b.yaml'], [['b', 'a'], '6 kg', 'a.yaml']] as const) {
      const loaded = load(file('Own', order));
      expect(loaded).toMatchObject({ ok: true, warnings: [{ code: 'overlay-conflict', severity: 'warning', file: at, line: 5 }] });
      if (loaded.ok) expect(limitText(loaded.value, 'weight')).toEqual({ value: kg });
    }
  });

  test('a ruleset that is shared is laid once, at the bottom', () => {
    const loaded = load(file('Own', ['a', 'b']));
    expect(loaded.ok && loaded.value.layers.map((layer) => layer.file)).toEqual(['base.yaml', 'a.yaml', 'b.yaml', 'own.yaml']);
  });

  test('saying it oneself, or saying the same, is no conflict', () => {
    expect(load(file('Own', ['a', 'b'], ['weight: { value: 5 kg, source: proposal }']))).toMatchObject({ ok: true, warnings: [] });
    expect(load(file('Own', ['a', 'c']), { 'c.yaml': a.replace('name: A', 'name: C') })).toMatchObject({ ok: true, warnings: [] });
    expect(load(file('Own', ['c']), { 'c.yaml': file('C', ['a', 'b'], ['weight: { value: 3 kg, source: proposal }']) })).toMatchObject({ ok: true, warnings: [] });
  });

  test('one switching off what another changes is a conflict', () => {
    const c = file('C', ['base'], [], ['{ id: heavy, off: "We have no need." }']);
    const d = file('D', ['base'], [], [rule('heavy', '2 kg')]);
    expect(load(file('Own', ['c', 'd']), { 'c.yaml': c, 'd.yaml': d })).toMatchObject({ ok: true, warnings: [{ code: 'overlay-conflict', file: 'd.yaml' }] });
  });
});

describe('ways that lead nowhere', () => {
  test('a circle is named from end to end, at the place that closes it', () => {
    const texts = { 'a.yaml': file('A', ['b']), 'b.yaml': file('B', ['c']), 'c.yaml': file('C', ['a']) };
    const loaded = loadRuleset(new Map(Object.entries(texts)), 'a.yaml');
    expect(loaded).toMatchObject({ ok: false, problems: [{ code: 'builds-on-itself', file: 'c.yaml', line: 3, column: 14, found: '`a.yaml` builds on `b.yaml` builds on `c.yaml` builds on `a.yaml`' }] });
    expect(problemsOf({ 'own.yaml': file('Own', ['own']) })).toMatchObject([{ code: 'builds-on-itself', found: '`own.yaml` builds on `own.yaml`' }]);
  });

  test('a ruleset that is not there', () => {
    expect(problemsOf({ 'own.yaml': file('Own', ['nowhere']) })).toMatchObject([{ code: 'no-such-ruleset', file: 'own.yaml', line: 3, column: 14, found: '`nowhere.yaml`' }]);
    expect(loadRuleset(new Map(), 'own.yaml')).toMatchObject({ ok: false, problems: [{ code: 'no-such-ruleset', line: 0 }] });
  });

  test('a tower of rulesets without end', () => {
    const loaded = loadRuleset((name) => file('T', [`t${Number(name.slice(1, -5)) + 1}`]), 't1.yaml');
    expect(loaded).toMatchObject({ ok: false, problems: [{ code: 'too-many-rulesets' }] });
  });
});

describe('files read ahead of time', () => {
  const texts = new Map([['base.yaml', base], ['own.yaml', file('Own', ['base'], ['weight: { value: 5 kg, source: measured }'])]]);
  const prepared = [JSON.parse(JSON.stringify(prepareLayer(base, 'base.yaml')!)) as NonNullable<ReturnType<typeof prepareLayer>>];

  test('give the very same ruleset', () => {
    expect(loadRuleset(texts, 'own.yaml', { prepared })).toEqual(loadRuleset(texts, 'own.yaml'));
  });

  test('are not used once the file has changed', () => {
    const edited = new Map([...texts, ['base.yaml', base.replace('90 kg', '95 kg')]]);
    const loaded = loadRuleset(edited, 'own.yaml', { prepared });
    expect(loaded.ok && linesOf(loaded.value.rules[1]!.require)[0]!.against).toEqual({ kind: 'number', value: 95 });
  });

  test('are not made of a file that has a fault', () => {
    expect(prepareLayer(base.replace('90 kg', '90 mm'), 'base.yaml')).toBeNull();
  });

  describe('and known to be sound together', () => {
    const both = ['base.yaml', 'own.yaml'].map((name) => prepareLayer(texts.get(name)!, name)!);
    const stack = JSON.parse(JSON.stringify(prepareStack(texts, 'own.yaml', { prepared: both }))) as PreparedStack;

    test('give the very same ruleset, what limits come to as it was found', () => {
      expect(loadRuleset(texts, 'own.yaml', { prepared: both, stacks: [stack] })).toEqual(loadRuleset(texts, 'own.yaml'));
      const taken = { ...stack, thresholds: stack.thresholds.map(([key]) => [key, { of: null, value: 7, stop: null, caution: null }] as const) };
      const loaded = loadRuleset(texts, 'own.yaml', { prepared: both, stacks: [taken] });
      expect(loaded.ok && [...loaded.value.thresholds.values()].map(({ value }) => value)).toEqual(stack.thresholds.map(() => 7));
      expect(stack.thresholds.length).toBeGreaterThan(0);
    });

    test('say nothing of the same file over another, which is checked', () => {
      const edited = new Map([...texts, ['base.yaml', base.replace('weight: {', 'weight-of-all: {')]]);
      expect(loadRuleset(edited, 'own.yaml', { prepared: both, stacks: [stack] })).toEqual(loadRuleset(edited, 'own.yaml'));
      expect(loadRuleset(texts, 'base.yaml', { prepared: both, stacks: [stack] })).toEqual(loadRuleset(texts, 'base.yaml'));
    });

    test('are not made of files that do not fit each other, or of one that was not prepared', () => {
      const wrong = new Map([...texts, ['own.yaml', file('Own', ['base'], ['weight: { value: 5 mm, source: measured }'])]]);
      expect(loadRuleset(wrong, 'own.yaml').ok).toBe(false);
      expect(prepareStack(wrong, 'own.yaml', { prepared: both })).toBeNull();
      expect(prepareStack(texts, 'own.yaml', { prepared: both.slice(0, 1) })).toBeNull();
    });
  });
});
