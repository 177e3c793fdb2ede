import { describe, expect, test } from 'vitest';
import { wordings } from '../../src/rules/read/rule-problems.js';
import { loadRuleset } from '../../src/rules/read/load-ruleset.js';
import type { Line } from '../../src/rules/ruleset.js';
import { problemsOf, rulesetFrom, rulesText } from './helpers.js';
import { runs } from '../effort.js';

const told = new Set<string>();
type Texts = Parameters<typeof problemsOf>[0];

/** Problems as `code line:column`, in the order of the file; every code is remembered. */
function briefly(texts: Texts, options = {}): readonly string[] {
  const problems = [...problemsOf(texts, options)].sort((a, b) => a.line - b.line || a.column - b.column);
  for (const { code } of problems) told.add(code);
  return problems.map(({ code, line, column }) => `${code} ${line}:${column}`);
}

/** Expects these problems at the marks (`§`) of a text, in order; two at one mark are joined by `+`. */
function expectAtMarks(marked: string, codes: readonly string[], options = {}): void {
  const places = marked.split('§').slice(0, -1).map((_, index, parts) => {
    const before = parts.slice(0, index + 1).join('');
    return `${before.split('\n').length}:${before.length - before.lastIndexOf('\n')}`;
  });
  const wanted = places.flatMap((place, index) => (codes[index] ?? 'none').split('+').map((code) => `${code} ${place}`));
  expect(briefly(marked.replaceAll('§', ''), options)).toEqual(wanted);
}

