import { describe, expect, it, vi } from 'vitest';
import { findStability, softerFactor, solveInfluence, solveStatics } from '../../src/solve/analyse-frame.js';
import { solveModel } from '../../src/solve/solve-model.js';
import type { Statics } from '../../src/model/frame-results.js';
import type { FrameWords } from '../frame3d/frame-shapes.js';
import { frameOf } from '../frame3d/frame-shapes.js';
import { demoModel } from '../mechanics/fasteners/demo-model.js';

const plan = (pull: object) => demoModel({
  face: { width: '1140 mm', height: '690 mm' }, bars: { stock: 'board-19x64', lay: 'edge', lip: '5 mm' }, crossbars: [{ runs: 'upright', at: 0.3, stock: 'strip-19x38', lay: 'edge' }],
  corners: { nails: { use: 'brad-18ga-25', each: 1 } }, cloth: { pull }, hang: { by: 'none' },
});
const askew = plan({ working: { x: '170 N/m', y: '230 N/m' }, peak: { x: '410 N/m', y: '340 N/m' } });
const even = plan({ working: { x: '170 N/m', y: '230 N/m' }, peak: { x: '255 N/m', y: '345 N/m' } });

/** What a solution says, in a few numbers of every sort. */
const told = ({ bars, corners, crossbars, dish_mm }: Statics): number[] => [
  dish_mm, ...Object.values(bars).flatMap((bar) => [bar.inward_bow_mm, bar.dish_mm, bar.roll_mrad, bar.axial_N]),
  ...Object.values(corners).flatMap((corner) => [corner.moment_Nmm, corner.axial_N, corner.shear_N, corner.out_moment_Nmm, corner.torque_Nmm]), ...crossbars.flatMap((bar) => [bar.axial_N, bar.bow_mm]),
];
function same(found: Statics, direct: Statics): void {
  const [p, q] = [told(found), told(direct)];
  expect(p).toHaveLength(q.length);
  const size = Math.max(...q.map(Math.abs));
  p.forEach((value, i) => expect(Math.abs(value - q[i]!)).toBeLessThan(1e-9 * Math.abs(q[i]!) + 1e-12 * size));
}

describe.each([['out of proportion to the working pull', askew], ['one and a half times the working pull', even]])('the peak pull %s', (_, model) => {
  const solution = solveModel(model);
  const { shape, shape_stability, shape_soft } = model;
  it('is solved as though nothing else had been, and so is a knock', () => {
    same(solution.working, solveStatics(shape, model.working));
    same(solution.peak, solveStatics(shape, model.peak));
    same(solution.accidental, solveStatics(shape, model.accidental));
    same(solution.working_x, solveStatics(shape, { x: model.working.x, y: 0 }));
  });
  it('has the factors of a search of its own, soft joints too', () => {
    const own = findStability(shape_stability, model.peak);
    expect(solution.peak_factor! / own.load_factor!).toBeCloseTo(1, 9);
    expect(solution.peak_propeller!.factor / own.propeller!.factor).toBeCloseTo(1, 9);
    expect(solution.peak_propeller!.beta_per_mm2 / own.propeller!.beta_per_mm2).toBeCloseTo(1, 6);
    expect(solution.soft_peak_factor! / findStability(shape_soft, model.peak, { factors: 1 }).load_factor!).toBeCloseTo(1, 9);
    expect(solution.stability.load_factor! / findStability(shape_stability, model.working).load_factor!).toBeCloseTo(1, 12);
  });
});

