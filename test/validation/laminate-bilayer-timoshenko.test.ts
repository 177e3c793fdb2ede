/**
 * S. Timoshenko, Analysis of bi-metal thermostats, J. Opt. Soc. Am. 11, 1925 (formula from memory; its use for wood bilayers read in
 * Groenquist et al. 2018, PLoS ONE 13(10) e0205607). Curvature of two bonded layers that shrink differently:
 * κ = 6 Δε (1+m)² / (h (3(1+m)² + (1+mn)(m² + 1/(mn)))), m = t1/t2, n = E1/E2, h = t1 + t2. Units m, 1/m; sagitta κL²/8 in mm.
 */
import { describe, expect, it } from 'vitest';
import { curvatureOf } from './warp-anchors.js';
import { warpWeights } from '../../src/risk/ply-warp.js';
import { layeredCurvature_per_m } from '../risk/layered-bar.js';
import { expectDecimals, expectShare } from './recorded.js';

const rows = [
  { m: 1, n: 1, h_m: 0.038, kappa: 0.0394737, sagitta_mm: 7.10526 },
  { m: 1, n: 2, h_m: 0.038, kappa: 0.0382775, sagitta_mm: 6.88995 },
  { m: 2, n: 1, h_m: 0.057, kappa: 0.0233918, sagitta_mm: 4.21053 },
];
const d_eps = 0.001;
const L_m = 1.2;

describe('bonded layers (Timoshenko 1925, memory)', () => {
  it.each(rows)('bilayer m = $m, n = $n: the layered theory gives the printed curvature', ({ m, n, h_m, kappa, sagitta_mm }) => {
    const t2 = h_m / (1 + m);
    const formula = (6 * d_eps * (1 + m) ** 2) / (h_m * (3 * (1 + m) ** 2 + (1 + m * n) * (m ** 2 + 1 / (m * n))));
    const layered = layeredCurvature_per_m([
      { thickness_m: m * t2, E: n, strain: 0, curvature: 0 },
      { thickness_m: t2, E: 1, strain: d_eps, curvature: 0 },
    ]);
    expectShare(Math.abs(layered), formula, 1e-10, 'memory');
    expectShare(layered, kappa, 5e-6);
    expectShare((layered * L_m ** 2 * 1000) / 8, sagitta_mm, 5e-6);
    expectShare(curvatureOf(sagitta_mm / 1000, L_m), kappa, 5e-6);
  });

  it('the same theory gives the weights used for glued plies, whatever each ply’s own bow', () => {
    for (const bows of [[0.02, 0.02], [0.02, -0.02], [0.013, -0.004, 0.009], [0.001, 0.02, -0.007, 0.011]]) {
      const layered = layeredCurvature_per_m(bows.map((curvature) => ({ thickness_m: 0.019, E: 9000, strain: 0, curvature })));
      const weights = warpWeights({ plies: bows.length, lay: 'edge', stack: 'side-by-side', bond: 'glue', J_ply_mm4: 1, J_bar_mm4: bows.length });
      const across = weights.find(({ kind }) => kind === 'plane');
      expect(across?.from).toBe('bow');
      expectDecimals((across?.weight ?? 0) * bows.reduce((sum, bow) => sum + bow, 0), layered, 14, 'derived');
    }
  });
});
