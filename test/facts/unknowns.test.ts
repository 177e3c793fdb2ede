import { describe, expect, test } from 'vitest';
import { barStress } from '../../src/mechanics/bar-stress.js';
import { ndsDistances } from '../../src/fit/distances.js';
import { plannedFastenings } from '../../src/mechanics/fasteners/planned-fastenings.js';
import { known } from '../../src/facts/declare.js';
import type { Fact } from '../../src/facts/fact.js';
import { findFact } from '../../src/facts/find-fact.js';
import { factInWords } from '../../src/facts/told.js';
import type { FactSettings } from '../../src/model/model.js';
import { clothFacts, cornerFacts, fasteningFacts, frameFacts, hangingFacts, ofSubject, warpFacts } from './of-subject.js';
import { demoShelf, demoSolved } from '../mechanics/fasteners/demo-model.js';

/** Nothing is equal: sides, pulls, places of the crossbars, which are listed from the right. */
const plan = {
  face: { width: '1140 mm', height: '690 mm' },
  bars: { stock: 'board-19x64', lay: 'edge' },
  crossbars: [0.7, 0.25].map((at) => ({ runs: 'upright', at, stock: 'strip-19x38', lay: 'edge' })),
  cloth: { pull: { working: { x: '170 N/m', y: '230 N/m' } } },
};
const settings: FactSettings = { seed: 1, samples: 400, corner_lift_limit_mm: 4, bar_bow_limit_mm: { top: 3, bottom: 3, left: 2, right: 2 } };
const said = (facts: readonly Fact[], path: string, about?: string) => {
  const fact = facts.find((one) => one.path === path && (about === undefined || one.about === about));
  return fact?.reason ?? fact?.value;
};

describe('a value that is known', () => {
  test('is a finite number, nought too; anything else is unknown, with its reason', () => {
    expect([known(0, 'why'), known(-2.5, 'why')]).toEqual([0, -2.5]);
    for (const none of [null, undefined, Number.NaN, Infinity, -Infinity]) expect(known(none, 'why')).toEqual({ unknown: 'why' });
  });

  test('is found by its path and what it is about; a word or an unknown is no number', () => {
    const facts: Fact[] = [
      { path: 'bar.span_mm', about: 'top', value: 900, unit: 'mm' }, { path: 'bar.span_mm', about: 'left', value: 600, unit: 'mm' },
      { path: 'bar.bond', about: 'top', value: 'glue', unit: 'word' }, { path: 'bar.dish_mm', about: 'top', value: null, unit: 'mm', reason: 'why' },
    ];
    expect([findFact(facts, 'bar.span_mm', 'left'), findFact(facts, 'bar.span_mm', null), findFact(facts, 'bar.span_mm', 'right'), findFact(facts, 'bar.bond', 'top'), findFact(facts, 'bar.dish_mm', 'top'), findFact(facts, 'bar.roll_mrad', null)]).toEqual([600, 900, null, null, null, null]);
  });

  test('is told in its own words, a word as half a sentence where it has one', () => {
    expect(factInWords('hanging.held_by', 'strap', 'metric')).toBe('each strap’s screw');
    expect(factInWords('hanging.by', 'd-rings', 'metric')).toBe('d-rings');
    expect(factInWords('bar.stock', 'strip-19x38', 'metric')).toBe('strip-19x38');
    expect(factInWords('bar.span_mm', 900, 'metric')).toBe('900 mm');
    expect(factInWords('lumber.moisture_gap_pct', 2.5, 'metric')).toMatch(/^2\.5 .*point/u);
    expect(factInWords('lumber.moisture_pct', 12, 'metric')).toBe('12 %');
  });
});

