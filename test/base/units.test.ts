import Fraction from 'fraction.js';
import { describe, expect, it } from 'vitest';
import { readQuantity, readRange, readSize } from '../../src/base/units.js';
import type { Dimension } from '../../src/base/unit-table.js';
import { readForFact } from '../../src/base/units-fact.js';

const value = (text: string, dimension: Dimension): number | string => {
  const reading = readQuantity(text, dimension);
  return reading.ok ? reading.value : reading.fault;
};

describe('lengths', () => {
  it.each([
    ['900 mm', 900], ['90 cm', 900], ['1.2 m', 1200], ['35 in', 889], ['35-3/8 in', 898.525], ['35 3/8"', 898.525], ['35 3/8″', 898.525], ['35⅜ in', 898.525], ['2 ft 11 in', 889],
    [`2' 11-1/2"`, 901.7], ['2’ 11½”', 901.7], ['2 feet', 609.6], ['35-\u20603/8\u00A0in', 898.525], ['3/4 in', 19.05], ['.5 m', 500], ['1e3 mm', 1000], ['-3/8 in', -9.525], ['−2 mm', -2], ['-1 ft 6 in', -457.2], ['0.1 mm', 0.1], ['900mm', 900], ['900 MM', 900],
  ])('reads %s as %d mm exactly', (text, expected) => {
    expect(value(text, 'length')).toBe(expected);
  });

  it.each([
    ['900', 'no-unit'], ['35-3/8', 'no-unit'], ['wide', 'not-a-number'], ['', 'not-a-number'], ['mm', 'not-a-number'], ['900 kg', 'other-unit'], ['1,2 m', 'comma'], ['1e308 mm', 'too-large'], ['1e999999999 mm', 'not-a-number'],
    ['NaN mm', 'not-a-number'], ['Infinity mm', 'not-a-number'], ['1/0 in', 'not-a-number'], ['1.2.3 m', 'not-a-number'], [`${'9'.repeat(70)} mm`, 'not-a-number'], ['35 - in', 'other-unit'],
  ])('refuses %s: %s', (text, fault) => {
    expect(value(text, 'length')).toBe(fault);
  });

  it('agrees with an independent library of fractions on every sixty-fourth of an inch up to a foot', () => {
    for (let part = 0; part < 64 * 12; part += 1) {
      const [whole, top] = [Math.floor(part / 64), part % 64];
      const text = top === 0 ? `${whole} in` : whole === 0 ? `${top}/64 in` : `${whole}-${top}/64 in`;
      expect(value(text, 'length')).toBe(new Fraction(part, 64).mul(254, 10).valueOf());
    }
  });

  it('remembers the unit system', () => {
    expect(readQuantity('35 in', 'length')).toMatchObject({ system: 'inch' });
    expect(readQuantity('35 cm', 'length')).toMatchObject({ system: 'metric' });
    expect(readQuantity(`2' 3"`, 'length')).toMatchObject({ system: 'inch' });
  });
});

