import { describe, expect, it } from 'vitest';
import { braceScrews } from '../../src/model/brace-layout.js';
import { gammaFactor, gammaStiffness, jointedBeam } from '../../src/model/gamma-method.js';
import { plateStiffness_Nmm_per_rad, rowSquares_mm2 } from '../../src/model/plate-stiffness.js';
import { platesOf } from '../../src/model/plates.js';
import { solidSection, torsionConstant } from '../../src/model/section.js';
import { slipModulus_N_per_mm } from '../../src/model/slip-modulus.js';
import type { Shelf } from '../../src/shelf/shelf.js';
import { demoModel, demoShelf } from '../mechanics/fasteners/demo-model.js';

const shelf = demoShelf();
const planned = (bars: object, corners: object, on: Shelf = shelf) => demoModel({ face: { width: '1200 mm', height: '800 mm' }, bars, corners: { nails: { use: 'brad-18ga-25', each: 1 }, ...corners } }, on);
const angles = (legs: readonly number[]): Shelf => ({ ...shelf, supplies: Object.fromEntries(legs.map((leg_mm) => [`a${leg_mm}`, { key: `a${leg_mm}`, kind: 'angle', name: `angle ${leg_mm}`, leg_mm, thickness_mm: 2 }])) }) as unknown as Shelf;

describe('slip of one fastening, N/mm (EN 1995-1-1 Table 7.1)', () => {
  it('screws and bored nails ρ^1.5 d/23, nails ρ^1.5 d^0.8/30, staples ρ^1.5 d^0.8/80', () => {
    const rho = 420 ** 1.5;
    expect(slipModulus_N_per_mm(420, 4)).toBeCloseTo((rho * 4) / 23, 9);
    expect((['screw', 'nail-bored', 'nail', 'staple'] as const).map((kind) => slipModulus_N_per_mm(420, 2, kind))).toEqual([(rho * 2) / 23, (rho * 2) / 23, (rho * 2 ** 0.8) / 30, (rho * 2 ** 0.8) / 80]);
  });
});

describe('boards that slip on each other', () => {
  const part = (E_MPa: number, breadth_mm: number, height_mm: number) => ({ E_MPa, breadth_mm, height_mm });
  /** Least energy: curvature 1, each part's axis strained by what balances the forces and what the slip lets go; by hand for two parts. */
  it('two unequal parts: own stiffness and γ EA · EA/(γ EA + EA) · distance²', () => {
    const [p, q, joint, L] = [part(9000, 40, 19), part(11000, 30, 25), { spacing_mm: 120, K_N_per_mm: 800 }, 1100] as const;
    const [EA, EB] = [9000 * 40 * 19, 11000 * 30 * 25];
    const gamma = 1 / (1 + (Math.PI ** 2 * EA * 120) / (800 * L ** 2));
    const { EI_Nmm2, gamma: shares, a_mm } = gammaStiffness([p, q], [joint], L);
    expect(gammaFactor(9000, 40 * 19, joint, L)).toBeCloseTo(gamma, 12);
    expect(shares).toEqual([expect.closeTo(gamma, 12), 1]);
    expect(EI_Nmm2).toBeCloseTo((9000 * 40 * 19 ** 3) / 12 + (11000 * 30 * 25 ** 3) / 12 + ((gamma * EA * EB) / (gamma * EA + EB)) * 22 ** 2, 2);
    expect(a_mm[0]! + a_mm[1]!).toBeCloseTo(22, 9);
    expect(gamma * EA * a_mm[0]!).toBeCloseTo(EB * a_mm[1]!, 4);
  });
  it('three parts stuck fast are one solid, loose ones their plain sum; unequal joints tilt the axis to the stiffer side', () => {
    const three = [part(9000, 30, 10), part(9000, 30, 20), part(9000, 30, 15)];
    const fast = { spacing_mm: 1, K_N_per_mm: 1e12 };
    const loose = { spacing_mm: 100, K_N_per_mm: 0 };
    expect(gammaStiffness(three, [fast, fast], 1000).EI_Nmm2 / ((9000 * 30 * 45 ** 3) / 12)).toBeCloseTo(1, 8);
    expect(gammaStiffness(three, [loose, loose], 1000).EI_Nmm2).toBeCloseTo((9000 * 30 * (10 ** 3 + 20 ** 3 + 15 ** 3)) / 12, 3);
    const one = gammaStiffness(three, [fast, loose], 1000);
    expect(one.EI_Nmm2 / (9000 * 30 * (30 ** 3 / 12 + 15 ** 3 / 12))).toBeCloseTo(1, 8);
    const other = gammaStiffness(three, [loose, fast], 1000);
    expect(other.EI_Nmm2 / (9000 * 30 * (35 ** 3 / 12 + 10 ** 3 / 12))).toBeCloseTo(1, 8);
    expect(other.a_mm[2]).toBeCloseTo(10, 6);
    expect(jointedBeam({ plies: three, slip_N_per_mm: 500, spacing_mm: 90, span_mm: 900 })).toEqual(gammaStiffness(three, [{ spacing_mm: 90, K_N_per_mm: 500 }, { spacing_mm: 90, K_N_per_mm: 500 }], 900));
  });
  it('refuses what it is not for', () => {
    expect(() => gammaStiffness([part(1, 1, 1)], [], 1)).toThrow(/two or three/u);
    expect(() => gammaStiffness([part(1, 1, 1), part(1, 1, 1)], [], 1)).toThrow(/two or three/u);
  });
});

