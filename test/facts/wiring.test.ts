import { describe, expect, test } from 'vitest';
import type { BarName } from '../../src/base/names.js';
import { clothFacts } from './of-subject.js';
import type { Fact } from '../../src/facts/fact.js';
import { frameFacts } from './of-subject.js';
import { hangingFacts } from './of-subject.js';
import { lumberFacts } from './of-subject.js';
import { equilibriumMoisture_pct } from '../../src/mechanics/moisture/equilibrium.js';
import { centreOfGravity_mm } from '../../src/mechanics/hanging/centre-of-gravity.js';
import { hangSteps } from '../../src/order-of-work/hang-step.js';
import { tapSpan } from '../../src/mechanics/cloth/frame-spans.js';
import { glueSheet } from '../../src/mechanics/glue/glue-sheet.js';
import { solveStatics } from '../../src/solve/analyse-frame.js';
import { demoModel, demoSolved } from '../mechanics/fasteners/demo-model.js';

/** Nothing is equal: sides, pulls, places of the crossbars, the ends of the humidity. */
const plan = {
  face: { width: '1140 mm', height: '690 mm' },
  bars: { stock: 'board-19x64', lay: 'edge', lip: '5 mm' },
  crossbars: [{ runs: 'upright', at: 0.3, stock: 'strip-19x38', lay: 'edge' }, { runs: 'level', at: 0.45, stock: 'strip-19x38', lay: 'edge' }],
  cloth: { pull: { working: { x: '170 N/m', y: '230 N/m' }, peak: { x: '410 N/m', y: '340 N/m' } } },
  room: { humidity: '30..70 %', temperature: '18 C' },
  lumber: { moisture: '11 %' },
};
const { model, solution } = demoSolved(plan);
const w = 19;
const valueIn = (facts: readonly Fact[], path: string, about?: string) => facts.find((one) => one.path === path && (about === undefined || one.about === about))?.value;
const frame = frameFacts(model, solution);
const of = (path: string, about?: string): number => valueIn(frame, path, about) as number;

describe('facts about the frame', () => {
  test('what lasts is (1 + k_def) times what the pull does at once: 1.8 times in service class 2', () => {
    expect(model.k_def).toBe(0.8);
    expect(of('bar.inward_bow_long_term_mm', 'left')).toBeCloseTo(1.8 * solution.working.bars.left.inward_bow_mm, 9);
    expect(of('bar.dish_long_term_mm', 'top')).toBeCloseTo(1.8 * solution.working.bars.top.dish_mm, 9);
    expect(of('bar.roll_long_term_mrad', 'bottom')).toBeCloseTo(1.8 * solution.working.bars.bottom.roll_mrad, 9);
    expect(of('frame.long_term_reserve')).toBeCloseTo((0.67 * solution.stability.load_factor!) / 1.8, 9);
  });
  test('the critical pull is so many times the mean of the two pulls', () => {
    expect(of('frame.critical_pull_N_per_m')).toBeCloseTo((solution.stability.load_factor! * (170 + 230)) / 2, 9);
  });
  test('the second factor is a ratio, so never under 1', () => {
    const { load_factor, second_factor } = solution.stability;
    expect(load_factor).toBeGreaterThan(1.2);
    expect(of('frame.second_factor')).toBeCloseTo(second_factor! / load_factor!, 12);
    expect(of('frame.second_factor')).toBeGreaterThanOrEqual(1);
  });
  test('reserves are 0.67 of the factor at the peak pull, as written and with soft joints', () => {
    expect(of('frame.twist_reserve')).toBeCloseTo(0.67 * solution.peak_factor!, 12);
    expect(of('frame.twist_reserve_give8')).toBeCloseTo(0.67 * solution.soft_peak_factor!, 12);
  });
  test('only what stands on a bar shortens its free length: uprights top and bottom, levels left and right', () => {
    const across = (at: number, face: number): number => at * face - w / 2;
    for (const bar of ['top', 'bottom'] as const) expect(of('bar.unsupported_mm', bar)).toBeCloseTo(1140 - w - across(0.3, 1140), 6);
    for (const bar of ['left', 'right'] as const) expect(of('bar.unsupported_mm', bar)).toBeCloseTo(690 - w - across(0.45, 690), 6);
  });
});

test('in a bare corner each bar is pressed by half the pull on the bar across, and both press it shut', () => {
  const bare = demoSolved({ ...plan, crossbars: [] }).solution.working;
  for (const corner of Object.values(bare.corners)) {
    expect(corner.axial_N).toBeLessThan(0);
    expect(Math.abs(corner.axial_N)).toBeCloseTo(Math.max((0.17 * (690 - w)) / 2, (0.23 * (1140 - w)) / 2), 6);
  }
  const axial: Readonly<Record<BarName, number>> = { top: 0.17 * (690 - w), bottom: 0.17 * (690 - w), left: 0.23 * (1140 - w), right: 0.23 * (1140 - w) };
  for (const [name, force] of Object.entries(axial) as [BarName, number][]) expect(bare.bars[name].axial_N).toBeCloseTo(-force / 2, 6);
});

test('roll and dish come from the pull’s distance to the middle of the bar, lip and all', () => {
  const lever = (lip_mm: number): number => {
    const { shape } = demoModel({ ...plan, crossbars: [], bars: { ...plan.bars, lip: `${lip_mm} mm` } });
    return solveStatics(shape, { x: 0.17, y: 0.23 }).bars.top.roll_mrad;
  };
  expect(lever(5) / lever(1)).toBeCloseTo((32 + 5) / (32 + 1), 9);
});

