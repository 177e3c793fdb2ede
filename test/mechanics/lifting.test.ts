import { expect, it } from 'vitest';
import { fitsDoor, peopleToLift, PICTURE_LIFT, recommendedLift_kg } from '../../src/mechanics/lifting.js';

/** NIOSH's best lift: 23 kg held 25 cm in front, from 75 cm, no more than 25 cm up. */
const best = { H_cm: 25, V_cm: 75, D_cm: 25, A_deg: 0, FM: 1, CM: 1 };

it('the lifting equation, one multiplier at a time (DHHS (NIOSH) 94-110: 23 HM VM DM AM FM CM)', () => {
  const share = (change: Partial<typeof best>): number => recommendedLift_kg({ ...best, ...change }) / 23;
  expect(share({})).toBe(1);
  expect([share({ H_cm: 20 }), share({ H_cm: 50 }), share({ H_cm: 63 }), share({ H_cm: 63.1 })]).toEqual([1, 0.5, expect.closeTo(25 / 63, 12), 0]);
  expect([share({ V_cm: 0 }), share({ V_cm: 95 }), share({ V_cm: 175 }), share({ V_cm: 176 })]).toEqual([expect.closeTo(0.775, 12), expect.closeTo(0.94, 12), expect.closeTo(0.7, 12), 0]);
  expect([share({ D_cm: 10 }), share({ D_cm: 50 }), share({ D_cm: 175 }), share({ D_cm: 176 })]).toEqual([1, expect.closeTo(0.91, 12), expect.closeTo(0.82 + 4.5 / 175, 12), 0]);
  expect([share({ A_deg: 90 }), share({ A_deg: 135 }), share({ A_deg: 136 })]).toEqual([expect.closeTo(0.712, 12), expect.closeTo(0.568, 12), 0]);
  expect([share({ FM: 0.75 }), share({ CM: 0.9 })]).toEqual([0.75, expect.closeTo(0.9, 12)]);
});

it('a picture: one person to 11.6 kg, two to twice that; two where one cannot reach around', () => {
  const one = 23 * (25 / 40) * (1 - 0.003 * 15) * (0.82 + 4.5 / 60) * 0.95;
  expect(recommendedLift_kg(PICTURE_LIFT)).toBeCloseTo(one, 12);
  expect([0.01, one, one * 1.001, 2 * one, 2.001 * one].map((kg) => peopleToLift(kg, 900, 700))).toEqual([1, 1, 2, 2, 3]);
  expect([[1500, 1500], [1501, 1501], [1501, 1500], [2250, 400], [2251, 400], [400, 2251]].map(([w, h]) => peopleToLift(3, w!, h!))).toEqual([1, 2, 1, 1, 2, 2]);
  expect(peopleToLift(3.5 * one, 2400, 1600)).toBe(4);
});

it('through a door upright on an edge: the shorter side under the head, the depth through the width', () => {
  const door = { width_mm: 760, height_mm: 1980 };
  expect([fitsDoor(2400, 1980, 60, door), fitsDoor(1980, 2400, 60, door), fitsDoor(2400, 1981, 60, door), fitsDoor(800, 600, 760, door), fitsDoor(800, 600, 761, door)]).toEqual(['yes', 'yes', 'no', 'yes', 'no']);
  expect(fitsDoor(800, 600, 40, null)).toBe('not-asked');
});