describe('a solid rectangle', () => {
  it('twists by the printed shares of p q³: 0.1406 for a square, 0.229 at 2 : 1, 0.312 at 10 : 1 (Timoshenko & Goodier, from memory)', () => {
    expect([[10, 10, 0.1406], [20, 10, 0.2287], [10, 30, 0.2633], [100, 10, 0.3123]].map(([p, q, k]) => torsionConstant(p!, q!) / (Math.max(p!, q!) * Math.min(p!, q!) ** 3) - k!).every((off) => Math.abs(off) < 6e-5)).toBe(true);
    expect(solidSection(50, 20, 9000, 560)).toEqual({ w_mm: 50, d_mm: 20, A_mm2: 1000, I_plane_mm4: (20 * 50 ** 3) / 12, I_out_mm4: (50 * 20 ** 3) / 12, J_mm4: torsionConstant(50, 20), E_MPa: 9000, G_MPa: 560 });
  });
});

describe('plates across the corners', () => {
  const square = { stock: 'square-38x38', lay: 'flat' };
  it('a gusset is as wide as the bar, its legs from the outer corner; an angle is narrower, and as long as the one that is bought', () => {
    const gusset = planned(square, { brace: { kind: 'ply-gusset', leg: '150 mm' } });
    expect(gusset.plate).toEqual({ kind: 'ply-gusset', leg_mm: 169, wide_mm: 38, angle: null });
    const on = angles([80, 125, 100]);
    const angled = (bars: object, leg: string) => planned(bars, { brace: { kind: 'steel-angle', leg } }, on).plate!;
    expect(angled(square, '60 mm')).toMatchObject({ wide_mm: 0.45 * 38 });
    expect(angled({ stock: 'stud-38x64', lay: 'flat' }, '60 mm').wide_mm).toBe(20);
    expect(planned(square, { brace: { kind: 'steel-angle', leg: '60 mm' } }, angles([])).plate).toMatchObject({ leg_mm: 79, angle: null });
  });
  it('the smallest angle with 5 mm of steel beyond its last screw, else the largest', () => {
    // Leg 60 mm: one or two screws; the last hole at five sixths of the leg past the inner edge.
    const leg = (mm: number, legs: readonly number[]): number => planned(square, { brace: { kind: 'steel-angle', leg: `${mm} mm` } }, angles(legs)).plate!.leg_mm;
    const last = (mm: number): number => Math.round((mm * 5) / 6 + 19);
    for (const mm of [70, 84, 100]) {
      const reach = last(mm) + 5;
      expect([leg(mm, [reach - 1, reach, reach + 30]), leg(mm, [reach + 30, reach - 0.4]), leg(mm, [reach - 1, reach - 0.6]), leg(mm, [reach - 0.5, reach + 9])]).toEqual([reach, reach - 0.4, reach - 0.6, reach - 0.5]);
      expect(leg(mm, [reach - 20, reach - 2, reach - 9])).toBe(reach - 2);
    }
  });
  it('none for timber braces, and none without a brace', () => {
    const plain = planned(square, {});
    expect(platesOf(plain.plan, shelf, plain.bars.top.section)).toBeNull();
    const timber = planned(square, { brace: { kind: 'timber', leg: '200 mm', stock: 'strip-19x38', lay: 'flat' } });
    expect(platesOf(timber.plan, shelf, timber.bars.top.section)).toBeNull();
    expect(plateStiffness_Nmm_per_rad(timber.plan, shelf, timber.bars.top.stock, timber.bars.top.section)).toBe(0);
  });
  it('n screws in a row about their middle, Σ r²', () => {
    expect([1, 2, 3, 4].map((n) => rowSquares_mm2(n, 30))).toEqual([0, 2 * 15 ** 2, 2 * 30 ** 2, 2 * 15 ** 2 + 2 * 45 ** 2]);
  });
  it('screws on either bar in series, steel twice as stiff as sheet; glue where that is stiffer', () => {
    const stiff = (corners: object) => {
      const model = planned({ stock: 'stud-38x64', lay: 'flat' }, corners);
      const held = braceScrews(model.plan, shelf, model.bars.top.section)!;
      const K = slipModulus_N_per_mm(420, held.screw.shank_mm);
      const middle = ((held.per_bar - 1) * held.spacing_mm) / 2;
      const squares = Array.from({ length: held.per_bar }, (_, n) => (n * held.spacing_mm - middle) ** 2).reduce((sum, r) => sum + r, 0);
      return { is: plateStiffness_Nmm_per_rad(model.plan, shelf, model.bars.top.stock, model.bars.top.section), screws: (K * squares) / 2, per_bar: held.per_bar };
    };
    const dry = stiff({ glue: 'none', brace: { kind: 'ply-gusset', leg: '200 mm' } });
    expect(dry.per_bar).toBeGreaterThan(1);
    expect(dry.is).toBeCloseTo(dry.screws, 6);
    const steel = stiff({ glue: 'pva', brace: { kind: 'steel-angle', leg: '125 mm' } });
    expect(steel.is).toBeCloseTo(2 * steel.screws, 6);
    const [a, b] = [64, 200 - 32];
    expect(stiff({ glue: 'pva', brace: { kind: 'ply-gusset', leg: '200 mm' } }).is).toBeCloseTo(((500 / 9) * a * b * (a ** 2 + b ** 2)) / 12 / 2, 3);
  });
});