describe('a ruleset is refused', () => {
  const frame = 'id: a, each: frame';
  const kg = 'require: { fact: frame.weight_kg, at-most: 5 kg }';
  const plain = `${frame}, ${kg}, otherwise: stop`;
  // Every § marks a place; the codes of the problems stand in the order of the marks.
  test.each<[what: string, codes: string[], rule: string, limits?: string[]]>([
    ['an unknown fact', ['unknown-fact'], `${frame}, require: { fact: §frame.wieght_kg, at-most: 5 kg }, otherwise: stop`],
    ['a fact of other elements', ['fact-of-another'], `${frame}, require: { fact: §bar.dish_mm, at-most: 5 mm }, otherwise: stop`],
    ['a fact split by cause', ['fact-by-cause'], `${frame}, require: { fact: §warp.cause_share, at-most: 50 % }, otherwise: stop`],
    ['an unknown limit', ['unknown-limit'], `${frame}, require: { fact: frame.weight_kg, at-most: §{ limit: wieght } }, otherwise: stop`],
    ['an unknown key', ['unknown-key'], `${frame}, §colour: red, ${kg}, otherwise: stop`],
    ['a number without its unit', ['unit-misfit'], `${frame}, require: { fact: frame.weight_kg, at-most: §5 }, otherwise: stop`],
    ['a unit of another kind', ['unit-misfit'], `${frame}, require: { fact: frame.weight_kg, at-most: §5 mm }, otherwise: stop`],
    ['a chance above one', ['unit-misfit'], `${frame}, require: { fact: warp.corner_lift_chance, at-most: §40 }, otherwise: stop`],
    ['an infinite amount', ['wrong-kind'], `${frame}, require: { fact: frame.twist_reserve, at-least: §.inf }, otherwise: stop`],
    ['an amount beyond all numbers', ['wrong-kind'], `${frame}, require: { fact: frame.twist_reserve, at-least: §1e999 }, otherwise: stop`],
    ['an amount that is no number', ['wrong-kind'], `${frame}, require: { fact: frame.twist_reserve, at-least: §.nan }, otherwise: stop`],
    ['an empty `all`', ['empty-group'], `${frame}, require: { §all: [] }, otherwise: stop`],
    ['an empty `any` in `applies`', ['empty-group'], `${frame}, applies: { §any: [] }, ${kg}, otherwise: stop`],
    ['an empty requirement', ['missing'], `${frame}, require: §{ }, otherwise: stop`],
    ['nothing required', ['left-empty'], `${frame}, §require: , otherwise: stop`],
    ['a group in a group that is empty', ['empty-group'], `${frame}, require: { all: [ { §any: [] } ] }, otherwise: stop`],
    ['a line in a group in a group', ['no-comparison'], `${frame}, require: { any: [ { all: [ §{ fact: frame.weight_kg } ] } ] }, otherwise: stop`],
    ['an unknown key in a group in a group', ['unknown-key'], `${frame}, require: { any: [ { all: [ { fact: frame.weight_kg, §atmost: 5 kg } ] } ] }, otherwise: stop`],
    ['five groups inside each other', ['deep-group'], `${frame}, require: { all: [ { any: [ { all: [ { any: [ { §all: [ { fact: frame.weight_kg, at-most: 5 kg } ] } ] } ] } ] } ] }, otherwise: stop`],
    ['a line without a comparison', ['no-comparison'], `${frame}, require: §{ fact: frame.weight_kg }, otherwise: stop`],
    ['a line with two comparisons', ['several-comparisons'], `${frame}, require: §{ fact: frame.weight_kg, at-most: 5 kg, above: 1 kg }, otherwise: stop`],
    ['a word that is measured', ['word-measured'], `${frame}, require: { fact: frame.mode, at-most: §5 }, otherwise: stop`],
    ['a word the fact cannot be', ['not-its-word'], `${frame}, require: { fact: frame.mode, is: §propellor }, otherwise: stop`],
    ['a measured number that must be equal', ['number-named'], `${frame}, require: { fact: frame.weight_kg, is: §5 kg }, otherwise: stop`],
    ['a size below zero', ['never-met'], `${frame}, require: { fact: frame.dish_mm, at-most: §-1 mm }, otherwise: stop`],
    ['two thresholds without by-limit', ['two-thresholds'], `${frame}, require: { fact: frame.weight_kg, at-most: §{ limit: w } }, otherwise: stop`, ['w: { stop: 9 kg, caution: 5 kg, source: proposal }']],
    ['two thresholds in `applies`', ['two-thresholds'], `${frame}, applies: { fact: frame.weight_kg, above: §{ limit: w } }, ${kg}, otherwise: stop`, ['w: { stop: 9 kg, caution: 5 kg, source: proposal }']],
    ['by-limit with one value', ['one-threshold'], `id: §a, each: frame, require: { fact: frame.weight_kg, at-most: { limit: w } }, otherwise: by-limit`, ['w: { value: 5 kg, source: proposal }']],
    ['by-limit without a limit', ['one-threshold'], `id: §a, each: frame, ${kg}, otherwise: by-limit`],
    ['thresholds the wrong way round', ['turned-thresholds'], `${frame}, require: { fact: frame.weight_kg, at-most: { limit: w } }, otherwise: by-limit`, ['§w: { stop: 5 kg, caution: 9 kg, source: proposal }']],
    ['a stop short of the caution', ['turned-thresholds'], `${frame}, require: { fact: frame.weight_kg, at-most: §9 kg }, otherwise: { stop: 5 kg }`],
    ['thresholds for a word', ['thresholds-of-one-line'], `${frame}, require: { fact: frame.mode, is: propeller }, otherwise: §{ stop: 5 }`],
    ['another caution than required', ['caution-differs'], `${frame}, ${kg}, otherwise: { stop: 9 kg, caution: §6 kg }`],
    ['an unknown verdict', ['not-one-of'], `${frame}, ${kg}, otherwise: §clear`],
    ['a limit that does not fit', ['limit-misfit'], `${frame}, require: { fact: frame.weight_kg, at-most: { limit: w } }, otherwise: stop`, ['§w: { value: 5 mm, source: proposal }']],
    ['a negative limit on a size', ['limit-misfit'], `${frame}, require: { fact: frame.dish_mm, at-most: { limit: w } }, otherwise: stop`, ['§w: { value: -5 mm, source: proposal }']],
    ['a share without a fact to share', ['limit-misfit'], `${frame}, require: { fact: frame.dish_mm, at-most: { limit: w } }, otherwise: stop`, ['§w: { value: 1/400, source: proposal }']],
    ['a share of a fact the rule cannot see', ['of-misfit'], `${frame}, require: { fact: frame.dish_mm, at-most: { limit: w } }, otherwise: stop`, ['§w: { value: 1/400, of: bar.span_mm, source: proposal }']],
    ['a share of a fact in another unit', ['of-misfit'], `${frame}, require: { fact: frame.dish_mm, at-most: { limit: w } }, otherwise: stop`, ['§w: { value: 1/400, of: frame.weight_kg, source: proposal }']],
    ['a share of a word', ['of-misfit'], plain, ['w: { value: 1/400, of: §frame.mode, source: proposal }']],
    ['a share of nothing known', ['unknown-fact'], plain, ['w: { value: 1/400, of: §frame.moods, source: proposal }']],
    ['an id that cannot be read', ['bad-rule-id'], `id: §"A rule!", each: frame, ${kg}, otherwise: stop`],
    ['a limit name that cannot be read', ['bad-limit-name'], plain, ['§W_1: { value: 5 mm, source: proposal }']],
    ['an infinite limit', ['wrong-kind'], plain, ['w: { value: §.inf, source: proposal }']],
    ['a limit that is no amount', ['not-an-amount'], plain, ['w: { value: §about 3 mm, source: proposal }']],
    ['a limit with half of two thresholds', ['missing'], plain, ['w: §{ stop: 3 mm, source: proposal }']],
    ['a limit without a source', ['missing'], plain, ['w: §{ value: 3 mm }']],
    ['an unknown caution', ['unknown-caution'], `${plain}, cautions: [ §dusty ]`],
    ['an unknown kind of element', ['not-one-of'], `id: a, each: §frames, ${kg}, otherwise: stop`],
  ])('%s', (_, codes, rule, limits = []) => {
    expectAtMarks(rulesText([rule], limits), codes);
  });

  test('a limit that does not fit is told what it may be: an amount of the fact’s own kind, or of a share a plain number', () => {
    const allowed = (limit: string) => problemsOf(rulesText([`id: a, each: bar, require: { fact: bar.dish_mm, at-most: { limit: w } }, otherwise: stop`], [`w: { ${limit}, source: proposal }`])).find(({ code }) => code === 'limit-misfit')?.allowed;
    expect(allowed('value: 5 kg')).toMatch(/^a number with a unit, one of mm, /u);
    expect(allowed('value: 5 kg, of: bar.span_mm')).toMatch(/^a plain number or a fraction, such as 1\.5 or 1\/400/u);
  });

  test('duplicate ids, a rule without a source or advice, placeholders that mean nothing, all at once', () => {
    const text = `ruleset: 1
name: Four
rules:
  - { ${plain}, say: §"{weight}", do: [ "x" ], source: proposal }
  - §{ id: d, each: frame, ${kg}, otherwise: stop, say: "x", do: [ "x" ] }
  - { id: §a, each: frame, ${kg}, otherwise: stop, say: "x", §do: [], source: proposal }
  - { id: b, each: frame, ${kg}, otherwise: stop, say: "x", do: [ §"{bar.span_mm}" ], source: §hearsay }
`;
    expectAtMarks(text, ['unknown-placeholder', 'missing', 'duplicate-rule', 'empty-list', 'unknown-placeholder', 'unknown-rule-source'], { sources: new Set(['nds-2018']) });
  });

  test('a limit in a sentence that is not there', () => {
    expectAtMarks(`ruleset: 1\nname: x\nrules:\n  - { id: §a, each: frame, ${kg}, otherwise: stop, say: "x {limits.none}", do: [ x ], source: proposal }\n`, ['unknown-limit']);
  });

  test('switching off with more than a reason, or without one', () => {
    const base = rulesText([plain]);
    const off = (entry: string): string => `ruleset: 1\nname: x\nbuilds-on: [ base ]\nrules:\n  - ${entry}\n`;
    expect(briefly({ 'base.yaml': base, 'own.yaml': off('{ id: a, off: "Because.", say: "x" }') })).toEqual(['unknown-key 5:31']);
    expect(briefly({ 'base.yaml': base, 'own.yaml': off('{ id: a, off: "" }') })).toEqual(['thin-reason 5:19']);
    expect(briefly({ 'base.yaml': base, 'own.yaml': off('{ id: a, off: true }') })).toEqual(['wrong-kind 5:19']);
  });

  test('as long, as many and as short as is said, and no more', () => {
    const named = (letters: number): string => rulesText([plain.replace(/id: \w+/u, `id: ${'a'.repeat(letters)}`)]);
    expect(rulesetFrom(named(60)).rules).toHaveLength(1);
    expect(briefly(named(61))).toEqual([expect.stringMatching(/^bad-rule-id /u)]);
    const reason = (words: string) => ({ 'base.yaml': rulesText([plain, plain.replace(/id: \w+/u, 'id: kept')]), 'own.yaml': `ruleset: 1\nname: x\nbuilds-on: [ base ]\nrules:\n  - { id: a, off: "${words}" }\n` });
    expect(rulesetFrom(reason('We stretch again.')).rules.map(({ id }) => id)).toEqual(['kept']);
    expect(briefly(reason('We stretch.'))).toEqual([expect.stringMatching(/^thin-reason /u)]);
    const many = (count: number): string => rulesText(Array.from({ length: count }, (_, i) => plain.replace(/id: \w+/u, `id: r${i}`)));
    expect(rulesetFrom(many(500)).rules).toHaveLength(500);
    expect(briefly(many(501))).toEqual([expect.stringMatching(/^too-many-rules /u)]);
  });

  test('a rule without examples or without an edge, where they are required', () => {
    expectAtMarks(rulesText([plain]).replace('- {', '- §{'), ['no-examples'], { examplesRequired: true });
    expectAtMarks(rulesText([`${plain}, examples: §{ clear: 4 kg, fails: 6 kg }`]), ['no-edge'], { examplesRequired: true });
    expect(rulesetFrom(rulesText([plain])).rules).toHaveLength(1);
  });

  test('examples with other units, facts or words', () => {
    const group = `${frame}, require: { all: [ { fact: frame.weight_kg, at-most: 5 kg }, { fact: frame.mode, is: propeller } ] }, otherwise: stop`;
    expectAtMarks(rulesText([`${group}, examples: { clear: §4 kg, fails: { frame.weight_kg: §6 m, frame.mode: §sidewise }, with: { §frame.wdth_mm: 3 } }`]), ['example-of-several', 'unit-misfit', 'not-its-word', 'unknown-fact']);
  });

  test('a document of another kind, or of a later format', () => {
    expectAtMarks('§plan: 1\nname: x\n', ['not-this-format']);
    expectAtMarks('ruleset: §2\nname: x\n', ['later-format']);
    expectAtMarks('§- a\n', ['not-a-map']);
    expectAtMarks('ruleset: 1\nname: x\n§limit: {}\n', ['unknown-key']);
    expect(briefly('')).toEqual(['empty-ruleset 1:1']);
  });

  test('the nearest existing thing is named', () => {
    const hints = problemsOf(rulesText(['id: a, each: frame, require: { fact: frame.wieght_kg, at-most: 5 kg }, otherwise: stop, cautions: [ liftin ]'])).map(({ hint }) => hint);
    expect(hints).toEqual(['Did you mean `frame.weight_kg`?', 'Did you mean `lifting`?']);
  });
});

