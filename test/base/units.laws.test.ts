import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chanceInWords } from '../../src/base/chance-words.js';
import { formatLength, formatNumber, formatQuantity, type QuantityUnit } from '../../src/base/units-format.js';
import { readQuantity } from '../../src/base/units.js';
import type { Dimension } from '../../src/base/unit-table.js';
import { parseDecimal, parseShopNumber, plus, rational, times, toNumber } from '../../src/base/rational.js';

const read_mm = (text: string): number => {
  const reading = readQuantity(text, 'length');
  if (!reading.ok) throw new Error(`${text}: ${reading.fault}`);
  return reading.value;
};

describe('laws of written lengths', () => {
  it('metric lengths come back within half of a tenth, of a whole millimetre from 20 mm up', () => {
    fc.assert(fc.property(fc.double({ min: -20_000, max: 20_000, noNaN: true }), (length_mm) => {
      const step_mm = Math.abs(length_mm) < 20 ? 0.1 : 1;
      expect(Math.abs(read_mm(formatLength(length_mm, 'metric')) - length_mm)).toBeLessThanOrEqual(step_mm / 2 + 1e-9);
    }));
  });

  it('inch lengths come back within half of a sixteenth, and of a sixty-fourth below a quarter inch', () => {
    fc.assert(fc.property(fc.double({ min: -20_000, max: 20_000, noNaN: true }), (length_mm) => {
      const step_mm = Math.abs(length_mm) < 25.4 / 4 ? 25.4 / 64 : 25.4 / 16;
      expect(Math.abs(read_mm(formatLength(length_mm, 'inch')) - length_mm)).toBeLessThanOrEqual(step_mm / 2 + 1e-6);
    }));
  });

  it('whole sixty-fourths of an inch come back exactly, and their text is in lowest terms', () => {
    fc.assert(fc.property(fc.integer({ min: -64 * 800, max: 64 * 800 }), (part) => {
      const length_mm = (part * 25.4) / 64;
      const text = formatLength(length_mm, 'inch');
      expect(read_mm(text)).toBeCloseTo(length_mm, 9);
      const fraction = /(\d+)\/(\d+)/.exec(text);
      if (fraction) expect(Number(fraction[1]) % 2).toBe(1);
    }));
  });

  it('tenths of a millimetre come back exactly', () => {
    fc.assert(fc.property(fc.integer({ min: -200_000, max: 200_000 }), (tenths) => {
      expect(read_mm(formatLength(tenths / 10, 'metric'))).toBe(tenths / 10);
    }));
  });

  it('feet and inches are the same as inches', () => {
    fc.assert(fc.property(fc.nat(60), fc.nat(11), fc.nat(15), (feet, inches, part) => {
      const rest = part === 0 ? '' : `-${part}/16`;
      expect(read_mm(`${feet} ft ${inches}${rest} in`)).toBe(read_mm(`${feet * 12 + inches}${rest} in`));
    }));
  });

  it('no text makes the reader throw, in any dimension, and what it takes for a number is finite', () => {
    const unitOf: Readonly<Partial<Record<Dimension, string>>> = {
      length: 'mm', pull: 'N/m', stress: 'MPa', density: 'kg/m3', twist: 'deg/m', curvature: '/m', percent: '%', temperature: 'C', fraction: '', time: 'h',
    };
    const text = fc.oneof(fc.string(), fc.stringMatching(/^[-+0-9./ eE'"xmin%]{0,40}$/));
    const number = fc.option(fc.stringMatching(/^[0-9]{1,30}(\.[0-9]{1,4})?$/));
    const dimension = fc.constantFrom(...(Object.keys(unitOf) as Dimension[]));
    let read = 0;
    fc.assert(fc.property(text, number, dimension, (any, digits, of) => {
      const reading = readQuantity(digits === null ? any : `${digits} ${unitOf[of]!}`, of);
      if (!reading.ok) return;
      read += 1;
      expect(Number.isFinite(reading.value)).toBe(true);
    }), { numRuns: 200 });
    expect(read).toBeGreaterThan(20);
  });
});

describe('laws of fractions', () => {
  it('decimals are read as JavaScript rounds them', () => {
    fc.assert(fc.property(fc.integer({ min: -999_999_999, max: 999_999_999 }), fc.integer({ min: 0, max: 6 }), (digits, places) => {
      const text = (digits / 10 ** places).toFixed(places);
      const exact = parseDecimal(text);
      expect(exact === null || exact === Infinity ? exact : toNumber(exact as ReturnType<typeof rational>)).toBe(Number(text) + 0);
    }));
  });

  it('sums and products of fractions agree with cross-multiplication', () => {
    const part = fc.tuple(fc.integer({ min: -999, max: 999 }), fc.integer({ min: 1, max: 999 }));
    fc.assert(fc.property(part, part, ([a, b], [c, d]) => {
      expect(plus(rational(a, b), rational(c, d))).toEqual(rational(a * d + c * b, b * d));
      expect(times(rational(a, b), rational(c, d))).toEqual(rational(a * c, b * d));
    }));
  });

  it('a fraction over nought is no number', () => {
    expect(parseShopNumber('3/0')).toBeNull();
    expect(() => rational(1, 0)).toThrow(RangeError);
  });
});

describe('laws of shown numbers', () => {
  const units: QuantityUnit[] = ['mm', 'mrad', 'N', 'Nm', 'N/m', 'kg', 'deg', 'deg/m', 'Hz', 'share', 'chance', 'pct', 'cost', 'count', 'ratio', 'days', 'ml', 'MPa', 'C'];

  it('no fact is ever shown as NaN, Infinity, -0 or with an exponent', () => {
    fc.assert(fc.property(fc.double({ min: -1e9, max: 1e9 }), fc.constantFrom(...units), fc.constantFrom('metric' as const, 'inch' as const), (value, unit, system) => {
      const text = formatQuantity(value, unit, system);
      expect(text).not.toMatch(/NaN|Infinity|^-0(?![.\d])|\de[+-]?\d/);
    }));
  });

  it('missing and non-finite values are unknown', () => {
    for (const unit of units) for (const value of [null, Number.NaN, Infinity, -Infinity]) expect(formatQuantity(value, unit, 'metric')).toBe('unknown');
  });

  it('rounds to significant digits', () => {
    fc.assert(fc.property(fc.double({ min: 1e-6, max: 1e9, noNaN: true }), (value) => {
      expect(Math.abs(Number(formatNumber(value, 3).replace('−', '-')) / value - 1)).toBeLessThanOrEqual(0.0051);
    }));
  });

  it('chances in words never say more than certain or less than never', () => {
    expect([0, 0.005, 0.1666, 0.5, 0.97, 1].map(chanceInWords)).toEqual(['fewer than 1 in 1000', 'about 1 in 200', 'about 1 in 6', 'about 1 in 2', 'about 9 in 10', 'nearly all']);
  });
});

describe('shown quantities', () => {
  it.each<[number, QuantityUnit, string, string]>([
    [898.525, 'mm', '899 mm', '35-3/8 in'], [898.5, 'mm', '898.5 mm', '35-3/8 in'], [1.9, 'mm', '1.9 mm', '5/64 in'], [900, 'mm', '900 mm', '35-7/16 in'], [200, 'N/m', '200 N/m', '1.14 lbf/in'], [2.435, 'kg', '2.4 kg', '5.4 lb'],
    [0.1666, 'share', '17 %', '17 %'], [1.5, 'ratio', '1.5', '1.5'], [20, 'C', '20 °C', '68 °F'], [12.4, 'cost', '12.40', '12.40'], [1, 'days', '1 day', '1 day'], [6.8947, 'MPa', '6.89 MPa', '1000 psi'],
    [56.37, 'N/m', '56 N/m', '0.32 lbf/in'], [78.57, 'N', '79 N', '18 lbf'], [0.48231, 'ratio', '0.48', '0.48'], [9.5, 'pct', '9.5 %', '9.5 %'], [9.274, 'pct', '9.3 %', '9.3 %'], [30, 'mrad', '1.7°', '1.7°'],
    [6.41, 'days', '6 days', '6 days'], [440, 'ml', '440 ml', '15 fl oz'], [1.5, 'ml', '1.5 ml', '0.3 tsp'],
  ])('%d %s reads %s or %s', (value, unit, metric, inch) => {
    expect(formatQuantity(value, unit, 'metric')).toBe(metric);
    expect(formatQuantity(value, unit, 'inch')).toBe(inch);
  });
});
