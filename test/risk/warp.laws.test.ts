import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { causeInWords } from '../../src/base/warp-words.js';
import { barNames, type BarName } from '../../src/base/names.js';
import { solveInfluence } from '../../src/solve/analyse-frame.js';
import type { FrameShape } from '../../src/model/frame-shape.js';
import { liftCauses } from '../../src/risk/causes.js';
import { barRisk, liftChance, liftRisk } from '../../src/risk/closed-form.js';
import { chanceBeyond, foldedQuantile } from '../../src/risk/normal.js';
import { barWarps } from '../../src/risk/spread.js';
import { warpTerms, type WarpTerm } from '../../src/risk/terms.js';
import { madeUpInfluence, madeUpModel, madeUpShape, proposedAssumptions, type MadeUp } from './made-up-frame.js';

const anyPlan = fc.record({
  chosen: fc.constantFrom('unsorted', 'plain', 'picked'),
  plies: fc.integer({ min: 1, max: 4 }),
  lay: fc.constantFrom('flat', 'edge'),
  stack: fc.constantFrom('side-by-side', 'front-to-back'),
  bond: fc.constantFrom('none', 'glue', 'glue+screws'),
  pairing: fc.constantFrom('opposed', 'unsorted', 'matched'),
  crossbars: fc.integer({ min: 0, max: 2 }),
}) as fc.Arbitrary<Partial<MadeUp> & { crossbars: number }>;

function termsOf(of: Partial<MadeUp>, drying_pct = 0): readonly WarpTerm[] {
  return warpTerms(barWarps(madeUpModel(of), { drying_pct, assumptions: proposedAssumptions }), madeUpInfluence(of.crossbars ?? 0));
}

const bowSd = (terms: readonly WarpTerm[], bar: BarName): number => {
  const square = (s: number): number => terms.reduce((sum, term) => sum + ((term.bow[bar][s] as number) * term.sd_per_m) ** 2, 0);
  return Math.sqrt(Math.max(...Array.from({ length: 17 }, (_, s) => square(s))));
};
const hair = 1 + 1e-9;

describe('laws of natural warp', () => {
  it('better chosen boards never lift a corner or bow a bar more', () => {
    fc.assert(
      fc.property(anyPlan, fc.double({ min: 0, max: 12, noNaN: true }), (of, drying_pct) => {
        const [picked, plain, unsorted] = (['picked', 'plain', 'unsorted'] as const).map((chosen) => termsOf({ ...of, chosen }, drying_pct)) as [WarpTerm[], WarpTerm[], WarpTerm[]];
        for (const [better, worse] of [[picked, plain], [plain, unsorted]] as const) {
          expect(liftRisk(better).p90_mm).toBeLessThanOrEqual(liftRisk(worse).p90_mm * hair);
          expect(liftRisk(better).sd).toBeLessThanOrEqual(liftRisk(worse).sd * hair);
          for (const bar of barNames) expect(barRisk(better, 'bow')[bar].p90_mm).toBeLessThanOrEqual(barRisk(worse, 'bow')[bar].p90_mm * hair);
        }
      }),
      { numRuns: 40 },
    );
  });

  it('drier boards are never worse, and boards drier than the room gain nothing', () => {
    fc.assert(
      fc.property(anyPlan, fc.double({ min: -5, max: 15, noNaN: true }), fc.double({ min: 0, max: 10, noNaN: true }), (of, drying_pct, more) => {
        const dry = termsOf(of, drying_pct);
        const wet = termsOf(of, drying_pct + more);
        expect(liftRisk(dry).p90_mm).toBeLessThanOrEqual(liftRisk(wet).p90_mm * hair);
        for (const bar of barNames) expect(barRisk(dry, 'crook')[bar].p90_mm).toBeLessThanOrEqual(barRisk(wet, 'crook')[bar].p90_mm * hair);
        if (drying_pct <= 0) expect(liftRisk(dry)).toEqual(liftRisk(termsOf(of, 0)));
      }),
      { numRuns: 40 },
    );
  });

  it('opposed plies never bow more than unsorted ones, nor these more than matched ones; twist does not care', () => {
    fc.assert(
      fc.property(anyPlan, (of) => {
        const [opposed, unsorted, matched] = (['opposed', 'unsorted', 'matched'] as const).map((pairing) => termsOf({ ...of, pairing })) as [WarpTerm[], WarpTerm[], WarpTerm[]];
        for (const bar of barNames) {
          expect(bowSd(opposed, bar)).toBeLessThanOrEqual(bowSd(unsorted, bar) * hair);
          expect(bowSd(unsorted, bar)).toBeLessThanOrEqual(bowSd(matched, bar) * hair);
        }
        const twist = (terms: readonly WarpTerm[]) => terms.filter((term) => term.warp.kind === 'twist').map((term) => term.warp);
        expect(twist(opposed)).toEqual(twist(matched));
      }),
      { numRuns: 40 },
    );
  });

  it('a glued bar never bows, crooks or twists more than the same plies loose', () => {
    fc.assert(
      fc.property(anyPlan, (of) => {
        const glued = barWarps(madeUpModel({ ...of, bond: 'glue' }), { drying_pct: 2, assumptions: proposedAssumptions });
        const loose = barWarps(madeUpModel({ ...of, bond: 'none' }), { drying_pct: 2, assumptions: proposedAssumptions });
        glued.forEach((warp, i) => {
          const other = loose[i] as typeof warp;
          expect(warp.chosen_var + warp.drying_var).toBeLessThanOrEqual((other.chosen_var + other.drying_var) * hair);
          expect(Math.abs(warp.mean_per_m)).toBeLessThanOrEqual(Math.abs(other.mean_per_m) * hair);
        });
      }),
      { numRuns: 60 },
    );
  });

  it('the causes of the lift make one whole', () => {
    fc.assert(
      fc.property(anyPlan, fc.double({ min: 0, max: 9, noNaN: true }), (of, drying_pct) => {
        const causes = liftCauses(termsOf(of, drying_pct));
        expect(causes.reduce((sum, cause) => sum + cause.share, 0)).toBeCloseTo(1, 8);
        expect(new Set(causes.map(causeInWords)).size).toBe(causes.length);
        if (drying_pct === 0) expect(causes.some((cause) => cause.part === 'drying')).toBe(false);
      }),
      { numRuns: 40 },
    );
  });

  it('the folded quantile grows with the mean’s size and with the spread, and the chance falls with the limit', () => {
    const size = fc.double({ min: 0, max: 50, noNaN: true });
    fc.assert(
      fc.property(size, fc.double({ min: 1e-3, max: 50, noNaN: true }), size, (mean, sd, more) => {
        const q = foldedQuantile(mean, sd, 0.9);
        expect(foldedQuantile(-mean, sd, 0.9)).toBe(q);
        expect(foldedQuantile(mean + more, sd, 0.9)).toBeGreaterThanOrEqual(q / hair);
        expect(foldedQuantile(mean, sd + more, 0.9)).toBeGreaterThanOrEqual(q / hair);
        expect(chanceBeyond(mean, sd, q + more)).toBeLessThanOrEqual(0.1 * hair);
      }),
    );
  });
});