describe('why it is not known how a piece hangs', () => {
  const hung = (hang: object, without?: string) => {
    const shelf = demoShelf();
    const { model, solution } = demoSolved({ ...plan, crossbars: [], hang }, { ...shelf, hardware: Object.fromEntries(Object.entries(shelf.hardware).filter(([, { kind }]) => kind !== without)) });
    return { model, solution, facts: hangingFacts(model, solution) };
  };
  const wire = { by: 'wire', drop: '200 mm', from: 'inside', slack: '70 mm' };
  const reasons = (facts: readonly Fact[]) => Object.fromEntries(facts.flatMap(({ path, reason }) => (reason === undefined ? [] : [[path.slice('hanging.'.length), reason]])));

  test.each<[string, object, string, Record<string, string>]>([
    ['wire', wire, 'hook', { hook_factor: 'The shelf has no wall hook.' }],
    ['wire', wire, 'wire', { wire_factor: 'The shelf has no wire.' }],
    ['wire', wire, 'ring', { ring_use: 'The shelf has no ring screw.', ring_exit_mm: 'The shelf has no ring screw.' }],
    ['wire', wire, 'strap', {}],
    ['two hooks', { by: 'two-hooks' }, 'ring', { ring_use: 'The shelf has no ring screw.', ring_exit_mm: 'The shelf has no ring screw.' }],
    ['straps', { by: 'd-rings' }, 'strap', { ring_use: 'The shelf has no strap hanger.', ring_exit_mm: 'The shelf has no strap hanger.' }],
    ['straps', { by: 'd-rings' }, 'hook', { hook_factor: 'The shelf has no wall hook.' }],
    ['strips', { by: 'cleat' }, 'cleat', { hook_factor: 'The shelf has no bevelled strips.', ring_use: 'The shelf has no bevelled strips.', ring_exit_mm: 'The shelf has no bevelled strips.' }],
    ['strips', { by: 'cleat' }, 'hook', {}],
  ])('%s, from a shelf without a piece it needs', (_, hang, without, wanted) => {
    expect(reasons(hung(hang, without).facts)).toEqual(wanted);
  });

  test('a wire without slack, and hooks at the bottom edge: each says its own', () => {
    const straight = reasons(hung({ ...wire, slack: '0 mm' }).facts);
    for (const path of ['hook_load_N', 'hook_factor', 'ring_use', 'ring_exit_mm', 'hook_below_top_mm', 'inward_bow_mm']) expect(straight[path], path).toMatch(/^The wire has no slack/u);
    for (const hang of [{ by: 'two-hooks' }, wire]) {
      const { model, solution } = hung(hang);
      const low = { ...model, plan: { ...model.plan, hang: { ...model.plan.hang, drop_mm: 790 } } };
      const told = reasons(hangingFacts(low, solution));
      for (const path of ['lean_deg', 'top_standoff_mm', 'hook_load_N', 'hook_factor', 'ring_use', 'ring_exit_mm']) expect(told[path], path).toBe('The hook would sit at the bottom edge of the frame or below it.');
      expect(told['inward_bow_mm']).toBeUndefined();
    }
  });

  test('where it hangs from, and what the wire draws', () => {
    expect(['inside', 'back'].map((from) => said(hung({ ...wire, from }).facts, 'hanging.from'))).toEqual(['inside', 'back']);
    expect(said(hung({ by: 'cleat' }).facts, 'hanging.from')).toBe('none');
    // Of the side bars, the one that a brush with a crossbar does not hold bows farther; its sign is kept.
    const { model, solution } = hung(wire);
    const bent = (left: number, right: number) => said(hangingFacts(model, { ...solution, hung: { ...solution.hung!, bars: { ...solution.hung!.bars, left: { ...solution.hung!.bars.left, inward_bow_mm: left }, right: { ...solution.hung!.bars.right, inward_bow_mm: right } } } }), 'hanging.inward_bow_mm');
    expect([bent(1, -3), bent(-2, 1), bent(2, 3), bent(4, 3)]).toEqual([-3, -2, 3, 4]);
    const none = { ...solution, hung: null } as typeof solution;
    expect(said(hangingFacts(model, none), 'hanging.inward_bow_mm')).toBe(solution.working.bars.left.inward_bow_mm);
  });
});

