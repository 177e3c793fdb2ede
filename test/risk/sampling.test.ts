import { describe, expect, it } from 'vitest';
import { barNames } from '../../src/base/names.js';
import { barRisk, liftChance, liftRisk } from '../../src/risk/closed-form.js';
import { chanceBeyond } from '../../src/risk/normal.js';
import { normalDeviates } from '../../src/risk/normal-deviates.js';
import type { Estimate } from '../../src/risk/order-statistics.js';
import { sampleQuantile, sampleShare } from '../../src/risk/order-statistics.js';
import { sampleWarp, type SampleSettings } from '../../src/risk/sample.js';
import { barWarps } from '../../src/risk/spread.js';
import { warpTerms, type WarpTerm } from '../../src/risk/terms.js';
import { madeUpInfluence, madeUpModel, proposedAssumptions, proposedSpread, solvedInfluence, type MadeUp } from './made-up-frame.js';

const settings: SampleSettings = { seed: 11, samples: 20_000, bar_bow_limit_mm: { top: 0.8, bottom: 0.9, left: 0.7, right: 0.75 } };

function termsOf(of: Partial<MadeUp>, drying_pct: number, invented = false): readonly WarpTerm[] {
  const model = madeUpModel(of);
  const influence = invented ? madeUpInfluence(of.crossbars ?? 0) : solvedInfluence(model);
  return warpTerms(barWarps(model, { drying_pct, assumptions: proposedAssumptions }), influence);
}

function within4({ value, se }: Estimate, truth: number): void {
  expect(se).toBeGreaterThan(0);
  expect(Math.abs(value - truth)).toBeLessThan(4 * se);
}

const boards = [{ for: 'top', ply: 1, twist_rad_per_m: 0.011, bow_per_m: 0.003, crook_per_m: null }] as const;
const cases: readonly [string, readonly WarpTerm[]][] = [
  ['four plain strips', termsOf({}, 0)],
  ['wet unsorted strips, two crossbars and braces', termsOf({ chosen: 'unsorted', crossbars: 2 }, 5)],
  ['opposed glued pairs on edge, one crossbar', termsOf({ plies: 2, lay: 'edge', pairing: 'opposed', crossbars: 1 }, 3)],
  ['a measured board, screwed pairs', termsOf({ plies: 2, bond: 'screws', boards }, 2)],
  ['invented influence numbers without any symmetry', termsOf({ crossbars: 2 }, 4, true)],
];

describe.each(cases)('closed form and sampling agree: %s', (_, terms) => {
  it.each([11, 12, 4711])('within four standard errors (seed %i)', (seed) => {
    const sample = sampleWarp(terms, { ...settings, seed });
    const lift = liftRisk(terms);
    const lifts = sampledLifts(terms, seed);
    const n = lifts.length;
    const mean = lifts.reduce((sum, y) => sum + y, 0) / n;
    within4({ value: mean, se: lift.sd / Math.sqrt(n) }, lift.mean);
    within4({ value: Math.sqrt(lifts.reduce((sum, y) => sum + (y - mean) ** 2, 0) / n), se: lift.sd / Math.sqrt(2 * n) }, lift.sd);
    const sizes = lifts.map(Math.abs);
    within4(sampleShare(sizes.filter((y) => y > 3).length, n), liftChance(lift, 3));
    within4(sampleQuantile(sizes, 0.9), lift.p90_mm);
    const risk = barRisk(terms, 'bow');
    for (const bar of barNames) {
      within4(sample.bow[bar].station_p90_mm, risk[bar].p90_mm);
      expect(sample.bow[bar].p90_mm.value).toBeGreaterThanOrEqual(sample.bow[bar].station_p90_mm.value);
      expect(sample.bow[bar].steadied_p90_mm).toBeGreaterThanOrEqual(risk[bar].p90_mm);
      expect(Math.abs(sample.bow[bar].steadied_p90_mm - sample.bow[bar].p90_mm.value)).toBeLessThan(4 * sample.bow[bar].p90_mm.se);
    }
  });
});

/** Corner lifts of 20,000 frames, every term drawn. */
function sampledLifts(terms: readonly WarpTerm[], seed: number): Float64Array {
  const draws = new Float64Array(20_000 * terms.length);
  normalDeviates(seed)(draws);
  return Float64Array.from({ length: 20_000 }, (_, n) => terms.reduce((sum, { lift, mean_per_m, sd_per_m }, j) => sum + lift * (mean_per_m + sd_per_m * draws[n * terms.length + j]!), 0));
}

