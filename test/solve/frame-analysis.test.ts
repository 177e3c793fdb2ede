import { describe, expect, it } from 'vitest';
import { evenGive } from '../../src/base/joint-give.js';
import { findStability, solveInfluence, solveStatics, usualMesh } from '../../src/solve/analyse-frame.js';
import { influenceSteps } from '../../src/solve/mesh-influence.js';
import type { Influence, WarpKind } from '../../src/model/frame-results.js';
import { barNames } from '../../src/base/names.js';
import type { FrameShape } from '../../src/model/frame-shape.js';
import { frameOf, mirrored } from '../frame3d/frame-shapes.js';
import type { FrameWords } from '../frame3d/frame-shapes.js';

const pull = { x: 0.25, y: 0.17 };

/** Nothing about it is symmetric: bars, joints, crossbar places, braces on three corners. */
const uneven: FrameShape = (() => {
  const words: FrameWords = {
    width: 1300,
    height: 900,
    w: 38,
    d: 32,
    give: 4,
    crossbarGive: 6,
    crossbars: [{ runs: 'upright', at: 0.37, w: 30, d: 22 }, { runs: 'level', at: 0.61, w: 25, d: 19 }],
    brace: { leg: 210, w: 38, d: 19 },
  };
  const shape = frameOf(words);
  return {
    ...shape,
    bars: { ...shape.bars, top: frameOf({ ...words, w: 45, d: 25 }).bars.top, left: frameOf({ ...words, w: 30, d: 40 }).bars.left },
    corner_give: { 'top-left': evenGive(2), 'top-right': evenGive(0), 'bottom-left': { plane: 9, out: 3, twist: 14 }, 'bottom-right': evenGive(4) },
    braces: shape.braces.slice(0, 3),
  };
})();

describe('statics of a frame', () => {
  it('the forces in a cut through the middle balance the pull', () => {
    const shape = frameOf({ width: 1100, height: 700, w: 38, d: 30 });
    const { bars } = solveStatics(shape, pull);
    expect(bars.top.axial_N).toBeCloseTo((-pull.x * shape.span_y_mm) / 2, 6);
    expect(bars.left.axial_N).toBeCloseTo((-pull.y * shape.span_x_mm) / 2, 6);
  });

  it('crossbars take over what they are pressed with', () => {
    const { bars, crossbars } = solveStatics(uneven, pull);
    const [upright, level] = crossbars;
    expect(upright).toMatchObject({ name: 'crossbar-1', span_mm: expect.closeTo(862, 9) });
    expect(upright!.axial_N).toBeLessThan(0);
    expect(level!.axial_N).toBeLessThan(0);
    expect(bars.bottom.inward_bow_mm).toBeGreaterThan(0);
  });

  it('lines for pictures start and end on the chord and contain the largest bow', () => {
    const { bars } = solveStatics(uneven, pull);
    for (const bar of Object.values(bars)) {
      expect(bar.bow_line.length).toBeGreaterThanOrEqual(17);
      expect(bar.bow_line[0]).toEqual({ s: 0, inward_mm: expect.closeTo(0, 12) });
      expect(bar.bow_line.at(-1)).toEqual({ s: 1, inward_mm: expect.closeTo(0, 12) });
      const largest = Math.max(...bar.bow_line.map((p) => Math.abs(p.inward_mm)));
      expect(Math.abs(bar.inward_bow_mm)).toBeGreaterThanOrEqual(largest);
      expect(Math.abs(bar.inward_bow_mm)).toBeLessThan(1.02 * largest);
    }
  });

  it('is linear in the pull and in point forces', () => {
    const hooks = [{ bar: 'left', at: 0.8, Fx: 12, Fy: 3, Fz: 0 }, { bar: 'right', at: 0.8, Fx: -12, Fy: 3, Fz: -1 }] as const;
    const half = hooks.map((h) => ({ ...h, Fx: h.Fx / 2, Fy: h.Fy / 2, Fz: h.Fz / 2 }));
    const [one, two] = [solveStatics(uneven, pull, half), solveStatics(uneven, { x: 2 * pull.x, y: 2 * pull.y }, hooks)];
    for (const bar of barNames) {
      expect(two.bars[bar].axial_N / one.bars[bar].axial_N).toBeCloseTo(2, 8);
      expect(two.bars[bar].dish_mm / one.bars[bar].dish_mm).toBeCloseTo(2, 8);
    }
    expect(two.racking_mm / one.racking_mm).toBeCloseTo(2, 6);
  });

  it('hooks that pull the side bars inwards bow them inwards, and that much', () => {
    const shape = frameOf({ width: 700, height: 1000, w: 38, d: 30 });
    const force = (Fx: number) => [{ bar: 'left', at: 0.5, Fx, Fy: 0, Fz: 0 }, { bar: 'right', at: 0.5, Fx: -Fx, Fy: 0, Fz: 0 }] as const;
    const { bars } = solveStatics(shape, { x: 0, y: 0 }, force(30), { shear: false });
    const [L, a, EI] = [shape.span_y_mm, shape.span_x_mm, shape.bars.left.E_MPa * shape.bars.left.I_plane_mm4];
    const corner = (30 * L * L) / 8 / (L + a);
    expect(bars.left.inward_bow_mm / ((30 * L ** 3) / (48 * EI) - (corner * L * L) / (8 * EI))).toBeCloseTo(1, 4);
    expect(bars.right.inward_bow_mm / bars.left.inward_bow_mm).toBeCloseTo(1, 6);
    expect(bars.top.inward_bow_mm).toBeLessThan(0);
  });

  it('tells the longer diagonal: one braced corner less and the frame leans', () => {
    expect(solveStatics(frameOf({ width: 900, height: 700, w: 38, d: 19 }), pull).racking_mm).toBeCloseTo(0, 9);
    const one = solveStatics(uneven, pull).racking_mm;
    const other = solveStatics(mirrored(uneven), pull).racking_mm;
    expect(Math.abs(one)).toBeGreaterThan(1e-5);
    expect(other / -one).toBeCloseTo(1, 6);
  });
});

