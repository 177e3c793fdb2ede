import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { barNames, cornerNames } from '../../src/base/names.js';
import { catalogue, catalogueByPath } from '../../src/facts/catalogue.js';
import type { Element, Fact } from '../../src/facts/fact.js';
import type { Verdict } from '../../src/findings/finding.js';
import { evaluateRules } from '../../src/rules/evaluate.js';
import { amountIn } from '../../src/rules/quantity.js';
import type { Against, Condition, Line, Rule, Ruleset } from '../../src/rules/ruleset.js';
import { rulesetFrom } from './helpers.js';
import { runs } from '../effort.js';

const baselineText = readFileSync(new URL('../../rules/baseline.yaml', import.meta.url), 'utf8');
/** The baseline, and a few rules of forms that it does not use. */
const ruleset = rulesetFrom({
  'baseline.yaml': baselineText,
  'own.yaml': `ruleset: 1
name: Forms
builds-on: [ baseline ]
limits:
  low-share: { value: 1/300, of: bar.span_mm, source: proposal }
rules:
  - { id: own/any, each: bar, applies: { any: [ { fact: bar.span_mm, above: 300 mm }, { fact: frame.weight_kg, below: 3 kg } ] }, require: { any: [ { fact: bar.dish_mm, at-most: { limit: low-share } }, { fact: bar.bond, is: glue }, { fact: bar.axial_N, above: -50 N } ] }, otherwise: stop, say: x, do: [ y ], source: proposal }
  - { id: own/stop-beyond, each: corner, applies: { all: [ { fact: frame.mode, is-not: sideways }, { fact: corner.governs, is: glue } ] }, require: { fact: corner.moment_Nm, below: 8 Nm }, otherwise: { stop: 12 Nm }, say: x, do: [ y ], source: proposal }
  - { id: own/nested, each: bar, applies: { any: [ { all: [ { fact: bar.span_mm, above: 300 mm }, { any: [ { fact: bar.bond, is: glue }, { fact: bar.plies_count, at-most: 8 } ] } ] }, { fact: frame.mode, is: sideways } ] }, require: { all: [ { any: [ { fact: bar.dish_mm, at-most: { limit: low-share } }, { all: [ { fact: bar.bond, is-not: none }, { fact: bar.axial_N, at-least: -50 N } ] } ] }, { fact: frame.weight_kg, below: 400 kg } ] }, otherwise: caution, say: x, do: [ y ], source: proposal }
  - { id: own/nested-limits, each: bar, require: { any: [ { all: [ { fact: frame.twist_reserve, at-least: { limit: twist-reserve } }, { fact: bar.bond, is: glue } ] }, { fact: bar.plies_count, is: 2 } ] }, otherwise: by-limit, say: x, do: [ y ], source: proposal }
  - { id: own/count, each: frame, require: { fact: frame.crossbars_count, is: 2 }, otherwise: caution, say: x, do: [ y ], source: proposal }
`,
});

const abouts: Readonly<Record<Element, readonly string[]>> = {
  frame: ['frame'], bar: barNames, crossbar: ['crossbar-1', 'crossbar-2'], corner: cornerNames, board: ['top-1', 'left-2'],
  fastening: ['brads', 'ply-screws'], cloth: ['cloth'], hanging: ['hanging'], cutting: ['cutting'],
};

/** Numbers that rules care about: every threshold written in a rule or limit, and values beside and far from them. */
const telling = [...new Set([...ruleset.limits.values()].flatMap(({ amounts }) => Object.values(amounts)).flatMap((text) => [amountIn(text, 'ratio'), amountIn(text, 'mm'), amountIn(text, 'pct'), amountIn(text, 'N'), amountIn(text, 'kg')]))]
  .filter((value) => value !== null && Number.isFinite(value)) as readonly number[];
const number = fc.oneof(fc.constantFrom(...telling), fc.constantFrom(...telling).map((value) => -value), fc.constantFrom(0, 300, 2.9, 400, 1200, 8, 12), fc.double({ min: -2000, max: 2000, noNaN: true }));