describe('laws of natural warp in a solved frame', () => {
  const pull = { x: 0.2, y: 0.15 };
  const solvedTerms = (shape: FrameShape, of: Partial<MadeUp>, drying_pct = 3): readonly WarpTerm[] => {
    const influence = solveInfluence(shape, pull);
    if (influence === null) throw new Error('the frame of this law must be stable');
    return warpTerms(barWarps(madeUpModel(of), { drying_pct, assumptions: proposedAssumptions }), influence);
  };

  it('equal twist in all four bars of a square lifts nothing', () => {
    const shape = madeUpShape(madeUpModel());
    const square: FrameShape = { ...shape, span_x_mm: 700, span_y_mm: 700 };
    const influence = solveInfluence(square, { x: 0.2, y: 0.2 });
    const lifts = (influence ?? []).filter(({ kind }) => kind === 'twist').map(({ corner_lift }) => corner_lift);
    expect(lifts).toHaveLength(4);
    expect(Math.abs(lifts.reduce((sum, lift) => sum + lift, 0))).toBeLessThan(1e-6 * Math.abs(lifts[0] as number));
    const lift = liftRisk(warpTerms(barWarps(madeUpModel({ chosen: 'unsorted' }), { drying_pct: 4, assumptions: proposedAssumptions }), influence ?? []));
    expect(Math.abs(lift.mean)).toBeLessThan(1e-6 * lift.sd);
  });

  it('an oblong has a mean lift when its boards share a hand', () => {
    const lift = liftRisk(solvedTerms(madeUpShape(madeUpModel()), {}));
    expect(Math.abs(lift.mean)).toBeGreaterThan(0.1 * lift.sd);
  });

  it('a mirrored plan has the same mean, spread and chance', () => {
    const shape = madeUpShape(madeUpModel({ crossbars: 2 }));
    const mirrored: FrameShape = { ...shape, crossbars: shape.crossbars.map((crossbar) => (crossbar.runs === 'upright' ? { ...crossbar, at: 1 - crossbar.at } : crossbar)) };
    const here = solvedTerms(shape, { crossbars: 2 });
    const there = solvedTerms(mirrored, { crossbars: 2 });
    expect(liftRisk(there).sd / liftRisk(here).sd).toBeCloseTo(1, 8);
    expect(liftRisk(there).p90_mm / liftRisk(here).p90_mm).toBeCloseTo(1, 8);
    expect(liftChance(liftRisk(there), 3)).toBeCloseTo(liftChance(liftRisk(here), 3), 8);
    expect(barRisk(there, 'bow').left.p90_mm / barRisk(here, 'bow').right.p90_mm).toBeCloseTo(1, 6);
  });

  it('curvature out of the plane and in it do not mix', () => {
    const terms = solvedTerms(madeUpShape(madeUpModel({ crossbars: 2 })), { crossbars: 2 });
    const most = (line: ArrayLike<number>): number => Math.max(...Array.from(line, Math.abs));
    for (const term of terms) {
      for (const bar of barNames) {
        const stray = term.warp.kind === 'plane' ? term.bow[bar] : term.crook[bar];
        expect(most(stray)).toBeLessThan(1e-6);
      }
    }
  });
});