describe('what bars, corners and cloth are told to be', () => {
  const { model, solution } = demoSolved(plan);
  const frame = frameFacts(model, solution);

  test('the longest part of a bar without a crossbar on it, in whatever order they are listed', () => {
    for (const bar of ['top', 'bottom']) expect(said(frame, 'bar.unsupported_mm', bar)).toBeCloseTo((0.7 - 0.25) * 1140, 6);
    for (const bar of ['left', 'right']) expect(said(frame, 'bar.unsupported_mm', bar)).toBeCloseTo(690 - 19, 6);
  });

  test('a bar of one board is single, whatever the bond; of two it says what holds them', () => {
    const bond = (bars: object) => { const built = demoSolved({ ...plan, crossbars: [], bars: { ...plan.bars, ...bars } }); return said(frameFacts(built.model, built.solution), 'bar.bond', 'left'); };
    expect([bond({ bond: 'glue' }), bond({ plies: 2, bond: 'glue' }), bond({ plies: 2, bond: 'none' })]).toEqual(['single', 'glue', 'none']);
  });

  test('stress at peak pull is that of the bar, small as it may be; in a half-lap the greater of bar and lap', () => {
    const light = demoSolved({ ...plan, crossbars: [], cloth: { pull: { working: '8 N/m' } } });
    const { bar_MPa } = barStress(light.model.bars.top, light.solution.peak.bars.top.forces, false);
    expect(bar_MPa).toBeLessThan(0.5);
    expect(said(frameFacts(light.model, light.solution), 'bar.stress_share', 'top')).toBeCloseTo(bar_MPa / 14, 12);
    const lapped = demoSolved({ ...plan, crossbars: [], corners: { cut: 'half-lap' } });
    const both = barStress(lapped.model.bars.top, lapped.solution.peak.bars.top.forces, true);
    expect(both.lap_MPa).toBeGreaterThan(both.bar_MPa);
    expect(said(frameFacts(lapped.model, lapped.solution), 'bar.stress_share', 'top')).toBeCloseTo(both.lap_MPa! / 14, 12);
  });

  test('the moment of a corner in newton metres, without its sign', () => {
    const corners = cornerFacts(model, solution);
    for (const name of ['top-left', 'bottom-right'] as const) expect(said(corners, 'corner.moment_Nm', name)).toBeCloseTo(Math.abs(solution.peak.corners[name].moment_Nmm) * 1e-3, 12);
    expect(Math.abs(solution.peak.corners['top-left'].moment_Nmm)).toBeGreaterThan(1);
  });

  test('no mitre opens in a room that is never drier than the boards', () => {
    const gap = (humidity: string, cut = 'mitre') => { const built = demoSolved({ ...plan, crossbars: [], room: { humidity }, corners: { cut } }); return said(cornerFacts(built.model, built.solution), 'corner.mitre_gap_mm', 'top-left') as number; };
    expect(gap('70..85 %')).toBe(0);
    expect(gap('20..45 %')).toBeGreaterThan(0.05);
    expect(gap('20..45 %', 'butt')).toBe(0);
  });

  test('staples on steel only where there is steel', () => {
    const staples = (more: object) => { const built = demoSolved({ ...plan, crossbars: [], ...more }); return said(clothFacts(built.model, built.solution), 'cloth.staples_on_steel_count'); };
    expect(staples({})).toBe(0);
    expect(staples({ corners: { brace: { kind: 'steel-angle', leg: '90 mm' } } })).toBeGreaterThan(0);
  });

  test('the second factor is unknown where either is', () => {
    const second = (load_factor: number | null, second_factor: number | null) => said(frameFacts(model, { ...solution, stability: { ...solution.stability, load_factor, second_factor } }), 'frame.second_factor');
    expect(second(2, 3)).toBe(1.5);
    for (const [first, next] of [[2, null], [null, 3], [null, null]] as const) expect(second(first, next)).toMatch(/^No pull of this kind/u);
  });
});