describe('facts about the wood and the room', () => {
  const facts = lumberFacts(model);
  test('boards settle to the middle of the room’s humidity, and move between its ends', () => {
    const at = (humidity: number): number => equilibriumMoisture_pct(humidity, 18);
    expect(valueIn(facts, 'lumber.room_moisture_pct')).toBeCloseTo(at(0.5), 12);
    expect(valueIn(facts, 'lumber.moisture_gap_pct')).toBeCloseTo(11 - at(0.5), 12);
    const moved = w * model.bars.top.stock.species.change_tangential * (at(0.7) - at(0.3));
    expect(valueIn(facts, 'bar.seasonal_width_mm', 'top')).toBeCloseTo(moved, 9);
  });
});

describe('facts about the cloth', () => {
  test('over a lip the whole face swings; without one the cloth between the middles of the bars', () => {
    expect(tapSpan(model)).toEqual({ width_mm: 1140, height_mm: 690 });
    expect(tapSpan(demoModel({ ...plan, bars: { stock: 'board-19x64', lay: 'edge' } }))).toEqual({ width_mm: 1140 - w, height_mm: 690 - w });
  });
  test('a staple bears the larger of the two peak pulls over its own stretch of edge', () => {
    expect(valueIn(clothFacts(model, solution), 'cloth.staple_load_N')).toBeCloseTo(410 * 0.05, 9);
  });
  test('a cloth of glue-damp wood stays in the clamps half as long again from just over 12 %', () => {
    const clamp_min = (moisture: string): number => glueSheet(demoModel({ ...plan, lumber: { moisture } }))!.clamp_min;
    expect(clamp_min('12.1 %') / clamp_min('12 %')).toBe(1.5);
  });
});

describe('facts about hanging', () => {
  test('the centre of gravity: wood half way through the depth, cloth, ground and paint on the lip, steel at the back', () => {
    const { wood_kg, cloth_kg, ground_kg, paint_kg, total_kg } = model.weight;
    expect(centreOfGravity_mm(model)).toBeCloseTo((wood_kg * 32 + (cloth_kg + ground_kg + paint_kg) * (64 + 5)) / total_kg, 9);
  });
  test('rings in the back of the bars: the hook stands 8 mm off the wall and the wire 4 mm behind the back, so the top leans out by 12 mm in the height of the hook', () => {
    const hung = demoSolved({ ...plan, crossbars: [], hang: { by: 'two-hooks', from: 'back', drop: '150 mm' } });
    const lean = valueIn(hangingFacts(hung.model, hung.solution), 'hanging.lean_deg') as number;
    expect(Math.sin((lean * Math.PI) / 180)).toBeCloseTo(12 / (690 - 150), 9);
  });
  test('gussets hold the bars off the wall: the lower edge by their thickness, so the top leans out by what the hook stands farther', () => {
    const hung = demoSolved({ ...plan, crossbars: [], corners: { brace: { kind: 'ply-gusset', leg: '120 mm' } }, hang: { by: 'two-hooks', from: 'back', drop: '240 mm' } });
    const facts = hangingFacts(hung.model, hung.solution);
    const alpha = Math.asin((12 - 9) / (690 - 240));
    expect(valueIn(facts, 'hanging.lean_deg')).toBeCloseTo((alpha * 180) / Math.PI, 9);
    expect(valueIn(facts, 'hanging.top_standoff_mm')).toBeCloseTo(690 * Math.sin(alpha) + 9 * Math.cos(alpha), 9);
  });
  test('what stands out farther than the hook: the piece hangs upright on it; half way up it holds nothing off', () => {
    const on = (crossbar: object) => { const hung = demoSolved({ ...plan, bars: { stock: 'strip-19x38', lay: 'edge' }, crossbars: [crossbar], hang: { by: 'two-hooks', from: 'back', drop: '150 mm' } }); return hangingFacts(hung.model, hung.solution); };
    const upright = on({ runs: 'upright', stock: 'board-19x64', lay: 'edge', setback: '4 mm' });
    expect([valueIn(upright, 'hanging.lean_deg'), valueIn(upright, 'hanging.top_standoff_mm')]).toEqual([0, 64 + 4 - 38]);
    const level = on({ runs: 'level', stock: 'board-19x64', lay: 'edge', setback: '4 mm' });
    expect(Math.sin(((valueIn(level, 'hanging.lean_deg') as number) * Math.PI) / 180)).toBeCloseTo(12 / (690 - 150), 9);
  });
  test('rings inside bars deeper than twice the hook’s 8 mm: the piece lies flat', () => {
    const thin = demoSolved({ ...plan, bars: { stock: 'strip-19x38', lay: 'flat' }, crossbars: [], hang: { by: 'two-hooks', from: 'inside', drop: '150 mm' } });
    expect(valueIn(hangingFacts(thin.model, thin.solution), 'hanging.lean_deg')).toBe(0);
  });
  test('from 10 kg on, or 1.5 m², the caution for pieces that hang over people is given', () => {
    const cautions = (total_kg: number, width = 1140): readonly string[] => {
      const hung = demoModel({ ...plan, face: { width: `${width} mm`, height: '690 mm' }, crossbars: [], hang: { by: 'd-rings' } });
      return hangSteps({ ...hung, weight: { ...hung.weight, total_kg } })[0]!.cautions;
    };
    expect(cautions(10)).not.toContain('overhead-hanging');
    expect(cautions(10.01)).toContain('overhead-hanging');
    expect(cautions(5, 2170)).not.toContain('overhead-hanging');
    expect(cautions(5, 2180)).toContain('overhead-hanging');
  });
});
