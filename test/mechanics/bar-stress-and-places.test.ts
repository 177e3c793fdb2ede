import { describe, expect, it } from 'vitest';
import { barStress } from '../../src/mechanics/bar-stress.js';
import { hangingPoints } from '../../src/mechanics/occupancy/hanging-points.js';
import type { BarForces } from '../../src/model/frame-results.js';
import type { MemberBuild } from '../../src/model/model.js';
import { demoModel } from './fasteners/demo-model.js';

const face = { width: '1140 mm', height: '690 mm' };

describe('stress in a bar, by what bends as one', () => {
  const built = (bond: string, plies: number, stack: string): MemberBuild => demoModel({ face, bars: { stock: 'strip-19x38', lay: 'edge', plies, bond, stack }, corners: { cut: 'butt' } }).bars.top;
  const at = (out_Nmm: number): readonly BarForces[] => [{ s: 0, axial_N: 0, plane_Nmm: 0, out_Nmm: 0 }, { s: 1, axial_N: 0, plane_Nmm: 0, out_Nmm }];
  it.each<[string, number, string, number]>([
    ['glue', 3, 'front-to-back', 3 * 38], ['screws', 3, 'front-to-back', 3 * 38], ['none', 3, 'front-to-back', 38], ['screws', 4, 'front-to-back', 38], ['none', 2, 'side-by-side', 38], ['screws', 4, 'side-by-side', 38], ['glue+screws', 4, 'front-to-back', 4 * 38],
  ])('out of the plane, %s, %i plies, %s: half of %i mm from the middle', (bond, plies, stack, deep_mm) => {
    const build = built(bond, plies, stack);
    expect(barStress(build, at(-5000), false).bar_MPa).toBeCloseTo((5000 * deep_mm) / 2 / build.section.I_out_mm4, 9);
  });
  it('axial force and both bendings add at each place, whatever their signs; the worst place tells', () => {
    const build = built('glue', 2, 'side-by-side');
    const { A_mm2, I_plane_mm4, I_out_mm4 } = build.section;
    const forces: BarForces[] = [{ s: 0, axial_N: 900, plane_Nmm: 0, out_Nmm: 0 }, { s: 0.4, axial_N: -300, plane_Nmm: -7000, out_Nmm: 2000 }, { s: 1, axial_N: 0, plane_Nmm: 0, out_Nmm: -100 }];
    expect(barStress(build, forces, false)).toEqual({ bar_MPa: expect.closeTo(300 / A_mm2 + (7000 * 19) / I_plane_mm4 + (2000 * 19) / I_out_mm4, 9), lap_MPa: null });
  });
  it('a lap is looked at half a width from either end; twice for axial force and the plane, four times out of it', () => {
    const build = built('glue', 2, 'side-by-side');
    const { A_mm2, I_plane_mm4, I_out_mm4 } = build.section;
    const reach = 19 / build.span_mm;
    const rising: BarForces[] = [{ s: 0, axial_N: -100, plane_Nmm: 0, out_Nmm: 0 }, { s: 0.5, axial_N: -100, plane_Nmm: 0, out_Nmm: 0 }, { s: 0.5, axial_N: -100, plane_Nmm: 0, out_Nmm: 0 }, { s: 1, axial_N: -100, plane_Nmm: 8000, out_Nmm: 3000 }];
    const share = (0.5 - reach) / 0.5;
    expect(barStress(build, rising, true).lap_MPa).toBeCloseTo((2 * 100) / A_mm2 + (2 * 8000 * share * 19) / I_plane_mm4 + (4 * 3000 * share * 19) / I_out_mm4, 9);
    const falling = rising.map((f) => ({ ...f, s: 1 - f.s })).reverse();
    expect(barStress(build, falling, true).lap_MPa).toBeCloseTo(barStress(build, rising, true).lap_MPa!, 9);
  });
});

