import { describe, expect, test } from 'vitest';
import { formatLength } from '../../src/base/units-format.js';
import { readQuantity } from '../../src/base/units.js';
import { fromOuncesPerYard2_g_per_m2 } from '../../src/mechanics/cloth/cloth-weight.js';
import { downToMark, nearestMark, tapeMark_mm, upToMark, upToTape } from '../../src/base/tape.js';

const value = (text: string, dimension: Parameters<typeof readQuantity>[1]): number => {
  const read = readQuantity(text, dimension);
  return read.ok ? read.value : Number.NaN;
};

/** Exact by definition: the pound is 0.45359237 kg, the yard 0.9144 m, the pound-force that pound times 9.80665 m/s² (NIST SP 811, from memory). */
describe('avoirdupois', () => {
  test('sixteen ounces are a pound', () => {
    expect(value('1 oz', 'mass')).toBe(28.349523125);
    expect(value('16 oz', 'mass')).toBe(453.59237);
    expect(value('1 lb', 'mass')).toBe(453.59237);
  });
  test('sixteen ounces on a square yard', () => {
    expect(value('16 oz/yd2', 'mass-per-area')).toBeCloseTo(453.59237 / 0.9144 ** 2, 10);
    expect(fromOuncesPerYard2_g_per_m2(16)).toBeCloseTo(453.59237 / 0.9144 ** 2, 10);
  });
  test('a pound on a cubic foot, a pound-force on an inch', () => {
    expect(value('1 pcf', 'density')).toBeCloseTo(0.45359237 / 0.3048 ** 3, 10);
    expect(value('1 lbf/in', 'pull')).toBeCloseTo((0.45359237 * 9.80665) / 0.0254, 10);
    expect(value('12 lbf/ft', 'pull')).toBeCloseTo(value('1 lbf/in', 'pull'), 10);
  });
});

describe('marks of the tape', () => {
  test('half a millimetre, or a sixteenth of an inch', () => {
    expect([tapeMark_mm('metric'), tapeMark_mm('inch')]).toEqual([0.5, 25.4 / 16]);
    expect(upToTape(100.1, 'metric')).toBe(100.5);
    expect(upToTape(10.01 * 25.4, 'inch') / 25.4).toBeCloseTo(10 + 1 / 16, 12);
  });
  test('a length within a thousandth of a mark stays on it; one further off goes up, down, or to the nearest', () => {
    expect([upToMark(10.0004, 0.5), upToMark(10.002, 0.5)]).toEqual([10, 10.5]);
    expect([downToMark(9.9996, 0.5), downToMark(9.998, 0.5)]).toEqual([10, 9.5]);
    expect([nearestMark(10.24, 0.5), nearestMark(10.26, 0.5)]).toEqual([10, 10.5]);
  });
});

describe('lengths for people, at the step where they are rounded', () => {
  test('inches: a whole 64th is said as it is, else to the nearest 16th, below a quarter inch to the nearest 64th', () => {
    const inch = (sixtyFourths: number): string => formatLength((sixtyFourths / 64) * 25.4, 'inch');
    expect([inch(33), inch(33.9), inch(34.1), inch(37.9), inch(38.1)]).toEqual(['33/64 in', '1/2 in', '9/16 in', '9/16 in', '5/8 in']);
    expect([inch(15.4), inch(15.6), inch(16.3)]).toEqual(['15/64 in', '1/4 in', '1/4 in']);
    expect([inch(64 * 3 + 1.9), inch(64 * 3 + 2.1), inch(-2.6)]).toEqual(['3 in', '3-1/16 in', '−3/64 in']);
  });
  test('metric: a tenth below 20 mm, then whole millimetres unless a tenth is exact', () => {
    expect([19.94, 19.96, 20.04, 20.1, 20.46].map((mm) => formatLength(mm, 'metric'))).toEqual(['19.9 mm', '20 mm', '20 mm', '20.1 mm', '20 mm']);
  });
});
