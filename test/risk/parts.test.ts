import { inverse, Matrix } from 'ml-matrix';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gradientCurvature_per_m, publishedAnchors, spiralTwist_rad_per_m } from '../validation/warp-anchors.js';
import { causeInWords, readingInWords } from '../../src/base/warp-words.js';
import { boardState } from '../../src/risk/assess.js';
import { liftCauses } from '../../src/risk/causes.js';
import { fewShapes } from '../../src/risk/few-shapes.js';
import { plyKnown } from '../../src/risk/one-ply.js';
import { plyCorrelation, sumPlies } from '../../src/risk/pairing.js';
import { usefulReadings } from '../../src/risk/readings.js';
import { pulledFrame, softBoards } from '../../src/risk/lift-growth.js';
import { boardRemedies, whatHalves, type Remedy } from '../../src/risk/remedies.js';
import { barWarps } from '../../src/risk/spread.js';
import { warpTerms, type WarpTerm } from '../../src/risk/terms.js';
import type { BarWarp } from '../../src/risk/spread.js';
import { demoModel, demoSolved } from '../mechanics/fasteners/demo-model.js';
import { runs } from '../effort.js';

describe('boards paired in one bar', () => {
  const draw = fc.record({
    mean: fc.double({ min: -2, max: 2, noNaN: true }), sd: fc.double({ min: 0.1, max: 2, noNaN: true }), dry: fc.double({ min: -1, max: 1, noNaN: true }), dry_sd: fc.double({ min: 0, max: 1, noNaN: true }),
    reading_sd: fc.double({ min: 0, max: 0.5, noNaN: true }), rho: fc.constantFrom(-0.8, 0, 0.8, 0.3), readings: fc.array(fc.option(fc.double({ min: -3, max: 3, noNaN: true }), { nil: null }), { minLength: 1, maxLength: 4 }),
  });
  it('add up as equally correlated normals of which some are known: by the conditional mean and covariance of the whole', () => {
    fc.assert(fc.property(draw, ({ mean, sd, dry, dry_sd, reading_sd, rho, readings }) => {
      const n = readings.length;
      const correlation = plyCorrelation(rho, n);
      const sum = sumPlies({ chosen: { mean, sd }, drying: { mean: dry, sd: dry_sd }, readings, reading_sd, correlation });
      const S = (i: number, j: number): number => sd ** 2 * (i === j ? 1 : correlation);
      const [read, free] = [true, false].map((there) => readings.flatMap((r, i) => ((r !== null) === there ? [i] : [])));
      // Weight of each reading in the expected sum: 1 for itself and what the others follow it by.
      const gain = read!.length === 0 || free!.length === 0 ? null
        : new Matrix(free!.map((i) => read!.map((j) => S(i, j)))).mmul(inverse(new Matrix(read!.map((i) => read!.map((j) => S(i, j))))));
      const weight = read!.map((_, c) => 1 + free!.reduce((all, __, r) => all + (gain?.get(r, c) ?? 0), 0));
      const expected = read!.reduce((all, i, c) => all + weight[c]! * (readings[i]! - mean) + mean, 0) + free!.length * mean + n * dry;
      let left = free!.reduce((all, i) => all + free!.reduce((row, j) => row + S(i, j), 0), 0);
      if (gain !== null) left -= free!.reduce((all, _, r) => all + free!.reduce((row, j) => row + read!.reduce((part, m, c) => part + gain.get(r, c) * S(m, j), 0), 0), 0);
      expect(sum.mean).toBeCloseTo(expected, 9);
      expect(sum.chosen_var).toBeCloseTo(left, 9);
      expect(sum.reading_var).toBeCloseTo(weight.reduce((all, w) => all + (w * reading_sd) ** 2, 0), 9);
      expect(sum.drying_var).toBeCloseTo(n * dry_sd ** 2, 9);
    }), { numRuns: runs(800) });
  });
  it('three cannot oppose each other as two can: the same share of the variance is left', () => {
    expect([plyCorrelation(-0.8, 2), plyCorrelation(-0.8, 3), plyCorrelation(-0.8, 4), plyCorrelation(0.8, 4), plyCorrelation(-0.8, 1)]).toEqual([-0.8, -0.4, expect.closeTo(-0.8 / 3, 12), 0.8, -0.8]);
  });
});

