/**
 * "About 5 % more twist for each 1 % of moisture lost" (university timber-science notes and trade journal 2018, seen, paraphrased; row
 * twist-mc-growth): 4.175° at 18 % becomes 6.2625° at 8 %. The drying factor of the shelf (0.05, proposal) rests on it.
 */
import { describe, it } from 'vitest';
import { barWarps } from '../../src/risk/spread.js';
import { madeUpModel, proposedAssumptions } from '../risk/made-up-frame.js';
import { expectShare } from './recorded.js';

describe('twist grows as boards dry (seen)', () => {
  it('twist-mc-growth: ten points of moisture turn 4.175° into 6.2625°', () => {
    const twistOf = (drying_pct: number) =>
      barWarps(madeUpModel({ chosen: 'unsorted' }), { drying_pct, assumptions: proposedAssumptions }).find((warp) => warp.kind === 'twist')?.mean_per_m ?? NaN;
    expectShare((4.175 * twistOf(10)) / twistOf(0), 6.2625, 1e-8);
  });
});
