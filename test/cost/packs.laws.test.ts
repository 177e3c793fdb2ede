import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buyPacks } from '../../src/cost/packs.js';
import { squaresOf, stripsFor } from '../../src/cost/sheets.js';

/** Least cost of packs for `needed`, by trying every way, one pack after the other. */
function leastByTable(packs: readonly { holds: number; price: number }[], needed: number): number {
  const least = [0];
  for (let n = 1; n <= needed; n++) least[n] = Math.min(...packs.map(({ holds, price }) => (least[Math.max(0, n - holds)] as number) + price));
  return least[needed] as number;
}

describe('packs', () => {
  const sizes = fc.constantFrom([10], [25, 100], [1, 5], [50, 250, 1000], [4, 6, 25]);
  it('hold at least what is needed, at the least cost there is', () => {
    fc.assert(fc.property(sizes, fc.array(fc.integer({ min: 10, max: 900 }), { minLength: 3, maxLength: 3 }), fc.integer({ min: 1, max: 2300 }), (holds, prices, needed) => {
      const packs = holds.map((h, i) => ({ holds: h, price: (prices[i] as number) / 100, called: 'box' }));
      const bought = buyPacks(packs, needed)!;
      expect(bought.holds).toBeGreaterThanOrEqual(needed);
      expect(bought.packs.reduce((sum, pack) => sum + pack.count * pack.holds, 0)).toBe(bought.holds);
      expect(bought.cost).toBeCloseTo(leastByTable(packs, needed), 9);
    }));
  });

  it('of two ways at one price takes the one that leaves less over; of none there is none', () => {
    const packs = [{ holds: 25, price: 2, called: 'box' }, { holds: 100, price: 4, called: 'box' }];
    expect(buyPacks(packs, 49)).toMatchObject({ holds: 50, cost: 4 });
    expect(buyPacks(packs, 51)).toMatchObject({ holds: 100, cost: 4 });
    expect(buyPacks([], 3)).toBeNull();
  });
});

describe('sheets and strips', () => {
  it('squares in rows: a sheet of 610 x 305 gives three squares of 190 with a kerf of 3, but two of 202', () => {
    expect(squaresOf([305, 610], 190, 3)).toBe(3);
    expect(squaresOf([305, 610], 202, 3)).toBe(2);
    expect(squaresOf([305, 575], 190, 3)).toBe(2);
  });

  it('strips: never fewer than the length needs, and every piece fits', () => {
    expect(stripsFor([900, 900, 700, 700], 2400, 3)).toBe(2);
    expect(stripsFor([1200, 1200], 2402, 3)).toBe(2);
    expect(stripsFor([1200, 1200], 2403, 3)).toBe(1);
    expect(stripsFor([2500], 2400, 3)).toBeNull();
  });
});
