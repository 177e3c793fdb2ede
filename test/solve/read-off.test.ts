/** What is read off a solution: where forces are looked at, how a mode is named and drawn, when influence numbers are given. */
import { describe, expect, it } from 'vitest';
import { barNames, cornerNames } from '../../src/base/names.js';
import { prepare, solvePrepared, timoshenko } from '../../src/frame3d/index.js';
import type { EdgePull, FrameShape, PointForce } from '../../src/model/frame-shape.js';
import { solidSection } from '../../src/model/section.js';
import { findStability, finenessOf, solveInfluence, solveStatics, usualMesh } from '../../src/solve/analyse-frame.js';
import { barEnds, barsAt, meshFrame } from '../../src/solve/frame-mesh.js';
import { meshLines } from '../../src/solve/mesh-lines.js';
import { frameLoads } from '../../src/solve/mesh-statics.js';
import { solveModel } from '../../src/solve/solve-model.js';
import { frameOf, type FrameWords } from '../frame3d/frame-shapes.js';
import { demoModel } from '../mechanics/fasteners/demo-model.js';

const pull = { x: 0.23, y: 0.31 };
const uneven: FrameWords = { width: 1240, height: 830, w: 38, d: 30, give: 4, crossbarGive: 6, crossbars: [{ runs: 'upright', at: 0.37, w: 30, d: 22 }, { runs: 'level', at: 0.61, w: 25, d: 19 }], brace: { leg: 210, w: 30, d: 19 } };

describe('how far a bar rolls', () => {
  it('is read at either end too, where it turns with a softer one that is pushed', () => {
    const plain = frameOf({ width: 700, height: 1100, w: 60, d: 60 });
    const shape: FrameShape = {
      ...plain,
      bars: { ...plain.bars, left: solidSection(14, 16, 9000, 560) },
      eccentricity_mm: { top: 0, bottom: 0, left: 0, right: 0 },
    };
    const push: readonly PointForce[] = [{ bar: 'left', at: 0.7, Fx: 0, Fy: 0, Fz: 5 }];
    const mesh = meshFrame(shape, push, { bar: 1, crossbar: 1, brace: 1 }, timoshenko);
    const ready = prepare(mesh.structure, timoshenko);
    if (!ready.stable) throw new Error('the frame does not stand');
    const { u } = solvePrepared(ready.prepared, frameLoads(shape, mesh, pull, push, true));
    const turn_mrad = (corner: 'top-left' | 'top-right'): number => 1000 * Math.abs(u[6 * mesh.corners[corner] + 3]!);
    expect(turn_mrad('top-left')).toBeGreaterThan(1.1 * turn_mrad('top-right'));
    expect(Math.abs(solveStatics(shape, pull, push).bars.top.roll_mrad)).toBeCloseTo(turn_mrad('top-left'), 9);
  });
});

