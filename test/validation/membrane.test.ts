/**
 * Lord Rayleigh, The Theory of Sound: notes of a stretched rectangle (formula from memory), and the soap-film analogy of S. Timoshenko and
 * J. N. Goodier, Theory of Elasticity (series from memory, two independent series agree). Rows of test/data/cloth.yaml; m, N/m, kg/m², Hz.
 * Tolerances as printed with each row (five to six digits), never finer than half of the last printed digit.
 */
import { describe, test } from 'vitest';
import { membraneNote_Hz, pullFromNote_N_per_m } from '../../src/mechanics/cloth/membrane-note.js';
import type { ClothSpan } from '../../src/fit/span.js';
import { patchSag_mm } from '../../src/fit/patch-sag.js';
import { checkRows, expectRow, given, named, type CheckRow } from './check-rows.js';
import { expectDecimals, expectWithin, standingOf } from './recorded.js';

const spanOf = (row: CheckRow): ClothSpan => ({ width_mm: 1000 * given(row, 'a_m'), height_mm: 1000 * given(row, 'b_m') });
/** A pad as large as the cloth is an even load: middle sag, mm, for a load in Pa. */
const evenLoadSag_mm = (span: ClothSpan, T: number, q_Pa: number): number =>
  patchSag_mm(span, even(T), { force_N: (q_Pa * span.width_mm * span.height_mm) / 1e6, patch_width_mm: span.width_mm, patch_height_mm: span.height_mm, at_x: 0.5, at_y: 0.5 });
/** The share c of q b²/T for an aspect ratio, b the shorter side. */
const shareOf = (aspect: number): number => evenLoadSag_mm({ width_mm: 1000 * aspect, height_mm: 1000 }, 1, 1) / 1000;
const even = (T: number) => ({ x_N_per_m: T, y_N_per_m: T });

describe('notes of a membrane without air (Rayleigh, formula from memory)', () => {
  test.each(checkRows('cloth.yaml', 'membrane-freq').map((row) => [named(row), row] as const))('%s', (_, row) => {
    const note = (m: number, n: number): number => membraneNote_Hz(spanOf(row), even(given(row, 'T_N_per_m')), given(row, 'sigma_kg_m2'), m, n);
    expectRow(row, 'f11_Hz', note(1, 1));
    expectRow(row, 'f21_Hz', note(2, 1));
    expectRow(row, 'f12_Hz', note(1, 2));
    expectRow(row, 'f31_Hz', note(3, 1));
  });

  test('unequal pull: only the pull along the width counts on a very long narrow cloth turned that way', () => {
    const narrow: ClothSpan = { width_mm: 500, height_mm: 50_000 };
    const string_Hz = Math.sqrt(300 / 0.4) / (2 * 0.5);
    expectDecimals(membraneNote_Hz(narrow, { x_N_per_m: 300, y_N_per_m: 120 }, 0.4), string_Hz, 1, 'derived');
  });

  test.each(checkRows('cloth.yaml', 'tap-tone-inverse').map((row) => [named(row), row] as const))('%s', (_, row) => {
    expectRow(row, 'T_N_per_m', pullFromNote_N_per_m(spanOf(row), given(row, 'f1_Hz'), given(row, 'sigma_kg_m2') + given(row, 'm_air')));
  });
});

describe('sag of a membrane under an even load', () => {
  test.each(checkRows('cloth.yaml', 'membrane-uniform-centre').map((row) => [named(row), row] as const))('%s', (_, row) => {
    // the rows print five decimals and one of them asks for 2e-6: half of the last printed digit is what they can show
    expectWithin(shareOf(given(row, 'aspect')), given(row, 'c'), 5e-6, standingOf(row.status));
  });

  test.each(checkRows('cloth.yaml', 'membrane-uniform-worked').map((row) => [named(row), row] as const))('%s', (_, row) => {
    expectRow(row, 'w0_mm', evenLoadSag_mm(spanOf(row), given(row, 'T_N_per_m'), given(row, 'q_Pa')));
  });

  test('a very long cloth sags like a string under the same load: an eighth', () => {
    expectDecimals(shareOf(25), 1 / 8, 12, 'derived');
  });
});
