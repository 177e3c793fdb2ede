/**
 * Glued pair of equal plies. Source: computed for this project and checked with an independent three-dimensional beam program and a second
 * series (reference rows laminate-face-glued-bow, laminate-face-glued-twist). Units: curvature 1/m, torsion constants m⁴.
 * Bow: κ = (κ1 + κ2)/8 across the glue line. Twist: τ = (J1 τ1 + J2 τ2)/J_total, two 19 × 38 mm → 38 × 38 mm.
 */
import { describe, it } from 'vitest';
import { torsionConstant } from '../../src/model/section.js';
import { barWarps } from '../../src/risk/spread.js';
import { madeUpModel, proposedAssumptions } from '../risk/made-up-frame.js';
import { expectDecimals, expectShare } from './recorded.js';

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
const source = 'independent program';
const of = (warps: ReturnType<typeof measured>, kind: string): number => warps.find((warp) => warp.kind === kind)?.mean_per_m ?? NaN;

describe('glued pair', () => {
  it('bow across the glue line: same sense 0.005, opposed 0', () => {
    expectDecimals(of(measured([0.02, 0.02]), 'plane'), 0.005, 9, source);
    expectDecimals(of(measured([0.02, -0.02]), 'plane'), 0, 9, source);
  });

  it('bow along the glue line: the mean of the two', () => {
    expectDecimals(of(measured([0.02, 0.01]), 'out'), 0.015, 9, source);
  });

  it('twist of two 19 × 38 glued to 38 × 38 is 0.40668 of their mean', () => {
    expectShare(torsionConstant(19, 38) * 1e-12, 5.9604e-8, 5e-5, source);
    expectShare(torsionConstant(38, 38) * 1e-12, 2.93122e-7, 5e-5, source);
    const twists = [0.012, 0.03] as const;
    expectShare(of(measured([0, 0], twists), 'twist') / ((twists[0] + twists[1]) / 2), 0.40668, 5e-5, source);
  });
});
