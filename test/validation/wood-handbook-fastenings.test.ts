/**
 * Forest Products Laboratory, Wood Handbook: Wood as an Engineering Material, FPL-GTR-190, 2010, chapter 8 (ultimate withdrawal of nails and screws) and
 * equation 5-1 (strength at an angle to the grain); Forest Products Laboratory Report 1263, 1956, and Technical Note 236, 1958.
 * Units of the sources: lb, in, psi; the handbook also prints N and mm. Tolerance 0.1 % from the digits printed.
 */
import { describe, expect, test } from 'vitest';
import { atAngleToGrain } from '../../src/mechanics/fasteners/angle-to-grain.js';
import { MM_PER_IN, N_PER_LB } from '../../src/mechanics/fasteners/us-units.js';
import { nailUltimate_N, nailWithdrawal_N_per_mm, screwUltimate_N, screwWithdrawal_N_per_mm } from '../../src/mechanics/fasteners/withdrawal.js';
import { near, referenceGroups, valueOf, workedCase } from './reference-rows.js';

const groups = referenceGroups('fastenings.yaml');

describe('ultimate withdrawal', () => {
  test('nails: the two unit systems of the handbook agree, 7850 lb-in and 54.12 N-mm', () => {
    expect(near(nailUltimate_N(0.5, 3, 30), 54.12 * 0.5 ** 2.5 * 3 * 30, 3e-4)).toBe(true);
  });
  test('screws: 15 700 lb-in and 108.25 N-mm (memory)', () => {
    expect(near(screwUltimate_N(0.5, 3, 30), 108.25 * 0.5 ** 2 * 3 * 30, 3e-4)).toBe(true);
  });
  test('16 gauge brad in eastern white pine, lb per in (derived)', () => {
    const lb = nailUltimate_N(0.35, 0.0625 * MM_PER_IN, MM_PER_IN) / N_PER_LB;
    expect(near(lb, valueOf<number>(groups['4d_withdrawal_examples'], 'brad16_ult_EWP'), 1e-3)).toBe(true);
  });
  test('No. 8 and No. 6 screws in wood of G 0.42 (memory)', () => {
    const no8 = workedCase('screw-withdrawal-no8');
    const no6 = workedCase('screw-withdrawal-no6');
    const { G, D_mm, L_thread_mm } = no8.inputs;
    expect(near(screwUltimate_N(G!, D_mm!, L_thread_mm!), no8.expected['ultimate_N']!, no8.rel)).toBe(true);
    expect(near(screwWithdrawal_N_per_mm(G!, D_mm!) * L_thread_mm!, no8.expected['nds_design_N']!, no8.rel)).toBe(true);
    expect(near(screwUltimate_N(no6.inputs['G']!, no6.inputs['D_mm']!, no6.inputs['L_thread_mm']!), no6.expected['ultimate_N']!, no6.rel)).toBe(true);
  });
  test('a brad in wood of G 0.42 (memory)', () => {
    const brad = workedCase('nail-withdrawal-brad');
    expect(near(nailUltimate_N(brad.inputs['G']!, brad.inputs['D_mm']!, brad.inputs['L_mm']!), brad.expected['ultimate_N']!, brad.rel)).toBe(true);
  });
  test('design over ultimate: nails 1380/7850, FPL Technical Note 236 a fifth of 6900; screws about 1/5.5 (memory)', () => {
    expect(near((nailWithdrawal_N_per_mm(0.42, 2) * 25) / nailUltimate_N(0.42, 2, 25), 6900 / 5 / 7850, 1e-9)).toBe(true);
    expect(near(screwUltimate_N(0.42, 4, 20) / (screwWithdrawal_N_per_mm(0.42, 4) * 20), 5.5, 2e-3)).toBe(true);
  });
});

describe('strength at an angle to the grain', () => {
  const grain = groups['8_grain'];
  const input = valueOf<Record<string, number>>(grain, 'FPL1263_inputs');
  const check = valueOf<Record<string, number>>(grain, 'FPL1263_checks');
  test('FPL 1263, Douglas fir in compression, psi, and a bolt, lb, at 30, 45 and 60 degrees (derived from seen inputs)', () => {
    for (const angle of [30, 45, 60]) {
      expect(near(atAngleToGrain(input['P']!, input['Q']!, angle), check[String(angle)]!, 2e-4)).toBe(true);
      expect(near(atAngleToGrain(input['bolt_P']!, input['bolt_Q']!, angle), check[`bolt${angle}`]!, 2e-4)).toBe(true);
    }
  });
  test('along and across the grain it gives the two strengths themselves', () => {
    expect(atAngleToGrain(1450, 235, 0)).toBeCloseTo(1450, 9);
    expect(atAngleToGrain(1450, 235, 90)).toBeCloseTo(235, 9);
  });
  test('slope of 1 in 10 at Q/P 0.07 and n 1.5 (derived), and the printed 81 % of bending strength between the bounds of Table 5-11 (memory)', () => {
    const angle = (Math.atan(0.1) * 180) / Math.PI;
    expect(near(atAngleToGrain(1, 0.07, angle, 1.5), valueOf<number>(grain, 'slope_1_in_10'), 1e-3)).toBe(true);
    expect(atAngleToGrain(1, 0.1, angle, 2)).toBeCloseTo(0.918, 3);
    const printed = valueOf<Record<string, number[]>>(grain, 'table_5_12')['1:10']![0]! / 100;
    expect(printed).toBeGreaterThan(atAngleToGrain(1, 0.04, angle, 1.5));
    expect(printed).toBeLessThan(atAngleToGrain(1, 0.1, angle, 2));
  });
});
