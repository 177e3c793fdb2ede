/**
 * Numbered cotton duck: US Department of Commerce rule as quoted in an encyclopedia (read): a piece of 36 × 22 in weighs 19 ounces less its number.
 * Unit conversions by definition. Rows of test/data/cloth.yaml; oz, oz/yd², g/m², N/m; tolerances as given (four digits and more).
 */
import { describe, expect, test } from 'vitest';
import { fromOuncesPerYard2_g_per_m2, nearestDuck, numberedDuck_g_per_m2, numberedDuck_oz } from '../../src/mechanics/cloth/cloth-weight.js';
import { checkRows, expectRow, given, named } from './check-rows.js';

describe('numbered duck', () => {
  test.each(checkRows('cloth.yaml', 'duck-weight').map((row) => [named(row), row] as const))('%s', (_, row) => {
    const n = given(row, 'duck_number');
    expectRow(row, 'oz_36x22in', numberedDuck_oz(n));
    expectRow(row, 'oz_per_yd2', (numberedDuck_oz(n) * 36) / 22);
    expectRow(row, 'g_per_m2', numberedDuck_g_per_m2(n));
  });

  test('heavier for lower numbers, refused outside 1 to 18', () => {
    expect(numberedDuck_g_per_m2(8)).toBeGreaterThan(numberedDuck_g_per_m2(10));
    expect(() => numberedDuck_g_per_m2(19)).toThrow(RangeError);
    expect(() => numberedDuck_g_per_m2(0)).toThrow(RangeError);
  });

  test('the number is found again from the weight, and not for a cloth between two numbers or beside the scale', () => {
    for (let n = 1; n <= 12; n++) expect(nearestDuck(numberedDuck_g_per_m2(n))).toBe(n);
    expect(nearestDuck(444)).toBe(11);
    expect(nearestDuck(416)).toBeNull();
    expect(nearestDuck(300)).toBeNull();
    expect(nearestDuck(1500)).toBeNull();
  });
});

describe('units of cloth', () => {
  test.each(checkRows('cloth.yaml', 'canvas-oz').map((row) => [named(row), row] as const))('%s', (_, row) => {
    expectRow(row, 'g_per_m2', fromOuncesPerYard2_g_per_m2(given(row, 'oz_per_yd2')));
  });
});