describe('forces along a bar', () => {
  const shape = frameOf(uneven);
  const { bars, crossbars } = solveStatics(shape, pull);
  it.each(barNames)('%s: from end to end, never back, and the largest moment itself among them', (bar) => {
    const { forces, moment_Nmm, axial_N } = bars[bar];
    expect([forces[0]!.s, forces.at(-1)!.s]).toEqual([0, expect.closeTo(1, 12)]);
    for (const [i, { s }] of forces.entries()) if (i > 0) expect(s).toBeGreaterThanOrEqual(forces[i - 1]!.s);
    expect(Math.max(...forces.map((f) => Math.abs(f.plane_Nmm)))).toBe(moment_Nmm);
    expect(Math.max(...forces.map((f) => Math.abs(f.axial_N)))).toBeCloseTo(Math.abs(axial_N), 9);
  });
  it('between two joints the moment is the parabola that the pull makes: M″ = −q, whichever places are looked at', () => {
    for (const [bar, q] of [['top', pull.y], ['left', pull.x]] as const) {
      const span = bar === 'top' ? shape.span_x_mm : shape.span_y_mm;
      // Split where the bar's places jump or repeat, that is at its joints.
      const fields: (typeof bars.top.forces)[number][][] = [[]];
      for (const [i, f] of bars[bar].forces.entries()) {
        if (i > 0 && Math.abs(f.s - bars[bar].forces[i - 1]!.s) < 1e-12) fields.push([]);
        fields.at(-1)!.push(f);
      }
      expect(fields.length).toBeGreaterThan(2);
      for (const field of fields) {
        const [a, b] = [field[0]!, field.at(-1)!];
        for (const { s, plane_Nmm, axial_N, out_Nmm } of field) {
          const t = (s - a.s) / (b.s - a.s);
          const bulge = (q * ((b.s - a.s) * span) ** 2 * t * (1 - t)) / 2;
          const straight = a.plane_Nmm + t * (b.plane_Nmm - a.plane_Nmm);
          // Inward load: +y on the bottom bar, −y on the top one; on upright bars local y is −x.
          expect(plane_Nmm).toBeCloseTo(straight + (bar === 'top' || bar === 'left' ? -1 : 1) * -bulge, 4);
          expect(axial_N).toBeCloseTo(a.axial_N + t * (b.axial_N - a.axial_N), 6);
          expect(out_Nmm).toBeCloseTo(a.out_Nmm + t * (b.out_Nmm - a.out_Nmm), 4);
        }
      }
    }
  });
  it('runs on evenly where nothing but the pull acts, node after node', () => {
    const plain = frameOf({ width: 1240, height: 830, w: 38, d: 30, give: { plane: 9, out: 4, twist: 2 } });
    for (const bar of barNames) {
      const { forces } = solveStatics(plain, pull, [], { mesh: 4 }).bars[bar];
      const meet = forces.filter(({ s }, i) => i > 0 && Math.abs(s - forces[i - 1]!.s) < 1e-12);
      expect(meet.length).toBeGreaterThanOrEqual(3);
      forces.forEach((f, i) => {
        const before = forces[i - 1];
        if (before !== undefined && Math.abs(f.s - before.s) < 1e-12) for (const key of ['axial_N', 'plane_Nmm', 'out_Nmm'] as const) expect(f[key]).toBeCloseTo(before[key], 5);
      });
      expect(Math.abs(forces[0]!.out_Nmm)).toBeGreaterThan(1);
    }
  });
  it('a mesh forty times finer finds no larger moment, bow, dish or roll', () => {
    const fine = solveStatics(shape, pull, [], { mesh: 40 });
    for (const bar of barNames) {
      expect(bars[bar].moment_Nmm / fine.bars[bar].moment_Nmm).toBeCloseTo(1, 6);
      for (const key of ['inward_bow_mm', 'dish_mm', 'roll_mrad'] as const) expect(bars[bar][key] / fine.bars[bar][key]).toBeCloseTo(1, 3);
    }
    crossbars.forEach(({ bow_mm }, i) => expect(bow_mm / fine.crossbars[i]!.bow_mm).toBeCloseTo(1, 3));
  });
});

