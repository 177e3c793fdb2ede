/**
 * Glued pair of equal plies. Source: computed for this project and checked with an independent three-dimensional beam program and a second
 * series (reference rows laminate-face-glued-bow, laminate-face-glued-twist). Units: curvature 1/m, torsion constants m⁴.
 * Bow: κ = (κ1 + κ2)/8 across the glue line. Twist: τ = (J1 τ1 + J2 τ2)/J_total, two 19 × 38 mm → 38 × 38 mm.
 */
import { describe, expect, it } from 'vitest';
import { torsionConstant } from '../../src/model/section.js';
import { barWarps } from '../../src/risk/spread.js';
import { madeUpModel, proposedAssumptions } from '../risk/made-up-frame.js';

const measured = (bows: readonly [number, number], twists: readonly [number, number] = [0, 0]) =>
  barWarps(
    madeUpModel({
      plies: 2,
      lay: 'edge',
      stack: 'side-by-side',
      bond: 'glue',
      boards: bows.map((bow_per_m, i) => ({ for: 'top', ply: i + 1, bow_per_m, twist_rad_per_m: twists[i] as number, crook_per_m: bow_per_m })),
    }),
    { drying_pct: 0, assumptions: proposedAssumptions },
  ).filter(({ member }) => member === 'top');
const of = (warps: ReturnType<typeof measured>, kind: string): number => warps.find((warp) => warp.kind === kind)?.mean_per_m ?? NaN;

describe('glued pair', () => {
  it('bow across the glue line: same sense 0.005, opposed 0', () => {
    expect(of(measured([0.02, 0.02]), 'plane')).toBeCloseTo(0.005, 9);
    expect(of(measured([0.02, -0.02]), 'plane')).toBeCloseTo(0, 9);
  });

  it('bow along the glue line: the mean of the two', () => {
    expect(of(measured([0.02, 0.01]), 'out')).toBeCloseTo(0.015, 9);
  });

  it('twist of two 19 × 38 glued to 38 × 38 is 0.40668 of their mean', () => {
    expect((torsionConstant(19, 38) * 1e-12) / 5.9604e-8).toBeCloseTo(1, 4);
    expect((torsionConstant(38, 38) * 1e-12) / 2.93122e-7).toBeCloseTo(1, 4);
    const twists = [0.012, 0.03] as const;
    expect(of(measured([0, 0], twists), 'twist') / ((twists[0] + twists[1]) / 2) / 0.40668).toBeCloseTo(1, 4);
  });
});
