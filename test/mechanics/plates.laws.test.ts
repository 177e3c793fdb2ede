import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cornerFacts } from '../facts/of-subject.js';
import { rowSquares_mm2 } from '../../src/model/plate-stiffness.js';
import { demoModel, demoSolved } from './fasteners/demo-model.js';

const frame = (stock: string, lay: string, brace: object | 'none', more: object = {}): object => ({ face: { width: '914 mm', height: '610 mm' }, bars: { stock, lay }, corners: { brace, ...more }, hang: { by: 'none' } });
const plateOf = (plan: object): number => demoModel(plan).shape.corner_plate_Nmm_per_rad['top-left'];
const mostUsed = (plan: object): number => {
  const { model, solution } = demoSolved(plan);
  return Math.max(...cornerFacts(model, solution).filter(({ path }) => path === 'corner.use_normal').map(({ value }) => value as number));
};

describe('the stiffness of a plate', () => {
  test('a row of fastenings about its middle, added up one by one', () => {
    for (const [n, s] of [[2, 47], [3, 31], [4, 12.5]] as const) {
      const places = Array.from({ length: n }, (_, i) => (i - (n - 1) / 2) * s);
      expect(rowSquares_mm2(n, s)).toBeCloseTo(places.reduce((sum, r) => sum + r ** 2, 0), 9);
    }
  });
  test('an angle of 160 mm on studs: two No. 6 screws a leg, steel on timber, the two bars in series (EN 1995-1-1 Table 7.1)', () => {
    const K_ser = (2 * 420 ** 1.5 * 0.138 * 25.4) / 23;
    expect(plateOf(frame('stud-38x64', 'edge', { kind: 'steel-angle', leg: '160 mm' }))).toBeCloseTo((K_ser * 2 * 40 ** 2) / 2, 3);
  });
  test('where no screw on the shelf stays inside the bar, an angle adds nothing', () => {
    expect(plateOf(frame('strip-19x38', 'flat', { kind: 'steel-angle', leg: '200 mm' }))).toBe(0);
    expect(mostUsed(frame('strip-19x38', 'flat', { kind: 'steel-angle', leg: '200 mm' }))).toBe(mostUsed(frame('strip-19x38', 'flat', 'none')));
  });
  test('a longer leg is stiffer, and a tiny plate hardly helps', () => {
    const glued = [25, 60, 100, 200].map((leg) => plateOf(frame('strip-19x38', 'flat', { kind: 'ply-gusset', leg: `${leg} mm` })));
    const screwed = [60, 120, 180, 240].map((leg) => plateOf(frame('stud-38x64', 'edge', { kind: 'steel-angle', leg: `${leg} mm` })));
    for (const row of [glued, screwed]) expect([...row].sort((a, b) => a - b)).toEqual(row);
    const own = (9000 * ((19 * 38 ** 3) / 12)) / (4 * 38) / 2;
    expect(glued[0]! / own).toBeLessThan(0.4);
    expect(glued[3]! / own).toBeGreaterThan(10);
  });
});

test('adding a plate never raises the use of the corner', () => {
  fc.assert(
    fc.property(fc.constantFrom(['strip-19x38', 'flat'], ['square-38x38', 'flat'], ['stud-38x64', 'edge']), fc.constantFrom('ply-gusset', 'steel-angle'), fc.integer({ min: 25, max: 260 }), fc.constantFrom({ glue: 'pva' }, { glue: 'none', nails: { use: 'brad-18ga-25', each: 2 } }), ([stock, lay], kind, leg, more) => {
      fc.pre(leg > 39);
      expect(mostUsed(frame(stock!, lay!, { kind, leg: `${leg} mm` }, more))).toBeLessThanOrEqual(mostUsed(frame(stock!, lay!, 'none', more)) * 1.002);
    }),
    { numRuns: 12 },
  );
});
