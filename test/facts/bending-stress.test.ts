import { describe, expect, test } from 'vitest';
import { buildModel } from '../../src/model/build-model.js';
import { frameFacts } from '../../src/facts/frame.js';
import { demoModel, demoSolved } from '../mechanics/fasteners/demo-model.js';

/** Stress share and moment of the top bar. */
function top(plies: number, bond: string): { readonly share: number; readonly moment_Nmm: number } {
  const { model, solution } = demoSolved({ face: { width: '1200 mm', height: '860 mm' }, bars: { stock: 'strip-19x38', lay: 'edge', plies, bond }, corners: { give: 0 } });
  const share = frameFacts(model, solution).find((f) => f.path === 'bar.stress_share' && f.about === 'top')?.value as number;
  return { share, moment_Nmm: solution.peak.bars.top.moment_Nmm };
}

describe('bending stress of built-up bars', () => {
  test('four screwed plies are loose plies', () => expect(top(4, 'screws').share).toBeCloseTo(top(4, 'none').share, 9));

  test.each([2, 3])('%i plies: glued is never worse than screwed, screwed never worse than loose', (plies) => {
    const [glued, screwed, loose] = [top(plies, 'glue').share, top(plies, 'screws').share, top(plies, 'none').share];
    expect(glued).toBeLessThan(screwed);
    expect(screwed).toBeLessThan(loose);
  });

  test('loose plies share the moment and bend each for itself: M/(n b h²/6) over 14 MPa', () => {
    const { share, moment_Nmm } = top(3, 'none');
    expect(share).toBeCloseTo(Math.abs(moment_Nmm) / ((3 * 38 * 19 ** 2) / 6) / 14, 9);
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