describe('what a corner bears', () => {
  const shape: FrameShape = (() => {
    const even = frameOf({ ...uneven, brace: undefined });
    return { ...even, corner_give: { ...even.corner_give, 'top-left': { plane: 12, out: 3, twist: 7 } }, corner_plate_Nmm_per_rad: { ...even.corner_plate_Nmm_per_rad, 'bottom-right': 4e5 }, bars: { ...even.bars, right: { ...even.bars.right, I_plane_mm4: 3 * even.bars.right.I_plane_mm4 } } };
  })();
  const { bars, corners } = solveStatics(shape, pull);
  const larger = (list: readonly number[]): number => list.reduce((a, b) => (Math.abs(b) > Math.abs(a) ? b : a), 0);
  it.each(cornerNames)('%s: the larger of what the ends of its two bars bear', (corner) => {
    const ends = barsAt(corner).map((bar) => {
      const { forces } = bars[bar];
      const [span, q] = bar === 'top' || bar === 'bottom' ? [shape.span_x_mm, pull.y] : [shape.span_y_mm, pull.x];
      const first = barEnds[bar][0] === corner;
      const [at, next] = first ? [forces[0]!, forces[1]!] : [forces.at(-1)!, forces.at(-2)!];
      const h = Math.abs(next.s - at.s) * span;
      // V = dM/ds at the end of a parabola that the pull makes.
      return { axial: at.axial_N, plane: at.plane_Nmm, out: at.out_Nmm, slope: (next.plane_Nmm - at.plane_Nmm) / h, bend: (q * h) / 2 };
    });
    const said = corners[corner];
    expect(said.axial_N).toBeCloseTo(larger(ends.map(({ axial }) => axial)), 6);
    expect(said.out_moment_Nmm).toBeCloseTo(Math.abs(larger(ends.map(({ out }) => out))), 4);
    expect(said.moment_Nmm + said.plate_moment_Nmm).toBeCloseTo(Math.abs(larger(ends.map(({ plane }) => plane))), 4);
    expect(said.plate_moment_Nmm > 0).toBe(corner === 'bottom-right');
    // Nothing else holds a free corner: what bends one bar out of the plane twists the other, and what presses one is the shear of the other.
    expect(said.torque_Nmm).toBeCloseTo(said.out_moment_Nmm, 4);
    expect(said.shear_N).toBeCloseTo(Math.abs(said.axial_N), 6);
    expect(Math.min(...ends.flatMap(({ slope, bend }) => [Math.abs(Math.abs(slope) + bend - said.shear_N), Math.abs(Math.abs(slope) - bend - said.shear_N)]))).toBeLessThan(1e-3);
  });
  it('a brace beside it takes of the pressing what it bears itself: the cut through bar, brace and bar is in balance', () => {
    const braced = frameOf({ width: 1100, height: 700, w: 38, d: 30, brace: { leg: 180, w: 30, d: 19 } });
    const { bars: by } = solveStatics(braced, pull);
    const middle = (bar: 'top' | 'bottom'): number => by[bar].forces.filter(({ s }) => Math.abs(s - 0.5) < 0.05)[0]!.axial_N;
    expect(middle('top') + middle('bottom')).toBeCloseTo(-pull.x * braced.span_y_mm, 6);
  });
});

describe('joints', () => {
  const like = (give: { plane: number; out: number; twist: number }) => frameOf({ ...uneven, give, crossbarGive: give, braceGive: give });
  it.each(['plane', 'out', 'twist'] as const)('that hardly give %s are as those that do not at all: statics, factors, warp, how far it turns', (way) => {
    const own = { plane: 9, out: 4, twist: 7 };
    const [rigid, stiff] = [like({ ...own, [way]: 0 }), like({ ...own, [way]: 2e-3 })];
    const [a, b] = [solveStatics(rigid, pull), solveStatics(stiff, pull)];
    for (const bar of barNames) for (const key of ['inward_bow_mm', 'dish_mm', 'roll_mrad', 'moment_Nmm'] as const) expect(b.bars[bar][key] / a.bars[bar][key]).toBeCloseTo(1, 2);
    const [p, q] = [findStability(rigid, pull), findStability(stiff, pull)];
    expect(q.load_factor! / p.load_factor!).toBeCloseTo(1, 3);
    expect(q.second_factor! / p.second_factor!).toBeCloseTo(1, 3);
    expect(q.propeller!.beta_per_mm2 / p.propeller!.beta_per_mm2).toBeCloseTo(1, 2);
    const [one, other] = [solveInfluence(rigid, pull)!, solveInfluence(stiff, pull)!];
    const largest = Math.max(...one.map((i) => Math.abs(i.corner_lift)));
    one.forEach((i, n) => expect(Math.abs(other[n]!.corner_lift - i.corner_lift)).toBeLessThan(0.005 * largest));
  });
});

