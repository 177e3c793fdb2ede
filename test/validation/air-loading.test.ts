/**
 * Air that swings with a stretched cloth. A. I. Korotkin, Added Masses of Ship Structures, eqs. 6.7–6.8 (one-sided integral, read); free rectangle solved
 * independently of this project with a dipole series, there checked against the rigid plates of DNV-RP-C205 (0.579 and 0.757, from memory).
 * Here the free values are solved once more, with flat panels. Rows of test/data/cloth.yaml; C without unit, masses kg/m², Hz, N/m.
 */
import { describe, expect, test } from 'vitest';
import { airCoefficientFree, longestTabulatedAspect } from '../../src/mechanics/cloth/air-free.js';
import { airMass_kg_per_m2 } from '../../src/mechanics/cloth/air-loading.js';
import { airCoefficientWalled } from '../../src/mechanics/cloth/air-walled.js';
import { pullFromNote_N_per_m } from '../../src/mechanics/cloth/membrane-note.js';
import { pullFromTap, tapBand } from '../../src/mechanics/cloth/tap-note.js';
import { airCoefficientByPanels } from './air-panels.js';
import { checkRows, expectRow, given, named } from './check-rows.js';
import { expectDecimals, expectWithin } from './recorded.js';

describe('coefficients of the air', () => {
  test.each(checkRows('cloth.yaml', 'air-mass-coeff').map((row) => [named(row), row] as const))('%s', (_, row) => {
    const aspect = given(row, 'aspect');
    expectRow(row, 'C_unbaffled_two_faces', airCoefficientFree(aspect));
    if (row.expected['C_baffled_two_faces'] === undefined) return;
    expectRow(row, 'C_baffled_two_faces', airCoefficientWalled(aspect));
    expectRow(row, 'C_baffled_one_face', airCoefficientWalled(aspect) / 2);
  });

  test('the panels give the rigid square plate of DNV-RP-C205 (figure from memory)', () => {
    expectDecimals(airCoefficientByPanels(1, 'rigid') / (Math.PI / 4), 0.579, 3, 'memory');
  });

  test.each([1, 1.12, 1.35, 1.7, 2.4])('between and on the rows, the table agrees with panels solved here: aspect %d', (aspect) => {
    expectWithin(airCoefficientFree(aspect), airCoefficientByPanels(aspect), 0.0015, 'derived');
  });

  test('a wall holds the air back: more swings along than when it can pass round the edges', () => {
    for (let aspect = 1; aspect <= 10; aspect += 0.25) expect(airCoefficientWalled(aspect)).toBeGreaterThan(1.4 * airCoefficientFree(aspect));
  });

  test('the free coefficient grows smoothly and is held beyond the table', () => {
    for (let aspect = 1; aspect < 9.9; aspect += 0.05) expect(airCoefficientFree(aspect + 0.05)).toBeGreaterThan(airCoefficientFree(aspect));
    expect(airCoefficientFree(longestTabulatedAspect * 4)).toBe(airCoefficientFree(longestTabulatedAspect));
    expect(() => airCoefficientFree(0.9)).toThrow(RangeError);
    expect(() => airCoefficientWalled(Number.NaN)).toThrow(RangeError);
  });
});

describe('notes with air', () => {
  const rows = checkRows('cloth.yaml', 'tap-tone-').filter((row) => !row.id.includes('inverse'));
  test.each(rows.map((row) => [named(row), row] as const))('%s', (_, row) => {
    const span = { width_mm: 1000 * given(row, 'a_m'), height_mm: 1000 * given(row, 'b_m') };
    const [sigma, T] = [given(row, 'sigma_kg_m2'), given(row, 'T_N_per_m')];
    const band = tapBand(span, { x_N_per_m: T, y_N_per_m: T }, sigma);
    expectRow(row, 'm_air_unbaffled', airMass_kg_per_m2(span, 'free', given(row, 'rho_air')));
    expectRow(row, 'm_air_baffled2', airMass_kg_per_m2(span, 'walled', given(row, 'rho_air')));
    expectRow(row, 'f1_unbaffled_Hz', band.high_Hz);
    expectRow(row, 'f1_baffled_Hz', band.low_Hz);
    expectRow(row, 'T_if_air_ignored_N_per_m', pullFromNote_N_per_m(span, band.high_Hz, sigma));
  });

  test('leaving the air out halves the pull read from a note', () => {
    const span = { width_mm: 900, height_mm: 600 };
    const withAir = pullFromTap(span, 14.841, 0.45);
    const without = pullFromNote_N_per_m(span, 14.841, 0.45);
    expect(withAir.low_N_per_m).toBeCloseTo(200, 0);
    expect(without / withAir.low_N_per_m).toBeLessThan(0.5);
  });
});
