/**
 * J. Crank, The Mathematics of Diffusion (plane-sheet series, from memory); rows of test/data/moisture.yaml, computed independently.
 * The diffusion number 1e-10 m²/s is a proposal, uncertain by a factor of three. m, m²/s, days. The series is checked here against a stepped solution.
 */
import { describe, expect, test } from 'vitest';
import { barDried_share, daysToDry, dryingTime_days, plankDried_share } from '../../src/mechanics/moisture/drying.js';
import { checkRows, expectRow, given, named } from './check-rows.js';
import { expectWithin } from './recorded.js';

/** Share dried by stepping the diffusion equation on a grid of `cells` through the thickness (Crank–Nicolson, surfaces at the new moisture at once). */
function stepped(thickness_m: number, D: number, days: number, cells: number): number {
  const steps = 4 * cells;
  const r = (D * ((days * 86_400) / steps)) / (thickness_m / cells) ** 2;
  let u = new Array<number>(cells - 1).fill(1);
  for (let s = 0; s < steps; s++) {
    // two implicit half steps in the first step damp the jump at the surface
    const theta = s < 4 ? 1 : 0.5;
    const right = u.map((x, i) => x + (1 - theta) * r * ((u[i - 1] ?? 0) - 2 * x + (u[i + 1] ?? 0)));
    const c: number[] = [];
    const d: number[] = [];
    for (let i = 0; i < right.length; i++) {
      const below = 1 + 2 * theta * r + theta * r * (c[i - 1] ?? 0) * (i > 0 ? 1 : 0);
      c.push((-theta * r) / below);
      d.push(((right[i] as number) + (i > 0 ? theta * r * (d[i - 1] as number) : 0)) / below);
    }
    u = new Array<number>(right.length);
    for (let i = right.length - 1; i >= 0; i--) u[i] = (d[i] as number) - (i < right.length - 1 ? (c[i] as number) * (u[i + 1] as number) : 0);
  }
  return 1 - u.reduce((sum, x) => sum + x, 0) / cells;
}

describe('planks and bars', () => {
  test.each(checkRows('moisture.yaml', 'dry-time-plank').map((row) => [named(row), row] as const))('%s', (_, row) => {
    const L = 1000 * given(row, 'L_m');
    expectRow(row, 'tau_days', dryingTime_days(L, given(row, 'D_m2_s')));
    expectRow(row, 'E_14d', plankDried_share(L, given(row, 'D_m2_s'), given(row, 't_days')));
  });
  test.each(checkRows('moisture.yaml', 'dry-time-square').map((row) => [named(row), row] as const))('%s', (_, row) => {
    const L = 1000 * given(row, 'L_m');
    expectRow(row, 'E_14d', barDried_share(L, L, given(row, 'D_m2_s'), given(row, 't_days')));
  });

  test.each([0.4, 3, 9, 30])('a 38 mm plank after %d days agrees with stepping the equation', (days) => {
    expectWithin(plankDried_share(38, 1e-10, days), stepped(0.038, 1e-10, days, 200), 1e-3, 'derived');
  });

  test('the early and the late formula meet', () => {
    const border = 0.1 * dryingTime_days(45, 1e-10);
    expect(plankDried_share(45, 1e-10, border * (1 + 1e-9))).toBeCloseTo(plankDried_share(45, 1e-10, border * (1 - 1e-9)), 7);
  });

  test('days to nine tenths: the share is reached then and not before, and the time goes with the square of the size', () => {
    const days = daysToDry(38, 89, 1e-10);
    expect(barDried_share(38, 89, 1e-10, days)).toBeGreaterThanOrEqual(0.9);
    expect(barDried_share(38, 89, 1e-10, days - 0.01)).toBeLessThan(0.9);
    expect(daysToDry(76, 178, 1e-10) / days).toBeCloseTo(4, 3);
    expect(daysToDry(38, 89, 3e-10) / days).toBeCloseTo(1 / 3, 3);
    expect(() => daysToDry(38, 89, 1e-10, 1)).toThrow(RangeError);
  });
});
