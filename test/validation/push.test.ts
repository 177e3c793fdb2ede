/**
 * Sag of a stretched rectangle under an even push on a small patch: double sine series, computed independently of this project up to the 799th term
 * (rows of test/data/cloth.yaml, status computed; N, m, N/m, mm; 0.3 % as given, the series being cut there). The plain series is summed here again.
 */
import { describe, expect, test } from 'vitest';
import { middlePush, patchSag_mm, type Push } from '../../src/fit/patch-sag.js';
import type { ClothSpan } from '../../src/fit/span.js';
import { checkRows, expectRow, given, named } from './check-rows.js';
import { expectWithin } from './recorded.js';

/** The plain double series for any place and unequal pull, cut at `most` half-waves. */
function plainSeries_mm(span: ClothSpan, pull: { x_N_per_m: number; y_N_per_m: number }, push: Push, most: number): number {
  const [a, b] = [span.width_mm, span.height_mm];
  const wave = (k: number, at: number, patch: number, side: number): number => Math.sin(k * Math.PI * at) ** 2 * (Math.sin((k * Math.PI * patch) / (2 * side)) / ((k * Math.PI * patch) / (2 * side)));
  let sum = 0;
  for (let m = 1; m <= most; m++) {
    const x = wave(m, push.at_x, push.patch_width_mm, a);
    for (let n = 1; n <= most; n++) sum += (x * wave(n, push.at_y, push.patch_height_mm, b)) / (pull.x_N_per_m * (m / a) ** 2 + pull.y_N_per_m * (n / b) ** 2);
  }
  return (1000 * 4 * push.force_N * sum) / (a * b * Math.PI ** 2);
}

const rows = checkRows('cloth.yaml', 'membrane-patch').filter((row) => row.expected['w0_mm'] !== undefined);

describe('push in the middle', () => {
  test.each(rows.map((row) => [named(row), row] as const))('%s', (_, row) => {
    const [patch] = row.inputs['patch_m'] as unknown as number[];
    const span = { width_mm: 1000 * given(row, 'a_m'), height_mm: 1000 * given(row, 'b_m') };
    const T = given(row, 'T_N_per_m');
    expectRow(row, 'w0_mm', patchSag_mm(span, { x_N_per_m: T, y_N_per_m: T }, middlePush(given(row, 'P_N'), 1000 * (patch as number))));
  });

  test.each(checkRows('cloth.yaml', 'membrane-patch-full').map((row) => [named(row), row] as const))('%s', (_, row) => {
    const side_mm = 1000 * given(row, 'a_m');
    const force_N = given(row, 'q_Pa') * given(row, 'a_m') * given(row, 'b_m');
    const T = given(row, 'T_N_per_m');
    const sag_mm = patchSag_mm({ width_mm: side_mm, height_mm: side_mm }, { x_N_per_m: T, y_N_per_m: T }, middlePush(force_N, side_mm));
    expectRow(row, 'w0_over_qb2_T', (sag_mm / 1000) * T / (given(row, 'q_Pa') * given(row, 'b_m') ** 2));
  });
});

describe('the summed series against the plain one', () => {
  const cases: readonly (readonly [string, ClothSpan, { x_N_per_m: number; y_N_per_m: number }, Push])[] = [
    ['oblong pad off the middle, unequal pull', { width_mm: 1100, height_mm: 700 }, { x_N_per_m: 250, y_N_per_m: 120 }, { force_N: 4.9, patch_width_mm: 90, patch_height_mm: 60, at_x: 0.31, at_y: 0.62 }],
    ['upright cloth, pull the other way', { width_mm: 520, height_mm: 1250 }, { x_N_per_m: 140, y_N_per_m: 310 }, { force_N: 7.5, patch_width_mm: 60, patch_height_mm: 110, at_x: 0.5, at_y: 0.25 }],
  ];
  test.each(cases)('%s', (_, span, pull, push) => {
    // cutting the plain series at 250 and 500 half-waves shows how far it still is from its end
    const [half, full] = [plainSeries_mm(span, pull, push, 250), plainSeries_mm(span, pull, push, 500)];
    const left = Math.abs(full - half);
    expect(left / full).toBeLessThan(1e-3);
    expectWithin(patchSag_mm(span, pull, push), full, Math.max(left, 1e-5 * full), 'derived');
  });

  test('a pad that does not lie on the cloth is refused', () => {
    expect(() => patchSag_mm({ width_mm: 500, height_mm: 400 }, { x_N_per_m: 200, y_N_per_m: 200 }, { force_N: 5, patch_width_mm: 50, patch_height_mm: 50, at_x: 0.02, at_y: 0.5 })).toThrow(RangeError);
  });
});