describe('natural warp out of the plane and in it', () => {
  it('do not mix at all: twist and bow leave the plane alone, crook leaves nothing else', () => {
    for (const { kind, bar_bow, bar_crook, corner_lift } of solveInfluence(frameOf(uneven), pull)!) {
      const still = kind === 'plane' ? bar_bow : bar_crook;
      for (const bar of barNames) expect(Math.max(...still[bar].map(Math.abs))).toBe(0);
      if (kind === 'plane') expect(corner_lift).toBe(0);
      else expect(corner_lift).not.toBe(0);
    }
  });
});

describe('how fine a frame is cut', () => {
  it('the usual way: six elements along a shorter bar, ten along a crossbar as long, four along a brace; never fewer than two of those', () => {
    expect(finenessOf(usualMesh)).toEqual({ bar: 6, crossbar: 10, brace: 4 });
    expect(finenessOf(1)).toEqual({ bar: 1, crossbar: 2, brace: 2 });
    expect(finenessOf(3)).toEqual({ bar: 3, crossbar: 5, brace: 2 });
  });
  it('lines stand at both ends whether asked for or not; places beyond them count as the ends', () => {
    const lines = meshLines([0.4, -0.2], 3);
    expect([lines.indexOf(0), lines.indexOf(1), lines.indexOf(-0.2)]).toEqual([0, lines.at.length - 1, 0]);
    expect(lines.at).toEqual([0, 0.2, 0.4, expect.closeTo(0.7, 12), 1].map((at) => (at === 0.2 ? expect.closeTo(0.2, 12) : at)));
    expect([meshLines([], 1).at, meshLines([], 2).at, meshLines([0.5], 2).at]).toEqual([[0, 1], [0, 0.5, 1], [0, 0.5, 1]]);
  });
  const parts = (width: number, height: number, bar: number, more: Partial<FrameWords> = {}) => {
    const mesh = meshFrame(frameOf({ width, height, w: 38, d: 30, ...more }), [], { bar, crossbar: 5, brace: 3 }, timoshenko);
    return { top: mesh.bars.top.elements.length, left: mesh.bars.left.elements.length, crossbars: mesh.crossbars.map((c) => c.elements.length), braces: mesh.braces.map((b) => b.elements.length) };
  };
  it('as many elements as asked along a shorter bar, by the root of the ratio more along a longer one', () => {
    expect(parts(638, 638, 6)).toMatchObject({ top: 6, left: 6 });
    expect(parts(2438, 638, 6)).toMatchObject({ top: 12, left: 6 });
    expect(parts(638, 1238, 5)).toMatchObject({ top: 5, left: Math.ceil(5 * Math.SQRT2) });
  });
  it('crossbars likewise by their own number, braces by theirs', () => {
    const crossbars = [{ runs: 'upright', at: 0.5, w: 30, d: 20 }, { runs: 'level', at: 0.5, w: 30, d: 20 }] as const;
    // Half of it to either side of the crossing: three and four, of at most a fifth and a tenth.
    expect(parts(2438, 638, 6, { crossbars }).crossbars).toEqual([6, 10]);
    expect(parts(2438, 638, 6, { brace: { leg: 150, w: 30, d: 20 } }).braces).toEqual([3, 3, 3, 3]);
  });
});