describe('a hostile ruleset neither runs nor loads', () => {
  const rule = (require: string, each = 'frame'): string => `id: a, each: ${each}, require: { ${require} }, otherwise: stop`;
  test.each([
    ['a path expression', ['unknown-key'], rule('fact: frame.weight_kg, at-most: 5 kg, §path: "$..[?(@.constructor.constructor(\'return process\')())]"')],
    ['an operator', ['unknown-key'], rule('fact: frame.weight_kg, at-most: 5 kg, §operator: equal')],
    ['a fact that is a path', ['unknown-fact'], rule('fact: §"$.weight", at-most: 5 kg')],
    ['`__proto__` as a fact', ['unknown-fact'], rule('fact: §__proto__, at-most: 5 kg')],
    ['`constructor` as a fact', ['unknown-fact'], rule('fact: §constructor, at-most: 5 kg')],
    ['a value that reads a fact', ['missing', 'unknown-key'], rule('fact: frame.weight_kg, at-most: §{ §fact: frame.weight_kg }')],
    ['`constructor` as a limit', ['unknown-limit'], rule('fact: frame.weight_kg, at-most: §{ limit: constructor }')],
    ['`__proto__` as an element', ['not-one-of'], rule('fact: frame.weight_kg, at-most: 5 kg', '§__proto__')],
  ])('%s', (_, codes, text) => {
    expectAtMarks(rulesText([text]), codes);
  });

  test('`__proto__` and `constructor` as keys', () => {
    expect(briefly('ruleset: 1\nname: x\n__proto__: { rules: [] }\nlimits:\n  constructor: { value: 1, source: proposal }\n')).toEqual(['forbidden-key 3:1', 'forbidden-key 5:3']);
    expect(({} as Record<string, unknown>)['rules']).toBeUndefined();
  });

  test('an alias bomb, deep nesting, 30 MB, a picture', () => {
    const bomb = `a: &a [${'x,'.repeat(9)}x]\n${'bcdefgh'.split('').map((name, index) => `${name}: &${name} [${`*${'abcdefg'[index]!},`.repeat(9)}*${'abcdefg'[index]!}]`).join('\n')}\n`;
    expect(briefly(`ruleset: 1\nname: x\n${bomb}`)).toContainEqual(expect.stringMatching(/^too-many-aliases /));
    expect(briefly(`ruleset: 1\nname: x\nrules: ${'['.repeat(20_000)}`)).toEqual([expect.stringMatching(/^too-deep 3:/)]);
    expect(briefly(`ruleset: 1\nname: ${'x'.repeat(30_000_000)}\n`)).toEqual(['too-large 0:0']);
    expect(briefly('\0PNG\0\0')).toEqual(['not-text 0:0']);
  });

  test('more rules than a person writes', () => {
    const rules = Array.from({ length: 501 }, (_, index) => `id: r${index}, each: frame, require: { fact: frame.weight_kg, at-most: 5 kg }, otherwise: stop`);
    expect(briefly(rulesText(rules))).toEqual(['too-many-rules 3:1']);
  });

  test('files elsewhere on the machine are not asked for', () => {
    const asked: string[] = [];
    const load = (name: string) => loadRuleset((file) => (asked.push(file), file === 'own.yaml' ? `ruleset: 1\nname: x\nbuilds-on: [ ${name} ]\n` : null), 'own.yaml');
    for (const name of ['/etc/passwd', '../secret.yaml', 'a/b.yaml', '"https://example.org/x.yaml"', '"C:\\\\x.yaml"', '.hidden']) expect(load(name)).toMatchObject({ ok: false, problems: [{ code: 'bad-ruleset-name', line: 3 }] });
    expect(new Set(asked)).toEqual(new Set(['own.yaml']));
  });

  test('random damage to the baseline never throws', async () => {
    const { readFileSync } = await import('node:fs');
    const text = readFileSync(new URL('../../rules/baseline.yaml', import.meta.url), 'utf8').slice(0, 9000);
    const signs = ['{', '}', '[', ']', ':', '&a ', '*a', '"', '\t', '- ', '\n', '!', '%', '|', '.nan', '{limit: 1}'];
    let state = 12345;
    const next = (most: number): number => (state = (state * 1103515245 + 12345) % 2147483648) % most;
    for (let run = 0; run < runs(150); run += 1) {
      const at = next(text.length);
      const broken = text.slice(0, at) + signs[next(signs.length)]! + text.slice(at + next(30));
      const loaded = loadRuleset(new Map([['b.yaml', broken]]), 'b.yaml');
      if (!loaded.ok) for (const problem of loaded.problems) expect(problem.hint).not.toBe('');
    }
  });
});

