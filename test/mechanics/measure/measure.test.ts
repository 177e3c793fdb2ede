import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { measurePush } from '../../../src/measure/measure-push.js';
import { measureSag } from '../../../src/measure/measure-sag.js';
import { measureTap } from '../../../src/measure/measure-tap.js';
import { measureTwist } from '../../../src/measure/measure-twist.js';
import { digits } from '../../../src/measure/reading.js';
import { spreadFromReadings } from '../../../src/measure/spread.js';

describe('a board on two blocks', () => {
  const board = { stock: 'strip-19x38', span_mm: 1000, width_mm: 38, height_mm: 19, weight_g: 1000 };

  test('bending as in the Wood Handbook check (derived there: 2.2569 mm for 20 N, E 8500, 38 × 19 over 1 m), shear on top', () => {
    const weight_g = (1000 * 20) / 9.80665;
    const bending = (20 * 1000 ** 3) / (48 * 8500 * ((38 * 19 ** 3) / 12));
    expect(bending).toBeCloseTo(2.2569, 4);
    const shear = (20 * 1000) / (4 * (8500 / 16) * (5 / 6) * 38 * 19);
    expect(measureSag({ ...board, weight_g, sag_mm: bending + shear }).value).toBeCloseTo(8500, 6);
    expect(shear / bending).toBeLessThan(0.01);
  });

  test('gives back the stiffness behind a sag, inside its own band', () => {
    const sag_mm = (9.80665 * (1000 ** 3 / (4 * 38 * 19 ** 3) + (1000 * 16) / (4 * (5 / 6) * 38 * 19))) / 9100;
    const reading = measureSag({ ...board, sag_mm });
    expect(reading.value).toBeCloseTo(9100, 6);
    expect(reading.low).toBeLessThan(9100);
    expect(reading.high).toBeGreaterThan(9100);
    expect(reading.high - reading.value).toBeGreaterThan(reading.value - reading.low);
    expect(parse(reading.paste)).toEqual({ lumber: { 'strip-19x38': { E: '9100 MPa', source: 'measured' } } });
    expect(reading.words).toContain('1000 g over 1000 mm');
  });

  test('a height read wrong by a per cent moves the stiffness by three: the band knows', () => {
    const narrow = { span_mm: 0, width_mm: 0, weight_g: 0, sag_mm: 0, height_mm: 0 };
    const reading = measureSag({ ...board, sag_mm: 4, errors: { ...narrow, height_mm: 0.19 } });
    expect((reading.value - reading.low) / reading.value).toBeCloseTo(0.03, 2);
  });

  test('says when the reading is poor', () => {
    expect(measureSag({ ...board, weight_g: 400, sag_mm: 0.6 }).notes.join(' ')).toContain('small beside the reading error');
    expect(measureSag({ ...board, weight_g: 9000, sag_mm: 30 }).notes.join(' ')).toContain('fiftieth');
    expect(measureSag({ ...board, span_mm: 250, weight_g: 50_000, sag_mm: 3 }).notes.join(' ')).toContain('short for the height');
    expect(measureSag({ ...board, weight_g: 100, sag_mm: 0.2 }).high).toBe(Infinity);
    expect(() => measureSag({ ...board, sag_mm: 0 })).toThrow(RangeError);
  });
});

describe('winding sticks', () => {
  test('7.3 mm per 100 mm over 2 m, right-handed (Chalmers publication 18709, seen)', () => {
    const reading = measureTwist({ rise_mm: 7.3, width_mm: 100, length_mm: 2000, hand: 'right', board: { for: 'left', ply: 2 } });
    expect(reading.value).toBeCloseTo(2.08759, 4);
    expect(parse(reading.paste)).toEqual({ boards: [{ for: 'left', ply: 2, twist: '2.1 deg/m' }] });
    expect(reading.low).toBeCloseTo((Math.atan(0.068) * 90) / Math.PI, 6);
  });
  test('the other hand is negative, and the band keeps its order', () => {
    const reading = measureTwist({ rise_mm: 3, width_mm: 300, length_mm: 900, hand: 'left' });
    expect(reading.value).toBeLessThan(0);
    expect(reading.low).toBeLessThan(reading.value);
    expect(reading.high).toBeGreaterThan(reading.value);
  });
  test('no rise is no twist, uncertain by the reading error, and says so', () => {
    const reading = measureTwist({ rise_mm: 0, width_mm: 300, length_mm: 900, hand: 'left' });
    expect(Object.is(reading.value, 0)).toBe(true);
    expect(reading.low).toBeCloseTo(-reading.high, 12);
    expect(reading.notes).toHaveLength(1);
    expect(() => measureTwist({ rise_mm: -1, width_mm: 300, length_mm: 900, hand: 'left' })).toThrow(RangeError);
  });
});