describe('stability of a frame', () => {
  it('there is none to lose without pull', () => {
    expect(findStability(uneven, { x: 0, y: 0 })).toEqual({
      load_factor: null,
      second_factor: null,
      mode: null,
      mode_words: null,
      second_mode_words: null,
      mode_shape: [],
      propeller: null,
    });
  });

  it('pull in one direction only presses the bars along it, and has its own factor', () => {
    const [x, y, both] = [{ x: 0.3, y: 0 }, { x: 0, y: 0.3 }, { x: 0.3, y: 0.3 }].map((p) => findStability(uneven, p).load_factor!);
    expect(x).toBeGreaterThan(both!);
    expect(y).toBeGreaterThan(both!);
    expect(Number.isFinite(x! + y!)).toBe(true);
  });

  it('the shape of a propeller: the free corner comes forward by 1, everything else less', () => {
    const { mode_shape, mode } = findStability(frameOf({ width: 1100, height: 700, w: 38, d: 30 }), pull);
    expect(mode).toBe('propeller');
    const points = mode_shape.flatMap((line) => line.points);
    expect(Math.max(...points.map((p) => Math.abs(p.dz)))).toBeCloseTo(1, 9);
    const corner = mode_shape.find((l) => l.member === 'top')!.points.at(-1)!;
    expect(corner).toMatchObject({ dx: expect.closeTo(0, 9), dy: expect.closeTo(0, 9), dz: expect.closeTo(1, 9) });
    expect(mode_shape.map((l) => l.member)).toEqual(expect.arrayContaining([...barNames]));
  });

  it('a slender crossbar gives way before the frame does, and is named', () => {
    const words: FrameWords = { width: 1400, height: 900, w: 45, d: 45, crossbars: [{ runs: 'level', at: 0.45, w: 30, d: 8 }, { runs: 'upright', at: 0.5, w: 38, d: 38 }] };
    expect(findStability(frameOf(words), pull)).toMatchObject({ mode: 'sideways', mode_words: 'crossbar 1 bows out of the plane' });
    const thin: FrameWords = { width: 1000, height: 1100, w: 40, d: 60, crossbars: [{ runs: 'level', at: 0.45, w: 6, d: 60 }] };
    expect(findStability(frameOf(thin), pull)).toMatchObject({ mode: 'sideways', mode_words: 'crossbar 1 bows in the plane' });
    const edge: FrameWords = { width: 900, height: 900, w: 19, d: 38 };
    expect(findStability(frameOf(edge), pull).second_mode_words).toBe('bottom bar bows in the plane');
  });
});

