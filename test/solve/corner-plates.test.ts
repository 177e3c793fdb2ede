import { describe, expect, test } from 'vitest';
import { cornerNames } from '../../src/base/names.js';
import { evenGive } from '../../src/base/joint-give.js';
import { findStability, solveStatics } from '../../src/solve/analyse-frame.js';
import { frameOf } from '../frame3d/frame-shapes.js';

const words = { width: 940, height: 620, w: 38, d: 19 } as const;
const pull = { x: 0.31, y: 0.22 };
const { E_MPa: E, I_plane_mm4: I } = frameOf(words).bars.top;
/** In-plane stiffness of the two joints of a corner in series, N·mm per radian, for a give in widths. */
const joint = (give: number): number => (E * I) / (give * words.w) / 2;

describe('a plate beside the joint of a corner', () => {
  test('holds in the plane as a stiffer joint of the same sum would, and nowhere else', () => {
    const plate = 7e5;
    const both = frameOf({ ...words, give: { plane: 12, out: 4, twist: 9 }, plate });
    const alike = frameOf({ ...words, give: { plane: (E * I) / words.w / 2 / (joint(12) + plate), out: 4, twist: 9 } });
    const [one, two] = [solveStatics(both, pull), solveStatics(alike, pull)];
    for (const corner of cornerNames) {
      const [split, whole] = [one.corners[corner], two.corners[corner]];
      expect(split.moment_Nmm + split.plate_moment_Nmm).toBeCloseTo(whole.moment_Nmm, 4);
      expect(split.plate_moment_Nmm / split.moment_Nmm).toBeCloseTo(plate / joint(12), 6);
      expect(split.out_moment_Nmm).toBeCloseTo(whole.out_moment_Nmm, 4);
      expect(split.torque_Nmm).toBeCloseTo(whole.torque_Nmm, 4);
    }
    expect(one.bars.top.inward_bow_mm).toBeCloseTo(two.bars.top.inward_bow_mm, 8);
  });

  test('never adds to what the joint itself carries, however stiff, at corners of their own give', () => {
    const bare = frameOf({ ...words, crossbars: [{ runs: 'upright', at: 0.37, w: 30, d: 22 }], give: 4 });
    const own = { ...bare, corner_give: { ...bare.corner_give, 'top-left': { plane: 40, out: 4, twist: 8 }, 'bottom-right': evenGive(2) } };
    let before = solveStatics(own, pull).corners;
    for (const plate of [1e4, 1e5, 1e6, 1e7, 1e9]) {
      const after = solveStatics({ ...own, corner_plate_Nmm_per_rad: { 'top-left': plate, 'top-right': plate, 'bottom-left': plate, 'bottom-right': plate } }, pull).corners;
      for (const corner of cornerNames) expect(after[corner].moment_Nmm, `${corner} at ${plate}`).toBeLessThanOrEqual(before[corner].moment_Nmm * (1 + 1e-9));
      before = after;
    }
  });

  test('has nothing to do where the joint is rigid in the plane', () => {
    const rigid = frameOf({ ...words, plate: 5e6 });
    expect(solveStatics(rigid, pull)).toEqual(solveStatics(frameOf(words), pull));
  });

  test('raises the reserve, and the more the stiffer', () => {
    const factor = (plate: number): number => findStability(frameOf({ ...words, give: 12, plate }), pull).load_factor!;
    expect(factor(1e6)).toBeGreaterThan(factor(1e5) * 1.01);
    expect(factor(1e5)).toBeGreaterThan(factor(0));
  });
});

describe('a joint gives in each way by itself', () => {
  const factor = (give: { plane: number; out: number; twist: number }): number => findStability(frameOf({ ...words, give }), pull).load_factor!;
  test('softer in any one way never holds better', () => {
    const at = factor({ plane: 8, out: 8, twist: 8 });
    for (const softer of [{ plane: 80, out: 8, twist: 8 }, { plane: 8, out: 80, twist: 8 }, { plane: 8, out: 8, twist: 80 }]) expect(factor(softer)).toBeLessThan(at);
  });
  test('in the plane alone it changes the inward bow, out of it alone nothing of it', () => {
    const bow = (give: { plane: number; out: number; twist: number }): number => solveStatics(frameOf({ ...words, give }), pull).bars.top.inward_bow_mm;
    const at = bow({ plane: 8, out: 8, twist: 8 });
    expect(bow({ plane: 40, out: 8, twist: 8 })).toBeGreaterThan(at * 1.1);
    expect(bow({ plane: 8, out: 40, twist: 40 })).toBeCloseTo(at, 9);
  });
});
