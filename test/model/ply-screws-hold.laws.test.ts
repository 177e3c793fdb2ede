import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { frameFacts } from '../facts/of-subject.js';
import { findStability } from '../../src/solve/analyse-frame.js';
import { demoModel, demoSolved } from '../mechanics/fasteners/demo-model.js';

const face = { width: '930 mm', height: '610 mm' };
const plan = (bond: string, use?: string) => ({ face, bars: { stock: 'stud-38x64', lay: 'edge', plies: 3, bond }, ...(use === undefined ? {} : { 'ply-screws': { use } }) });

describe('plies share only where something holds them', () => {
  test('a screw that ends in the first ply holds nothing: three boards, each bending for itself, and the rules say so', () => {
    const { model, solution } = demoSolved(plan('screws', 'screw-6x32'));
    for (const section of [model.bars.top.section, model.bars.top.section_stability]) expect(section.I_plane_mm4).toBeCloseTo((3 * 64 * 38 ** 3) / 12, 6);
    expect(frameFacts(model, solution).find(({ path, about }) => path === 'bar.bond' && about === 'left')?.value).toBe('none');
  });

  test('one that reaches the next ply makes them stiffer than loose boards, softer than one piece', () => {
    const of = (bond: string): number => demoModel(plan(bond, bond === 'screws' ? 'screw-8x64' : undefined)).bars.top.section.I_plane_mm4;
    expect(of('screws')).toBeGreaterThan(1.001 * of('none'));
    expect(of('screws')).toBeLessThan(of('glue'));
  });

  test('a crossbar of other plies is held by a screw of its own, or not at all', () => {
    const of = (use: string): readonly string[] => {
      const { bars, crossbars } = demoModel({ face, bars: { stock: 'strip-19x38', lay: 'edge', plies: 2, bond: 'screws' }, crossbars: [{ runs: 'upright', stock: 'stud-38x64', lay: 'edge', plies: 2 }], 'ply-screws': { use } });
      return [bars.top.bond, crossbars[0]!.bond];
    };
    expect(of('screw-6x32')).toEqual(['screws', 'none']);
    expect(of('screw-8x64')).toEqual(['screws', 'screws']);
  });

  const sizes = fc.record({
    side: fc.integer({ min: 400, max: 1300 }), stock: fc.constantFrom('strip-19x38', 'square-38x38', 'stud-38x64'), lay: fc.constantFrom('flat', 'edge'), plies: fc.integer({ min: 2, max: 4 }),
    stack: fc.constantFrom('side-by-side', 'front-to-back'), use: fc.constantFrom(undefined, 'screw-6x32', 'screw-8x64'), every: fc.integer({ min: 60, max: 300 }),
  });
  const built = (bond: string, { stock, lay, plies, stack, use, every }: object & Record<string, unknown>, width: number, height: number) => demoModel({
    face: { width: `${width} mm`, height: `${height} mm` }, bars: { stock, lay, plies, stack, bond }, ...(bond === 'none' ? {} : { 'ply-screws': { every: `${String(every)} mm`, ...(use === undefined ? {} : { use }) } }),
  });
  const factor = ({ shape_stability, peak }: ReturnType<typeof demoModel>): number => findStability(shape_stability, peak, { factors: 1 }).load_factor ?? Infinity;

  test('taking the screws away never makes a section stiffer, nor a frame of four equal bars steadier', () => {
    fc.assert(fc.property(sizes, (size) => {
      const [held, loose] = [built('screws', size, size.side, size.side), built('none', size, size.side, size.side)];
      expect(factor(loose)).toBeLessThanOrEqual(factor(held) * (1 + 1e-6));
      for (const section of ['section', 'section_stability'] as const) for (const way of ['I_plane_mm4', 'I_out_mm4', 'J_mm4'] as const) expect(loose.bars.top[section][way]).toBeLessThanOrEqual(held.bars.top[section][way]);
    }), { numRuns: 20 });
  });

  test('a long frame may lose by them: screws work on long bars more than on short ones, and the corners of a stiffer long bar hold the short ones less', () => {
    const size = { stock: 'square-38x38', lay: 'flat', plies: 3, stack: 'side-by-side', use: 'screw-8x64', every: 62 };
    const [held, loose] = [built('screws', size, 1495, 402), built('none', size, 1495, 402)];
    const gain = (bar: 'top' | 'left'): number => held.bars[bar].section_stability.I_plane_mm4 / loose.bars[bar].section_stability.I_plane_mm4;
    expect(gain('top')).toBeGreaterThan(1.5 * gain('left'));
    expect(factor(loose)).toBeGreaterThan(1.1 * factor(held));
  });
});