const goodFacts: fc.Arbitrary<readonly Fact[]> = fc.tuple(
  ...catalogue.flatMap((spec) => abouts[spec.each].map((about) => {
    const value: fc.Arbitrary<number | string> = spec.unit === 'word' ? fc.constantFrom(...(spec.words ?? ['x'])) : spec.path === 'frame.crossbars_count' ? fc.constantFrom(0, 1, 2) : number;
    return value.map((given): Fact => ({ path: spec.path, about, value: given, unit: spec.unit }));
  })),
);

/** Ways in which a fact can go wrong; null removes it. */
const corruptions: fc.Arbitrary<(fact: Fact) => Fact | null> = fc.constantFrom<((fact: Fact) => Fact | null)[]>(
  () => null,
  (fact) => ({ ...fact, value: null, reason: 'gone' }),
  (fact) => ({ ...fact, value: undefined as never }),
  (fact) => ({ ...fact, value: Number.NaN }),
  (fact) => ({ ...fact, value: Number.POSITIVE_INFINITY }),
  (fact) => ({ ...fact, value: Number.NEGATIVE_INFINITY }),
  (fact) => ({ ...fact, value: typeof fact.value === 'number' ? String(fact.value) : 7 }),
  (fact) => ({ ...fact, value: '' }),
  (fact) => ({ ...fact, value: [1] as never }),
  (fact) => ({ ...fact, value: true as never }),
  (fact) => ({ ...fact, unit: fact.unit === 'N' ? 'mm' : 'N' }),
);

// ---- A second evaluation, written from the description of the rules alone, without the engine ------------------------

type Truth = boolean | null;

function valueOf(facts: readonly Fact[], path: string, about: string): number | string | null {
  const spec = catalogueByPath.get(path)!;
  const found = facts.filter((fact) => fact.path === path && fact.about === (spec.each === 'frame' ? 'frame' : about));
  const [first] = found;
  if (first === undefined || found.some(({ value }) => value !== first.value) || first.unit !== spec.unit) return null;
  const { value } = first;
  if (spec.unit === 'word') return typeof value === 'string' && spec.words!.includes(value) ? value : null;
  return typeof value === 'number' && Number.isFinite(value) ? value : null;
}

function threshold(against: Against, line: Line, which: 'value' | 'stop' | 'caution', facts: readonly Fact[], about: string): number | string | null {
  if (against.kind !== 'limit') return against.value;
  const { amounts, of } = ruleset.limits.get(against.name)!;
  const text = (amounts as Readonly<Record<string, string>>)[which] ?? (amounts as { readonly value: string }).value;
  if (of === null) return amountIn(text, catalogueByPath.get(line.fact)!.unit);
  const base = valueOf(facts, of, about);
  return typeof base === 'number' ? amountIn(text, 'ratio')! * Math.abs(base) : null;
}

function holds(line: Line, which: 'value' | 'stop' | 'caution', facts: readonly Fact[], about: string, against = line.against): Truth {
  const actual = valueOf(facts, line.fact, about);
  const limit = threshold(against, line, which, facts, about);
  if (actual === null || limit === null) return null;
  if (line.compare === 'is') return actual === limit;
  if (line.compare === 'is-not') return actual !== limit;
  const size = catalogueByPath.get(line.fact)!.signed ? Math.abs(Number(actual)) : Number(actual);
  switch (line.compare) {
    case 'at-most': return size <= Number(limit);
    case 'below': return size < Number(limit);
    case 'at-least': return Number(actual) >= Number(limit);
    case 'above': return Number(actual) > Number(limit);
  }
}

function truth(condition: Condition, which: 'value' | 'stop' | 'caution', facts: readonly Fact[], about: string, against?: Against): Truth {
  const lines = condition.parts.map((part) => ('parts' in part ? truth(part, which, facts, about, against) : holds(part, which, facts, about, against)));
  const decisive = condition.join === 'any';
  if (lines.includes(decisive)) return decisive;
  return lines.includes(null) ? null : !decisive;
}

