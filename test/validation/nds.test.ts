/**
 * American Wood Council, National Design Specification for Wood Construction, 2018: withdrawal of screws (eq. 12.2-2), dowel bearing
 * (Table 12.3.3), single and double shear yield modes (Tables 12.3.1A and 12.3.1B), lead holes (12.1.5, 12.1.6).
 * Example: AWC Structural Wood Design Solved Example Problem E2.4 as coded in open-source tests. Units of the sources: lb, in, psi.
 * Tolerances follow the digits printed: 0.1 to 0.5 %.
 */
import { describe, expect, test } from 'vitest';
import { ndsDistances, thinnestUnbored_mm } from '../../src/fit/distances.js';
import { dowelBearing_MPa } from '../../src/mechanics/fasteners/dowel-bearing.js';
import { nailHole_mm, screwHole_mm } from '../../src/mechanics/fasteners/lead-hole.js';
import { MM_PER_IN, MPA_PER_PSI, N_PER_LB, N_PER_MM_PER_LB_PER_IN } from '../../src/mechanics/fasteners/us-units.js';
import { screwWithdrawal_N_per_mm } from '../../src/mechanics/fasteners/withdrawal.js';
import { reductionTerm, singleShear_N, yieldModes_N, type YieldMode } from '../../src/mechanics/fasteners/yield-modes.js';
import { expectDecimals } from './recorded.js';
import { mark, near, referenceGroups, valueOf } from './reference-rows.js';

const groups = referenceGroups('fastenings.yaml');
const examples = groups['4d_withdrawal_examples'];
const lateral = groups['4f_lateral_examples'];
type Numbers = Record<string, number>;
const inch = (x: number): number => x * MM_PER_IN;
const psi = (x: number): number => x * MPA_PER_PSI;
const lbPerIn = (N_per_mm: number): number => N_per_mm / N_PER_MM_PER_LB_PER_IN;

describe('withdrawal', () => {
  test('reference page: No. 10 screw in wood of G 0.45', () => {
    const screw = valueOf<Numbers>(examples, 'screw10_G045');
    expect(near(lbPerIn(screwWithdrawal_N_per_mm(screw['G']!, inch(screw['D']!))), screw['W_lb_in']!, 1e-3)).toBe(true);
  });
  test(`No. 8 screw in eastern white pine${mark(examples?.['screw8_EWP'])}`, () => {
    expect(near(lbPerIn(screwWithdrawal_N_per_mm(0.36, inch(0.164))), valueOf<number>(examples, 'screw8_EWP'), 1e-3)).toBe(true);
  });
});

describe('dowel bearing', () => {
  test('Fe of thin dowels: G 0.50 4637 psi, 0.55 5526 psi, 0.42 3364 psi', () => {
    for (const [G, Fe] of [[0.5, 4637], [0.55, 5526], [0.42, 3364]] as const) expect(near(dowelBearing_MPa(G, inch(0.19)), psi(Fe), 3e-4)).toBe(true);
  });
  test('Fe of thick dowels: 11200 G along, 6100 G^1.45/sqrt(D) across, between them at an angle', () => {
    const along = dowelBearing_MPa(0.5, inch(0.5), 0);
    const across = dowelBearing_MPa(0.5, inch(0.5), 90);
    expect(near(along, psi(5600), 1e-9)).toBe(true);
    expect(near(across, psi((6100 * 0.5 ** 1.45) / Math.sqrt(0.5)), 1e-9)).toBe(true);
    expect(near(dowelBearing_MPa(0.5, inch(0.5), 45), (2 * along * across) / (along + across), 1e-9)).toBe(true);
  });
  test('a quarter inch is thick, anything less is thin (Table 12.3.3, its two columns)', () => {
    expect(near(dowelBearing_MPa(0.5, inch(0.25)), psi(5600), 1e-9)).toBe(true);
    expect(near(dowelBearing_MPa(0.5, inch(0.2499)), psi(16600 * 0.5 ** 1.84), 1e-9)).toBe(true);
  });
  test('reduction terms: 2.2, then 10D + 0.5, then 4, 3.6, 3.2 with the angle', () => {
    expectDecimals(reductionTerm(inch(0.17), 'IV'), 2.2, 9);
    expectDecimals(reductionTerm(inch(0.19), 'IV'), 2.4, 9);
    expectDecimals(reductionTerm(inch(0.5), 'Im', 90), 5, 9);
    expectDecimals(reductionTerm(inch(0.5), 'II'), 3.6, 9);
    expectDecimals(reductionTerm(inch(0.5), 'IIIs'), 3.2, 9);
  });
});

