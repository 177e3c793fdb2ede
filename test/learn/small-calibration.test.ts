import { expect, test } from 'vitest';
import { lnLikelihood, type NormalReadings } from '../../src/learn/belief-data.js';
import { chiSquareShare } from '../../src/learn/chances.js';
import { believe, learnFrom } from '../../src/learn/nig.js';
import { knownOf } from '../../src/learn/on-a-grid.js';
import { Chance } from './invented-studio.js';

/**
 * A small simulation-based calibration (Talts and others, 2018, from memory) of boards and of frames whose lift hangs on them: truths from the prior, readings from the
 * truths, ranks of the truths in what is then believed. `calibration.long.test.ts` does it with whole solved frames.
 */
test('150 invented kinds of board: ranks even, bands hold nine in ten', () => {
  const prior = believe(0.5, 0.7);
  const [studios, classes] = [150, 5];
  const ranks = { mean: [] as number[], spread: [] as number[] };
  const held = { mean: 0, spread: 0 };
  for (let i = 0; i < studios; i++) {
    const chance = new Chance(500 + i);
    const truth = chance.drawn(prior);
    const boards = Array.from({ length: i % 4 === 0 ? 0 : 5 }, () => chance.normal(truth.mean, truth.sd));
    const frames = Array.from({ length: 6 }, (): NormalReadings => {
      // Four boards with unlike influence; bare, and magnified by the cloth; some signs not written down.
      const taken = [0.9, -1.4, 1.1, -0.5].map((g) => ({ g, board: chance.normal(truth.mean, truth.sd) }));
      const [lift, sum, squares] = taken.reduce(([l, s, q], { g, board }) => [l + g * board, s + g, q + g * g], [0, 0, 0] as [number, number, number]);
      const signed = [chance.even() < 0.6, chance.even() < 0.6];
      const y = [lift + chance.normal(0, 0.3), 1.7 * lift + chance.normal(0, 0.3)].map((value, k) => (signed[k] ? value : Math.abs(value)));
      return { y, signed, a: [sum, 1.7 * sum], c: [0, 0], B: [squares, 1.7 ** 2 * squares], D: [0.09, 0.09], B_both: 1.7 * squares, D_both: 0 };
    });
    const known = knownOf({ nig: learnFrom(prior, boards), fixed_mean: false, evidence: frames.map((readings) => (mu, sigma) => lnLikelihood(readings, mu, sigma)) });
    for (const [of, value] of [['mean', truth.mean], ['spread', truth.sd]] as const) {
      ranks[of].push(known.below(of, value));
      if (value >= known[of].low && value <= known[of].high) held[of] += 1;
    }
  }
  for (const of of ['mean', 'spread'] as const) {
    const counts = Array.from({ length: classes }, (_, k) => ranks[of].filter((rank) => Math.min(classes - 1, Math.floor(rank * classes)) === k).length);
    const share = chiSquareShare(classes - 1, counts.reduce((sum, count) => sum + (count - studios / classes) ** 2 / (studios / classes), 0));
    expect(share, of).toBeGreaterThan(0.01);
    expect(share, of).toBeLessThan(0.99);
    // 150 bands that hold nine in ten: within 83 to 96 % in 99 of 100 cases.
    expect(held[of] / studios, of).toBeGreaterThan(0.83);
    expect(held[of] / studios, of).toBeLessThan(0.96);
  }
});
