import { expect, test } from 'vitest';
import type { Statics } from '../../src/model/frame-results.js';
import { solveStatics } from '../../src/solve/analyse-frame.js';
import { scaleStatics } from '../../src/solve/scale-statics.js';
import { demoModel } from '../mechanics/fasteners/demo-model.js';

test.each([['without plates', undefined], ['with plates that carry some of the moment', { kind: 'steel-angle', leg: '100 mm' }]])('a scaled solution is the solution at the scaled pull, %s', (_, brace) => {
  const { shape } = demoModel({
    face: { width: '1150 mm', height: '730 mm' },
    bars: { stock: 'strip-19x38', lay: 'edge', plies: 2 },
    crossbars: [{ runs: 'upright', at: 0.4, stock: 'strip-19x38', lay: 'flat' }],
    corners: brace === undefined ? {} : { brace },
  });
  const pull = { x: 0.17, y: 0.23 };
  const solved = flat(solveStatics(shape, { x: 2.5 * pull.x, y: 2.5 * pull.y }));
  const scaled = flat(scaleStatics(solveStatics(shape, pull), 2.5));
  expect(Object.keys(scaled)).toEqual(Object.keys(solved));
  expect(Object.entries(solved).some(([key, value]) => key.endsWith('plate_moment_Nmm') && Math.abs(value) > 1)).toBe(brace !== undefined);
  for (const [key, value] of Object.entries(solved)) expect(Math.abs((scaled[key] as number) - value), key).toBeLessThan(1e-9 * (1 + Math.abs(value)));
});

/** Every number of a solution by its place. */
function flat(statics: Statics): Record<string, number> {
  const found: Record<string, number> = {};
  const walk = (value: unknown, path: string): void => {
    if (typeof value === 'number') found[path] = value;
    else if (typeof value === 'object' && value !== null) for (const [key, inner] of Object.entries(value)) walk(inner, `${path}.${key}`);
  };
  walk(statics, '');
  return found;
}
