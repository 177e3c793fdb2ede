import fc from 'fast-check';
import { expect, it } from 'vitest';
import { makeReady, needAlone } from '../../src/cutting/boards/ready-problem.js';
import { shadowPrices, type Relaxation } from '../../src/cutting/boards/shadow-prices.js';
import { runs } from '../effort.js';
import { everyLoad, holds, readyProblem } from './every-load.js';
import { fresh } from './problems.js';

const worth = (value: readonly number[], counts: readonly number[]): number => value.reduce((sum, v, k) => sum + v * counts[k]!, 0);

/**
 * What the relaxation's loads cost with the penalties of what they leave uncut; and what its prices prove that any cutting costs at least: the pieces at their prices,
 * less what the limited boards save. By weak duality the second is never above the first, and where both meet, loads and prices are best.
 */
function ends(bench: Parameters<typeof everyLoad>[0], relaxation: Relaxation) {
  const { prices, loads } = shadowPrices(bench, relaxation, () => false);
  const cut = bench.count.map((_, k) => loads.reduce((sum, { counts, share }) => sum + counts[k]! * share, 0));
  const used = bench.bins.map((_, s) => loads.reduce((sum, { bin, share }) => sum + (bin === s ? share : 0), 0));
  const price = prices.map((p) => Math.max(0, p));
  const excess = bench.bins.map((_, s) => Math.max(0, Math.max(...everyLoad(bench, s).map((counts) => worth(price, counts))) - relaxation.price[s]!));
  return {
    loads, prices, used, excess,
    above: worth(relaxation.price, used) + bench.count.reduce((sum, c, k) => sum + relaxation.penalty[k]! * Math.max(0, c - cut[k]!), 0),
    below: worth(price, bench.count) - excess.reduce((sum, e, s) => sum + e * (relaxation.most[s] ?? (e > 1e-3 ? Infinity : 0)), 0),
  };
}

const few = fc.array(fc.nat(3), { minLength: 4, maxLength: 4 });

it('what its prices prove is never above what its loads cost; where no piece is better left uncut, both meet', () => {
  fc.assert(
    fc.property(readyProblem, few, fc.constantFrom('dear', 'price', 'free', 'mixed'), fc.integer({ min: 1, max: 400 }), (bench, drawn, kind, penalty) => {
      const price = bench.bins.map((bin, s) => (kind === 'free' || (kind === 'mixed' && s % 2 === 0) ? 0 : bin.price));
      const most = bench.bins.map((bin, s) => (kind === 'dear' ? null : kind === 'free' ? Math.min(bin.most, drawn[s % 4]!) : s % 3 === 2 && price[s]! > 0 ? null : Math.min(bin.most, drawn[s % 4]! + 1)));
      // As dear as their length where boards are free, too dear to be left where there are boards enough; else so cheap that some pieces are left uncut.
      const relaxation = { price, most, penalty: kind === 'dear' ? bench.size.map(() => 1e5) : kind === 'free' ? bench.size : bench.size.map((size, k) => penalty + ((k * 37) % 50) + (kind === 'mixed' ? size / 7 : 0)) };
      const { loads, prices, used, excess, above, below } = ends(bench, relaxation);
      for (const { bin, counts, share } of loads) expect(share > 0 && holds(bench, bin, counts)).toBe(true);
      most.forEach((n, s) => (n === null ? expect(excess[s]).toBeLessThan(1e-3) : expect(used[s]).toBeLessThan(n + 1e-6)));
      prices.forEach((p) => expect(p).toBeGreaterThan(-1e-3));
      if (kind === 'dear') expect(below).toBeGreaterThan(above - 1e-2);
      expect(below).toBeLessThan(above + 1e-2);
    }),
    { numRuns: runs(1600) },
  );
});

it('by hand: one board of two, the second piece at its penalty', () => {
  // A board of 100 for 6 holds two of 50, or one of 60 with nothing beside it; there is one board. Uncut, a 60 costs 9, a 50 costs 4.
  const bench = makeReady(fresh({ kerf: 0, stock: [{ length: 100, price: 6, available: 1 }], items: [{ length: 60, count: 1 }, { length: 50, count: 2 }] }));
  const one = ends(bench, { price: [6], most: [1], penalty: [9, 4] });
  expect([one.above, one.below]).toEqual([expect.closeTo(6 + 8, 6), expect.closeTo(6 + 8, 6)]);
  expect(one.loads).toEqual([{ bin: 0, counts: [1, 0], share: expect.closeTo(1, 9) }]);
  // Where a 50 costs 5 uncut, both of them on the board save more.
  expect(ends(bench, { price: [6], most: [1], penalty: [9, 5] }).loads).toEqual([{ bin: 0, counts: [0, 2], share: expect.closeTo(1, 9) }]);
  // Where boards cost more than what they save, none is taken, and each piece is worth its penalty.
  const none = ends(bench, { price: [11], most: [null], penalty: [9, 5] });
  expect([none.loads, none.prices]).toEqual([[], [9, 5]]);
  expect(needAlone(bench, 0)).toBe(60);
});
