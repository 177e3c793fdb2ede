import { describe, expect, it } from 'vitest';
import { hangingState } from '../../../src/mechanics/hanging/hanging-state.js';
import { lean } from '../../../src/mechanics/hanging/lean.js';
import { wireForces } from '../../../src/mechanics/hanging/wire-forces.js';
import { ringSpan_mm, wireGeometry } from '../../../src/mechanics/hanging/wire-geometry.js';
import { bracesMet, crossbarsMet, type WirePath } from '../../../src/mechanics/occupancy/wire-path.js';
import { ringsAt, wirePathAt } from '../../../src/mechanics/occupancy/hanging-points.js';
import { demoModel } from '../fasteners/demo-model.js';

const plan = { face: { width: '1240 mm', height: '860 mm' }, bars: { stock: 'square-38x38', lay: 'flat' } };
const sin = (deg: number): number => Math.sin((deg * Math.PI) / 180);

describe('the loaded wire, by its length', () => {
  it('one hook: a triangle; two: a trapezium whose sloping parts are what the level middle leaves', () => {
    const one = wireGeometry(1000, 120, 1)!;
    expect([one.rise_mm, one.hooks_apart_mm, one.wire_mm]).toEqual([expect.closeTo(120, 9), 0, expect.closeTo(2 * Math.hypot(500, 120), 9)]);
    expect(Math.tan((one.angle_deg * Math.PI) / 180)).toBeCloseTo(120 / 500, 12);
    const two = wireGeometry(1000, 120, 2)!;
    const apart = two.hooks_apart_mm;
    expect(apart).toBeGreaterThan(100);
    expect(2 * Math.hypot(two.rise_mm, (1000 - apart) / 2) + apart).toBeCloseTo(one.wire_mm, 9);
    expect(Math.tan((two.angle_deg * Math.PI) / 180)).toBeCloseTo(two.rise_mm / ((1000 - apart) / 2), 12);
    expect(wireGeometry(1000, 120, 4)).toEqual(two);
    expect([wireGeometry(1000, 0, 1), wireGeometry(0, 50, 1), wireGeometry(-5, 50, 1)]).toEqual([null, null, null]);
  });
  it('two forces at a ring and three at a hook balance', () => {
    const { tension_N: T, inward_N, lift_N, hook_N } = wireForces(60, 25, 2);
    expect([T * sin(25), lift_N, inward_N]).toEqual([expect.closeTo(30, 9), 30, expect.closeTo(T * sin(65), 9)]);
    // The hook bears the level wire's pull and the sloping one's: their sum.
    expect(hook_N).toBeCloseTo(Math.hypot(T * sin(25), T - T * sin(65)), 9);
    expect(wireForces(60, 25, 1).hook_N).toBe(60);
  });
  it('rings on inner faces stand two bars nearer, on the middles of backs one', () => {
    const span = (from: string): number => ringSpan_mm(demoModel({ ...plan, hang: { by: 'wire', from } }).plan, 38);
    expect([span('inside'), span('back')]).toEqual([1240 - 76, 1240 - 38]);
  });
});

describe('leaning on hook and bottom edge: moments about that edge', () => {
  const hung = { height_mm: 800, rings_below_top_mm: 150, rise_mm: 60, standoff_mm: 20, out_mm: 0, cg_mm: 24, weight_N: 50 };
  it('the angle, the gap at the top, the pull on the hook', () => {
    const found = lean(hung)!;
    const h = 710;
    expect(sin(found.angle_deg)).toBeCloseTo(20 / h, 12);
    expect(found.top_standoff_mm).toBeCloseTo((800 * 20) / h, 9);
    // The weight's arm about the lower edge is its distance from the wall; the hook's height above that edge the other's.
    const cos = Math.sqrt(1 - (20 / h) ** 2);
    expect(found.pull_out_N).toBeCloseTo((50 * (24 * cos + (400 * 20) / h - 20)) / (h * cos), 9);
    const out = lean({ ...hung, out_mm: 9 })!;
    expect(sin(out.angle_deg)).toBeCloseTo(11 / h, 12);
    expect(out.top_standoff_mm).toBeCloseTo((800 * 11) / h + 9 * Math.sqrt(1 - (11 / h) ** 2), 9);
    expect(lean({ ...hung, out_mm: 25 })!.angle_deg).toBe(0);
    expect(lean({ ...hung, cg_mm: 0, standoff_mm: 100, height_mm: 260 })!.pull_out_N).toBe(0);
    expect([lean({ ...hung, rings_below_top_mm: 860 }), lean({ ...hung, rings_below_top_mm: 840 })]).toEqual([null, null]);
    expect(lean({ ...hung, rings_below_top_mm: 839.9, out_mm: 20 })).not.toBeNull();
  });
});