const named = (list: readonly Influence[], member: string, kind: WarpKind): Influence => list.find((i) => i.member === member && i.kind === kind)!;

describe('influence numbers', () => {
  it('bars that hang together by almost nothing bow as they would alone', () => {
    const loose = frameOf({ width: 1038, height: 838, w: 38, d: 25, give: 1000 });
    const list = solveInfluence(loose, { x: 0, y: 0 })!;
    const middle = influenceSteps / 2;
    for (const bar of barNames) {
      const L = bar === 'top' || bar === 'bottom' ? 1000 : 800;
      expect(named(list, bar, 'out').bar_bow[bar][middle]! / ((L * L) / 8)).toBeCloseTo(1, 1);
      const inward = bar === 'bottom' || bar === 'left' ? 1 : -1;
      expect((inward * named(list, bar, 'plane').bar_crook[bar][middle]!) / ((L * L) / 8)).toBeCloseTo(1, 1);
    }
  });

  it('twist of a bar alone lifts the corner the right-handed way', () => {
    const list = solveInfluence(frameOf({ width: 1100, height: 700, w: 38, d: 38 }), { x: 0.2, y: 0.2 })!;
    expect(named(list, 'bottom', 'twist').corner_lift).toBeGreaterThan(0);
    expect(named(list, 'top', 'twist').corner_lift).toBeGreaterThan(0);
    expect(named(list, 'left', 'twist').corner_lift).toBeLessThan(0);
    expect(named(list, 'right', 'twist').corner_lift).toBeLessThan(0);
  });

  it('a natural curvature that fits the frame without force is kept by it: all bars bowing along one sphere', () => {
    // Bars of a square that all want the same bow out of the plane: corners turn with them and nothing resists but twist.
    const shape = frameOf({ width: 838, height: 838, w: 38, d: 30 });
    const list = solveInfluence(shape, { x: 0, y: 0 })!;
    const sum = barNames.map((bar) => named(list, bar, 'out').bar_bow.left[influenceSteps / 2]!).reduce((p, q) => p + q);
    expect(sum / (800 * 800 / 8)).toBeCloseTo(1, 8);
  });

  it('pull magnifies a twist by about 1/(1 − pull/critical pull)', () => {
    const shape = frameOf({ width: 800, height: 800, w: 38, d: 19 });
    const critical = findStability(shape, { x: 1, y: 1 }).load_factor!;
    const lift = (T: number): number => named(solveInfluence(shape, { x: T, y: T })!, 'left', 'twist').corner_lift;
    for (const share of [0.2, 0.5, 0.8]) {
      expect((lift(share * critical) / lift(0)) * (1 - share)).toBeCloseTo(1, 1);
    }
  });

  it('an unstable frame has none', () => {
    const shape = frameOf({ width: 1600, height: 1200, w: 50, d: 20 });
    const { load_factor } = findStability(shape, { x: 0.2, y: 0.2 });
    const at = (share: number): readonly Influence[] | null => solveInfluence(shape, { x: 0.2 * load_factor! * share, y: 0.2 * load_factor! * share });
    expect(at(0.999)).not.toBeNull();
    expect(at(1.001)).toBeNull();
    expect(at(50)).toBeNull();
  });

  it('covers every side bar and crossbar in the three kinds, at equal stations', () => {
    const list = solveInfluence(uneven, pull)!;
    expect(list.map((i) => `${i.member} ${i.kind}`)).toEqual(
      expect.arrayContaining(['top', 'bottom', 'left', 'right', 'crossbar-1', 'crossbar-2'].flatMap((m) => ['twist', 'out', 'plane'].map((k) => `${m} ${k}`))),
    );
    expect(list).toHaveLength(18);
    for (const i of list) for (const bar of barNames) expect([i.bar_bow[bar].length, i.bar_crook[bar].length]).toEqual([17, 17]);
    for (const i of list.filter((l) => l.kind === 'plane')) expect(i.corner_lift).toBe(0);
  });
});

