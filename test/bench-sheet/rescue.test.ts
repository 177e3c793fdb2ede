import { describe, expect, test } from 'vitest';
import { evenGive } from '../../src/base/joint-give.js';
import { planWith, tryCure, unpulledLift } from '../../src/bench-sheet/rescue-cures.js';
import { liftOfShear_mm, shearOfEasing_N_per_mm } from '../../src/bench-sheet/rescue.js';
import { reopen } from '../../src/bench-sheet/rescue-reopen.js';
import { measuredTwist, curveAt } from '../../src/bench-sheet/rescue-twist.js';
import type { FrameShape } from '../../src/model/frame-shape.js';
import { buildModel } from '../../src/model/build-model.js';
import { liftFrom } from '../../src/risk/lift-curve.js';
import { solveLiftCompliance } from '../../src/solve/analyse-frame.js';
import { solveModel } from '../../src/solve/solve-model.js';
import { promisedBy } from './audited.js';

const { model, solution } = promisedBy({ face: { width: '900 mm', height: '600 mm' }, bars: { stock: 'strip-19x38', lay: 'flat' }, cloth: { pull: '100 N/m' } });

describe('the twist that was read', () => {
  const twist = measuredTwist(model, solution, 6, 1);
  test('its parts make the lift that was read, at no pull and under it', () => {
    expect(unpulledLift(twist, solution)).toBeCloseTo(twist.unpulled_mm, 9);
    expect(liftFrom(curveAt(solution, 1), twist.unpulled_mm)).toBeCloseTo(6, 9);
    expect(twist.unpulled_mm).toBeLessThan(6);
  });

  test('every cure flattens the frame and adds to its reserve, as a full solve of the changed frame says', () => {
    const before = 0.67 * solution.peak_factor!;
    for (const cure of ['brace', 'gusset', 'crossbar', 'second-ply'] as const) {
      const found = tryCure(model, twist, cure)!;
      expect(found.lift_mm, cure).toBeGreaterThan(0);
      expect(found.lift_mm, cure).toBeLessThan(6);
      const changed = buildModel(planWith(model.plan, cure)!, model.shelf);
      expect(found.reserve, cure).toBeCloseTo(0.67 * solveModel(changed).peak_factor!, 9);
      expect(found.reserve, cure).toBeGreaterThan(before);
    }
  });

  test('a second ply leaves what two compliances leave: the lift falls as the frame grows stiffer against it', () => {
    const pure = { unpulled_mm: 4, warps: [{ member: 'left', kind: 'twist' as const, per_m: 0.02 }] };
    const changed = buildModel(planWith(model.plan, 'crossbar')!, model.shelf);
    const after = solveModel(changed);
    // A crossbar carries none of the warp: the moment the twisted bar presses with stays, only the frame's answer to it changes, as its torque under a lifting force does.
    const ratio = unpulledLift(pure, after) / unpulledLift(pure, solution);
    const softer = solveLiftCompliance(changed.shape, { x: 0, y: 0 })! / solveLiftCompliance(model.shape, { x: 0, y: 0 })!;
    expect(ratio).toBeLessThan(1);
    expect(Math.abs(ratio - softer)).toBeLessThan(0.1);
  });

  test('never offers what the frame has', () => {
    expect(planWith({ ...model.plan, crossbars: [{ runs: 'upright', at: 0.5, stock: 'strip-19x38', lay: 'flat', plies: 1, setback_mm: 0, give: null }] }, 'crossbar')).toBeNull();
    expect(planWith({ ...model.plan, bars: { ...model.plan.bars, plies: 2 } }, 'second-ply')).toBeNull();
  });
});