describe('yield modes', () => {
  const modes: readonly YieldMode[] = ['Im', 'Is', 'II', 'IIIm', 'IIIs', 'IV'];

  test('AWC: a 10d nail, 3/4 in on 2-1/4 in, mode by mode', () => {
    const e = valueOf<Numbers>(lateral, 'nail_10d_DFL');
    const Fe = dowelBearing_MPa(e['G']!, inch(e['D']!));
    const joint = { diameter_mm: inch(e['D']!), side_mm: inch(e['ts']!), main_mm: inch(e['lm']!), side_bearing_MPa: Fe, main_bearing_MPa: Fe, bending_yield_MPa: psi(e['Fyb']!) };
    const got = yieldModes_N(joint);
    for (const mode of modes) expect(near(got[mode] / N_PER_LB, e[mode]!, 1.5e-3), `${mode}: ${got[mode] / N_PER_LB}`).toBe(true);
    expect(singleShear_N(joint).mode).toBe('IIIs');
    expect(near(singleShear_N(joint).N, e['Z_N']!, 1e-3)).toBe(true);
  });

  test('AWC E2.4 as coded: the modes of a No. 10 screw in double shear, on its root diameter', () => {
    const e = valueOf<Numbers>(lateral, 'screw10_double_shear');
    const Fe = dowelBearing_MPa(e['Fe_G']!, inch(e['D']!));
    const modes_N = yieldModes_N({ diameter_mm: inch(e['Dr']!), side_mm: inch(e['ls_last']!), main_mm: inch(e['tm']!), side_bearing_MPa: Fe, main_bearing_MPa: Fe, bending_yield_MPa: psi(e['Fyb']!) });
    // the main piece lies between two side pieces: Im once, the others twice (Table 12.3.1A)
    const least_N = Math.min(modes_N.Im, 2 * modes_N.Is, 2 * modes_N.IIIs, 2 * modes_N.IV);
    expect(near(least_N / N_PER_LB, 254.96, 1e-3), 'Rd 2.2 on the root').toBe(true);
    expect(near((least_N * 2.2) / e['Rd_used']!, e['Z_N']!, 1e-3), 'Rd 2.4 of the shank, as the example takes it').toBe(true);
  });

  const strip = (key: string, D: number, ls: number, lm: number, Fe: number, Fyb: number): void => {
    const e = valueOf<Numbers>(lateral, key);
    const got = yieldModes_N({ diameter_mm: inch(D), side_mm: inch(ls), main_mm: inch(lm), side_bearing_MPa: psi(Fe), main_bearing_MPa: psi(Fe), bending_yield_MPa: psi(Fyb) });
    for (const mode of modes) if (e[mode] !== undefined) expect(near(got[mode] / N_PER_LB, e[mode], 1e-3), `${mode}: ${got[mode] / N_PER_LB}`).toBe(true);
    if (e['Z'] !== undefined) expect(near(Math.min(...modes.map((mode) => got[mode])) / N_PER_LB, e['Z'], 1e-3)).toBe(true);
  };
  test('No. 10 screw, 1-1/2 in on 1-1/2 in (derived)', () => strip('screw10_single_1.5in_DFL', 0.152, 1.5, 1.5, 4650, 80_000));
  test('No. 8 screw, 3/4 in on ten diameters (derived)', () => strip('screw8_0.75in_DFL_10D', 0.131, 0.75, 1.64, 4650, 90_000));
  test('No. 8 screw, strip on strip of spruce (derived)', () => strip('screw8_two_0.75in_SPF', 0.131, 0.75, 0.75, 3364.2, 90_000));

  test('which piece is called main does not matter: swapping them swaps Im with Is and IIIm with IIIs (so k2 carries 1 + 2Re)', () => {
    const joint = { diameter_mm: 3.3, side_mm: 17, main_mm: 29, side_bearing_MPa: 31, main_bearing_MPa: 22, bending_yield_MPa: 620 };
    const one = yieldModes_N(joint);
    const other = yieldModes_N({ ...joint, side_mm: joint.main_mm, main_mm: joint.side_mm, side_bearing_MPa: joint.main_bearing_MPa, main_bearing_MPa: joint.side_bearing_MPa });
    const pairs: readonly (readonly [YieldMode, YieldMode])[] = [['Im', 'Is'], ['Is', 'Im'], ['II', 'II'], ['IIIm', 'IIIs'], ['IIIs', 'IIIm'], ['IV', 'IV']];
    for (const [a, b] of pairs) expect(near(one[a], other[b], 1e-12), `${a} ${b}`).toBe(true);
  });

  test('any consistent units: the answer in lb and in is the answer in N and mm', () => {
    const us = singleShear_N({ diameter_mm: 0.148, side_mm: 0.75, main_mm: 2.25, side_bearing_MPa: 3000, main_bearing_MPa: 5500, bending_yield_MPa: 90_000 });
    const si = singleShear_N({ diameter_mm: inch(0.148), side_mm: inch(0.75), main_mm: inch(2.25), side_bearing_MPa: psi(3000), main_bearing_MPa: psi(5500), bending_yield_MPa: psi(90_000) });
    expect(si.mode).toBe(us.mode);
    expect(near(si.N / N_PER_LB, us.N, 0.02)).toBe(true);
  });
});

