import { expect, test } from 'vitest';
import { findStability, softJointOptions } from '../../src/solve/analyse-frame.js';
import { demoModel } from '../mechanics/fasteners/demo-model.js';

test.each([
  ['single strips', { face: { width: '1130 mm', height: '740 mm' }, bars: { stock: 'strip-19x38', lay: 'flat' } }],
  ['two crossbars and braces', {
    face: { width: '1500 mm', height: '1130 mm' }, bars: { stock: 'stud-38x64', lay: 'edge' },
    crossbars: [{ runs: 'upright', at: 0.4, stock: 'strip-19x38', lay: 'edge' }, { runs: 'level', at: 0.5, stock: 'strip-19x38', lay: 'edge' }],
    corners: { brace: { kind: 'timber', leg: '260 mm', stock: 'strip-19x38' } },
  }],
])('the reserve with softer joints does not hang on its coarser mesh: %s', (_, plan) => {
  const { shape_soft, peak } = demoModel(plan);
  const [quick, fine] = [softJointOptions, { factors: 1 as const, mesh: 40 }].map((options) => findStability(shape_soft, peak, options).load_factor!);
  expect(Math.abs(quick! / fine! - 1)).toBeLessThan(0.001);
});