/** Bars that only twist, corners rigid; sides unequal. */
describe('easing the cloth along a diagonal, against closed forms', () => {
  const [a, b, e] = [820, 540, 11];
  const bar = { ...model.shape.bars.top, I_plane_mm4: 1e12, I_out_mm4: 1e12, A_mm2: 1e9 };
  const rigid = { 'top-left': evenGive(0), 'top-right': evenGive(0), 'bottom-left': evenGive(0), 'bottom-right': evenGive(0) };
  const twisting: FrameShape = { ...model.shape, span_x_mm: a, span_y_mm: b, bars: { top: bar, bottom: bar, left: bar, right: bar }, eccentricity_mm: { top: e, bottom: e, left: e, right: e }, corner_give: rigid, crossbars: [], braces: [] };

  test('shear along the front edges: y = 2 S e ÷ 2GJ(1/(ab²) + 1/(a²b))', () => {
    const { G_MPa, J_mm4 } = bar;
    const S = 0.03;
    const k = 2 * G_MPa * J_mm4 * (1 / (a * b ** 2) + 1 / (a ** 2 * b));
    expect(liftOfShear_mm(twisting, S)! / ((2 * S * e) / k)).toBeCloseTo(1, 2);
  });

  test('the shear that a pull p with q of it let go along one diagonal leaves: half of q p × sin 2α, as Mohr’s circle has it', () => {
    // Stresses p along the one diagonal's right angle and p − q p along it, turned to the sides of the frame by the tensor itself.
    const [p, q] = [0.2, 0.3];
    const alpha = Math.atan2(b, a);
    const [c, s] = [Math.cos(alpha), Math.sin(alpha)];
    const along = p * (1 - q);
    const xy = along * c * s - p * s * c;
    expect(shearOfEasing_N_per_mm(twisting, p, q)).toBeCloseTo(Math.abs(xy), 12);
  });
});

/** Four equal bars a × a with corners rigid and bars so stiff in bending that they only twist: lift stiffness 2GJ(1/(ab²) + 1/(a²b)), z = c x y. */
describe('opening one corner of four equal bars, against the closed form', () => {
  const [a, b] = [700, 500];
  const bar = { ...model.shape.bars.top, I_plane_mm4: 1e12, I_out_mm4: 1e12, A_mm2: 1e9 };
  const stiff: FrameShape = {
    ...model.shape, span_x_mm: a, span_y_mm: b, bars: { top: bar, bottom: bar, left: bar, right: bar },
    corner_give: { 'top-left': evenGive(0), 'top-right': evenGive(0), 'bottom-left': evenGive(0), 'bottom-right': evenGive(0) }, crossbars: [], braces: [],
  };
  const { G_MPa, J_mm4 } = bar;

  test('the closed frame’s stiffness', () => {
    const k = 2 * G_MPa * J_mm4 * (1 / (a * b ** 2) + 1 / (a ** 2 * b));
    expect(solveLiftCompliance(stiff, { x: 0, y: 0 })! * k).toBeCloseTo(1, 2);
  });

  test('the open frame is half as stiff, so it is bent past flat by its own lift', () => {
    const even = { unpulled_mm: 0, warps: (['left', 'bottom'] as const).map((member) => ({ member, kind: 'twist' as const, per_m: member === 'bottom' ? 0.02 : -0.02 })) };
    const found = reopen(stiff, even, 'top-right')!;
    // Only left and bottom still twist: bottom has turned by y/b over a, left by y/a over b, so y = (k₁ τ a b + k₂ τ a b)/(k₁ + k₂) = τ a b.
    expect(Math.abs(found.past_flat_mm)).toBeCloseTo(0.02e-3 * a * b, 1);
    expect(found.left_per_mm).toBeCloseTo(0.5, 2);
  });

  test('if all four bars share in the twist alike, that is the lift itself', () => {
    const shared = { unpulled_mm: 0, warps: (['top', 'bottom', 'left', 'right'] as const).map((member) => ({ member, kind: 'twist' as const, per_m: member === 'top' || member === 'bottom' ? 0.02 : -0.02 })) };
    for (const corner of ['top-left', 'top-right', 'bottom-left', 'bottom-right'] as const) expect(Math.abs(reopen(stiff, shared, corner)!.past_flat_mm)).toBeCloseTo(0.02e-3 * a * b, 1);
  });
});