describe('one board by itself', () => {
  const model = demoModel({ face: { width: '900 mm', height: '600 mm' }, bars: { stock: 'strip-19x38', lay: 'flat' }, lumber: { chosen: 'plain', moisture: '18 %' } });
  const state = boardState(model);
  const spread = model.bars.top.stock.spread;
  it('as chosen, turned either way: bow and crook about zero; drying adds the unsorted spread’s share', () => {
    const share = 0.05 * state.drying_pct;
    expect(state.drying_pct).toBeGreaterThan(2);
    const twist = plyKnown(model.bars.top, model, state, 'twist', null);
    expect(twist.mean).toBeCloseTo(spread.plain.twist_rad_per_m.mean + spread.unsorted.twist_rad_per_m.mean * share, 12);
    expect(twist.variance).toBeCloseTo(spread.plain.twist_rad_per_m.sd ** 2 + (spread.unsorted.twist_rad_per_m.sd * share) ** 2, 12);
    const bow = plyKnown(model.bars.top, model, state, 'bow', null);
    expect(bow.mean).toBe(0);
    expect(bow.variance).toBeCloseTo(spread.plain.bow_per_m.sd ** 2 + spread.plain.bow_per_m.mean ** 2 + share ** 2 * (spread.unsorted.bow_per_m.sd ** 2 + spread.unsorted.bow_per_m.mean ** 2), 12);
  });
  it('as read, with the error of reading; wetter rooms dry nothing', () => {
    const read = plyKnown(model.bars.top, model, { ...state, drying_pct: -3 }, 'crook', 0.004);
    expect(read).toEqual({ mean: 0.004, variance: state.assumptions.reading_curve_per_m ** 2 });
    expect(plyKnown(model.bars.top, model, { ...state, drying_pct: 0 }, 'twist', -0.01).variance).toBe(state.assumptions.reading_twist_rad_per_m ** 2);
  });
});

describe('lines along a bar in few shapes', () => {
  it('are made of them again; the shapes stand square on each other, longest first, and no more than are needed', () => {
    const a = Float64Array.from({ length: 9 }, (_, s) => Math.sin((Math.PI * s) / 8));
    const b = Float64Array.from({ length: 9 }, (_, s) => s * (s - 8));
    const lines = [[2, 0], [-1, 0.3], [0.5, 1], [0, -2], [3, 3]].map(([p, q]) => a.map((value, s) => p! * value + q! * b[s]!));
    const { rank, shapes, coefficients } = fewShapes(Float64Array.from(lines.flatMap((line) => [...line])), 9);
    expect([rank, shapes.length, coefficients.length]).toEqual([2, 18, 10]);
    const shape = (k: number): Float64Array => Float64Array.from(shapes.slice(9 * k, 9 * k + 9));
    const dot = (p: Float64Array, q: Float64Array): number => p.reduce((sum, value, s) => sum + value * q[s]!, 0);
    expect([dot(shape(0), shape(0)), dot(shape(0), shape(1)), dot(shape(1), shape(1))]).toEqual([expect.closeTo(1, 12), expect.closeTo(0, 12), expect.closeTo(1, 12)]);
    lines.forEach((line, j) => line.forEach((value, s) => expect(coefficients[j]! * shape(0)[s]! + coefficients[5 + j]! * shape(1)[s]!).toBeCloseTo(value, 9)));
    const longest = lines.reduce((p, q) => (dot(q, q) > dot(p, p) ? q : p));
    expect(Math.abs(dot(shape(0), longest))).toBeCloseTo(Math.sqrt(dot(longest, longest)), 9);
  });
  it('a thousandth of the longest line is left out, more is not; nothing gives nothing', () => {
    const rankOf = (columns: number, ...rows: number[]): number => fewShapes(Float64Array.from(rows), columns).rank;
    expect([rankOf(3, 100, 0, 0, 0, 0.099, 0), rankOf(3, 100, 0, 0, 0, 0.101, 0), rankOf(3, 0, 0, 0), rankOf(3), rankOf(0)]).toEqual([1, 2, 0, 0, 0]);
    expect(rankOf(2, 1, 0, 0, 1, 1, 1)).toBe(2);
  });
});

