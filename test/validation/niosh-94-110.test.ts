/**
 * NIOSH Publication 94-110, Applications Manual for the Revised NIOSH Lifting Equation, 1994 (revised 2021): recommended weight limit. cm, degrees, kg.
 * Tolerance 0.01 % from the digits of the worked row.
 */
import { expect, test } from 'vitest';
import { recommendedLift_kg } from '../../src/mechanics/lifting.js';
import { expectDecimals } from './recorded.js';
import { near, workedCase } from './reference-rows.js';

const still = { H_cm: 25, V_cm: 75, D_cm: 25, A_deg: 0, FM: 1, CM: 1 };

test('worked row: 40 cm in front, from 90 cm, by 60 cm, fair grip', () => {
  const { inputs: i, expected, rel } = workedCase('niosh-rwl');
  const got = recommendedLift_kg({ H_cm: i['H_cm']!, V_cm: i['V_cm']!, D_cm: i['D_cm']!, A_deg: i['A_deg']!, FM: i['FM']!, CM: i['CM']! });
  expect(near(got, expected['RWL_kg']!, rel)).toBe(true);
});

test('the load constant, 23 kg, at the best posture', () => {
  expectDecimals(recommendedLift_kg(still), 23, 9);
  expectDecimals(recommendedLift_kg({ ...still, H_cm: 10, D_cm: 5 }), 23, 9);
});

test('out of reach there is no safe weight', () => {
  expect(recommendedLift_kg({ ...still, H_cm: 64 })).toBe(0);
  expect(recommendedLift_kg({ ...still, V_cm: 176 })).toBe(0);
  expect(recommendedLift_kg({ ...still, A_deg: 136 })).toBe(0);
});
