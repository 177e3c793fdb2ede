/**
 * Keys, bowing bars, shrinkage and staples: secant stiffness of the cloth times stretch (computed rows of test/data/cloth.yaml). Crack strain of grounds, a few
 * thousandths: A. Janas and others, Heritage Science 10:160 (2022, read). 1 % shrinkage at 98 % humidity: G. Hedley 1988 (abstract read; stiffness an estimate).
 * m or mm, N/m; tolerances as given with each row.
 */
import { describe, expect, test } from 'vitest';
import { keyTravel_mm, pullChangeFromBow_N_per_m, pullFromHeldShrinkage_N_per_m } from '../../src/mechanics/cloth/pull-changes.js';
import { seasonalSwing } from '../../src/mechanics/cloth/seasonal-pull.js';
import { checkRows, expectRow, given, named } from './check-rows.js';
import { expectDecimals, expectShare, standingOf } from './recorded.js';

describe('changes of pull', () => {
  test.each(checkRows('cloth.yaml', 'key-out').map((row) => [named(row), row] as const))('%s', (_, row) => {
    const [out_mm, length_mm] = [1000 * given(row, 'delta_each_side_m'), 1000 * given(row, 'L_m')];
    const strain = row.expected['strain'] as number;
    expectShare(keyTravel_mm(strain, length_mm), out_mm, 5e-5, standingOf(row.status));
    expectRow(row, 'dT_N_per_m', pullFromHeldShrinkage_N_per_m(given(row, 'Et_N_per_m'), (2 * out_mm) / length_mm));
  });

  test.each(checkRows('cloth.yaml', 'bar-bow').map((row) => [named(row), row] as const))('%s', (_, row) => {
    expectRow(row, 'dT_N_per_m', pullChangeFromBow_N_per_m(given(row, 'Et_N_per_m'), 1000 * given(row, 'delta_1_m'), 1000 * given(row, 'delta_2_m'), 1000 * given(row, 'L_m')));
  });

  test.each(checkRows('cloth.yaml', 'canvas-shrink').map((row) => [named(row), row] as const))('%s', (_, row) => {
    expectRow(row, 'T_N_per_m', pullFromHeldShrinkage_N_per_m(given(row, 'Et_N_per_m'), given(row, 'eps')));
  });

  test('the key limit is the way out at which the ground’s stretch is reached (Janas 2022, seen: a few thousandths)', () => {
    expectDecimals(keyTravel_mm(0.003, 640), 0.96, 12, 'derived');
  });
});

describe('seasons', () => {
  test('at the published humidity the whole published shrinkage has come, whichever curve is taken (Hedley 1988, seen)', () => {
    const swing = seasonalSwing(50_000, 0, 0.98);
    for (const pull of [swing.low_N_per_m, swing.value_N_per_m, swing.high_N_per_m]) expectShare(pull, 500, 1e-12);
  });

  test('an ordinary room: a rough number inside a wide range, growing with the swing of the air', () => {
    const room = seasonalSwing(50_000, 0.35, 0.6);
    expect(room.low_N_per_m).toBeLessThan(room.value_N_per_m / 3);
    expect(room.high_N_per_m).toBeGreaterThan(1.5 * room.value_N_per_m);
    expect(seasonalSwing(50_000, 0.3, 0.7).value_N_per_m).toBeGreaterThan(room.value_N_per_m);
    expect(seasonalSwing(50_000, 0.5, 0.5).value_N_per_m).toBe(0);
  });
});
