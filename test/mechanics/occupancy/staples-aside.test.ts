import { describe, expect, test } from 'vitest';
import { pickAngle } from '../../../src/mechanics/bench/pick-supply.js';
import { staplesBySteel } from '../../../src/mechanics/occupancy/staple-line.js';
import { staplesAside } from '../../../src/mechanics/occupancy/staples-aside.js';
import { planCornerNails } from '../../../src/mechanics/fasteners/corner-nails.js';
import { planBraceScrews } from '../../../src/mechanics/fasteners/brace-fastening.js';
import { demoModel } from '../fasteners/demo-model.js';

const face = { width: '830 mm', height: '610 mm' };
const gussets = { face, bars: { stock: 'square-38x38', lay: 'flat' }, corners: { brace: { kind: 'ply-gusset', leg: '170 mm' } }, cloth: { fixing: { to: 'back', every: '41 mm' } } };

describe('staples and the heads of screws in their line', () => {
  test('gusset screws stand on the line of the staples on the back: no staple comes nearer than head and crown take', () => {
    const model = demoModel(gussets);
    const screws = planBraceScrews(model)!;
    const aside = staplesAside(model);
    const from_corner = screws.rows[0]!.places_mm;
    const clear_mm = screws.shank_mm + 5;
    const near = (every: typeof aside.order): number => every.filter(({ side, at }) => {
      const length = side === 'top' || side === 'bottom' ? 830 : 610;
      return from_corner.some((mm) => Math.min(Math.abs(at * length - mm), Math.abs(length - at * length - mm)) < clear_mm - 1e-6);
    }).length;
    expect(aside.heads).toEqual(['gusset-screw']);
    expect(aside.moved).toBeGreaterThan(0);
    expect(aside.left).toBe(0);
    expect(aside.most_mm).toBeLessThanOrEqual(clear_mm);
    expect(near(aside.order)).toBe(0);
  });
  test('nothing is moved where the cloth is fixed to the edge, or no gusset lies on the back', () => {
    expect(staplesAside(demoModel({ ...gussets, corners: {} })).moved).toBe(0);
    expect(staplesAside(demoModel({ ...gussets, cloth: { fixing: { to: 'edge' } } })).heads).not.toContain('gusset-screw');
  });
  test('the nails of the corners lie under staples on the edge, their heads no wider than they are', () => {
    const model = demoModel({ face, bars: { stock: 'strip-19x38', lay: 'edge' }, cloth: { fixing: { to: 'edge', every: '20 mm' } } });
    const aside = staplesAside(model);
    const [nail_mm] = planCornerNails(model)!.rows[0]!.places_mm;
    expect(aside.heads).toEqual(['corner-nail']);
    const outermost = Math.min(...aside.order.filter(({ side }) => side === 'top').map(({ at }) => at * 830));
    expect(Math.abs(outermost - nail_mm!)).toBeGreaterThan(5);
  });
  test('beside the steel of an angle, which reaches as far as the angle that is bought, the staples are off the line and stay where they are', () => {
    const model = demoModel({ face, bars: { stock: 'square-38x38', lay: 'flat' }, corners: { cut: 'half-lap', brace: { kind: 'steel-angle', leg: '100 mm' } } });
    expect(staplesBySteel(model)!.reach_mm).toBe(pickAngle(model)!.leg_mm);
    expect(staplesAside(model)).toMatchObject({ moved: 0, left: 0 });
  });
});
