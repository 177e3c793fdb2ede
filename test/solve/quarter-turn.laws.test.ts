import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { evenGive } from '../../src/base/joint-give.js';
import type { FrameShape } from '../../src/model/frame-shape.js';
import { solidSection } from '../../src/model/section.js';
import { everyCorner } from '../frame3d/frame-shapes.js';
import { findStability, solveInfluence } from '../../src/solve/analyse-frame.js';

const bar = (w: number, d: number) => solidSection(w, d, 9000, 560);

/** A frame of unequal sides; `lies` swaps width and height, pulls and the ways crossbars run. */
function frame(width: number, height: number, w: number, d: number, give: number, at: number | null, lies: boolean): FrameShape {
  const section = bar(w, d);
  return {
    span_x_mm: (lies ? height : width) - w,
    span_y_mm: (lies ? width : height) - w,
    bars: { top: section, bottom: section, left: section, right: section },
    eccentricity_mm: { top: d / 2, bottom: d / 2, left: d / 2, right: d / 2 },
    corner_give: everyCorner(evenGive(give)),
    corner_plate_Nmm_per_rad: everyCorner(0),
    crossbars: at === null ? [] : [{ name: 'crossbar-1', runs: lies ? 'level' : 'upright', at, section: bar(25, 19), give: evenGive(6) }],
    braces: [],
  };
}

const turned = ([width, height, w, d, give, at]: readonly [number, number, number, number, number, number | null], x: number, y: number) =>
  [false, true].map((lies) => findStability(frame(width, height, w, d, give, at, lies), lies ? { x: y, y: x } : { x, y }));

describe('a frame turned a quarter stands as before', () => {
  test('the pull that decides, over sizes, bars, joints, crossbars and unequal pulls', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 500, max: 1600, noNaN: true }), fc.double({ min: 350, max: 1200, noNaN: true }), fc.constantFrom(19, 38, 64), fc.constantFrom(19, 38, 89),
        fc.constantFrom(0, 4, 40, 100), fc.constantFrom(null, 0.5, 0.37), fc.double({ min: 0.05, max: 0.4, noNaN: true }), fc.double({ min: 0.05, max: 0.4, noNaN: true }),
        (width, height, w, d, give, at, x, y) => {
          const [stands, lies] = turned([width, height, w, d, give, at], x, y);
          expect(lies?.mode).toBe(stands?.mode);
          expect(Math.abs((lies?.load_factor ?? 0) / (stands?.load_factor ?? 0) - 1)).toBeLessThan(1e-4);
        },
      ),
      { numRuns: 40 },
    );
  });

  test('loose joints and narrow bars on edge, where a pull of fixed direction would make it lean over', () => {
    const [stands, lies] = turned([1100, 600, 19, 64, 100, null], 0.28, 0.093);
    expect(stands?.mode).toBe('propeller');
    expect(lies?.mode).toBe('propeller');
    expect(lies?.load_factor).toBeCloseTo(stands?.load_factor ?? 0, 6);
  });

  test('where a pull of fixed direction would lean it over and its cloth does not, it still answers to warp', () => {
    const stands = frame(600, 1100, 12, 90, 100, null, false);
    const pull = { x: 0.1, y: 0.3 };
    expect(findStability(stands, pull).load_factor).toBeGreaterThan(1);
    expect(solveInfluence(stands, pull)).not.toBeNull();
    const harder = 1.001 * (findStability(stands, pull).load_factor ?? 0);
    expect(solveInfluence(stands, { x: harder * pull.x, y: harder * pull.y })).toBeNull();
  });
});
