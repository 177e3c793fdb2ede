import { describe, expect, it } from 'vitest';
import { plyCorrelation, sumPlies } from '../../src/risk/pairing.js';

/** Boards that follow each other to the full, where the regression by itself would divide nought by nought. */
describe('boards surely alike or surely opposed', () => {
  const known = { chosen: { mean: 0.4, sd: 1.5 }, drying: { mean: 0.1, sd: 0.2 }, reading_sd: 0.3 };
  it('none read, surely alike: the spread of one board times their number', () => {
    const sum = sumPlies({ ...known, readings: [null, null, null], correlation: plyCorrelation(1, 3) });
    expect([sum.mean, sum.chosen_var, sum.reading_var, sum.drying_var]).toEqual([expect.closeTo(3 * 0.4 + 0.3, 12), expect.closeTo((3 * 1.5) ** 2, 12), 0, expect.closeTo(3 * 0.04, 12)]);
  });
  it('both read, surely opposed: what was read, and nothing left of choosing', () => {
    const sum = sumPlies({ ...known, readings: [0.9, -0.2], correlation: plyCorrelation(-1, 2) });
    expect([sum.mean, sum.chosen_var, sum.reading_var]).toEqual([expect.closeTo(0.7 + 0.2, 12), 0, expect.closeTo(2 * 0.09, 12)]);
  });
  it('one of two read, surely opposed: they cancel whatever was read, its error too', () => {
    const sum = sumPlies({ ...known, readings: [2, null], correlation: plyCorrelation(-1, 2) });
    expect([sum.mean, sum.chosen_var, sum.reading_var]).toEqual([expect.closeTo(0.8 + 0.2, 12), expect.closeTo(0, 12), expect.closeTo(0, 12)]);
  });
});
