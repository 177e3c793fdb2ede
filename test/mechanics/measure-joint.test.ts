import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { evenGive } from '../../src/base/joint-give.js';
import { jointMoves_mm, measureJoint } from '../../src/measure/measure-joint.js';
import { solidSection } from '../../src/model/section.js';

const bar = solidSection(38, 19, 9000, 560);
const load = { way: 'plane', weight_g: 3000, arm_mm: 150 } as const;

describe('a corner with one leg clamped', () => {
  test('in the plane, by hand: cantilever, shear, and two ends that give 4 widths each', () => {
    const F = 3 * 9.80665;
    const I = (19 * 38 ** 3) / 12;
    const wood = (F * 150 ** 3) / (3 * 9000 * I) + (F * 150 * 6) / (5 * 560 * 38 * 19);
    const joint = (2 * 4 * 38 * F * 169 ** 2) / (9000 * I);
    expect(jointMoves_mm(load, bar, evenGive(4))).toBeCloseTo(wood + joint, 10);
  });

  test('at right angles the free end bends and the clamped one twists', () => {
    const F = 3 * 9.80665;
    const wood = (F * 150 ** 3) / (3 * 9000 * bar.I_out_mm4) + (F * 150 * 6) / (5 * 560 * 38 * 19);
    const joint = F * 169 ** 2 * 38 * (3 / (9000 * bar.I_out_mm4) + 5 / (560 * bar.J_mm4));
    expect(jointMoves_mm({ ...load, way: 'out' }, bar, { plane: 77, out: 3, twist: 5 })).toBeCloseTo(wood + joint, 10);
  });

  test('reading back gives what was put in, whatever the load', () => {
    fc.assert(fc.property(fc.constantFrom('plane' as const, 'out' as const), fc.integer({ min: 500, max: 9000 }), fc.integer({ min: 120, max: 600 }), fc.double({ min: 0.2, max: 60, noNaN: true }), (way, weight_g, arm_mm, give) => {
      const moves_mm = jointMoves_mm({ way, weight_g, arm_mm }, bar, evenGive(give));
      const { value, low, high } = measureJoint({ way, weight_g, arm_mm, moves_mm }, bar);
      expect(value).toBeCloseTo(give, 8);
      expect(low).toBeLessThan(give);
      expect(high).toBeGreaterThan(give);
    }));
  });

  test('more weight on the same arm tells the joint better', () => {
    const band = (weight_g: number): number => {
      const { low, high } = measureJoint({ way: 'plane', weight_g, arm_mm: 300, moves_mm: jointMoves_mm({ way: 'plane', weight_g, arm_mm: 300 }, bar, evenGive(4)) }, bar);
      return high - low;
    };
    expect(band(3000)).toBeLessThan(band(1000));
    expect(measureJoint({ way: 'plane', weight_g: 6000, arm_mm: 300, moves_mm: 3 }, bar).notes.join(' ')).toMatch(/may open/u);
    expect(measureJoint({ way: 'plane', weight_g: 3000, arm_mm: 300, moves_mm: 1.5 }, bar).notes.join(' ')).not.toMatch(/may open/u);
  });

  test('less than the wood bends is no give, and is said', () => {
    const { value, low, notes } = measureJoint({ ...load, moves_mm: 0.04 }, bar);
    expect([value, low]).toEqual([0, 0]);
    expect(notes[0]).toMatch(/less than the wood alone/u);
  });
});
