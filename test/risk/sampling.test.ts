import { describe, expect, it } from 'vitest';
import { barNames, type BarName } from '../../src/base/names.js';
import { anyBowChance, type BarAtLimit, type Estimate } from '../../src/risk/any-bow.js';
import { barLines } from '../../src/risk/bar-lines.js';
import { bowBeyond, bowP90 } from '../../src/risk/bow-chance.js';
import { barRisk, liftChance, liftRisk } from '../../src/risk/closed-form.js';
import { lineDensity, lineTail, lineTailPlace } from '../../src/risk/line-tail.js';
import { bowedFrames, bowP90s, frameLines } from '../../src/risk/natural-bow.js';
import { chanceBeyond, foldedQuantile } from '../../src/risk/normal.js';
import { normalDeviates } from '../../src/risk/normal-deviates.js';
import { barWarps } from '../../src/risk/spread.js';
import { warpTerms, type WarpTerm } from '../../src/risk/terms.js';
import { madeUpInfluence, madeUpModel, proposedAssumptions, proposedSpread, solvedInfluence, type MadeUp } from './made-up-frame.js';

const frames = 20_000;

function termsOf(of: Partial<MadeUp>, drying_pct: number, invented = false): readonly WarpTerm[] {
  const model = madeUpModel(of);
  const influence = invented ? madeUpInfluence(of.crossbars ?? 0) : solvedInfluence(model);
  return warpTerms(barWarps(model, { drying_pct, assumptions: proposedAssumptions }), influence);
}

function within4({ value, se }: Estimate, truth: number): void {
  expect(se).toBeGreaterThan(0);
  expect(Math.abs(value - truth)).toBeLessThan(4 * se);
}

/** A share of this many with its binomial standard error, at least that of one more. */
const shareOf = (hits: number, of: number): Estimate => ({ value: hits / of, se: Math.sqrt(((hits / of) * (1 - hits / of)) / of) + 1 / of });

/** A quantile by sorting, its standard error read off the values one binomial standard deviation to either side. */
function quantileOf(values: Float64Array, share: number): Estimate {
  const sorted = values.toSorted();
  const aside = Math.sqrt(values.length * share * (1 - share));
  const at = (rank: number): number => sorted[Math.round(rank)]!;
  const rank = share * values.length - 0.5;
  return { value: at(rank), se: (at(rank + aside) - at(rank - aside)) / 2 };
}

const boards = [{ for: 'top', ply: 1, twist_rad_per_m: 0.011, bow_per_m: 0.003, crook_per_m: null }] as const;
const cases: readonly [string, readonly WarpTerm[]][] = [
  ['four plain strips', termsOf({}, 0)],
  ['wet unsorted strips, two crossbars and braces', termsOf({ chosen: 'unsorted', crossbars: 2 }, 5)],
  ['opposed glued pairs on edge, one crossbar', termsOf({ plies: 2, lay: 'edge', pairing: 'opposed', crossbars: 1 }, 3)],
  ['a measured board, screwed pairs', termsOf({ plies: 2, bond: 'screws', boards }, 2)],
  ['invented influence numbers without any symmetry', termsOf({ crossbars: 2 }, 4, true)],
];

/** Frames drawn the plain way: every term, every station of every bar; the largest departure of each bar in each. */
function plainSample(terms: readonly WarpTerm[], seed: number): Record<BarName, Float64Array> {
  const drawn = new Float64Array(terms.length);
  const fill = normalDeviates(seed);
  const largest = Object.fromEntries(barNames.map((bar) => [bar, new Float64Array(frames)])) as Record<BarName, Float64Array>;
  const mean = terms.map(({ mean_per_m }) => mean_per_m);
  const sd = terms.map(({ sd_per_m }) => sd_per_m);
  const bows = barNames.map((bar) => Array.from({ length: 17 }, (_, s) => Float64Array.from(terms, ({ bow }) => bow[bar][s]!)));
  for (let n = 0; n < frames; n++) {
    fill(drawn);
    for (let j = 0; j < drawn.length; j++) drawn[j] = mean[j]! + sd[j]! * drawn[j]!;
    for (let b = 0; b < bows.length; b++) {
      let most = 0;
      for (let s = 0; s < 17; s++) {
        const bow = bows[b]![s]!;
        let departure = 0;
        for (let j = 0; j < bow.length; j++) departure += bow[j]! * drawn[j]!;
        most = Math.max(most, Math.abs(departure));
      }
      largest[barNames[b]!][n] = most;
    }
  }
  return largest;
}