describe('a hanging plan', () => {
  const state = (hang: object, more: object = {}) => hangingState(demoModel({ ...plan, ...more, hang }))!;
  it('loads of rings and hooks by how it hangs', () => {
    const wire = state({ by: 'wire', from: 'inside', drop: '170 mm', slack: '110 mm', hooks: 2 });
    const { lift_N, inward_N, tension_N, hook_N } = wire.forces!;
    const pull = wire.lean!.pull_out_N;
    expect([wire.hooks_count, wire.hook_pieces, wire.ring_wood_mm, wire.hook_below_top_mm]).toEqual([2, 2, 38, expect.closeTo(170 - wire.wire!.rise_mm, 9)]);
    expect(wire.ring_load).toEqual({ along_N: inward_N, across_N: Math.hypot(lift_N, pull / 2) });
    expect(wire.hook_N).toBeCloseTo(Math.hypot(hook_N, pull / 2), 9);
    expect(tension_N).toBeGreaterThan(lift_N);
    const back = state({ by: 'wire', from: 'back', drop: '170 mm', slack: '110 mm', hooks: 1 });
    expect(back.ring_load).toEqual({ along_N: back.lean!.pull_out_N / 2, across_N: Math.hypot(back.forces!.lift_N, back.forces!.inward_N) });
    expect(back.hook_N).toBeCloseTo(Math.hypot(back.weight_N, back.lean!.pull_out_N), 9);
    expect([back.hooks_count, state({ by: 'wire', from: 'back', hooks: 4 }).hooks_count, state({ by: 'wire', from: 'back', hooks: 4 }).hook_pieces]).toEqual([1, 2, 4]);
    const rings = state({ by: 'two-hooks', from: 'inside', drop: '170 mm' });
    expect(rings.ring_load).toEqual({ along_N: 0, across_N: Math.hypot(rings.weight_N / 2, rings.lean!.pull_out_N / 2) });
    expect([rings.hook_below_top_mm, rings.forces, rings.wire, rings.hook_pieces]).toEqual([170, null, null, 2]);
    const straps = state({ by: 'd-rings', drop: '170 mm' });
    expect(straps.held_by?.kind).toBe('strap');
    expect(straps.weight_N).toBeCloseTo(demoModel({ ...plan, hang: { by: 'd-rings', drop: '170 mm' } }).weight.total_kg * 9.80665, 9);
    expect(hangingState(demoModel({ ...plan, hang: { by: 'none' } }))).toBeNull();
  });
  it('bevelled strips share weight and pull among their screws', () => {
    const one = state({ by: 'cleat' });
    expect([one.hooks_count, one.hook_below_top_mm]).toEqual([1, 38 + one.cleat!.high_mm]);
    // The back of the bar lies on the strip and the wall: the frame hangs flat.
    expect([one.lean!.angle_deg, one.lean!.top_standoff_mm]).toEqual([0, 0]);
    expect(one.hook_N).toBeCloseTo(Math.hypot(one.weight_N, one.lean!.pull_out_N), 9);
    expect(one.ring_load).toEqual({ along_N: 0, across_N: Math.hypot(one.weight_N, one.lean!.pull_out_N) / 4 });
    const pair = state({ by: 'cleat' }, { bars: { stock: 'strip-19x38', lay: 'flat' }, crossbars: [{ runs: 'upright', at: 0.5, stock: 'square-38x38', setback: '5 mm' }] });
    expect(pair.hooks_count).toBe(2);
    expect(pair.hook_N).toBeCloseTo(Math.hypot(pair.weight_N, pair.lean!.pull_out_N) / 2, 9);
    expect(pair.ring_load!.across_N).toBeCloseTo(Math.hypot(pair.weight_N, pair.lean!.pull_out_N) / 8, 9);
  });
});