describe('what fits', () => {
  test('amounts come out in the unit of their fact', () => {
    const { rules, thresholds } = rulesetFrom(rulesText(
      [
        'id: a, each: frame, require: { fact: frame.weight_kg, at-most: 11 lb }, otherwise: stop',
        'id: b, each: bar, require: { fact: bar.roll_mrad, at-most: { limit: roll } }, otherwise: stop',
        'id: c, each: bar, require: { fact: bar.dish_mm, at-most: 1/8 in }, otherwise: stop',
        'id: d, each: frame, require: { fact: lumber.moisture_gap_pct, at-most: 4 % }, otherwise: stop',
        'id: e, each: frame, require: { fact: warp.corner_lift_chance, at-most: { limit: chance } }, otherwise: stop',
      ],
      ['roll: { value: 2 deg, source: proposal }', 'chance: { value: 10 %, source: proposal }'],
    ));
    const values = rules.map(({ require }) => (require.parts[0] as Line).against);
    expect(values[0]).toMatchObject({ value: expect.closeTo(11 * 0.45359237, 9) });
    expect(values[2]).toEqual({ kind: 'number', value: 3.175 });
    expect(values[3]).toEqual({ kind: 'number', value: 4 });
    expect(thresholds.get('roll in mrad')!.value).toBeCloseTo((2 * Math.PI * 1000) / 180, 9);
    expect(thresholds.get('chance in chance')!.value).toBe(0.1);
  });

  test('every message of the reader of rulesets is told by some test of this folder, and says something', () => {
    const elsewhere = ['empty-ruleset', 'bare-limit', 'limit-form', 'thin-reason', 'not-a-day', 'points-unknown', 'off-unknown', 'no-such-ruleset', 'builds-on-itself', 'too-many-rulesets', 'overlay-conflict', 'limit-unused', 'bad-ruleset-name', 'no-rules'];
    expect(Object.keys(wordings).filter((code) => !told.has(code) && !elsewhere.includes(code))).toEqual([]);
  });
});

test('a ruleset may stand on nineteen others, one on the other, and not on twenty', () => {
  const tower = (floors: number) => Object.fromEntries(Array.from({ length: floors }, (_, i) => [
    `r${i}.yaml`, i === floors - 1 ? rulesText(['id: a, each: frame, require: { fact: frame.weight_kg, at-most: 5 kg }, otherwise: stop']) : `ruleset: 1\nname: Floor ${i}\nbuilds-on: [ r${i + 1} ]\n`,
  ]));
  const load = (floors: number) => loadRuleset(new Map(Object.entries(tower(floors))), 'r0.yaml');
  expect(load(20)).toMatchObject({ ok: true });
  expect(load(21)).toMatchObject({ ok: false, problems: [{ code: 'too-many-rulesets', allowed: 'at most 20' }] });
});