function expected(rule: Rule, facts: readonly Fact[], about: string): Verdict | 'silent' {
  const applies = rule.applies === null ? true : truth(rule.applies, 'value', facts, about);
  if (applies === null) return 'unknown';
  if (!applies) return 'silent';
  const { otherwise } = rule;
  const clear = truth(rule.require, otherwise.kind === 'by-limit' ? 'caution' : 'value', facts, about);
  if (otherwise.kind === 'always') return clear === null ? 'unknown' : clear ? 'clear' : otherwise.verdict;
  const notStop = otherwise.kind === 'by-limit' ? truth(rule.require, 'stop', facts, about) : truth(rule.require, 'value', facts, about, otherwise.stop);
  if (notStop === false) return 'stop';
  if (notStop === null || clear === null) return 'unknown';
  return clear ? 'clear' : 'caution';
}

const spoken = async (rules: Ruleset, facts: readonly Fact[]): Promise<ReadonlyMap<string, Verdict | 'silent'>> => {
  const { findings, silent } = await evaluateRules(rules, facts);
  return new Map([...findings.map(({ rule, about, verdict }) => [`${rule} ${about}`, verdict] as const), ...silent.filter(({ about }) => about !== null).map(({ rule, about }) => [`${rule} ${about}`, 'silent'] as const)]);
};

const index = fc.nat({ max: catalogue.length * 4 });

describe('laws of judging', () => {
  test('the engine says what a direct evaluation says, whatever is wrong with the facts', async () => {
    await fc.assert(fc.asyncProperty(goodFacts, fc.array(fc.tuple(index, corruptions), { maxLength: 12 }), async (good, faults) => {
      const facts = faults.reduce<readonly Fact[]>((list, [at, corrupt]) => list.flatMap((fact, place) => (place === at % list.length ? (corrupt(fact) ?? []) : fact)), good);
      const said = await spoken(ruleset, facts);
      for (const rule of ruleset.rules) for (const about of abouts[rule.each]) expect([rule.id, about, said.get(`${rule.id} ${about}`)]).toEqual([rule.id, about, expected(rule, facts, about)]);
    }), { numRuns: runs(60, 1 / 6) });
  });

  test('every verdict is reached by the facts these laws are tried on', async () => {
    const counts = new Map<string, number>();
    for (const facts of fc.sample(goodFacts, { numRuns: 40, seed: 5 })) for (const verdict of (await spoken(ruleset, facts)).values()) counts.set(verdict, (counts.get(verdict) ?? 0) + 1);
    for (const verdict of ['clear', 'caution', 'stop', 'silent']) expect(counts.get(verdict), verdict).toBeGreaterThan(100);
  });

  test('removing or corrupting any fact never turns what was not clear into clear or silent', async () => {
    await fc.assert(fc.asyncProperty(goodFacts, index, corruptions, async (good, at, corrupt) => {
      const before = await spoken(ruleset, good);
      const after = await spoken(ruleset, good.flatMap((fact, place) => (place === at % good.length ? (corrupt(fact) ?? []) : fact)));
      for (const [key, verdict] of before) {
        if (verdict === 'clear' || verdict === 'silent') continue;
        expect([key, ['clear', 'silent', undefined].includes(after.get(key))]).toEqual([key, false]);
      }
    }), { numRuns: runs(120, 1 / 6) });
  });

  test('the order of the facts does not matter', async () => {
    await fc.assert(fc.asyncProperty(goodFacts, async (good) => {
      const sorted = (map: ReadonlyMap<string, string>) => [...map].sort();
      expect(sorted(await spoken(ruleset, [...good].reverse()))).toEqual(sorted(await spoken(ruleset, good)));
    }), { numRuns: runs(20, 1 / 6) });
  });
});
