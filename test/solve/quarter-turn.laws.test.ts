import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { BarName, CornerName } from '../../src/base/names.js';
import type { FrameShape } from '../../src/model/frame-shape.js';
import { solidSection } from '../../src/model/section.js';
import { findStability, solveInfluence } from '../../src/solve/analyse-frame.js';
import { frameOf } from '../frame3d/frame-shapes.js';
import { runs } from '../effort.js';

const otherBar: Readonly<Record<BarName, BarName>> = { bottom: 'left', left: 'bottom', top: 'right', right: 'top' };
const otherCorner: Readonly<Record<CornerName, CornerName>> = { 'top-left': 'bottom-right', 'bottom-right': 'top-left', 'top-right': 'top-right', 'bottom-left': 'bottom-left' };
const renamed = <K extends string, T>(record: Readonly<Record<K, T>>, names: Readonly<Record<K, K>>): Record<K, T> =>
  Object.fromEntries(Object.keys(record).map((name) => [name, record[names[name as K]]])) as Record<K, T>;

/** The frame with width and height swapped: seen from behind and turned a quarter. */
function turned(shape: FrameShape): FrameShape {
  return {
    span_x_mm: shape.span_y_mm,
    span_y_mm: shape.span_x_mm,
    bars: renamed(shape.bars, otherBar),
    eccentricity_mm: renamed(shape.eccentricity_mm, otherBar),
    corner_give: renamed(shape.corner_give, otherCorner),
    corner_plate_Nmm_per_rad: renamed(shape.corner_plate_Nmm_per_rad, otherCorner),
    crossbars: shape.crossbars.map((c) => ({ ...c, runs: c.runs === 'upright' ? 'level' : 'upright' })),
    braces: shape.braces.map((b) => ({ ...b, corner: otherCorner[b.corner] })),
  };
}

const size = (min: number, max: number) => fc.integer({ min, max });
const give = fc.record({ plane: fc.constantFrom(0, 4, 40, 100), out: fc.constantFrom(0, 4, 8), twist: fc.constantFrom(4, 20) });
/** Unequal sides and bars, joints that give differently in each way, a plate, a crossbar and braces or none. */
const frames: fc.Arbitrary<FrameShape> = fc
  .record({
    width: size(500, 1600), height: size(350, 1200), w: fc.constantFrom(19, 38, 64), d: fc.constantFrom(19, 38, 89), left: fc.constantFrom(19, 45), give, own: give,
    plate: fc.constantFrom(0, 3e5, 1e7), at: fc.constantFrom(null, 0.5, 0.37), leg: fc.constantFrom(null, 120),
  })
  .map(({ width, height, w, d, left, give, own, plate, at, leg }) => {
    const shape = frameOf({
      width, height, w, d, give, crossbarGive: 6, braceGive: { plane: 6, out: 9, twist: 3 }, crossbars: at === null ? [] : [{ runs: 'upright', at, w: 25, d: 19 }],
      brace: leg === null ? undefined : { leg, w: 30, d: 19 },
    });
    return {
      ...shape,
      bars: { ...shape.bars, left: solidSection(left, d, 8000, 520) },
      corner_give: { ...shape.corner_give, 'top-left': own },
      corner_plate_Nmm_per_rad: { ...shape.corner_plate_Nmm_per_rad, 'bottom-right': plate, 'top-right': plate / 2 },
    };
  });
const pulls = fc.record({ x: fc.double({ min: 0.05, max: 0.4, noNaN: true }), y: fc.double({ min: 0.05, max: 0.4, noNaN: true }) });
const pair = (shape: FrameShape, pull: { x: number; y: number }) => [findStability(shape, pull), findStability(turned(shape), { x: pull.y, y: pull.x })] as const;
const close = (one: number | null, other: number | null): void => expect(Math.abs((other ?? 0) / (one ?? 1) - 1)).toBeLessThan(1e-6);

describe('a frame turned a quarter stands as before', () => {
  test('first and second factor and the answer to warp, over sizes, bars, joints, plates, crossbars, braces and unequal pulls', () => {
    fc.assert(
      fc.property(frames, pulls, (shape, pull) => {
        const [stands, lies] = pair(shape, pull);
        close(stands.load_factor, lies.load_factor);
        close(stands.second_factor, lies.second_factor);
        // Two ways to give way that lie within the rounding of each other may change places.
        if (stands.second_factor! > stands.load_factor! * 1.0001) expect(lies.mode).toBe(stands.mode);
        const part = 0.4 * stands.load_factor!;
        const one = solveInfluence(shape, { x: part * pull.x, y: part * pull.y })!;
        const other = solveInfluence(turned(shape), { x: part * pull.y, y: part * pull.x })!;
        const largest = Math.max(...one.map((i) => Math.abs(i.corner_lift)));
        for (const i of one) {
          const name = i.member in otherBar ? otherBar[i.member as BarName] : i.member;
          const same = other.find((o) => o.member === name && o.kind === i.kind)!;
          // Seen from behind a right-handed twist stays one, and the corner that came forward goes back.
          const sign = i.kind === 'twist' ? -1 : 1;
          expect(Math.abs(sign * same.corner_lift - i.corner_lift)).toBeLessThan(1e-6 * largest);
        }
      }),
      { numRuns: runs(40, 1 / 4) },
    );
  });

  test('loose joints and narrow bars on edge, where a pull of fixed direction would make it lean over', () => {
    const [stands, lies] = pair(frameOf({ width: 1100, height: 600, w: 19, d: 64, give: 100 }), { x: 0.28, y: 0.093 });
    expect(stands.mode).toBe('propeller');
    expect(lies.mode).toBe('propeller');
    close(stands.load_factor, lies.load_factor);
  });

  test('where a pull of fixed direction would lean it over and its cloth does not, it still answers to warp', () => {
    const stands = frameOf({ width: 600, height: 1100, w: 12, d: 90, give: 100 });
    const pull = { x: 0.1, y: 0.3 };
    expect(findStability(stands, pull).load_factor).toBeGreaterThan(1);
    expect(solveInfluence(stands, pull)).not.toBeNull();
    const harder = 1.001 * (findStability(stands, pull).load_factor ?? 0);
    expect(solveInfluence(stands, { x: harder * pull.x, y: harder * pull.y })).toBeNull();
  });
});
