/**
 * What slips at the saw and in length do, held against the same frames laid out point by point. Rows `diagonal-shear-*` and `mitre-opening` of the
 * check values (computed; formula stated with them): mm, rad, degrees.
 */
import { describe, expect, test } from 'vitest';
import { cornerAngleOfLongBar_rad, diagonalsOfAngle_mm, diagonalsOfLongBar_mm, diagonalsOfPush_mm, gapOfLongBar_mm, gapOfSawAngle_mm, riseOfTilt_mm } from '../../src/what-if/slips-geometry.js';

type Point = readonly [number, number];
type Vector = readonly [number, number, number];
const apart = ([ax, ay]: Point, [bx, by]: Point): number => Math.hypot(ax - bx, ay - by);
const turned = ([x, y]: Point, angle: number, [cx, cy]: Point = [0, 0]): Point => [cx + (x - cx) * Math.cos(angle) - (y - cy) * Math.sin(angle), cy + (x - cx) * Math.sin(angle) + (y - cy) * Math.cos(angle)];
/** The meeting of two circles that lies higher. */
function meeting([ax, ay]: Point, ra: number, [bx, by]: Point, rb: number): Point {
  const d = Math.hypot(bx - ax, by - ay);
  const along = (d ** 2 + ra ** 2 - rb ** 2) / (2 * d);
  const up = Math.sqrt(ra ** 2 - along ** 2);
  const [ux, uy] = [(bx - ax) / d, (by - ay) / d];
  const [one, two]: Point[] = [[ax + along * ux - up * uy, ay + along * uy + up * ux], [ax + along * ux + up * uy, ay + along * uy - up * ux]];
  return one![1] > two![1] ? one! : two!;
}
const angleAt = (p: Point, a: Point, b: Point): number => Math.abs(Math.atan2((a[0] - p[0]) * (b[1] - p[1]) - (a[1] - p[1]) * (b[0] - p[0]), (a[0] - p[0]) * (b[0] - p[0]) + (a[1] - p[1]) * (b[1] - p[1])));
const rad = (deg: number): number => (deg * Math.PI) / 180;

describe('check values', () => {
  const rows = [[1, 1.6641, 0.09549], [2, 3.3282, 0.191], [3, 4.9923, 0.2865]] as const;
  test.each(rows)('diagonal-shear-%dmm: 900 x 600 mm pushed over', (pushed, difference, angle) => {
    expect(diagonalsOfPush_mm(900, 600, pushed)).toBeCloseTo(difference, 3);
    expect(Math.abs(diagonalsOfAngle_mm(900, 600, angle) / difference - 1)).toBeLessThan(1e-3);
  });

  test('mitre-opening: 0.02 rad on a bar 64 mm wide', () => {
    expect(Math.abs(gapOfSawAngle_mm(64, 0.02 / rad(1)) / 1.8102 - 1)).toBeLessThan(1e-5);
  });
});

describe('laid out point by point', () => {
  test('half a degree in a mitre: one piece turned about the point where the faces still touch', () => {
    const w = 38;
    const inner: Point = [w, w];
    expect(gapOfSawAngle_mm(w, 0.5)).toBeCloseTo(apart(inner, turned(inner, rad(0.5))), 4);
  });

  test('corners off square by an angle: the parallelogram with unshortened sides has the same difference', () => {
    const [a, b, off] = [900, 600, 0.5];
    const lean: Point = [b * Math.sin(rad(off)), b * Math.cos(rad(off))];
    const exact = apart([0, 0], [a + lean[0], lean[1]]) - apart([a, 0], lean);
    expect(Math.abs(diagonalsOfAngle_mm(a, b, off) / exact - 1)).toBeLessThan(2e-4);
  });

  test('one bar too long, diagonals made equal: an even trapezium from its four sides', () => {
    const [a, b, surplus] = [900, 600, 1];
    // Corners of equal diagonals: the top stands over the bottom by half the surplus at each end.
    const topLeft: Point = [-surplus / 2, Math.sqrt(b ** 2 - (surplus / 2) ** 2)];
    const topRight: Point = [a + surplus / 2, topLeft[1]];
    expect(apart(topLeft, topRight)).toBeCloseTo(a + surplus, 12);
    expect(apart([0, 0], topLeft)).toBeCloseTo(b, 12);
    expect(apart([0, 0], topRight)).toBeCloseTo(apart([a, 0], topLeft), 12);
    const off = angleAt([0, 0], [a, 0], topLeft) - Math.PI / 2;
    expect(cornerAngleOfLongBar_rad(surplus, b)).toBeCloseTo(off, 12);
    expect(angleAt(topLeft, [0, 0], topRight) - Math.PI / 2).toBeCloseTo(-off, 12);
    expect(gapOfLongBar_mm(38, surplus, b)).toBeCloseTo(apart([38, 38], turned([38, 38], off)), 6);
  });

  test('one bar too long, one end square: from the meeting of two circles', () => {
    const [a, b, surplus] = [900, 600, 1];
    const topLeft: Point = [0, b];
    const topRight = meeting(topLeft, a + surplus, [a, 0], b);
    const exact = apart([0, 0], topRight) - apart([a, 0], topLeft);
    expect(Math.abs(diagonalsOfLongBar_mm(a, b, surplus) / exact - 1)).toBeLessThan(1e-2);
  });

  test.each([45, 90] as const)('a leaning cut at %d°: the bar turned about the line of the cut', (cut) => {
    const [length, lean] = [600, rad(0.5)];
    const u: Vector = [Math.cos(rad(cut)), Math.sin(rad(cut)), 0];
    const v: Vector = [length, 0, 0];
    const dot = u[0] * v[0];
    const rodrigues = [0, 1, 2].map((i) => {
      const cross = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]][i]!;
      return v[i]! * Math.cos(lean) + cross * Math.sin(lean) + u[i]! * dot * (1 - Math.cos(lean));
    });
    expect(Math.abs(rodrigues[2]!)).toBeCloseTo(riseOfTilt_mm(length, 0.5, cut), 9);
    expect(Math.hypot(...rodrigues)).toBeCloseTo(length, 9);
  });

  test('a blade that leans: cut with the same face up two neighbours meet flush, with one turned over their leans add up', () => {
    const lean = rad(0.5);
    // The saw swings about the upright, the lean swings with it: to the left of the blade at either setting.
    const blade = (swing: number): Vector => [Math.cos(lean) * Math.cos(swing), Math.cos(lean) * Math.sin(swing), Math.sin(lean)];
    const outwards = (n: Vector, side: 1 | -1): Vector => [side * n[0], side * n[1], side * n[2]];
    const right = outwards(blade(rad(45)), 1);
    const left = outwards(blade(rad(-45)), -1);
    // The next bar stands at right angles: its left end turns by a quarter to meet the right end of this one.
    const quarter = ([x, y, z]: Vector): Vector => [-y, x, z];
    const meets = quarter(left);
    const kink = (p: Vector, q: Vector): number => Math.acos(Math.min(1, Math.abs(p[0] * q[0] + p[1] * q[1] + p[2] * q[2])));
    expect(kink(right, [-meets[0], -meets[1], -meets[2]])).toBeLessThan(1e-7);
    expect(kink(right, [-meets[0], -meets[1], meets[2]])).toBeCloseTo(2 * lean, 6);
  });
});