describe('every reported number is converged', () => {
  /** Numbers reported of a frame, with the size each kind is compared with. */
  const numbers = (shape: FrameShape, mesh: number): { name: string; value: number; scale: number }[] => {
    const statics = solveStatics(shape, pull, [], { mesh });
    const stability = findStability(shape, pull, { mesh });
    const out: { name: string; value: number; scale: number }[] = [];
    const add = (name: string, values: readonly number[]): void => {
      const scale = Math.max(...values.map(Math.abs));
      values.forEach((value, i) => out.push({ name: `${name} ${i}`, value, scale }));
    };
    const bars = Object.values(statics.bars);
    for (const key of ['inward_bow_mm', 'dish_mm', 'roll_mrad', 'axial_N', 'moment_Nmm'] as const) add(key, bars.map((b) => b[key]));
    for (const key of ['moment_Nmm', 'out_moment_Nmm', 'torque_Nmm', 'axial_N', 'shear_N'] as const) add(`corner ${key}`, Object.values(statics.corners).map((c) => c[key]));
    for (const key of ['axial_N', 'bow_mm'] as const) add(`crossbar ${key}`, statics.crossbars.map((c) => c[key]));
    add('dish', [statics.dish_mm]);
    add('factor', [stability.load_factor!]);
    add('second', [stability.second_factor!]);
    const influence = solveInfluence(shape, pull, { mesh })!;
    add('lift', influence.map((i) => i.corner_lift));
    for (const kind of ['twist', 'out', 'plane'] as const) {
      const list = influence.filter((i) => i.kind === kind);
      for (const bar of barNames) {
        add(`bow of ${bar} ${kind}`, list.flatMap((i) => Array.from(i.bar_bow[bar])));
        add(`crook of ${bar} ${kind}`, list.flatMap((i) => Array.from(i.bar_crook[bar])));
      }
    }
    return out;
  };

  const shapes: [string, FrameShape][] = [
    ['uneven', uneven],
    ['plain', frameOf({ width: 1100, height: 700, w: 38, d: 38 })],
    ['two crossbars, braces', frameOf({ width: 1800, height: 1500, w: 38, d: 89, give: 1, crossbarGive: 6, crossbars: [{ runs: 'upright', at: 0.5, w: 38, d: 64 }, { runs: 'level', at: 0.4, w: 38, d: 64 }], brace: { leg: 400, w: 38, d: 38 } })],
    ['long and low', frameOf({ width: 2400, height: 500, w: 64, d: 38, give: 6, crossbarGive: 20, crossbars: [{ runs: 'upright', at: 1 / 3, w: 38, d: 38 }, { runs: 'upright', at: 2 / 3, w: 38, d: 38 }] })],
  ];
  it.each(shapes)('%s: twice the mesh changes nothing by 1 %%', (_, shape) => {
    const [usual, doubled] = [numbers(shape, usualMesh), numbers(shape, 2 * usualMesh)];
    expect(usual.length).toBe(doubled.length);
    usual.forEach(({ name, value }, i) => {
      const { value: finer, scale } = doubled[i]!;
      if (scale > 0) expect(Math.abs(value - finer), `${name}: ${value}, ${finer}`).toBeLessThan(0.01 * scale);
    });
  });

  it('the second factor converges with the square of the step, the first is there already', () => {
    const shape = frameOf({ width: 1100, height: 700, w: 38, d: 30 });
    const at = (mesh: number): number => findStability(shape, pull, { mesh }).second_factor!;
    const [a, b, c] = [at(8), at(16), at(32)];
    expect(Math.log2((a - b) / (b - c))).toBeGreaterThan(1.8);
    const first = (mesh: number): number => findStability(shape, pull, { mesh }).load_factor!;
    expect(Math.abs(first(16) / first(48) - 1)).toBeLessThan(1e-4);
  });
});
