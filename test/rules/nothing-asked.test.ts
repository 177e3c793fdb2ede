import { expect, test } from 'vitest';
import { factInput, factsOfPlan } from '../../src/facts/fact-source.js';
import { factSettings } from '../../src/bench.js';
import { loadRuleset } from '../../src/rules/read/load-ruleset.js';
import { demoShelf, demoSolved } from '../mechanics/fasteners/demo-model.js';

const rule = `
rules:
  - id: warp/bow
    each: frame
    require: { fact: warp.bar_bow_chance, at-most: 10 % }
    otherwise: caution
    say: "{actual} bow."
    do: [ "Pick the boards." ]
    source: practice
    examples: { clear: 4 %, fails: 20 % }
`;

function load(text: string) {
  return loadRuleset(new Map([['own.yaml', text]]), 'own.yaml');
}

test('a ruleset that asks nothing is refused: it would clear every plan', () => {
  const read = load('ruleset: 1\nname: Silent\nrules: []\n');
  expect(read.ok ? [] : read.problems.map(({ code }) => code)).toContain('no-rules');
});

test('a limit that defines a chance must be a length', () => {
  for (const limit of ['corner-lift: { value: 3, source: proposal }', 'corner-lift: { value: 2 %, source: proposal }', 'bar-bow: { value: 0 mm, source: proposal }', 'bar-bow: { stop: 3 mm, caution: 2 mm, source: proposal }']) {
    const read = load(`ruleset: 1\nname: Odd\nlimits:\n  ${limit}\n${rule}`);
    expect(read.ok ? [] : read.problems.map(({ code, line }) => [code, line]), limit).toContainEqual(['limit-misfit', 4]);
  }
});

test('without limits of its own a ruleset uses the usual ones, never none', () => {
  const read = load(`ruleset: 1\nname: Bare\n${rule}`);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const { model, solution } = demoSolved({ face: { width: '1700 mm', height: '1400 mm' }, bars: { stock: 'square-38x38', lay: 'flat' }, lumber: { chosen: 'unsorted', moisture: '30 %' } });
  const settings = factSettings(model, { shelf: demoShelf(), ruleset: read.value, seed: 1, samples: 4000 });
  expect(settings.corner_lift_limit_mm).toBeCloseTo(1400 / 150, 9);
  expect(settings.bar_bow_limit_mm.left).toBeCloseTo((1400 - 38) / 400, 9);
  const facts = factsOfPlan(factInput(model, solution, settings, demoShelf())).all();
  const chance = facts.find(({ path }) => path === 'warp.bar_bow_chance')?.value;
  expect(chance).toBeGreaterThan(0.3);
  const unlimited = factsOfPlan(factInput(model, solution, { ...settings, corner_lift_limit_mm: Number.NaN, bar_bow_limit_mm: { top: Number.NaN, bottom: 3, left: 3, right: 3 } }, demoShelf())).all();
  for (const path of ['warp.bar_bow_chance', 'warp.corner_lift_chance']) {
    const fact = unlimited.find((one) => one.path === path);
    expect(fact?.value, path).toBeNull();
    expect(fact?.reason, path).toContain('limit');
  }
});
