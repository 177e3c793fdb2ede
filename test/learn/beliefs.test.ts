import { describe, expect, test } from 'vitest';
import { binomial, chanceAsOdd, chanceOfAtLeast, chiSquareShare, gammaQuantile, holm, luckBand, normalQuantile, studentQuantile } from '../../src/learn/chances.js';
import { believe, knownMean, knownSpread, learnFrom, type Nig } from '../../src/learn/nig.js';
import { knownOf } from '../../src/learn/on-a-grid.js';
import { lnGamma } from '../../src/learn/special.js';

describe('distributions, against printed tables (memory)', () => {
  test.each([[4, 0.95, 2.132], [9, 0.975, 2.262], [1, 0.975, 12.706], [30, 0.95, 1.697]])('Student’s t with %i degrees of freedom reaches %f at %f', (df, share, t) => expect(studentQuantile(df, share)).toBeCloseTo(t, 3));
  test.each([[9, 21.666, 0.99], [9, 2.088, 0.01], [4, 9.488, 0.95]])('chi-square with %i degrees of freedom below %f: %f', (df, x, share) => expect(chiSquareShare(df, x)).toBeCloseTo(share, 4));
  test('normal', () => expect(normalQuantile(0.975)).toBeCloseTo(1.959964, 5));
  test('gamma of halves', () => expect(Math.exp(lnGamma(2.5))).toBeCloseTo((3 / 4) * Math.sqrt(Math.PI), 12));
  test('gamma quantile is where the exponential says', () => expect(gammaQuantile(1, 0.9)).toBeCloseTo(-Math.log(0.1), 10));
});

describe('exact counts', () => {
  test('three of fourteen, said 1 in 10: by adding up', () => {
    const none = 0.9 ** 14;
    const one = 14 * 0.1 * 0.9 ** 13;
    const two = 91 * 0.01 * 0.9 ** 12;
    expect(chanceOfAtLeast(14, 3, 0.1)).toBeCloseTo(1 - none - one - two, 12);
    expect(1 / chanceOfAtLeast(14, 3, 0.1)).toBeCloseTo(6.3, 1);
  });
  test('all outcomes together are certain', () => expect(Array.from({ length: 24 }, (_, k) => binomial(23, k, 0.37)).reduce((a, b) => a + b, 0)).toBeCloseTo(1, 12));
  test('two-sided: of ten tosses, nine or more and one or fewer', () => expect(chanceAsOdd(10, 9, 0.5)).toBeCloseTo(22 / 1024, 12));
  test('the band of luck leaves at most a fortieth on each side', () => {
    const [low, high] = luckBand(40, 0.1);
    expect([low, high]).toEqual([1, 8]);
    expect(chanceOfAtLeast(40, high + 1, 0.1)).toBeLessThan(0.025);
    expect(1 - chanceOfAtLeast(40, low, 0.1)).toBeLessThan(0.025);
  });
  test('Holm: each step takes one comparison fewer, and none is below the one before', () => expect(holm([0.04, 0.01, 0.03])).toEqual([0.06, 0.03, 0.06].map((p) => expect.closeTo(p, 12))));
});

/** Wing lengths of nine midges with prior mean 1.9, one reading’s worth, spread² 0.01 of one degree of freedom: Hoff, A First Course in Bayesian Statistical Methods (2009), section 5.3 (memory). */
describe('mean and spread in closed form', () => {
  const wings = [1.64, 1.7, 1.72, 1.74, 1.82, 1.82, 1.82, 1.9, 2.08];
  const prior: Nig = { mean: 1.9, worth: 1, shape: 0.5, scale: 0.01 / 2 };
  test('the midges: worth 10, mean 1.814, spread² 0.015', () => {
    const after = learnFrom(prior, wings);
    expect(after.worth).toBe(10);
    expect(2 * after.shape).toBe(10);
    expect(after.mean).toBeCloseTo(1.814, 3);
    expect(after.scale / after.shape).toBeCloseTo(0.0153, 4);
  });

  const after = learnFrom(believe(0.5, 0.7), [1.2, -0.3, 0.9, 2.1, 0.4]);
  /** Sums over a fine grid of (μ, σ), from the definition: normal likelihoods times the prior’s density. */
  const integrated = (() => {
    const { mean, worth, shape, scale } = believe(0.5, 0.7);
    let [total, mu1, mu2, s1, s2] = [0, 0, 0, 0, 0];
    for (let i = 0; i < 900; i++) for (let j = 0; j < 900; j++) {
      const mu = -5 + (i + 0.5) / 80;
      const sigma = 0.03 * Math.exp((j + 0.5) / 130);
      const v = sigma ** 2;
      let ln = -(shape + 1) * Math.log(v) - scale / v - 0.5 * Math.log(v) - (worth * (mu - mean) ** 2) / (2 * v) + Math.log(2 * v);
      for (const x of [1.2, -0.3, 0.9, 2.1, 0.4]) ln += -0.5 * Math.log(v) - (x - mu) ** 2 / (2 * v);
      const w = Math.exp(ln);
      total += w; mu1 += w * mu; mu2 += w * mu * mu; s1 += w * sigma; s2 += w * v;
    }
    return { mean: mu1 / total, mean_sd: Math.sqrt(mu2 / total - (mu1 / total) ** 2), spread: s1 / total, spread_sd: Math.sqrt(s2 / total - (s1 / total) ** 2) };
  })();
  test('agrees with numerical integration', () => {
    const [mean, spread] = [knownMean(after), knownSpread(after)];
    expect(mean.mean).toBeCloseTo(integrated.mean, 3);
    expect(mean.sd / integrated.mean_sd).toBeCloseTo(1, 2);
    expect(spread.mean / integrated.spread).toBeCloseTo(1, 3);
    expect(spread.sd / integrated.spread_sd).toBeCloseTo(1, 2);
  });
  test('and with the grid that frames are learned on', () => {
    const readings = [1.2, -0.3, 0.9, 2.1, 0.4];
    const evidence = readings.map((x) => (mu: number, sigma: number) => -Math.log(sigma) - 0.5 * ((x - mu) / sigma) ** 2);
    const grid = knownOf({ nig: believe(0.5, 0.7), fixed_mean: false, evidence });
    for (const [closed, onGrid] of [[knownMean(after), grid.mean], [knownSpread(after), grid.spread]] as const) for (const end of ['mean', 'sd', 'low', 'high'] as const) expect(Math.abs(onGrid[end] / closed[end] - 1)).toBeLessThan(0.01);
  });
  test('a belief expects exactly what the shelf says', () => {
    expect(knownSpread(believe(0.5, 0.7)).mean).toBeCloseTo(0.7, 12);
    expect(knownMean(believe(0.5, 0.7)).mean).toBe(0.5);
  });
  test('two halves with the first as prior are the whole', () => {
    const all = [1.2, -0.3, 0.9, 2.1, 0.4, -1.1];
    const twice = learnFrom(learnFrom(believe(0.5, 0.7), all.slice(0, 2)), all.slice(2));
    const once = learnFrom(believe(0.5, 0.7), [...all].reverse());
    for (const key of ['mean', 'worth', 'shape', 'scale'] as const) expect(twice[key]).toBeCloseTo(once[key], 12);
  });
});
