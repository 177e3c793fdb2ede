import { expect, test } from 'vitest';
import { clampForce } from '../../../src/mechanics/glue/clamping.js';
import { glueSheet } from '../../../src/mechanics/glue/glue-sheet.js';
import { demoModel } from '../fasteners/demo-model.js';

test('force at a clamp is pressure times face over clamps, and as many clamps reach it as the force by hand goes into it', () => {
  const force = clampForce(1130 * 37, 5, { low: 0.69, high: 1.03 }, 1900);
  expect(force.low_N).toBeCloseTo((0.69 * 1130 * 37) / 5, 9);
  expect(force.high_N).toBeCloseTo((1.03 * 1130 * 37) / 5, 9);
  expect(force.clamps_needed).toBe(Math.ceil((0.69 * 1130 * 37) / 1900));
  expect(force.in_reach).toBe(false);
  expect(clampForce(1130 * 37, force.clamps_needed, { low: 0.69, high: 1.03 }, 1900).in_reach).toBe(true);
});

test('a long pair is out of reach of its clamps, the small faces of single corners are not', () => {
  const pair = glueSheet(demoModel({ face: { width: '1230 mm', height: '870 mm' }, bars: { stock: 'strip-19x38', lay: 'edge', plies: 2 } }))!;
  expect(pair).toMatchObject({ clamps_on: 'plies', force: { in_reach: false, by_hand_N: 2000 } });
  const corners = glueSheet(demoModel({ face: { width: '530 mm', height: '410 mm' }, bars: { stock: 'strip-19x38', lay: 'flat' } }))!;
  expect(corners).toMatchObject({ clamps_on: 'corners', clamps_count: 4, force: { in_reach: true } });
  expect(corners.force.low_N).toBeCloseTo(corners.pressure_MPa.low * 38 * Math.SQRT2 * 19, 6);
});

test('clamps at the corners press the corners alone, however large a lip, a gusset or the end of a crossbar is', () => {
  const bare = { face: { width: '1140 mm', height: '690 mm' }, bars: { stock: 'square-38x38', lay: 'flat' } };
  const force = (more: object) => glueSheet(demoModel({ ...bare, ...more }))!.force;
  // A mitre of 38 × 38 mm, cut at 45°.
  const { low } = glueSheet(demoModel(bare))!.pressure_MPa;
  expect(force({}).low_N).toBeCloseTo(low * 38 * 38 * Math.SQRT2, 6);
  for (const more of [
    { bars: { ...bare.bars, lip: '3 mm' } },
    { corners: { brace: { kind: 'ply-gusset', leg: '180 mm' } } },
    { crossbars: [{ runs: 'upright', at: '1/2', stock: 'strip-19x38', lay: 'flat' }] },
  ])
    expect(force(more)).toEqual(force({}));
});
