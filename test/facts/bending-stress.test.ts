import { describe, expect, test } from 'vitest';
import { barStress } from '../../src/mechanics/bar-stress.js';
import type { BarForces } from '../../src/model/frame-results.js';
import { buildModel } from '../../src/model/build-model.js';
import { frameFacts } from './of-subject.js';
import { demoModel, demoSolved } from '../mechanics/fasteners/demo-model.js';

/** Stress share and forces of the top bar. */
function top(plies: number, bond: string): { readonly share: number; readonly forces: readonly BarForces[] } {
  const { model, solution } = demoSolved({ face: { width: '1200 mm', height: '860 mm' }, bars: { stock: 'strip-19x38', lay: 'edge', plies, bond }, corners: { give: 0 } });
  const share = frameFacts(model, solution).find((f) => f.path === 'bar.stress_share' && f.about === 'top')?.value as number;
  return { share, forces: solution.peak.bars.top.forces };
}

describe('bending stress of built-up bars', () => {
  test('four screwed plies are loose plies', () => expect(top(4, 'screws').share).toBeCloseTo(top(4, 'none').share, 9));

  test.each([2, 3])('%i plies: glued is never worse than screwed, screwed never worse than loose', (plies) => {
    const [glued, screwed, loose] = [top(plies, 'glue').share, top(plies, 'screws').share, top(plies, 'none').share];
    expect(glued).toBeLessThan(screwed);
    expect(screwed).toBeLessThan(loose);
  });

  test('loose plies share the moment and bend each for itself: M/(n b h²/6), with what the axial force and the moment out of the plane add, over 14 MPa', () => {
    const { share, forces } = top(3, 'none');
    const [plane_mm3, out_mm3, area_mm2] = [(3 * 38 * 19 ** 2) / 6, (3 * 19 * 38 ** 2) / 6, 3 * 19 * 38];
    const stress = forces.map(({ axial_N: N, plane_Nmm: M, out_Nmm: O }) => Math.abs(M) / plane_mm3 + Math.abs(O) / out_mm3 + Math.abs(N) / area_mm2);
    expect(share).toBeCloseTo(Math.max(...stress) / 14, 9);
  });

  test('a half-lap leaves half the depth: twice and four times the stress at its inner edge, interpolated by hand', () => {
    const lapped = { face: { width: '1220 mm', height: '914 mm' }, bars: { stock: 'strip-19x38', lay: 'flat' }, corners: { cut: 'half-lap' } };
    const { model, solution } = demoSolved(lapped);
    const build = model.bars.left;
    const { forces } = solution.peak.bars.left;
    const { bar_MPa, lap_MPa } = barStress(build, forces, true);
    const [f0, f1] = [forces[0]!, forces[1]!];
    const t = 19 / 876 / f1.s;
    const at = (key: 'axial_N' | 'plane_Nmm' | 'out_Nmm'): number => Math.abs(f0[key] + t * (f1[key] - f0[key]));
    expect(lap_MPa).toBeCloseTo(at('axial_N') / (38 * 9.5) + at('plane_Nmm') / ((9.5 * 38 ** 2) / 6) + at('out_Nmm') / ((38 * 9.5 ** 2) / 6), 6);
    // Common reckoning by in-plane bending alone: about 14 MPa in the lap at the corner, 8 in the bar (physics section 15).
    const plane = (largest: number, d_mm: number): number => largest / ((d_mm * 38 ** 2) / 6);
    expect(plane(Math.abs(f0.plane_Nmm), 9.5)).toBeCloseTo(14.3, 0);
    expect(plane(solution.peak.bars.top.moment_Nmm, 19)).toBeCloseTo(8.1, 0);
    expect(barStress(build, forces, false)).toEqual({ bar_MPa, lap_MPa: null });
    const share = frameFacts(model, solution).find((f) => f.path === 'bar.stress_share' && f.about === 'left')?.value as number;
    expect(share).toBeCloseTo((lap_MPa as number) / 14, 9);
  });

  test('two screwed plies: the largest stress integrates to the moment (EN 1995-1-1 Annex B, memory)', () => {
    const model = demoModel({ face: { width: '1200 mm', height: '860 mm' }, bars: { stock: 'strip-19x38', lay: 'edge', plies: 2, bond: 'screws' } });
    const { fibre_mm, section } = buildModel(model.plan, model.shelf).bars.top;
    // Each ply carries axial force F at ± a and its own bending: M = F·(a1 + a2) + 2 σ_m I/(h/2), with σ_N + σ_m = M fibre/I.
    const M = 1000;
    const top_stress = (M * fibre_mm) / section.I_plane_mm4;
    const own_stress = (M * 9.5) / section.I_plane_mm4;
    const force = (top_stress - own_stress) * 19 * 38;
    const own_moment = (2 * own_stress * (38 * 19 ** 3)) / 12 / 9.5;
    expect(force * 19 + own_moment).toBeCloseTo(M, 6);
  });
});
