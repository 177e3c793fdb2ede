import { describe, expect, test } from 'vitest';
import { catalogue } from '../../src/facts/catalogue.js';
import { fasteningSheet } from '../../src/mechanics/fasteners/fastening-sheet.js';
import { fasteningFacts } from './of-subject.js';
import { demoModel, demoSolved } from '../mechanics/fasteners/demo-model.js';

const pair = { face: { width: '1000 mm', height: '800 mm' }, bars: { stock: 'strip-19x38', lay: 'edge', plies: 2, bond: 'glue+screws' } };
const facts = (plan: object) => {
  const { model, solution } = demoSolved(plan);
  return fasteningFacts(model, solution);
};
const value = (plan: object, about: string, path: string): number | string | null => facts(plan).find((f) => f.about === about && f.path === `fastening.${path}`)!.value;
const number = (plan: object, about: string, path: string): number => value(plan, about, path) as number;

describe('practice cases', () => {
  test('a 2-1/2 in screw through two strips of 19 comes out by 25.5 mm', () => {
    const plan = { ...pair, 'ply-screws': { use: 'screw-8x64', every: '200 mm', pilot: '3 mm' } };
    expect(number(plan, 'ply-screws', 'exit_mm')).toBeCloseTo(38 - 63.5, 6);
  });
  test('a 1-1/4 in screw through the same leaves 6 mm', () => {
    expect(number({ ...pair, 'ply-screws': { use: 'screw-6x32', every: '200 mm' } }, 'ply-screws', 'exit_mm')).toBeCloseTo(6.25, 6);
  });
  test('a 4 mm hole for a No. 6 screw is wider than its root', () => {
    const plan = { ...pair, 'ply-screws': { use: 'screw-6x32', every: '200 mm', pilot: '4 mm' } };
    expect(number(plan, 'ply-screws', 'pilot_mm')).toBe(4);
    expect(number(plan, 'ply-screws', 'root_mm')).toBeCloseTo(2.8702, 4);
  });
  test('wet wood is more likely to split than dry', () => {
    expect(value(pair, 'ply-screws', 'split_risk')).toBe('low');
    expect(value({ ...pair, lumber: { moisture: '24 %' } }, 'ply-screws', 'split_risk')).toBe('some');
  });
});

describe('what is there', () => {
  test('only the fastenings the plan has, each with every fact of the catalogue', () => {
    const want = catalogue.filter((spec) => spec.each === 'fastening').map((spec) => spec.path).sort();
    const all = facts({ ...pair, crossbars: [{ runs: 'upright', at: '1/2', stock: 'strip-19x38', lay: 'edge' }], corners: { cut: 'mitre', glue: 'pva', nails: { use: 'brad-18ga-25', each: 2 }, brace: { kind: 'timber', leg: '200 mm', stock: 'strip-19x38' } } });
    const abouts = [...new Set(all.map((f) => f.about))];
    expect(abouts).toEqual(['ply-screws', 'corner-nails', 'crossbar-screws', 'brace-screws']);
    for (const about of abouts) expect(all.filter((f) => f.about === about).map((f) => f.path).sort()).toEqual(want);
    expect(facts({ face: { width: '450 mm', height: '350 mm' }, bars: { stock: 'strip-19x38', lay: 'flat' }, corners: { glue: 'pva', nails: 'none' } })).toEqual([]);
  });
  test('glue carries: the screws only clamp. Without glue they carry, and slip more than they may', () => {
    expect(value(pair, 'ply-screws', 'role')).toBe('clamp');
    expect(number(pair, 'ply-screws', 'use')).toBe(0);
    const dry = { ...pair, bars: { ...pair.bars, bond: 'screws' } };
    expect(value(dry, 'ply-screws', 'role')).toBe('load');
    expect(number(dry, 'ply-screws', 'use')).toBeGreaterThan(0);
    const closer = { ...dry, 'ply-screws': { use: 'screw-6x32', every: '80 mm' } };
    expect(number(closer, 'ply-screws', 'use')).toBeLessThan(number({ ...dry, 'ply-screws': { use: 'screw-6x32', every: '300 mm' } }, 'ply-screws', 'use'));
  });
  test('a brad through a flat half-lap of 19 mm comes out', () => {
    const plan = { face: { width: '600 mm', height: '450 mm' }, bars: { stock: 'strip-19x38', lay: 'flat' }, corners: { cut: 'half-lap', glue: 'pva', nails: { use: 'brad-18ga-25', each: 1 } } };
    expect(number(plan, 'corner-nails', 'exit_mm')).toBeCloseTo(-6, 9);
  });
  test('an unplanned hole is picked from the drills on hand, never above the rule', () => {
    for (const about of ['ply-screws', 'corner-nails']) {
      const plan = { ...pair, corners: { cut: 'mitre', glue: 'pva', nails: { use: 'brad-18ga-25', each: 1 } } };
      expect(number(plan, about, 'pilot_mm')).toBeLessThanOrEqual(number(plan, about, 'pilot_rule_mm'));
    }
  });
});

describe('fastening page', () => {
  test('ply screws: drills, depth, side, count and places that add up', () => {
    const [line] = fasteningSheet(demoModel({ ...pair, 'ply-screws': { use: 'screw-6x32', every: '200 mm' } }));
    expect(line).toMatchObject({ name: 'ply-screws', pilot_label: '2.5 mm', exit_sixteenths: 3 });
    expect(line!.countersink_mm).toBeCloseTo(0.279 * 25.4, 9);
    expect(line!.clearance!.diameter_mm).toBeGreaterThanOrEqual(0.138 * 25.4);
    expect(line!.pilot_depth_mm).toBeLessThan(31.75);
    expect(line!.count).toBe(line!.rows.reduce((sum, row) => sum + row.places_mm.length, 0));
    const top = line!.rows.find((row) => row.piece === 'top')!.places_mm;
    expect(top[0]! + top.at(-1)!).toBe(1000);
    expect(top[0]).toBeGreaterThan(38 + 35);
    for (let i = 1; i < top.length; i += 1) expect(top[i]! - top[i - 1]!).toBeLessThanOrEqual(201);
  });
  test('an inch plan gets inch drills', () => {
    const [line] = fasteningSheet(demoModel({ ...pair, face: { width: '37-1/4 in', height: '29-5/8 in' } }));
    expect(line!.pilot_label).toBe('3/32 in');
  });
  test('a lead hole never reaches the far face', () => {
    for (const use of ['screw-6x32', 'screw-8x64', 'screw-6x38']) {
      const [line] = fasteningSheet(demoModel({ ...pair, 'ply-screws': { use, every: '200 mm' } }));
      expect(line!.pilot_depth_mm).toBeLessThanOrEqual(37);
    }
  });
  test('nails along the grain have no face to come out of', () => {
    const lines = fasteningSheet(demoModel({ ...pair, corners: { cut: 'mitre', glue: 'pva', nails: { use: 'brad-18ga-25', each: 1 } } }));
    expect(lines.find((line) => line.name === 'corner-nails')).toMatchObject({ exit_mm: null, count: 4, clearance: null });
  });
  test('gussets and angles are told apart', () => {
    const what = (kind: string): string => fasteningSheet(demoModel({ ...pair, corners: { cut: 'mitre', glue: 'pva', brace: { kind, leg: '150 mm' } } })).find((line) => line.name === 'brace-screws')!.way.into;
    expect(what('ply-gusset')).toBe('gussets');
    expect(what('steel-angle')).toBe('angles');
  });
});