// Conversions: 1 lbf = 4.4482216152605 N, 1 lb = 0.45359237 kg, 1 in = 25.4 mm and 1 yd = 0.9144 m, all exact by definition.
describe('other quantities', () => {
  it.each<[string, Dimension, number]>([
    ['200 N/m', 'pull', 200], ['2 N/cm', 'pull', 200], ['50 kN/m', 'pull', 50_000], ['1 lbf/in', 'pull', 4.4482216152605 / 0.0254],
    ['9 GPa', 'stress', 9000], ['9000 MPa', 'stress', 9000], ['1000 psi', 'stress', 4448.2216152605 / 645.16], ['1.3 Mpsi', 'stress', (1.3e6 * 4.4482216152605) / 645.16], ['100 ksi', 'stress', (1e5 * 4.4482216152605) / 645.16],
    ['420 kg/m3', 'density', 420], ['1.1 g/ml', 'density', 1100], ['26 lb/ft3', 'density', (26 * 0.45359237) / 0.3048 ** 3],
    ['340 g/m2', 'mass-per-area', 340], ['12 oz/yd2', 'mass-per-area', (12 * 453.59237) / 16 / 0.9144 ** 2], ['150 ml/m2', 'volume-per-area', 150],
    ['1 deg/m', 'twist', Math.PI / 180], ['2 °/m', 'twist', Math.PI / 90], ['0.01 rad/m', 'twist', 0.01], ['0.002 /m', 'curvature', 0.002], ['2e-3 1/m', 'curvature', 0.002],
    ['12 %', 'percent', 12], ['12%', 'percent', 12], ['20 C', 'temperature', 20], ['68 °F', 'temperature', 20], ['-4 F', 'temperature', -20],
    ['98 N', 'force', 98], ['10 lbf', 'force', 44.482216152605], ['2 kg', 'mass', 2000], ['90 min', 'time', 1.5], ['2 days', 'time', 48], ['1/2', 'fraction', 0.5], ['0.162 %', 'fraction', 0.00162], ['1.0e-10 m2/s', 'diffusion', 1e-10],
  ])('reads %s as %s', (text, dimension, expected) => {
    expect(value(text, dimension)).toBeCloseTo(expected, 9);
  });

  it('agrees with the published ounce and pound-force checks (406.869 g/m2 for 12 oz/yd2; 175.127 N/m for 1 lbf/in)', () => {
    expect(value('12 oz/yd2', 'mass-per-area')).toBeCloseTo(406.869, 3);
    expect(value('1 lbf/in', 'pull')).toBeCloseTo(175.127, 3);
  });

  it('reads one text in each dimension by itself, and again the same', () => {
    for (const _ of [1, 2]) expect([value('12 %', 'percent'), value('12 %', 'fraction'), value('12 %', 'length')]).toEqual([12, 0.12, 'other-unit']);
  });

  it('keeps percentages free of binary dust', () => {
    expect(value('0.289 %', 'fraction')).toBe(0.00289);
    expect(value('35 %', 'fraction')).toBe(0.35);
  });
});

describe('sizes and ranges', () => {
  it.each([['19 x 38 mm', 19, 38], ['19x38mm', 19, 38], ['3/4 x 1-1/2 in', 19.05, 38.1], ['3/4" x 1-1/2"', 19.05, 38.1], ['19 mm × 3.8 cm', 19, 38]])('reads the size %s', (text, first, second) => {
    expect(readSize(text)).toMatchObject({ first_mm: first, second_mm: second });
  });

  it.each(['19 x 38', '19 mm', '19 x 38 x 40 mm', 'x mm', '19 x 38 kg'])('refuses the size %s', (text) => {
    expect(readSize(text)).toBeNull();
  });

  it('reads ranges and single values', () => {
    expect(readRange('35..60 %', 'percent')).toEqual({ low: 35, high: 60 });
    expect(readRange('35 % .. 60 %', 'percent')).toEqual({ low: 35, high: 60 });
    expect(readRange('50 %', 'percent')).toEqual({ low: 50, high: 50 });
    expect(readRange('35..60', 'percent')).toBeNull();
    expect(readRange('1..2..3 %', 'percent')).toBeNull();
  });
});

describe('values for facts', () => {
  it('takes a bare number only where no unit is needed', () => {
    expect(readForFact(1.5, 'ratio')).toEqual({ ok: true, value: 1.5 });
    expect(readForFact('1/150', 'ratio')).toEqual({ ok: true, value: 1 / 150 });
    expect(readForFact(3, 'mm')).toMatchObject({ ok: false, fault: 'no-unit' });
    expect(readForFact(Number.NaN, 'ratio')).toMatchObject({ ok: false });
    expect(readForFact('3.0 mm', 'mm')).toEqual({ ok: true, value: 3 });
    expect(readForFact('35 %', 'share')).toEqual({ ok: true, value: 0.35 });
    expect(readForFact('35 %', 'ratio')).toMatchObject({ ok: false });
    expect(readForFact('3 kg', 'mm')).toMatchObject({ ok: false, fault: 'other-unit' });
    expect(readForFact('propeller', 'word')).toEqual({ ok: true, value: 'propeller' });
    expect(readForFact('500 g', 'kg')).toEqual({ ok: true, value: 0.5 });
    expect(readForFact('12 h', 'days')).toEqual({ ok: true, value: 0.5 });
  });
});