describe('tap and push', () => {
  const span = { width_mm: 900, height_mm: 600 };
  test('14 Hz on 900 × 600 of 450 g/m²: 178 N/m with free air, 228 with walled', () => {
    const reading = measureTap({ span, mass_g_per_m2: 450, note_Hz: 14, error_Hz: 0 });
    expect(reading.low).toBeCloseTo(177.97, 0);
    expect(reading.high / reading.low).toBeCloseTo((0.45 + 0.7147) / (0.45 + 0.4608), 3);
    expect(reading.value).toBeCloseTo((reading.low + reading.high) / 2, 9);
    expect(parse(reading.paste).cloth.pull).toEqual({ working: `${digits(reading.value)} N/m`, peak: `${digits(2 * reading.value)} N/m` });
  });
  test('a reading error widens the band at both ends', () => {
    const exact = measureTap({ span, mass_g_per_m2: 450, note_Hz: 14, error_Hz: 0 });
    const rough = measureTap({ span, mass_g_per_m2: 450, note_Hz: 14, error_Hz: 0.5 });
    expect(rough.low).toBeLessThan(exact.low);
    expect(rough.high).toBeGreaterThan(exact.high);
    expect(rough.value).toBe(exact.value);
  });
  test('1 N on 50 mm sinking 2.4342 mm in 900 × 600 is 200 N/m (row membrane-patch-0.9x0.6-50mm)', () => {
    const reading = measurePush({ span, weight_g: 1000 / 9.80665, pad_mm: 50, sag_mm: 2.4342, error_mm: 0 });
    expect(reading.value / 200).toBeCloseTo(1, 2);
    expect(reading.low).toBe(reading.high);
  });
  test('the stretch from the push lowers the low end when the stiffness is known', () => {
    const soft = measurePush({ span, weight_g: 500, pad_mm: 50, sag_mm: 12 });
    const known = measurePush({ span, weight_g: 500, pad_mm: 50, sag_mm: 12, stiffness_N_per_m: 50_000 });
    expect(known.low).toBeLessThan(soft.low);
    expect(known.value).toBe(soft.value);
    expect(measurePush({ span, weight_g: 50, pad_mm: 50, sag_mm: 0.4 }).high).toBe(Infinity);
    expect(() => measurePush({ span, weight_g: 500, pad_mm: 700, sag_mm: 5 })).toThrow(RangeError);
  });
});

describe('several boards', () => {
  test('mean and sample standard deviation (n − 1), worked by hand', () => {
    const spread = spreadFromReadings([0.4, -0.2, 0.9, 0.1], 'deg/m');
    expect(spread.mean).toBeCloseTo(0.3, 12);
    expect(spread.sd).toBeCloseTo(Math.sqrt((0.01 + 0.25 + 0.36 + 0.04) / 3), 12);
    expect(spread.mean_error).toBeCloseTo((spread.sd as number) / 2, 12);
    expect(spread.paste).toBe('{ mean: 0.3 deg/m, sd: 0.469 deg/m }');
    expect(spread.note).toContain('first hint');
  });
  test('one board has no spread, none is refused', () => {
    expect(spreadFromReadings([0.4], 'deg/m')).toMatchObject({ count: 1, mean: 0.4, sd: null, mean_error: null, paste: null });
    expect(() => spreadFromReadings([], 'deg/m')).toThrow(RangeError);
    expect(() => spreadFromReadings([1, Number.NaN], 'deg/m')).toThrow(RangeError);
  });
  test('the note grows calmer with more boards', () => {
    const twenty = Array.from({ length: 21 }, (_, i) => Math.sin(i));
    expect(spreadFromReadings(twenty, '/m').note).toContain('about 16 %');
    expect(spreadFromReadings(twenty.slice(0, 7), '/m').note).toContain('twenty boards would make it firm');
  });
});

test('digits writes plain numbers', () => {
  expect([digits(0), digits(1234.5, 3), digits(0.004567), digits(-0.25, 2), digits(100), digits(99.96, 3)]).toEqual(['0', '1235', '0.00457', '-0.25', '100', '100']);
});