describe('fastenings', () => {
  const pair = { face: { width: '1000 mm', height: '800 mm' }, bars: { stock: 'strip-19x38', lay: 'edge', plies: 2, bond: 'glue+screws' } };
  const facts = (more: object = {}) => { const { model, solution } = demoSolved({ ...pair, ...more }); return { model, facts: fasteningFacts(model, solution) }; };

  test('distances over the least wanted', () => {
    const { model, facts: all } = facts({ corners: { cut: 'mitre', glue: 'pva', nails: { use: 'brad-18ga-25', each: 2 } } });
    for (const planned of plannedFastenings(model)) {
      const least = ndsDistances(planned.shank_mm, planned.pilot_mm !== null);
      expect(said(all, 'fastening.spacing_share', planned.name)).toBeCloseTo(planned.spacing_mm / least.along_grain_mm, 12);
      // Six diameters in the piece that holds the tip (NDS 12.1.5 and 12.1.6, from memory).
      expect(said(all, 'fastening.penetration_share', planned.name)).toBeCloseTo(planned.penetration_mm / (6 * planned.shank_mm), 12);
      expect(said(all, 'fastening.edge_share', planned.name)).toBeCloseTo(planned.edge_mm / least.edge_mm, 12);
      expect(said(all, 'fastening.end_share', planned.name)).toBeCloseTo(planned.end_mm / least.end_mm, 12);
    }
  });

  test('wood splits more easily around a hole of less than six tenths of the rule', () => {
    const risk = (pilot: string) => said(facts({ 'ply-screws': { use: 'screw-6x32', every: '200 mm', pilot } }).facts, 'fastening.split_risk', 'ply-screws');
    expect([risk('2.5 mm'), risk('1.2 mm')]).toEqual(['low', 'some']);
  });

  test('only ply screws give way to others, and count those that cannot', () => {
    const crowded = facts({ 'ply-screws': { use: 'screw-6x32', every: '30 mm' }, crossbars: [{ runs: 'upright', at: 0.4, stock: 'board-19x64', lay: 'flat' }], corners: { brace: { kind: 'timber', leg: '150 mm', stock: 'strip-19x38', lay: 'flat' } } }).facts;
    const count = (about: string) => said(crowded, 'fastening.in_the_way_count', about);
    expect(count('ply-screws')).toBeGreaterThan(0);
    expect([count('crossbar-screws'), count('brace-screws')]).toEqual([0, 0]);
  });
});

describe('why it is not known how a frame warps', () => {
  const bowless = { ...plan, crossbars: [] };
  const at = (samples: number, sd?: number, mean?: number) => {
    const shelf = demoShelf();
    const spread = shelf.lumber['board-19x64']!.spread;
    const changed = Object.fromEntries(Object.entries(spread).map(([way, one]) => [way, { ...one, twist_rad_per_m: { mean: mean ?? one.twist_rad_per_m.mean, sd: sd ?? one.twist_rad_per_m.sd } }])) as unknown as typeof spread;
    const { model, solution } = demoSolved(bowless, { ...shelf, lumber: { ...shelf.lumber, 'board-19x64': { ...shelf.lumber['board-19x64']!, spread: changed } } });
    return warpFacts(model, solution, { ...settings, samples });
  };

  test('one sample is enough to be told, none is not', () => {
    expect(typeof said(at(1), 'warp.bar_bow_chance')).toBe('number');
    expect(said(at(0), 'warp.bar_bow_chance')).toBe('No samples were asked for.');
    for (const path of ['warp.corner_lift_sd_mm', 'bar.natural_bow_p90_mm']) expect(typeof said(at(0), path)).toBe('number');
  });

  test('boards that all twist alike have a spread of nought, one that is no number is none', () => {
    expect(typeof said(at(1, 0), 'warp.corner_lift_sd_mm')).toBe('number');
    for (const [sd, mean] of [[Number.NaN, 0], [0.01, Infinity], [0.01, Number.NaN]] as const)
      for (const path of ['warp.corner_lift_sd_mm', 'warp.corner_lift_chance', 'bar.natural_bow_p90_mm']) expect(said(at(1, sd, mean), path), `${path} ${sd} ${mean}`).toBe('The numbers of the shelf give no spread of natural warp that can be worked with.');
  });

  test('a limit that is no length leaves the chances unknown, and nothing else', () => {
    const { model, solution } = demoSolved(bowless);
    const without = (changes: Partial<FactSettings>) => warpFacts(model, solution, { ...settings, ...changes });
    const bow = without({ bar_bow_limit_mm: { ...settings.bar_bow_limit_mm, left: Number.NaN } });
    expect([said(bow, 'warp.bar_bow_chance'), typeof said(bow, 'bar.natural_bow_p90_mm', 'left')]).toEqual(['The ruleset’s limit bar-bow is not a length that can be worked out.', 'number']);
    expect(typeof said(without({}), 'warp.bar_bow_chance')).toBe('number');
  });

  test('the frame’s facts come before what each cause is to them', () => {
    const shares = ofSubject('warp.cause_share')(demoSolved(bowless).model, demoSolved(bowless).solution, settings);
    expect(shares.reduce((sum, { value }) => sum + (value as number), 0)).toBeCloseTo(1, 9);
    shares.slice(1).forEach(({ value }, i) => expect(value as number).toBeLessThanOrEqual(shares[i]!.value as number));
  });
});