describe('the first factor of a frame with softer joints, from what is known of the stiffer one', () => {
  const words: FrameWords = { width: 1300, height: 800, w: 38, d: 25, give: 4, crossbarGive: 6, crossbars: [{ runs: 'upright', at: 0.37, w: 30, d: 22 }] };
  const pull = { x: 0.23, y: 0.14 };
  it.each<[string, FrameWords]>([
    ['that turns like a propeller', words],
    ['whose stiffer bars bow in the plane first', { ...words, w: 9, d: 75, crossbars: [{ runs: 'upright', at: 0.37, w: 30, d: 60 }] }],
    ['whose stiffer joints are rigid', { ...words, give: 0, crossbarGive: 0 }],
  ])('of a frame %s', (_, stiff) => {
    const [stiffer, softer] = [frameOf(stiff), frameOf({ ...stiff, give: 9, crossbarGive: { plane: 12, out: 20, twist: 15 } })];
    const own = findStability(softer, pull).load_factor!;
    expect(softerFactor(softer, stiffer, pull)! / own).toBeCloseTo(1, 9);
    expect(findStability(stiffer, pull).load_factor!).toBeGreaterThan(own);
    expect(softerFactor({ ...softer }, stiffer, pull)! / own).toBeCloseTo(1, 9);
    expect(softerFactor(softer, stiffer, { x: 0, y: 0 })).toBeNull();
  });
});

describe('influence numbers', () => {
  // The frame that was solved before may lie otherwise, be joined otherwise or be stiffer: what has nothing in common is made anew.
  it.each<[string, Partial<FrameWords>]>([
    ['stiffer in its bars', { stiff: 1.7 }],
    ['with other crossbars', { crossbars: [{ runs: 'upright', at: 0.37, w: 41, d: 22 }] }],
    ['with softer joints', { give: 11, crossbarGive: 9 }],
    ['with rigid joints', { give: 0 }],
    ['with its crossbar elsewhere', { crossbars: [{ runs: 'upright', at: 0.44, w: 30, d: 22 }] }],
    ['of another size', { width: 1310 }],
  ])('are the same to the last bit whatever frame was solved before: one %s', async (_, other) => {
    const words: FrameWords = { width: 1300, height: 800, w: 38, d: 25, give: 4, crossbarGive: 6, crossbars: [{ runs: 'upright', at: 0.37, w: 30, d: 22 }] };
    const pull = { x: 0.09, y: 0.05 };
    const told = (solve: typeof solveInfluence) =>
      solve(frameOf(words), pull)!.flatMap(({ corner_lift, bar_bow, bar_crook }) => [corner_lift, ...[bar_bow, bar_crook].flatMap((bars) => Object.values(bars).flatMap((line) => [...line]))]);
    vi.resetModules();
    const own = told((await import('../../src/solve/analyse-frame.js')).solveInfluence);
    expect(own.filter((value) => value !== 0).length).toBeGreaterThan(100);
    const solved = frameOf({ ...words, ...other });
    findStability(solved, pull);
    solveInfluence(solved, pull);
    expect(told(solveInfluence)).toEqual(own);
  });
  it('at the working pull while the frame stands, without pull always', () => {
    const solution = solveModel(askew);
    const lifts = (list: ReturnType<typeof solveInfluence>): number[] => list!.map(({ corner_lift }) => corner_lift);
    expect(lifts(solution.influence)).toEqual(lifts(solveInfluence(askew.shape, askew.working)));
    expect(lifts(solution.influence_unpulled)).toEqual(lifts(solveInfluence(askew.shape, { x: 0, y: 0 })));
    const weak = demoModel({ face: { width: '1900 mm', height: '1500 mm' }, bars: { stock: 'strip-19x38', lay: 'flat' }, hang: { by: 'none' } });
    const past = solveModel(weak);
    expect(past.stability.load_factor).toBeLessThan(1);
    expect(past.influence).toBeNull();
    expect(past.influence_unpulled.length).toBeGreaterThan(8);
  });
});

it('the factor with softer joints is the same to the last digit, whatever was asked of the stiff frame before', () => {
  const { shape_stability: stiff, shape_soft: soft, working } = askew;
  const asked = (before: (shape: typeof stiff) => void): number | null => {
    const shape = { ...stiff };
    before(shape);
    return softerFactor({ ...soft }, shape, working);
  };
  const alone = asked(() => undefined);
  expect(alone).toBeGreaterThan(0);
  expect(asked((shape) => findStability(shape, working))).toBe(alone);
  expect(asked((shape) => findStability(shape, working, { factors: 1 }))).toBe(alone);
  expect(asked((shape) => solveInfluence(shape, working))).toBe(alone);
});