describe('lead holes', () => {
  const no6 = { shank_mm: inch(0.138), root_mm: inch(0.113) };
  test('sideways load: seven eighths up to G 0.6, the diameters themselves above', () => {
    expectDecimals(screwHole_mm(no6, 0.42, 'thread'), inch(0.113) * 0.875, 9);
    expectDecimals(screwHole_mm(no6, 0.42, 'shank'), inch(0.138) * 0.875, 9);
    expectDecimals(screwHole_mm(no6, 0.65, 'thread'), inch(0.113), 9);
    expectDecimals(screwHole_mm(no6, 0.65, 'shank'), inch(0.138), 9);
  });
  test('pull-out: 70 % of the root in softwood, 90 % in dense wood', () => {
    expectDecimals(screwHole_mm(no6, 0.55, 'thread', 'withdrawal'), 0.7 * no6.root_mm, 9);
    expectDecimals(screwHole_mm(no6, 0.65, 'thread', 'withdrawal'), 0.9 * no6.root_mm, 9);
  });
  test('nails: three quarters, nine tenths', () => {
    expectDecimals(nailHole_mm(4, 0.6), 3, 9);
    expectDecimals(nailHole_mm(4, 0.61), 3.6, 9);
  });
});

describe('distances (memory)', () => {
  test('NDS Commentary in diameters (memory)', () => {
    const undrilled = ndsDistances(1, false, 'tension');
    const bored = ndsDistances(1, true, 'compression');
    const printed: readonly (readonly [number, number])[] = [
      [undrilled.edge_mm, 2.5], [undrilled.end_mm, 15], [undrilled.along_grain_mm, 15], [undrilled.across_grain_mm, 10], [undrilled.staggered_rows_mm, 2.5],
      [bored.end_mm, 5], [bored.along_grain_mm, 10], [bored.across_grain_mm, 5], [ndsDistances(1, true).end_mm, 10], [ndsDistances(1, false, 'compression').end_mm, 10],
    ];
    for (const [ours, theirs] of printed) expectDecimals(ours, theirs, 9);
  });
  test('EN 1995-1-1 8.3.1.2(6): thinnest piece nailed undrilled (memory)', () => {
    expectDecimals(thinnestUnbored_mm(1.21, 420), 8.47, 9);
    expectDecimals(thinnestUnbored_mm(6, 420), 50.4, 9);
  });
});