describe.each(cases)('closed form, integral and sampling agree within four standard errors: %s', (_, terms) => {
  const lines = frameLines(terms);
  const worst = barRisk(terms, 'bow');
  const p90 = bowP90s(lines, worst);
  const sampled = [11, 4711].map((seed) => plainSample(terms, seed));

  it('the lift of the corner', () => {
    const lift = liftRisk(terms);
    const lifts = sampledLifts(terms, 11);
    const mean = lifts.reduce((sum, y) => sum + y, 0) / frames;
    within4({ value: mean, se: lift.sd / Math.sqrt(frames) }, lift.mean);
    within4({ value: Math.sqrt(lifts.reduce((sum, y) => sum + (y - mean) ** 2, 0) / frames), se: lift.sd / Math.sqrt(2 * frames) }, lift.sd);
    const sizes = lifts.map(Math.abs);
    within4(shareOf(sizes.filter((y) => y > 3).length, frames), liftChance(lift, 3));
    within4(quantileOf(sizes, 0.9), lift.p90_mm);
  });

  it('nine in ten of each bar, and its chance of passing a limit, from hardly ever to nearly always', () => {
    for (const largest of sampled)
      for (const bar of barNames) {
        within4(quantileOf(largest[bar], 0.9), p90[bar]);
        expect(p90[bar]).toBeGreaterThanOrEqual(worst[bar].p90_mm);
        expect(bowBeyond(lines[bar], p90[bar]).chance).toBeCloseTo(0.1, 6);
        for (const share of [0.1, 0.5, 1, 1.6, 2.2]) {
          const counted = shareOf(largest[bar].filter((bow) => bow > share * p90[bar]).length, frames);
          // Where nearly all bars pass, every shape counts, and six of them are less even over the directions.
          within4({ ...counted, se: counted.se + (share === 0.1 ? 0.001 : 0) }, bowBeyond(lines[bar], share * p90[bar]).chance);
        }
      }
  });

  it('the chance of at least one bowed bar, from hardly ever to nearly always', () => {
    for (const share of [0.1, 0.4, 0.7, 1, 1.3, 1.8]) {
      const limit_mm = { top: 1.1 * share * p90.top, bottom: share * p90.bottom, left: 1.3 * share * p90.left, right: 0.9 * share * p90.right };
      const chances = barNames.map((bar) => bowBeyond(lines[bar], limit_mm[bar]).chance);
      sampled.forEach((largest, seed) => {
        const counted = shareOf(Array.from({ length: frames }, (_f, n) => n).filter((n) => barNames.some((bar) => largest[bar][n]! > limit_mm[bar])).length, frames);
        const { value, se } = bowedFrames(lines, limit_mm, { seed, samples: frames });
        expect(Math.abs(value - counted.value)).toBeLessThan(4 * Math.hypot(se, counted.se));
        expect(se).toBeLessThanOrEqual(0.5 / Math.sqrt(frames));
        if (value < 0.5) expect(se).toBeLessThanOrEqual(counted.se);
        expect(value).toBeGreaterThanOrEqual(Math.max(...chances));
        expect(value).toBeLessThanOrEqual(chances.reduce((sum, chance) => sum + chance, 0));
      });
    }
  });
});

/** Corner lifts of frames of which every term is drawn. */
function sampledLifts(terms: readonly WarpTerm[], seed: number): Float64Array {
  const draws = new Float64Array(frames * terms.length);
  normalDeviates(seed)(draws);
  return Float64Array.from({ length: frames }, (_, n) => terms.reduce((sum, { lift, mean_per_m, sd_per_m }, j) => sum + lift * (mean_per_m + sd_per_m * draws[n * terms.length + j]!), 0));
}

const still = { top: new Float64Array(17), bottom: new Float64Array(17), left: new Float64Array(17), right: new Float64Array(17) };
const base = cases[0]![1][0]!;
const at = (...heights: readonly (readonly [number, number])[]): Float64Array => {
  const line = new Float64Array(17);
  for (const [station, height] of heights) line[station] = height;
  return line;
};
const term = (bow: Partial<Record<BarName, Float64Array>>, mean_per_m = 0, sd_per_m = 1): WarpTerm => ({ ...base, mean_per_m, sd_per_m, lift: 0, bow: { ...still, ...bow } });

