/**
 * EN 1995-1-1:2004, Design of timber structures, Annex B: mechanically jointed beams (B.1 to B.5), and Table 7.1: slip moduli. N, mm, kg/m³.
 * The unit check of formula B.1 is an open-source test value; the worked rows are derived from the annex, whose γ and slip are recalled.
 * Tolerance 0.05 %, from the four digits given.
 */
import { describe, expect, test } from 'vitest';
import { gammaFactor, gammaStiffness, jointedBeam } from '../../src/model/gamma-method.js';
import { slipModulus_N_per_mm } from '../../src/model/slip-modulus.js';
import { expectDecimals, expectWithin } from './recorded.js';
import { near, referenceGroups, valueOf } from './reference-rows.js';

const group = referenceGroups('fastenings.yaml')['5_gamma'];
type Row = Record<string, number>;

describe('two equal strips', () => {
  const check = (key: string, K: number, spacing_mm: number): void => {
    const e = valueOf<Row>(group, key);
    expect(near(K, e['K']!, 5e-4)).toBe(true);
    const ply = { E_MPa: e['E']!, breadth_mm: e['b']!, height_mm: e['h1']! };
    const got = jointedBeam({ plies: [ply, { ...ply, height_mm: e['h2']! }], slip_N_per_mm: K, spacing_mm, span_mm: e['L']! });
    expect(near(got.gamma[0]!, e['gamma']!, 2e-3)).toBe(true);
    expect(near(got.a_mm[0]!, e['a1']!, 5e-4)).toBe(true);
    expect(near(got.a_mm[1]!, e['a2']!, 5e-4)).toBe(true);
    expect(near(got.EI_Nmm2, e['EIef']!, 5e-4)).toBe(true);
    const share = (got.EI_Nmm2 - e['EI_loose']!) / (e['EI_glued']! - e['EI_loose']!);
    expectWithin(share, e['composite_share']!, 1e-3);
    expectWithin(share, (2 * got.gamma[0]!) / (1 + got.gamma[0]!), 1e-4, 'derived');
  };
  test('brads of 1.6 mm every 100 mm (derived; γ and slip memory)', () => check('example_brad_1.6_s100', slipModulus_N_per_mm(420, 1.6, 'nail'), 100));
  test('screws of 4 mm every 100 mm (derived; γ and slip memory)', () => check('example_screw_4_s100', slipModulus_N_per_mm(420, 4), 100));
  test('screws of 4 mm every 50 mm (derived; γ and slip memory)', () => check('example_screw_4_s50', slipModulus_N_per_mm(420, 4), 50));
});

describe('formula B.1', () => {
  test('open-source unit check: Σ(E I + γ E A a²) = 40', () => {
    const v = valueOf<Record<string, number[]>>(group, 'blueprints_unit_check') as unknown as { E: number[]; I: number[]; gamma: number[]; A: number[]; a: number[]; EIef: number };
    const sum = v.E.reduce((total, E, i) => total + E * v.I[i]! + v.gamma[i]! * E * v.A[i]! * v.a[i]! ** 2, 0);
    expectWithin(sum, v.EIef, 0);
  });
  test('three unequal boards by the same sum, axes found by force balance', () => {
    const parts = [
      { E_MPa: 9000, breadth_mm: 38, height_mm: 12 },
      { E_MPa: 11000, breadth_mm: 38, height_mm: 25 },
      { E_MPa: 10000, breadth_mm: 30, height_mm: 19 },
    ];
    const joints = [{ spacing_mm: 80, K_N_per_mm: 900 }, { spacing_mm: 120, K_N_per_mm: 1300 }];
    const got = gammaStiffness(parts, joints, 1100);
    const EA = parts.map((p, i) => got.gamma[i]! * p.E_MPa * p.breadth_mm * p.height_mm);
    expect(got.gamma[1]).toBe(1);
    expect(got.gamma[0]).toBeCloseTo(gammaFactor(9000, 38 * 12, joints[0]!, 1100), 12);
    expect(got.gamma[2]).toBeCloseTo(gammaFactor(10000, 30 * 19, joints[1]!, 1100), 12);
    expect(Math.abs(EA[0]! * got.a_mm[0]! - EA[1]! * got.a_mm[1]! - EA[2]! * got.a_mm[2]!)).toBeLessThan(1e-6 * EA[1]!);
    expectDecimals(got.a_mm[0]! + got.a_mm[2]!, 12 / 2 + 25 + 19 / 2, 9, 'derived');
    const EI = parts.reduce((sum, p, i) => sum + (p.E_MPa * p.breadth_mm * p.height_mm ** 3) / 12 + EA[i]! * got.a_mm[i]! ** 2, 0);
    expect(near(got.EI_Nmm2, EI, 1e-12)).toBe(true);
  });
});

describe('limits', () => {
  const ply = { E_MPa: 9500, breadth_mm: 38, height_mm: 19 };
  const beam = (plies: number, slip_N_per_mm: number) => jointedBeam({ plies: Array.from({ length: plies }, () => ply), slip_N_per_mm, spacing_mm: 150, span_mm: 900 }).EI_Nmm2;
  const solid = (plies: number): number => (9500 * 38 * (19 * plies) ** 3) / 12;
  test('no slip: as one glued piece, four times two loose strips, nine times three', () => {
    expect(near(beam(2, 1e12), solid(2), 1e-6)).toBe(true);
    expect(near(beam(3, 1e12), solid(3), 1e-6)).toBe(true);
    expect(near(beam(2, 1e12) / beam(2, 0), 4, 1e-6)).toBe(true);
    expect(near(beam(3, 1e12) / beam(3, 0), 9, 1e-6)).toBe(true);
  });
  test('unequal boards fully joined: the composite section by the parallel-axis rule', () => {
    const [h1, h2] = [12, 31];
    const got = gammaStiffness([{ E_MPa: 9500, breadth_mm: 38, height_mm: h1 }, { E_MPa: 9500, breadth_mm: 38, height_mm: h2 }], [{ spacing_mm: 1, K_N_per_mm: 1e12 }], 900).EI_Nmm2;
    expect(near(got, (9500 * 38 * (h1 + h2) ** 3) / 12, 1e-6)).toBe(true);
  });
  test('other numbers of boards, or joints that do not match, are refused', () => {
    expect(() => gammaStiffness([ply], [], 900)).toThrow();
    expect(() => gammaStiffness([ply, ply, ply, ply], [], 900)).toThrow();
    expect(() => gammaStiffness([ply, ply], [], 900)).toThrow();
  });
});