describe('causes of the corner’s lift', () => {
  const term = (member: string, from: BarWarp['from'], lift: number, chosen_var: number, drying_var = 0, reading_var = 0): WarpTerm =>
    ({ warp: { member, kind: 'twist', from, mean_per_m: 0, chosen_var, drying_var, reading_var }, mean_per_m: 0, sd_per_m: 0, lift, bow: {}, crook: {} }) as unknown as WarpTerm;
  it('opposite bars together, by what and whence, largest first, in shares of the whole variance', () => {
    const causes = liftCauses([term('top', 'twist', 2, 3), term('bottom', 'twist', -1, 4, 1), term('left', 'twist', 3, 2), term('crossbar-1', 'bow', 1, 0, 0, 2), term('crossbar-2', 'bow', 1, 0, 0, 1)]);
    // 2² · 3 + 1² · 4 = 16, 3² · 2 = 18, reading 2 + 1 = 3, drying 1: 38 in all.
    expect(causes.map((cause) => [causeInWords(cause), cause.share, cause.part, cause.members])).toEqual([
      ['twist of left as chosen', expect.closeTo(18 / 38, 12), 'chosen', ['left']],
      ['twist of top and bottom as chosen', expect.closeTo(16 / 38, 12), 'chosen', ['top', 'bottom']],
      ['bow of the crossbars as measured', expect.closeTo(3 / 38, 12), 'reading', ['crossbar-1', 'crossbar-2']],
      ['twist of bottom from drying after choosing', expect.closeTo(1 / 38, 12), 'drying', ['bottom']],
    ]);
    expect(liftCauses([])).toEqual([]);
  });
  it('two and more of under half a per cent stand together, one stands by itself, what is rounding is not told', () => {
    const big = term('top', 'twist', 1, 100);
    expect(liftCauses([big, term('left', 'bow', 1, 0.4), term('left', 'crook', 1, 0.45)]).map((cause) => [causeInWords(cause), cause.members])).toEqual([['twist of top as chosen', ['top']], ['everything else', ['left']]]);
    expect(liftCauses([big, term('left', 'bow', 1, 0.4), term('left', 'crook', 1, 0.6)]).map(causeInWords)).toEqual(['twist of top as chosen', 'crook of left as chosen', 'bow of left as chosen']);
    expect(liftCauses([big, term('left', 'bow', 1, 5e-8)])).toHaveLength(1);
    // Half a per cent itself, 5 of 1000, is not under it.
    expect(liftCauses([term('top', 'twist', 1, 990), term('left', 'bow', 1, 5), term('left', 'crook', 1, 5)])).toHaveLength(3);
    // Nor does it get lost where two others are: 991 + 5 + 2 + 2.
    const beside = liftCauses([term('top', 'twist', 1, 991), term('left', 'bow', 1, 5), term('left', 'crook', 1, 2), term('top', 'crook', 1, 2)]);
    expect(beside.map((cause) => [causeInWords(cause), cause.share])).toEqual([['twist of top as chosen', 0.991], ['bow of left as chosen', 0.005], ['everything else', expect.closeTo(0.004, 12)]]);
  });
});

describe('readings and remedies', () => {
  const plan = { face: { width: '1100 mm', height: '700 mm' }, bars: { stock: 'strip-19x38', lay: 'edge', plies: 2, bond: 'glue' }, lumber: { chosen: 'plain', moisture: '16 %' }, boards: [{ for: 'right', ply: 1, twist: '0.2 deg/m' }] };
  const { model, solution } = demoSolved(plan);
  const state = boardState(model);
  const variance = (of: typeof model, at = state): number => warpTerms(barWarps(of, at), solution.influence!).reduce((sum, term) => sum + (term.lift * term.sd_per_m) ** 2, 0);
  const terms = warpTerms(barWarps(model, state), solution.influence!);
  const readings = usefulReadings(model, terms, state.assumptions);

  it('each takes as much off the variance as the plan with that board read says', () => {
    expect(readings.map(({ of }) => readingInWords(of)).sort()).toEqual(['the moisture of the boards', ...['bottom', 'left', 'top'].flatMap((bar) => [1, 2].map((ply) => `the twist of ${bar}, ply ${ply}`)), 'the twist of right, ply 2'].sort());
    for (const [of, bar, ply] of [['the twist of left, ply 2', 'left', 2], ['the twist of top, ply 1', 'top', 1], ['the twist of right, ply 2', 'right', 2]] as const) {
      const read = demoModel({ ...plan, boards: [...plan.boards, { for: bar, ply, twist: '0.5 deg/m' }] });
      expect(readings.find((one) => readingInWords(one.of) === of)!.settles).toBeCloseTo(1 - variance(read) / variance(model), 9);
    }
    expect(readings.find(({ of }) => of === 'moisture')!.settles).toBeCloseTo(1 - variance(model, { ...state, drying_pct: 0 }) / variance(model), 9);
    expect(readings.every(({ settles }, i) => i === 0 || settles <= readings[i - 1]!.settles + 1e-6)).toBe(true);
  });
  it('nothing that varies, nothing to read', () => expect(usefulReadings(model, [], state.assumptions)).toEqual([]));

  it('drying first, picking, both: only what is not done yet and helps; the mildest that halves is told', () => {
    const told = (more: object): readonly string[] => {
      const { model: other, solution: solved } = demoSolved({ ...plan, boards: [], lumber: { chosen: 'plain', moisture: '16 %', ...more } });
      const frame = pulledFrame(solved)!;
      return boardRemedies(other, frame, boardState(other), 4).map(({ way, ratio }) => `${way} ${ratio < 1}`);
    };
    expect(told({})).toEqual(['dry true', 'pick true', 'dry-and-pick true']);
    expect(told({ chosen: 'picked' })).toEqual(['dry true']);
    // A twentieth of a percentage point above what they settle at: drying that is not worth half a per cent is not told.
    expect(told({ moisture: `${(16 - state.drying_pct + 0.05).toFixed(2)} %` })).toEqual(['pick true', 'dry-and-pick true']);
    expect(told({ moisture: '7 %' })).toEqual(['pick true']);
    expect(told({ chosen: 'picked', moisture: '7 %' })).toEqual([]);
    const remedy = (ratio: number): Remedy => ({ ratio }) as Remedy;
    expect([whatHalves([remedy(0.7), remedy(0.5), remedy(0.2)])?.ratio, whatHalves([remedy(0.51)])]).toEqual([0.5, null]);
  });
});