describe('the largest departure along one bar', () => {
  const p90Of = (terms: readonly WarpTerm[], directions?: number): number => bowP90(barLines(terms, 'left'), barRisk(terms, 'bow').left, directions);

  it('of one shape is that of its highest station: the folded normal', () => {
    const terms = [term({ left: at([3, 0.4], [7, -1], [12, 0.8]) }, 0.3, 1.7), term({ left: at([3, 0.2], [7, -0.5], [12, 0.4]) }, -0.1, 0.6)];
    const sd = Math.hypot(1.7, 0.3);
    expect(p90Of(terms) / foldedQuantile(0.3 - 0.05, sd, 0.9)).toBeCloseTo(1, 6);
    expect(bowBeyond(barLines(terms, 'left'), 2).chance).toBeCloseTo(chanceBeyond(0.25, sd, 2), 6);
  });

  it('of two independent places stays below a size when both do: each with the root of the chance', () => {
    const terms = [term({ left: at([4, 1]) }), term({ left: at([12, 1]) })];
    expect(Math.abs(p90Of(terms) / foldedQuantile(0, 1, Math.sqrt(0.9)) - 1)).toBeLessThan(1e-3);
    expect(p90Of(terms, 4000) / foldedQuantile(0, 1, Math.sqrt(0.9))).toBeCloseTo(1, 6);
  });

  it('where nothing varies is what it is', () => {
    expect(p90Of([term({ left: at([5, 2]) }, 0.7, 0)])).toBeCloseTo(1.4, 12);
    const lines = barLines([term({ left: at([5, 2]) }, 0.7, 0), term({ left: at([9, 0.1]) })], 'left');
    expect([bowBeyond(lines, 1.39).chance, bowBeyond(lines, 1.41).chance]).toEqual([1, expect.closeTo(0, 12)]);
    expect(p90Of([])).toBe(0);
  });

  it('has converged: twice as many directions, and a hundred times as many, change it by less than a thousandth', () => {
    for (const [, terms] of cases.slice(0, 4))
      for (const bar of barNames) {
        const [lines, worst] = [barLines(terms, bar), barRisk(terms, 'bow')[bar]];
        const [now, twice, many] = [bowP90(lines, worst), bowP90(lines, worst, 128), bowP90(lines, worst, 6400)];
        expect(Math.abs(now / twice - 1)).toBeLessThan(1e-3);
        expect(Math.abs(now / many - 1)).toBeLessThan(1e-3);
      }
  });
});

describe('several bars', () => {
  const apart = barNames.map((bar) => term({ [bar]: at([8, 1]) }));
  const barsAt = (terms: readonly WarpTerm[], limits: readonly number[]): BarAtLimit[] =>
    barNames.map((bar, i) => {
      const lines = barLines(terms, bar);
      return { lines, limit_mm: limits[i]!, chance: bowBeyond(lines, limits[i]!).chance };
    });

  it.each([[[3.1, 3.5, 3.3, 3.2]], [[1.9, 2.2, 2, 2.4]], [[1.2, 1.6, 2, 1.4]], [[0.3, 0.6, 0.5, 0.9]]])('that bow apart stay within %j when each does', (limits) => {
    const all = 1 - limits.reduce((within, limit) => within * (1 - chanceBeyond(0, 1, limit)), 1);
    for (const seed of [1, 2, 3]) {
      const { value, se } = anyBowChance(barsAt(apart, limits), { seed, samples: frames });
      expect(Math.abs(value - all)).toBeLessThan(4 * se + 1e-9);
      expect(se).toBeLessThan(1.01 * Math.sqrt((Math.min(all, 0.5) * (1 - Math.min(all, 0.5))) / frames));
    }
  });

  it.each([2.5, 1.7, 1.3, 0.4])('that bow as one pass %f mm when one does', (limit) => {
    const one = [term(Object.fromEntries(barNames.map((bar, i) => [bar, at([8, i % 2 === 0 ? 1 : -1])])))];
    for (const seed of [1, 2, 3]) within4(anyBowChance(barsAt(one, [limit, limit, limit, limit]), { seed, samples: frames }), chanceBeyond(0, 1, limit));
  });

  it('need no draw where the largest and the sum of their chances say the same: the sum, whatever the seed', () => {
    const limits = [2, 6, 7, 8];
    const sum = limits.reduce((all, limit) => all + chanceBeyond(0, 1, limit), 0);
    for (const seed of [1, 2]) expect(anyBowChance(barsAt(apart, limits), { seed, samples: frames })).toEqual({ value: expect.closeTo(sum, 7), se: expect.closeTo(sum - chanceBeyond(0, 1, 2), 9) });
    expect(anyBowChance(barsAt(apart, [40, 50, 60, 70]), { seed: 1, samples: frames })).toEqual({ value: 0, se: 0 });
  });

  it('give the same answer again from a seed, and another from another; with few samples too', () => {
    const bars = barsAt(apart, [1.3, 1.5, 1.7, 2]);
    const of = (seed: number, samples = frames): Estimate => anyBowChance(bars, { seed, samples });
    expect(of(11)).toEqual(of(11));
    expect(of(11).value).not.toBe(of(12).value);
    for (const samples of [1, 2, 63, 65]) within4(of(1, samples), 1 - [1.3, 1.5, 1.7, 2].reduce((within, limit) => within * (1 - chanceBeyond(0, 1, limit)), 1));
  });
});

describe('a place on a line through two normals', () => {
  it('lies beyond t as often as its density sums up to, and is found again from that chance', () => {
    for (const t of [-2.5, -0.7, 0, 0.4, 1.9, 4]) {
      const step = 1e-3;
      const sum = Array.from({ length: Math.round((9 - t) / step) }, (_, i) => lineDensity(t + (i + 0.5) * step) * step).reduce((all, part) => all + part, 0);
      expect(lineTail(t)).toBeCloseTo(sum, 6);
      expect(lineTailPlace(lineTail(t))).toBeCloseTo(t, 7);
    }
    expect([lineTail(Infinity), lineTail(-Infinity), lineDensity(Infinity)]).toEqual([0, 1, 0]);
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