/** The same sampling written the plain way: every station of every bar, nothing skipped, no few shapes. */
function plainSample(terms: readonly WarpTerm[], seed: number, samples: number): { p90: Record<string, number>; any: number } {
  const active = terms.filter((term) => term.lift !== 0 || barNames.some((bar) => term.bow[bar].some((value) => value !== 0)));
  const draw = new Float64Array(active.length + (active.length % 2));
  const fill = normalDeviates(seed);
  const largest = Object.fromEntries(barNames.map((bar) => [bar, new Float64Array(samples)]));
  let any = 0;
  for (let n = 0; n < samples; n++) {
    fill(draw);
    for (const bar of barNames) {
      let most = 0;
      for (let s = 0; s < 17; s++) {
        let departure = terms.reduce((sum, term) => sum + (term.bow[bar][s] as number) * term.mean_per_m, 0);
        active.forEach((term, j) => (departure += (term.bow[bar][s] as number) * term.sd_per_m * (draw[j] as number)));
        most = Math.max(most, Math.abs(departure));
      }
      (largest[bar] as Float64Array)[n] = most;
    }
    if (barNames.some((bar) => ((largest[bar] as Float64Array)[n] as number) > settings.bar_bow_limit_mm[bar])) any++;
  }
  return { p90: Object.fromEntries(barNames.map((bar) => [bar, sampleQuantile(largest[bar] as Float64Array, 0.9).value])), any: any / samples };
}

describe('what is skipped', () => {
  it.each(cases)('changes nothing that is reported: %s', (_, terms) => {
    const samples = 6000;
    const quick = sampleWarp(terms, { ...settings, samples });
    const plain = plainSample(terms, settings.seed, samples);
    for (const bar of barNames) expect(quick.bow[bar].p90_mm.value / (plain.p90[bar] as number)).toBeCloseTo(1, 2.5);
    expect(Math.abs(quick.any_bow_chance.value - plain.any)).toBeLessThan(0.002);
  });

  it('finds the larger of two independent places along one bar', () => {
    const flat = new Float64Array(17);
    const at = (station: number): Float64Array => Float64Array.from(flat, (_, s) => (s === station ? 1 : 0));
    const base = (termsOf({}, 0) as readonly WarpTerm[])[0] as WarpTerm;
    const none = { top: flat, bottom: flat, left: flat, right: flat };
    const terms = [4, 12].map((station): WarpTerm => ({ ...base, mean_per_m: 0, sd_per_m: 1, lift: 0, bow: { ...none, left: at(station) } }));
    const { p90_mm, steadied_p90_mm } = sampleWarp(terms, { ...settings, samples: 100_000 }).bow.left;
    // The larger of two independent sizes stays below q when both do: each with probability √0.9.
    let q = 1.9;
    for (let step = 0; step < 50; step++) q += (chanceBeyond(0, 1, q) - (1 - Math.sqrt(0.9))) * 4;
    within4(p90_mm, q);
    expect(Math.abs(steadied_p90_mm - q)).toBeLessThan(4 * p90_mm.se);
  });
});

describe('board by board', () => {
  it('drawing each ply with its pairing by a Cholesky factor gives the spread that the bars’ sums have', () => {
    const rho = -0.8;
    const model = madeUpModel({ plies: 2, pairing: 'opposed', bond: 'none', stack: 'front-to-back' });
    const [out] = barWarps(model, { drying_pct: 0, assumptions: proposedAssumptions }).filter((warp) => warp.member === 'top' && warp.kind === 'out');
    const { sd } = proposedSpread.plain.bow_per_m;
    const n = 200_000;
    const draw = new Float64Array(2 * n);
    normalDeviates(3)(draw);
    let squares = 0;
    for (let i = 0; i < 2 * n; i += 2) {
      const first = sd * (draw[i] as number);
      const second = sd * (rho * (draw[i] as number) + Math.sqrt(1 - rho ** 2) * (draw[i + 1] as number));
      squares += ((first + second) / 2) ** 2;
    }
    expect(squares / n / (out?.chosen_var ?? 0)).toBeCloseTo(1, 1.5);
  });
});

describe('seeds', () => {
  it('give the same answer again, and another seed another', () => {
    const terms = termsOf({ crossbars: 1 }, 2);
    expect(sampleWarp(terms, settings)).toEqual(sampleWarp(terms, settings));
    expect(sampleWarp(terms, settings).bow.top.p90_mm.value).not.toBe(sampleWarp(terms, { ...settings, seed: 12 }).bow.top.p90_mm.value);
  });

  it('work for any number of samples', () => {
    for (const samples of [1, 2, 3999]) {
      const sample = sampleWarp(termsOf({}, 0), { ...settings, samples });
      for (const bar of barNames) expect(Number.isFinite(sample.bow[bar].steadied_p90_mm)).toBe(true);
    }
  });
});