describe('a mode', () => {
  const loose = 400;
  const slim = (runs: 'upright' | 'level', w: number, d: number): FrameWords => ({ width: 1000, height: 900, w: 45, d: 60, crossbarGive: loose, crossbars: [{ runs: 'level', at: 0.3, w: 45, d: 60 }, { runs: 'upright', at: 0.3, w: 45, d: 60 }, { runs, at: 0.62, w, d }] });
  it.each([
    ['an upright that is thin in the plane', slim('upright', 5, 60), 'crossbar 3 bows in the plane'],
    ['a level one that is thin in the plane', slim('level', 5, 60), 'crossbar 3 bows in the plane'],
    ['an upright that is thin out of it', slim('upright', 45, 6), 'crossbar 3 bows out of the plane'],
    ['a level one that is thin out of it', slim('level', 45, 6), 'crossbar 3 bows out of the plane'],
  ])('is named by what bows most: %s', (_, words, expected) => {
    expect(findStability(frameOf(words), pull)).toMatchObject({ mode: 'sideways', mode_words: expected });
  });
  it('is drawn with its largest shift 1, the free corner of a propeller forward, and ends that meet', () => {
    for (const [i, words] of [uneven, { ...uneven, crossbars: [] }, { width: 700, height: 1300, w: 38, d: 19 }, { width: 1300, height: 700, w: 38, d: 19, give: 9 }, slim('upright', 5, 60), slim('level', 45, 6), { width: 900, height: 880, w: 30, d: 30, brace: { leg: 99, w: 30, d: 19 } }].entries()) {
      const { mode_shape, mode } = findStability(frameOf(words as FrameWords), pull);
      const points = mode_shape.flatMap((line) => line.points);
      expect(Math.max(...points.map(({ dx, dy, dz }) => Math.max(Math.hypot(dx, dy), Math.abs(dz)))), `frame ${i}`).toBeCloseTo(1, 9);
      const end = (member: string, last: boolean) => mode_shape.find((line) => line.member === member)!.points.at(last ? -1 : 0)!;
      expect(end('top', true).dz).toBeGreaterThanOrEqual(mode === 'propeller' ? 0.5 : -1e-9);
      for (const key of ['x', 'y', 'dx', 'dy', 'dz'] as const) {
        expect(end('top', true)[key]).toBeCloseTo(end('right', true)[key], 6);
        expect(end('bottom', false)[key]).toBeCloseTo(end('left', false)[key], 6);
        expect(end('bottom', true)[key]).toBeCloseTo(end('right', false)[key], 6);
        expect(end('top', false)[key]).toBeCloseTo(end('left', true)[key], 6);
      }
      for (const { points: line } of mode_shape) expect(line.length).toBeGreaterThanOrEqual(17);
    }
  });
  it('along a member its points go evenly from end to end, within what its neighbours allow', () => {
    const shape = frameOf(uneven);
    const { mode_shape } = findStability(shape, pull);
    const upright = mode_shape.find(({ member }) => member === 'crossbar-1')!.points;
    expect([upright[0]!.x, upright[0]!.y, upright.at(-1)!.y]).toEqual([expect.closeTo(0.37 * shape.span_x_mm, 9), 0, expect.closeTo(shape.span_y_mm, 9)]);
    for (const [i, { y, dz }] of upright.entries()) if (i > 0) {
      expect(y).toBeGreaterThan(upright[i - 1]!.y);
      expect(Math.abs(dz - upright[i - 1]!.dz)).toBeLessThan(0.25);
    }
  });
});

describe('influence numbers where screwed plies stand for shape but not for stability', () => {
  const plan = (x: number, y: number) => demoModel({ face: { width: '1400 mm', height: '900 mm' }, bars: { stock: 'strip-19x38', lay: 'flat', plies: 2, stack: 'front-to-back', bond: 'screws' }, 'ply-screws': { use: 'screw-6x32', every: '60 mm' }, cloth: { pull: { working: { x: `${x} N/m`, y: `${y} N/m` }, peak: { x: `${2 * x} N/m`, y: `${2 * y} N/m` } } }, hang: { by: 'none' } });
  const factors = (at: EdgePull, { shape, shape_stability }: { readonly shape: FrameShape; readonly shape_stability: FrameShape }) => [findStability(shape_stability, at).load_factor!, findStability(shape, at).load_factor!] as const;
  it('are withheld from the lower of the two factors on, though the frame would still answer', () => {
    const first = plan(200, 140);
    const [stable, shape] = factors(first.working, first);
    expect(shape / stable).toBeGreaterThan(1.005);
    const between = Math.sqrt(stable * shape);
    const past = plan(200 * between, 140 * between);
    expect(solveInfluence(past.shape, past.working)).not.toBeNull();
    expect(solveModel(past).influence).toBeNull();
    const before = plan(200 * stable * 0.99, 140 * stable * 0.99);
    expect(solveModel(before).influence).not.toBeNull();
  });
});