describe('what a wire runs against', () => {
  const braced = demoModel({ ...plan, bars: { stock: 'stud-38x89', lay: 'edge' }, corners: { brace: { kind: 'timber', leg: '200 mm', stock: 'strip-19x38', lay: 'flat' } }, hang: { by: 'none' } });
  const path = (more: Partial<WirePath>): WirePath => ({ ring_x_mm: 38, ring_drop_mm: 300, hook_x_mm: 400, hook_drop_mm: 200, ring_deep_mm: 44.5, ...more });
  it('a brace fills a strip across the corner as deep as it is, flush with the backs, with 2 mm of room', () => {
    const { section, leg_mm } = braced.braces[0]!;
    // Its middle meets the middles of the bars at the leg: inside that x + y = leg + w, give or take half its width times √2.
    const inner = leg_mm + 38 - (section.w_mm / 2) * Math.SQRT2;
    const outer = leg_mm + 38 + (section.w_mm / 2) * Math.SQRT2;
    const level = (sum: number, deep: number): boolean => bracesMet(braced, path({ ring_x_mm: 38, hook_x_mm: 38, ring_drop_mm: sum - 38, hook_drop_mm: sum - 38, ring_deep_mm: deep })).length > 0;
    expect([inner - 3, inner - 1, outer + 1, outer + 3].map((sum) => level(sum, 10))).toEqual([false, true, true, false]);
    const middle = leg_mm + 38;
    expect([section.d_mm - 1, section.d_mm + 1.9, section.d_mm + 2.1].map((deep) => level(middle, deep))).toEqual([true, true, false]);
    expect(bracesMet(demoModel({ ...plan, hang: { by: 'none' } }), path({}))).toEqual([]);
  });
  it('a level crossbar between hook and ring, as far in as it stands', () => {
    const crossed = (at_mm: number, deep: number) => crossbarsMet(demoModel({ ...plan, bars: { stock: 'stud-38x89', lay: 'edge' }, crossbars: [{ runs: 'level', at: `${860 - at_mm} mm`, stock: 'square-38x38', setback: '20 mm' }], hang: { by: 'none' } }), path({ ring_deep_mm: deep }));
    // The crossbar lies from 31 to 69 mm in front of the backs.
    expect([crossed(250, 60), crossed(250, 20)].map((met) => met.length)).toEqual([1, 0]);
    expect([crossed(321.5, 60), crossed(320.5, 60), crossed(178.5, 60)].map((met) => met.length)).toEqual([0, 1, 0]);
  });
  it('rings on the backs, and inside, as bodies in the way of others', () => {
    const at = (from: string) => ringsAt(demoModel({ ...plan, hang: { by: 'two-hooks', from, drop: '200 mm' } }), 200).map(({ bar, along_mm, across_mm, deep_mm }) => [bar, ...along_mm, ...across_mm, ...deep_mm]);
    expect(at('back')).toEqual([['left', 650, 670, 9, 29, -1, 25], ['right', 650, 670, 9, 29, -1, 25]]);
    expect(at('inside')).toEqual([['left', 650, 670, -20, 25, 9, 29], ['right', 650, 670, -20, 25, 9, 29]]);
    const wired = demoModel({ ...plan, hang: { by: 'wire', from: 'inside', drop: '200 mm', slack: '120 mm', hooks: 1 } });
    expect(wirePathAt(wired, 210)).toEqual({ ring_x_mm: 38, ring_drop_mm: 210, hook_x_mm: 620, hook_drop_mm: expect.closeTo(90, 9), ring_deep_mm: 19 });
    expect(wirePathAt(demoModel({ ...plan, hang: { by: 'two-hooks' } }), 210)).toBeNull();
  });
});
