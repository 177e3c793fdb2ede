import { describe, expect, test } from 'vitest';
import { cut_lean_sd_deg, liftParts } from '../../src/bench-sheet/lift-parts.js';
import { slipsAtTheBench } from '../../src/what-if/slips.js';
import { liftPerTilt_mm_per_rad } from '../../src/what-if/tilt-lift.js';
import { demoSolved } from '../mechanics/fasteners/demo-model.js';

const { model, solution } = demoSolved({ face: { width: '1140 mm', height: '690 mm' }, bars: { stock: 'square-38x38', lay: 'flat' } });
const rad = Math.PI / 180;

describe('a blade that leans', () => {
  test('half a degree at one joint: the worst corner’s lift for each radian, times that angle; the longer bar’s free end says how much is built in', () => {
    const slip = slipsAtTheBench(model, solution).find(({ id }) => id === 'saw-tilt')!;
    const worst = Math.max(...Object.values(liftPerTilt_mm_per_rad(model, solution.influence!)));
    expect(slip.corner_lift_mm).toBeCloseTo(worst * 0.5 * rad, 12);
    expect(slip.say).toContain(`${Math.round(1140 * Math.sin(0.5 * rad) * Math.sin(45 * rad) * 10) / 10} mm off the table`);
  });
  test('a joint has two cuts, so its lean spreads √2 as far as that of one', () => {
    const parts = liftParts(model, solution.influence!, null, 0).filter(({ kind }) => kind === 'corners');
    const perTilt = liftPerTilt_mm_per_rad(model, solution.influence!);
    expect(cut_lean_sd_deg).toBe(0.2);
    expect(parts.map(({ member, variance }) => [member, Math.sqrt(variance)])).toEqual(
      Object.entries(perTilt).map(([corner, lift]) => [corner, expect.closeTo(lift * Math.SQRT2 * 0.2 * rad, 12)]),
    );
  });
  test('corners known to be off square by more than that are believed instead', () => {
    const parts = liftParts(model, solution.influence!, null, 0.01).filter(({ kind }) => kind === 'corners');
    const perTilt = liftPerTilt_mm_per_rad(model, solution.influence!);
    expect(Math.sqrt(parts[0]!.variance)).toBeCloseTo(perTilt[parts[0]!.member as keyof typeof perTilt] * 0.01, 12);
  });
});
