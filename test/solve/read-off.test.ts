/** What is read off a solution: where forces are looked at, how a mode is named and drawn, when influence numbers are given. */
import { describe, expect, it } from 'vitest';
import { barNames } from '../../src/base/names.js';
import { timoshenko } from '../../src/frame3d/index.js';
import type { EdgePull, FrameShape } from '../../src/model/frame-shape.js';
import { findStability, solveInfluence, solveStatics } from '../../src/solve/analyse-frame.js';
import { meshFrame } from '../../src/solve/frame-mesh.js';
import { solveModel } from '../../src/solve/solve-model.js';
import { frameOf, type FrameWords } from '../frame3d/frame-shapes.js';
import { demoModel } from '../mechanics/fasteners/demo-model.js';

const pull = { x: 0.23, y: 0.31 };
const uneven: FrameWords = { width: 1240, height: 830, w: 38, d: 30, give: 4, crossbarGive: 6, crossbars: [{ runs: 'upright', at: 0.37, w: 30, d: 22 }, { runs: 'level', at: 0.61, w: 25, d: 19 }], brace: { leg: 210, w: 30, d: 19 } };

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
  it('a mesh a hundred times finer finds no larger moment, bow, dish or roll', () => {
    const fine = solveStatics(shape, pull, [], { mesh: 60 });
    for (const bar of barNames) {
      expect(bars[bar].moment_Nmm / fine.bars[bar].moment_Nmm).toBeCloseTo(1, 6);
      for (const key of ['inward_bow_mm', 'dish_mm', 'roll_mrad'] as const) expect(bars[bar][key] / fine.bars[bar][key]).toBeCloseTo(1, 3);
    }
    crossbars.forEach(({ bow_mm }, i) => expect(bow_mm / fine.crossbars[i]!.bow_mm).toBeCloseTo(1, 3));
  });
});

describe('how fine a frame is cut', () => {
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
