/**
 * Lift from a joint glued with a kink, held against the frame solved with that kink in its joint (spring with a built-in angle), and against the
 * closed form of bars stiff in bending: a·b/(√2 (a + b)). Rotations small, no pull unless said.
 */
import { describe, expect, test } from 'vitest';
import { cornerNames, type CornerName } from '../../src/base/names.js';
import { solveFrame, timoshenko } from '../../src/frame3d/index.js';
import { solveInfluence } from '../../src/solve/analyse-frame.js';
import { meshFrame } from '../../src/solve/frame-mesh.js';
import type { FrameShape } from '../../src/model/frame-shape.js';
import type { Model } from '../../src/model/model.js';
import { liftPerTilt_mm_per_rad } from '../../src/what-if/tilt-lift.js';
import { builtAndSolved } from './plans.js';

const noPull = { x: 0, y: 0 };
/** The mitre's line at each corner, from its outer to its inner point or back. */
const line: Readonly<Record<CornerName, readonly [number, number]>> = { 'bottom-left': [1, 1], 'top-right': [1, 1], 'bottom-right': [1, -1], 'top-left': [1, -1] };

/** Lift of the solved frame when the joint of the level bar at a corner holds a kink of one radian about the mitre's line. */
function liftOfKink(shape: FrameShape, corner: CornerName): number {
  const mesh = meshFrame(shape, [], { bar: 16, crossbar: 8, brace: 4 }, timoshenko);
  const bar = corner.startsWith('bottom') ? 'bottom' : 'top';
  const end = mesh.bars[bar].nodes.at(corner.endsWith('left') ? 0 : -1)!;
  const spring = mesh.structure.springs!.find(({ i, j }) => i === mesh.corners[corner] && j === end)!;
  const [x, y] = line[corner].map((part) => part * Math.SQRT1_2) as [number, number];
  const moment: [number, number, number] = [spring.k[3]! * x, spring.k[4]! * y, 0];
  const answer = solveFrame(mesh.structure, {
    nodes: [{ node: spring.j, force: [0, 0, 0], moment }, { node: spring.i, force: [0, 0, 0], moment: moment.map((m) => -m) as [number, number, number] }],
    members: [],
  });
  if (!answer.stable) throw new Error('the frame must hold');
  const z = (name: CornerName): number => answer.solution.u[6 * mesh.corners[name] + 2]!;
  return z('top-right') + z('bottom-left') - z('top-left') - z('bottom-right');
}

const closed = (model: Model): Record<CornerName, number> => liftPerTilt_mm_per_rad(model, solveInfluence(model.shape, noPull)!) as Record<CornerName, number>;

describe('a mitre that leans', () => {
  test.each(cornerNames)('%s: as the frame solved with the kink in its joint', (corner) => {
    const { model } = builtAndSolved();
    expect(Math.abs(closed(model)[corner] / Math.abs(liftOfKink(model.shape, corner)) - 1)).toBeLessThan(1e-6);
  });

  test('with a crossbar off the middle the even torque stays within a tenth of it', () => {
    const { model } = builtAndSolved({ crossbars: [{ runs: 'upright', at: '2/5', lay: 'flat' }] });
    for (const corner of cornerNames) expect(Math.abs(closed(model)[corner] / Math.abs(liftOfKink(model.shape, corner)) - 1)).toBeLessThan(0.1);
  });

  test('closed form for bars stiff in bending and rigid corners', () => {
    const { model } = builtAndSolved({ corners: { give: 0 } });
    const stiff = Object.fromEntries(Object.entries(model.shape.bars).map(([name, section]) => [name, { ...section, I_out_mm4: 1e5 * section.I_out_mm4, A_mm2: 1e5 * section.A_mm2 }])) as unknown as FrameShape['bars'];
    const influence = solveInfluence({ ...model.shape, bars: stiff }, noPull)!;
    const [a, b] = [model.shape.span_x_mm, model.shape.span_y_mm];
    expect(liftPerTilt_mm_per_rad(model, influence)['top-left'] / ((a * b) / (Math.SQRT2 * (a + b)))).toBeCloseTo(1, 3);
  });

  test('a missing influence number is a bug and says so', () => {
    const { model } = builtAndSolved();
    expect(() => liftPerTilt_mm_per_rad(model, [])).toThrow(/twist of/);
  });
});
