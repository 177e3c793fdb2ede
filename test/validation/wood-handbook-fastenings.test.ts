/**
 * Forest Products Laboratory, Wood Handbook: Wood as an Engineering Material, FPL-GTR-190, 2010, chapter 8 (withdrawal of screws) and
 * equation 5-1 (strength at an angle to the grain); Forest Products Laboratory Report 1263, 1956, and Technical Note 236, 1958.
 * Units of the sources: lb, in, psi; the handbook also prints N and mm. Tolerance 0.1 % from the digits printed.
 */
import { describe, expect, test } from 'vitest';
import { atAngleToGrain } from '../../src/mechanics/fasteners/angle-to-grain.js';
import { MM_PER_IN, N_PER_LB } from '../../src/mechanics/fasteners/us-units.js';
import { screwWithdrawal_N_per_mm } from '../../src/mechanics/fasteners/withdrawal.js';
import { expectDecimals } from './recorded.js';
import { near, referenceGroups, valueOf, workedCase } from './reference-rows.js';

const groups = referenceGroups('fastenings.yaml');

test('design withdrawal of a No. 8 screw in wood of G 0.42 (memory)', () => {
  const { inputs, expected, rel } = workedCase('screw-withdrawal-no8');
  expect(near(screwWithdrawal_N_per_mm(inputs['G']!, inputs['D_mm']!) * inputs['L_thread_mm']!, expected['nds_design_N']!, rel)).toBe(true);
});

test('a screw breaks out at about 5.5 times its design withdrawal: 15 700 G² D L of chapter 8, lb and in (memory)', () => {
  const ultimate_N = 15_700 * 0.42 ** 2 * (4 / MM_PER_IN) * (20 / MM_PER_IN) * N_PER_LB;
  expect(near(ultimate_N / (screwWithdrawal_N_per_mm(0.42, 4) * 20), 5.5, 2e-3)).toBe(true);
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
    expectDecimals(atAngleToGrain(1450, 235, 0), 1450, 9, 'derived');
    expectDecimals(atAngleToGrain(1450, 235, 90), 235, 9, 'derived');
  });
  test('slope of 1 in 10 at Q/P 0.07 and n 1.5 (derived), and the printed 81 % of bending strength between the bounds of Table 5-11 (memory)', () => {
    const angle = (Math.atan(0.1) * 180) / Math.PI;
    expect(near(atAngleToGrain(1, 0.07, angle, 1.5), valueOf<number>(grain, 'slope_1_in_10'), 1e-3)).toBe(true);
    expectDecimals(atAngleToGrain(1, 0.1, angle, 2), 0.918, 3, 'derived');
    const printed = valueOf<Record<string, number[]>>(grain, 'table_5_12')['1:10']![0]! / 100;
    expect(printed).toBeGreaterThan(atAngleToGrain(1, 0.04, angle, 1.5));
    expect(printed).toBeLessThan(atAngleToGrain(1, 0.1, angle, 2));
  });
});