describe('rings that stand on the foot of a brace', () => {
  const points = (leg: string, more: object = {}, of: object = face, hang: object = {}) =>
    hangingPoints(demoModel({ face: of, bars: { stock: 'square-38x38', lay: 'flat' }, corners: { brace: { kind: 'timber', leg, stock: 'strip-19x38', lay: 'edge' } }, hang: { by: 'two-hooks', from: 'inside', ...hang }, ...more }));
  // A ring takes 10 mm to either hand, and both want 2 mm: clear from 14 mm beyond the foot of leg ± 19/√2.
  it('go by marks of 5 mm to the nearest place that is clear, down or up', () => {
    expect(points('170 mm')).toEqual({ planned_mm: 180, drop_mm: 200, moved_off: { kind: 'brace', of: 'top-left' }, meets: [] });
    expect(points('200 mm')).toMatchObject({ drop_mm: 170 });
    expect(points('200 mm', {}, face, { drop: '188 mm' })).toMatchObject({ planned_mm: 188, drop_mm: 168 });
    const clear = 14 + 19 / Math.SQRT2;
    for (const leg of [140, 155, 170, 185, 200, 215]) {
      const { drop_mm, planned_mm } = points(`${leg} mm`);
      const free = (mm: number): boolean => Math.abs(mm - leg) >= clear - 1e-9;
      const nearest = Array.from({ length: 20 }, (_, n) => [planned_mm + 5 * n, planned_mm - 5 * n]).flat().find(free);
      expect(drop_mm, `leg ${leg}`).toBe(nearest);
    }
  });
  it('by quarters of an inch in an inch plan', () => {
    const { drop_mm, planned_mm } = points('6-1/2 in', {}, { width: '45 in', height: '27 in' }, { drop: '7 in' });
    expect(planned_mm).toBeCloseTo(177.8, 9);
    expect(((drop_mm - planned_mm) / 6.35) % 1).toBeCloseTo(0, 9);
    expect(drop_mm).not.toBe(planned_mm);
  });
  it('never below two fifths of the height, nor above half of what was planned: there they stay and say what they meet', () => {
    // 430 mm high: no lower than 172 mm; planned at 160, 10 mm below the middle of the foot, so only above it is there room.
    const wide = { corners: { brace: { kind: 'timber', leg: '150 mm', stock: 'board-19x64', lay: 'flat' } } };
    const low = points('150 mm', wide, { width: '1140 mm', height: '430 mm' }, { drop: '160 mm' });
    const foot = 64 / Math.SQRT2 + 14;
    expect(low.drop_mm).toBe(160 - 5 * Math.ceil((foot + 10) / 5));
    expect(low.drop_mm).toBeGreaterThanOrEqual(80);
    const stuck = points('120 mm', { corners: { brace: { kind: 'timber', leg: '120 mm', stock: 'board-19x89', lay: 'flat' } } }, { width: '1140 mm', height: '430 mm' }, { drop: '120 mm' });
    expect(stuck).toMatchObject({ drop_mm: 120, moved_off: null });
    expect(stuck.meets).toContainEqual({ kind: 'brace', of: 'top-left' });
  });
});

it('braces weigh as long as they are along their middle, leg √2; crossbars stand where the plan has them along the middles of the bars', () => {
  const model = demoModel({ face, bars: { stock: 'square-38x38', lay: 'flat' }, crossbars: [{ runs: 'upright', at: 0.4 }, { runs: 'level', at: 0.7 }], corners: { brace: { kind: 'timber', leg: '200 mm', stock: 'strip-19x38', lay: 'flat' } }, cloth: { pull: { working: { x: '210 N/m', y: '170 N/m' }, peak: { x: '400 N/m', y: '500 N/m' } } } });
  for (const brace of model.braces) expect(brace.mass_kg).toBeCloseTo(19 * 38 * 200 * Math.SQRT2 * 420e-9, 12);
  expect(model.shape.crossbars.map(({ at }) => at)).toEqual([expect.closeTo((0.4 * 1140 - 19) / 1102, 12), expect.closeTo((0.7 * 690 - 19) / 652, 12)]);
  expect([model.working, model.peak]).toEqual([{ x: 0.21, y: 0.17 }, { x: 0.4, y: 0.5 }]);
  expect(model.accidental).toEqual({ x: model.shelf.proposals['accidental-pull']!.value / 1000, y: model.shelf.proposals['accidental-pull']!.value / 1000 });
  const bare = demoModel({ face, bars: { stock: 'square-38x38', lay: 'flat' }, crossbars: [{ runs: 'upright', at: 0.4 }, { runs: 'level', at: 0.7 }] });
  expect(model.weight.wood_kg - bare.weight.wood_kg).toBeCloseTo(4 * 19 * 38 * 200 * Math.SQRT2 * 420e-9, 12);
});
