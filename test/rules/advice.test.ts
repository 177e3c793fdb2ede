import { describe, expect, it } from 'vitest';
import { audit } from '../../src/audit.js';
import { evaluateRules } from '../../src/rules/evaluate.js';
import { loadRuleset } from '../../src/rules/read/load-ruleset.js';
import type { Fact } from '../../src/facts/fact.js';
import { readPlanWith } from '../../src/plan/read-plan.js';
import { fileText, shippedShelf } from '../plan/shelf-for-tests.js';

const rule = (unless: string) => loadRuleset(() => `ruleset: 1
name: Advice
rules:
  - { id: bars/wide, each: bar, require: { fact: bar.w_mm, at-least: 40 mm }, otherwise: caution, say: "{about}: {actual}.",
      do: [ { say: "Glue two.", unless: ${unless} }, "Take a wider bar than {actual}." ], source: practice }
`, 'advice.yaml');

const facts = (plies: number | null): Fact[] => [
  { path: 'bar.w_mm', about: 'left', value: 38, unit: 'mm' },
  { path: 'frame.plies_count', about: 'frame', value: plies, unit: 'count', ...(plies === null ? { reason: 'Nobody counted.' } : {}) },
];

describe('advice that a plan may have already', () => {
  it('is left away where its condition holds, and said where it does not or is not known', async () => {
    const read = rule('{ fact: frame.plies_count, at-least: 2 }');
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    const said = async (plies: number | null) => (await evaluateRules(read.value, facts(plies))).findings.find(({ about }) => about === 'left')?.do;
    expect(await said(2)).toEqual(['Take a wider bar than 38 mm.']);
    expect(await said(1)).toEqual(['Glue two.', 'Take a wider bar than 38 mm.']);
    expect(await said(null)).toEqual(['Glue two.', 'Take a wider bar than 38 mm.']);
  });

  it('asks only facts and limits that there are', () => {
    for (const wrong of ['{ fact: frame.plys, at-least: 2 }', '{ fact: corner.cut, is: butt }', '{ fact: frame.plies_count, at-least: { limit: none-such } }']) {
      expect(rule(wrong).ok, wrong).toBe(false);
    }
  });
});

const load = () => {
  const ruleset = loadRuleset((name) => fileText(`rules/${name}`), 'baseline.yaml');
  if (!ruleset.ok) throw new Error('the baseline does not load');
  return ruleset.value;
};

/** What a plan has, and what nobody should then be told. */
const had: readonly (readonly [what: string, plan: string, never: RegExp])[] = [
  ['half-lapped corners', 'bars: { stock: strip-19x38, lay: flat }\ncorners: { cut: half-lap }\n', /half-lap it/iu],
  ['a pair of boards', 'bars: { stock: strip-19x38, lay: flat, plies: 2, pairing: opposed }\n', /glue two plies|glue two thin|bows oppose/iu],
  ['braces', 'bars: { stock: strip-19x38, lay: flat }\ncorners: { brace: { kind: timber } }\n', /^brace |^brace or/iu],
  ['bars on edge', 'bars: { stock: strip-19x38, lay: edge }\n', /on edge/iu],
  ['rings on the backs', 'bars: { stock: strip-19x38, lay: edge, plies: 2 }\ncrossbars: [ { runs: upright, stock: board-19x64, lay: edge } ]\nhang: { by: wire, from: back }\n', /rings into the backs/iu],
  ['glued and nailed mitres', 'bars: { stock: strip-19x38, lay: flat }\ncorners: { cut: mitre, glue: pva }\n', /^glue (?:and nail )?(?:it|the mitres)/iu],
  ['picked boards', 'bars: { stock: strip-19x38, lay: flat }\nlumber: { chosen: picked }\n', /^pick /iu],
  ['a crossbar', 'bars: { stock: strip-19x38, lay: flat }\ncrossbars: [ { runs: upright } ]\n', /^add a crossbar(\.| across)/iu],
  ['two hooks', 'bars: { stock: strip-19x38, lay: flat }\nhang: { by: two-hooks }\n', /from two hooks/iu],
];

describe('the baseline', () => {
  const shelf = shippedShelf();
  const ruleset = load();
  it.each(had)('never advises %s to a frame that has it', async (_, more, never) => {
    const read = readPlanWith(`plan: 1\nname: Has it\nface: { width: 1710 mm, height: 1430 mm }\n${more}`, 'plan.yaml', shelf);
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    const { findings } = await audit(read.value, { shelf, ruleset, seed: 1, samples: 500 });
    const advice = findings.filter(({ verdict }) => verdict === 'stop' || verdict === 'caution').flatMap((finding) => finding.do);
    expect(advice.length).toBeGreaterThan(3);
    expect(advice.filter((text) => never.test(text))).toEqual([]);
  });
});
