/**
 * Critical pull of stretched frames, N/m of cloth edge; sizes mm, MPa; natural twist rad/m.
 *
 * test/data/stability.json: linear buckling of beam frames with a membrane, made with an independent program (24 elements a
 * bar). Limits: load factor 0.3 %, second factor 1 % (our usual mesh is coarser than theirs), answers to twist 0.5 %,
 * inward bow 2 % (the file looked at nodes only).
 * Closed form for four equal bars stiff in bending, rigid corners, equal pull: T_cr = 1.5 G J (a + b)/(a² b²), 2a and 2b the
 * centre-line sizes, an upper bound for real bars.
 * Exact rods: geometrically exact (Cosserat) rods under a constant-tension membrane; 4 %.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { findStability, solveInfluence, solveStatics } from '../../src/solve/analyse-frame.js';
import { barNames } from '../../src/base/names.js';
import { frameOf } from '../frame3d/frame-shapes.js';
import { shapeOf } from '../tools/cases-shapes.js';
import { expectShare } from './recorded.js';
import { runStabilityCases, type StabilityCase } from '../tools/cases-stability.js';

const cases = JSON.parse(readFileSync(new URL('../data/stability.json', import.meta.url), 'utf8')) as StabilityCase[];

const off = (found: number | null, expected: number): number => Math.abs((found ?? NaN) / expected - 1);

describe('stability of stretched frames', () => {
  it('has all 14 of them, two stiff in bending and two with soft joints', () => {
    expect(cases.length).toBe(14);
    expect(cases.filter((c) => c.stiff).length).toBe(2);
    expect(cases.filter((c) => c.corner_give_widths).length).toBe(2);
    expect(runStabilityCases(cases)).toMatchObject({ within: 14, total: 14 });
  });

  it.each(cases.map((c) => [c.id, c] as const))('%s', (_, c) => {
    const shape = shapeOf(c);
    const pull = { x: c.pull_x_N_per_m / 1000, y: c.pull_y_N_per_m / 1000 };
    const options = { shear: c.stiff === undefined };
    const found = findStability(shape, pull, options);
    expectShare(found.load_factor, c.expect.load_factor, 0.003, 'independent program');
    expectShare(found.second_factor, c.expect.second_load_factor, 0.01, 'independent program');
    expect(found.mode).toBe(c.expect.mode);
    const influence = solveInfluence(shape, pull, options);
    for (const bar of barNames) {
      const twist = influence?.find((i) => i.member === bar && i.kind === 'twist');
      expectShare((twist?.corner_lift ?? NaN) / 1000, c.expect.lift_mm_per_rad_per_m![bar], 0.005, 'independent program');
    }
    const { bars } = solveStatics(shape, pull, [], options);
    for (const bar of barNames) {
      const rounding = 0.5e-5;
      const expected = c.expect.inward_bow_mm![bar];
      expect(Math.abs(bars[bar].inward_bow_mm - expected), `bow of ${bar}`).toBeLessThan(0.02 * Math.abs(expected) + rounding);
    }
  });

  it.each(cases.filter((c) => c.pull_x_N_per_m === c.pull_y_N_per_m && !c.crossbars && !c.braces).map((c) => [c.id, c] as const))(
    '%s stays at or below the closed form',
    (_, c) => {
      const shape = shapeOf(c);
      const [a, b] = [shape.span_x_mm / 2, shape.span_y_mm / 2];
      const { G_MPa: G, J_mm4: J } = shape.bars.top;
      const closed = (1.5 * G * J * (a + b)) / (a * a * b * b);
      expect(off(1000 * closed, c.expect.closed_form_equal_pull_N_per_m!)).toBeLessThan(1e-4);
      const factor = findStability(shape, { x: 1, y: 1 }, { shear: c.stiff === undefined }).load_factor!;
      expect(factor).toBeLessThanOrEqual(closed * (1 + 1e-6));
      if (c.stiff) expect(off(factor, closed)).toBeLessThan(0.005);
    },
  );

  it('tends to the closed form as the bars get stiffer in bending, first order in their softness', () => {
    const gap = (stiff: number): number => {
      const shape = frameOf({ width: 1238, height: 838, w: 38, d: 38, stiff });
      const [a, b] = [shape.span_x_mm / 2, shape.span_y_mm / 2];
      const closed = (1.5 * shape.bars.top.G_MPa * shape.bars.top.J_mm4 * (a + b)) / (a * a * b * b);
      return 1 - findStability(shape, { x: 1, y: 1 }, { shear: false }).load_factor! / closed;
    };
    expect(gap(100)).toBeGreaterThan(0);
    expect(gap(100) / gap(1000)).toBeCloseTo(10, 0);
  });

  it.each([
    ['800 × 800, bars 38 wide × 19 deep', { width: 800, height: 800, w: 38, d: 19 }, 1621],
    ['1100 × 700, bars 38 × 38', { width: 1100, height: 700, w: 38, d: 38 }, 6070],
    ['1000 × 1000, bars 38 × 19, four braces 38 × 19', { width: 1000, height: 1000, w: 38, d: 19, brace: { leg: 250, w: 38, d: 19 } }, 2224],
    [
      '1600 × 1200, bars 50 × 20, one upright',
      { width: 1600, height: 1200, w: 50, d: 20, E: 10000, G: 625, crossbars: [{ runs: 'upright', at: 0.5, w: 50, d: 20 }] },
      1065,
    ],
  ] as const)('exact rods: %s', (_, words, pull_N_per_m) => {
    const found = findStability(frameOf(words), { x: 0.2, y: 0.2 });
    expect(found.mode).toBe('propeller');
    expectShare(200 * found.load_factor!, pull_N_per_m, 0.04, 'independent program');
  });
});
