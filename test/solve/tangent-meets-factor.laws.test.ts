import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { EdgePull, FrameShape } from '../../src/model/frame-shape.js';
import { solidSection } from '../../src/model/section.js';
import { findStability, solveInfluence, solveLiftCompliance } from '../../src/solve/analyse-frame.js';
import { frameOf } from '../frame3d/frame-shapes.js';
import { runs } from '../effort.js';

/** Unequal bars, joints, crossbars and braces; meshes so coarse that what happens between the nodes counts. */
const frames: fc.Arbitrary<FrameShape> = fc
  .record({
    width: fc.integer({ min: 500, max: 1500 }), height: fc.integer({ min: 400, max: 1300 }), w: fc.constantFrom(19, 30, 45), d: fc.constantFrom(19, 32, 64), left: fc.constantFrom(25, 40),
    give: fc.constantFrom(0, 4, 30), at: fc.constantFrom(null, 0.5, 0.31), level: fc.boolean(), leg: fc.constantFrom(null, 150),
  })
  .map(({ width, height, w, d, left, give, at, level, leg }) => {
    const shape = frameOf({
      width, height, w, d, give, crossbarGive: 6, braceGive: { plane: 6, out: 9, twist: 3 },
      crossbars: at === null ? [] : [{ runs: 'upright', at, w: 25, d: 19 }, ...(level ? [{ runs: 'level' as const, at: 0.62, w: 20, d: 30 }] : [])],
      brace: leg === null ? undefined : { leg, w: 30, d: 19 },
    });
    return { ...shape, bars: { ...shape.bars, left: solidSection(left, d, 8000, 520) } };
  });
const pulls: fc.Arbitrary<EdgePull> = fc.record({ x: fc.double({ min: 0.05, max: 0.4, noNaN: true }), y: fc.double({ min: 0.05, max: 0.4, noNaN: true }) });
const times = ({ x, y }: EdgePull, by: number): EdgePull => ({ x: by * x, y: by * y });

describe('the frame under its pull stands just up to the factor found, on the very same mesh', () => {
  it('answers to warp a hair below it and no more a hair above, as two ways of working it out say', () => {
    fc.assert(
      fc.property(frames, pulls, fc.constantFrom(1, 2, 3), (shape, pull, mesh) => {
        const { load_factor } = findStability(shape, pull, { mesh, factors: 1 });
        const at = (share: number): EdgePull => times(pull, load_factor! * share);
        expect(solveInfluence(shape, at(1 - 1e-5), { mesh })).not.toBeNull();
        expect(solveInfluence(shape, at(1 + 1e-5), { mesh })).toBeNull();
        expect(solveLiftCompliance(shape, at(1 - 1e-5), { mesh })).not.toBeNull();
        expect(solveLiftCompliance(shape, at(1 + 1e-5), { mesh })).toBeNull();
      }),
      { numRuns: runs(48, 1 / 4), seed: 41 },
    );
  });

  it.each([{ x: 0.3, y: 0 }, { x: 0, y: 0.3 }, { x: 1, y: 0 }, { x: 0, y: 1 }])('also pulled one way only: $x along, $y up', (pull) => {
    const shape = frameOf({ width: 900, height: 640, w: 38, d: 19, give: 4 });
    const { load_factor } = findStability(shape, pull, { factors: 1 });
    expect(solveInfluence(shape, times(pull, load_factor! * (1 - 1e-5)))).not.toBeNull();
    expect(solveInfluence(shape, times(pull, load_factor! * (1 + 1e-5)))).toBeNull();
    const [at, beside] = [1, 1 + 1e-9].map((share) => solveLiftCompliance(shape, times(pull, share))!);
    expect(beside! / at!).toBeCloseTo(1, 6);
  });

  it('the corner gives way under a force on it as 1/(1 − share) near the factor, where that is a propeller', () => {
    const shape = frameOf({ width: 900, height: 640, w: 38, d: 19, give: 4 });
    const pull = { x: 0.21, y: 0.34 };
    const { load_factor, mode } = findStability(shape, pull);
    expect(mode).toBe('propeller');
    const soft = (share: number): number => solveLiftCompliance(shape, times(pull, load_factor! * share))!;
    expect((soft(0.999) * 0.001) / (soft(0.998) * 0.002)).toBeCloseTo(1, 2);
    expect(soft(0.6)).toBeGreaterThan(soft(0.3));
  });

  it.each([{ width: 900, height: 640, w: 38, d: 30 }, { width: 900, height: 640, w: 38, d: 19, give: 4 }, { width: 700, height: 620, w: 30, d: 30 }])('how far it turns past it errs by less than a hundredth with one element a bar, as the twist between the nodes is in it: $width × $height × $d', (words) => {
    const beta = (mesh: number): number => findStability(frameOf(words), { x: 0.2, y: 0.3 }, { mesh }).propeller!.beta_per_mm2;
    expect(Math.abs(beta(1) / beta(12) - 1)).toBeLessThan(0.01);
    const factor = (mesh: number): number => findStability(frameOf(words), { x: 0.2, y: 0.3 }, { mesh, factors: 1 }).load_factor!;
    expect(Math.abs(factor(1) / factor(12) - 1)).toBeLessThan(0.006);
  });
});