describe('how lifts grow with the pull', () => {
  const { model, solution } = demoSolved({ face: { width: '900 mm', height: '600 mm' }, bars: { stock: 'square-38x38', lay: 'flat' } });
  const { influence, stability } = solution;
  const at = (factor: number, first: number, numbers = influence) => pulledFrame({ influence: numbers, influence_unpulled: influence!, stability: { ...stability, load_factor: first, propeller: { factor, beta_per_mm2: 3e-6 } as never } });
  it('below the critical pull the pulled frame’s numbers are taken back to no pull by 1 − f; without a propeller they stand', () => {
    expect(at(4, 4)).toEqual({ influence, growth: { terms_share: 0.75, curve: { pull_share: 0.25, beta_per_mm2: 3e-6 } }, past_critical: false });
    expect(pulledFrame({ influence, influence_unpulled: influence!, stability: { ...stability, propeller: null } })).toEqual({ influence, growth: { terms_share: 1, curve: { pull_share: 0, beta_per_mm2: 0 } }, past_critical: false });
  });
  it('past it those of the frame without pull, where the corner leaves the plane first; else nothing', () => {
    expect(at(0.8, 0.8, null)).toMatchObject({ growth: { terms_share: 1, curve: { pull_share: 1.25, beta_per_mm2: 3e-6 } }, past_critical: true });
    expect([at(0.8, 0.7, null), at(1.1, 1.1, null), pulledFrame({ influence: null, influence_unpulled: influence!, stability: { ...stability, propeller: null } })]).toEqual([null, null, null]);
    expect(at(1, 1, null)?.past_critical).toBe(true);
  });
  it('soft boards are turned by 0.67 of the pull', () => {
    expect(softBoards({ pull_share: 0.5, beta_per_mm2: 2e-6 }, model)).toEqual({ pull_share: 0.5 / 0.67, beta_per_mm2: 2e-6 });
  });
});

describe('published anchors, worked out from what is printed', () => {
  it('curvature from a rise over a length, 8 h/L²; twist from a rise over a width and a length', () => {
    const of = (what: string) => publishedAnchors.find((one) => one.what.startsWith(what))!;
    const stud = 96 * 0.0254;
    expect(of('most bow of an 8 ft stud').curve_per_m).toBeCloseTo((8 * 0.75 * 0.0254) / stud ** 2, 4);
    expect(of('most crook of an 8 ft stud').curve_per_m).toBeCloseTo((8 * 0.25 * 0.0254) / stud ** 2, 4);
    expect(of('most twist of an 8 ft stud').twist_deg_per_m).toBeCloseTo((Math.asin(0.375 / 3.5) * 180) / Math.PI / stud, 1);
    expect(of('most bow of structural').curve_per_m).toBeCloseTo((8 * 0.01) / 4, 4);
    expect(of('most crook of structural').curve_per_m).toBeCloseTo((8 * 0.008) / 4, 4);
    expect(of('most twist of structural').twist_deg_per_m).toBeCloseTo((Math.asin(1 / 25) * 180) / Math.PI / 2, 1);
    expect(of('mean twist of studs').twist_deg_per_m).toBeCloseTo((Math.asin(7.3 / 100) * 180) / Math.PI / 2, 1);
    expect(of('least twist').twist_deg_per_m).toBeCloseTo(10, 12);
    expect(of('twist of a board 50 mm').twist_deg_per_m).toBeCloseTo((2 * 2 * 0.02) / (0.05 * 1.02), 9);
    expect(of('bow when one face').curve_per_m).toBeCloseTo((0.000111 * 6) / 0.038, 12);
    expect(publishedAnchors.every(({ twist_deg_per_m: t, curve_per_m: c }) => (t === null) !== (c === null))).toBe(true);
    expect([spiralTwist_rad_per_m(0.1, 0.05, 0.2), gradientCurvature_per_m(0.001, 0.02)]).toEqual([expect.closeTo((2 * 0.1 * 0.05) / (0.2 * 1.05), 12), 0.05]);
  });
});
