import { describe, expect, test } from 'vitest';
import { apart, bounds, doubt } from '../../../src/measure/plausible.js';
import { measureSag } from '../../../src/measure/measure-sag.js';
import { measureTap } from '../../../src/measure/measure-tap.js';
import { measureTwist } from '../../../src/measure/measure-twist.js';
import { spreadFromReadings } from '../../../src/measure/spread.js';

describe('readings that no board and no cloth give', () => {
  test('are refused, with what to check', () => {
    const board = { stock: 'strip-19x38', span_mm: 1500, width_mm: 38, height_mm: 19, weight_g: 5000 };
    expect(() => measureTwist({ rise_mm: 140, width_mm: 100, length_mm: 1300, hand: 'right' })).toThrow(/41\.9 deg\/m[\s\S]*check the rise/);
    expect(() => measureSag({ ...board, sag_mm: 0.5 })).toThrow(/318439 MPa/);
    expect(() => measureTap({ span: { width_mm: 860, height_mm: 610 }, mass_g_per_m2: 480, note_Hz: 440 })).toThrow(/lowest note/);
  });

  test('that are rare are told, ordinary ones are not', () => {
    expect(measureTwist({ rise_mm: 20, width_mm: 100, length_mm: 1300, hand: 'left' }).notes.join(' ')).toContain('rarely true');
    expect(doubt('twist', -1.7)).toBeNull();
    expect(doubt('stiffness', 23_000)).toContain('between 4000 MPa and 20000 MPa');
    expect(doubt('pull', 240)).toBeNull();
  });

  test('never reach beyond what plan and shelf take: pull doubled as peak, twist, stiffness, curvature', () => {
    expect(2 * bounds.pull.possible[1]).toBeLessThanOrEqual(5000);
    expect(bounds.twist.possible[1]).toBeLessThan((0.7 * 180) / Math.PI);
    expect(bounds.stiffness.possible[1]).toBeLessThanOrEqual(50_000);
    expect(bounds.bow.possible[1]).toBeLessThanOrEqual(0.2);
  });
});

describe('a series', () => {
  test('of 17 and 170 mm is refused, of 17 and 45 told, of 17 and 24 let be', () => {
    expect(() => apart('--sag', [17, 170], ['17 mm', '170 mm'])).toThrow(/17 mm and 170 mm stand in one series, one 10 times the other/);
    expect(apart('--sag', [45, 17], ['45 mm', '17 mm'])).toMatch(/^17 mm and 45 mm/);
    expect(apart('--sag', [17, 24], ['17 mm', '24 mm'])).toBeNull();
    expect(apart('--rise', [-1, 30], ['-1 mm', '30 mm'])).toBeNull();
  });
  test('all alike gives a mean and no spread', () => {
    expect(spreadFromReadings([0.4, 0.4, 0.4], 'deg/m')).toMatchObject({ count: 3, mean: 0.4, sd: null, paste: null });
  });
});
