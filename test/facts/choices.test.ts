import { describe, expect, test } from 'vitest';
import { catalogueByPath } from '../../src/facts/catalogue.js';
import { choiceFacts } from './of-subject.js';
import { buildModel } from '../../src/model/build-model.js';
import { readPlanWith } from '../../src/plan/read-plan.js';
import { evaluateRules } from '../../src/rules/evaluate.js';
import { shippedShelf } from '../plan/shelf-for-tests.js';
import { rulesetFrom, rulesText } from '../rules/helpers.js';

const shelf = shippedShelf();

function choices(more: string) {
  const read = readPlanWith(`plan: 1\nname: Chosen\nface: { width: 900 mm, height: 640 mm }\n${more}`, 'chosen.yaml', shelf);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return choiceFacts(buildModel(read.value, shelf));
}

const rich = choices(`bars: { stock: board-19x64, lay: edge }
crossbars: [ { runs: upright, stock: strip-19x38, lay: flat }, { runs: level, stock: strip-19x38, lay: edge, plies: 2 } ]
corners: { cut: half-lap, glue: none, nails: { use: brad-18ga-25, each: 3 }, brace: { kind: ply-gusset, leg: 120 mm } }
cloth: { use: linen-300 }
ground: { coats: 4 }`);

describe('what the plan chose', () => {
  test('is of every element, in the unit and words of the catalogue', () => {
    expect(new Set(rich.map(({ path }) => path)).size).toBe(20);
    for (const { path, value, unit } of rich) {
      const spec = catalogueByPath.get(path)!;
      expect(unit, path).toBe(spec.unit);
      if (spec.words !== undefined) expect(spec.words, path).toContain(value);
    }
    expect(new Set(rich.map(({ path, about }) => `${path} ${about}`)).size).toBe(rich.length);
  });

  test.each<[path: string, about: string, value: string | number]>([
    ['frame.lay', 'frame', 'edge'], ['frame.plies_count', 'frame', 1], ['frame.corner_cut', 'frame', 'half-lap'], ['frame.corner_brace', 'frame', 'ply-gusset'],
    ['bar.stock', 'left', 'board-19x64'], ['bar.lay', 'top', 'edge'], ['crossbar.stock', 'crossbar-2', 'strip-19x38'],
    ['crossbar.w_mm', 'crossbar-1', 38], ['crossbar.d_mm', 'crossbar-1', 19],
    // Two plies on edge, side by side: twice the thin side in the plane of the cloth
    ['crossbar.w_mm', 'crossbar-2', 38], ['crossbar.d_mm', 'crossbar-2', 38],
    ['corner.cut', 'top-left', 'half-lap'], ['corner.glue', 'bottom-right', 'none'], ['corner.nail', 'top-right', 'brad-18ga-25'], ['corner.nails_count', 'top-right', 3], ['corner.brace', 'top-left', 'ply-gusset'],
    ['cloth.use', 'cloth', 'linen-300'], ['cloth.ground', 'cloth', 'grounded'], ['cloth.ground_coats_count', 'cloth', 4],
  ])('%s of %s is %s', (path, about, value) => expect(rich.find((fact) => fact.path === path && fact.about === about)?.value).toBe(value));

  test('square boards lie either way, whatever the plan calls it; two plies are paired', () => {
    const said = (bars: string, path: string): unknown => choices(`bars: ${bars}`).find((fact) => fact.path === path)?.value;
    expect(said('{ stock: square-38x38, lay: edge }', 'frame.lay')).toBe('square');
    expect(said('{ stock: strip-19x38, lay: flat }', 'frame.lay')).toBe('flat');
    expect(said('{ stock: strip-19x38, lay: flat, pairing: matched }', 'frame.pairing')).toBe('single');
    expect(said('{ stock: strip-19x38, lay: flat, plies: 2, pairing: matched }', 'frame.pairing')).toBe('matched');
  });

  test('nothing chosen is a word too', () => {
    const bare = choices('bars: { stock: strip-19x38, lay: flat }\ncorners: { nails: none, glue: pva }\nground: { coats: 0 }');
    const said = (path: string): unknown => bare.find((fact) => fact.path === path)?.value;
    expect(['corner.nail', 'corner.nails_count', 'corner.glue', 'corner.brace', 'cloth.ground', 'cloth.ground_coats_count'].map(said)).toEqual(['none', 0, 'pva', 'none', 'bare', 0]);
  });

  test('one coat is a ground already', () => {
    const one = choices('bars: { stock: strip-19x38, lay: flat }\nground: { coats: 1 }');
    expect(one.find(({ path }) => path === 'cloth.ground')?.value).toBe('grounded');
  });

  test('a rule may ask for them, in groups too', async () => {
    const ruleset = rulesetFrom(rulesText(['id: a, each: corner, require: { any: [ { fact: corner.glue, is: pva }, { all: [ { fact: corner.cut, is: half-lap }, { fact: corner.nails_count, at-least: 3 } ] } ] }, otherwise: stop']));
    const verdicts = async (facts: typeof rich) => (await evaluateRules(ruleset, facts)).findings.map(({ verdict }) => verdict);
    expect(await verdicts(rich)).toEqual(Array(4).fill('clear'));
    expect(await verdicts(rich.filter(({ path }) => path !== 'corner.cut'))).toEqual(Array(4).fill('unknown'));
    expect(await verdicts(rich.map((fact) => (fact.path === 'corner.nails_count' ? { ...fact, value: 2 } : fact)))).toEqual(Array(4).fill('stop'));
  });
});
