/** What is kept of a frame may never be mixed up: meshes, theories, pulls, twins. */
import { describe, expect, it } from 'vitest';
import type { FrameShape } from '../../src/model/frame-shape.js';
import type { Solution } from '../../src/model/model.js';
import { findStability, solveInfluence, solveLiftCompliance, solveStatics, type FrameOptions } from '../../src/solve/analyse-frame.js';
import { SolvedFrames } from '../../src/solve/solved-frames.js';
import { frameOf } from '../frame3d/frame-shapes.js';
import { demoModel } from '../mechanics/fasteners/demo-model.js';

const shape = frameOf({ width: 900, height: 640, w: 38, d: 45, give: 4, crossbarGive: 6, crossbars: [{ runs: 'upright', at: 0.4, w: 30, d: 40 }] });
const copy = (): FrameShape => ({ ...shape });
const pull = { x: 0.2, y: 0.31 };

describe('one shape asked in many ways', () => {
  it.each<FrameOptions>([{ mesh: 2 }, { mesh: 2, shear: false }, { mesh: 3 }, { mesh: 3, shear: false }])('answers as a shape that was never asked before: %j', (options) => {
    for (const at of [pull, { x: 0.31, y: 0.2 }]) {
      expect(solveStatics(shape, at, [], options)).toEqual(solveStatics(copy(), at, [], options));
      expect(findStability(shape, at, { ...options, factors: 1 }).load_factor).toBe(findStability(copy(), at, { ...options, factors: 1 }).load_factor);
      expect(solveLiftCompliance(shape, at, options)).toBe(solveLiftCompliance(copy(), at, options));
    }
  });
  it('softer in shear than without, and unlike on another mesh', () => {
    const bow = (options: FrameOptions): number => solveStatics(shape, pull, [], options).bars.top.inward_bow_mm;
    expect(bow({})).toBeGreaterThan(bow({ shear: false }) * 1.001);
    expect(findStability(shape, pull, { mesh: 2 }).second_factor).not.toBe(findStability(shape, pull).second_factor);
    // Without the lever of the front edge nothing turns a bar about itself.
    const { bars, dish_mm } = solveStatics(shape, pull, [], { eccentric: false });
    expect([dish_mm, bars.top.roll_mrad, bars.left.dish_mm]).toEqual([0, 0, 0].map((v) => expect.closeTo(v, 12)));
  });
  it('one factor alone is the first of the two, without what belongs to the second', () => {
    const [one, two] = [findStability(copy(), pull, { factors: 1 }), findStability(copy(), pull)];
    expect(one.load_factor! / two.load_factor!).toBeCloseTo(1, 7);
    expect([one.second_factor, one.second_mode_words, one.propeller]).toEqual([null, null, null]);
    expect(one.mode_words).toBe(two.mode_words);
    expect(two.second_factor!).toBeGreaterThan(two.load_factor!);
    expect(two.propeller!.factor).toBe(two.mode === 'propeller' ? two.load_factor : two.second_factor);
  });
  it('refuses meshes that are no whole number of elements, and pulls that push', () => {
    for (const mesh of [0, 1.5, -2, NaN]) for (const ask of [() => solveStatics(copy(), pull, [], { mesh }), () => findStability(copy(), pull, { mesh })]) expect(ask).toThrow(/whole number of elements/u);
    for (const bad of [{ x: -1e-9, y: 0.2 }, { x: 0.2, y: -1 }, { x: Infinity, y: 0 }]) for (const ask of [() => solveStatics(copy(), bad), () => findStability(copy(), bad), () => solveInfluence(copy(), bad), () => solveLiftCompliance(copy(), bad)]) expect(ask).toThrow(/finite number, 0 or more/u);
    expect(solveStatics(copy(), { x: 0, y: 0 }).dish_mm).toBe(0);
    expect(findStability(copy(), { x: 0.2, y: 0 }).load_factor).toBeGreaterThan(0);
  });
});

describe('solved frames', () => {
  const model = demoModel({ face: { width: '700 mm', height: '500 mm' }, bars: { stock: 'square-38x38', lay: 'flat' } });
  const pulled = (n: number) => ({ ...model, working: { x: 0.2 + n / 1000, y: 0.2 } });
  const solution = (name: string): Solution => ({ working: name, stability: name }) as unknown as Solution;
  const told = (frames: SolvedFrames, n: number): unknown => frames.of(pulled(n)).working;
  it('twins share one, others do not', () => {
    const frames = new SolvedFrames();
    frames.keep(pulled(0), solution('first'));
    frames.keep(pulled(1), solution('second'));
    expect([told(frames, 0), told(frames, 1)]).toEqual(['first', 'second']);
    for (const other of [{ shape: copy() }, { shape_soft: copy() }, { shape_stability: copy() }, { peak: { x: 1, y: 2 } }, { accidental: { x: 1, y: 2 } }]) expect(typeof frames.of({ ...pulled(0), ...other }).working).toBe('object');
    expect(told(frames, 0)).toBe('first');
  });
  it('the 64 asked for last are kept, no more', () => {
    const frames = new SolvedFrames();
    for (let n = 0; n < 64; n++) frames.keep(pulled(n), solution(`${n}`));
    expect(told(frames, 0)).toBe('0');
    frames.keep(pulled(64), solution('64'));
    // The one asked for last stays; the one that waited longest has gone and would be solved anew.
    expect(told(frames, 0)).toBe('0');
    expect(told(frames, 2)).toBe('2');
    expect(typeof told(frames, 1)).toBe('object');
  });
});
