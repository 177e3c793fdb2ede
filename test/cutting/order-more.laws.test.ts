import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cutPlan } from '../../src/cutting/cut-plan.js';
import { boardsFor } from '../../src/cutting/enough-boards.js';
import { boards, shelfWith, studioPlan } from './studio.js';

const saw = { kerf_mm: 3, end_trim_mm: 0, knot_waste_share: { none: 0, few: 0, many: 0 } };
const plan = studioPlan();
const shelf = (list: readonly (readonly [number, number, number])[]) => shelfWith('strip-19x38', boards(...list), saw);

describe('what to order where the shop has too few boards', () => {
  test('boards of another length that lie there are used before more are ordered', () => {
    // Cheapest with as many as wanted: four of 1000 mm. There are two of them and one of 1300 mm, which holds both short bars.
    expect(boardsFor([plan], shelf([[1000, 3, 2], [1300, 9, 1]])).short).toEqual([]);
    expect(boardsFor([plan], shelf([[1000, 3, 1], [1300, 9, 1]]))).toMatchObject({ order_proven: true, short: [{ length_mm: 1000, needed: 2, available: 1 }] });
  });
  test('a length of which none is there can be ordered, where it costs less', () => {
    expect(boardsFor([plan], shelf([[1000, 3, 2], [1300, 4, 0]])).short).toEqual([{ stock: 'strip-19x38', length_mm: 1300, price: 4, needed: 1, available: 0 }]);
    expect(boardsFor([plan], shelf([[1000, 3, 2], [1300, 7, 0]])).short).toEqual([{ stock: 'strip-19x38', length_mm: 1000, price: 3, needed: 4, available: 2 }]);
  });
  test('a board of half a coin is ordered like any other; leftovers at no cost are not to be had again', () => {
    expect(boardsFor([plan], shelf([[1000, 0.5, 3]]))).toMatchObject({ order_proven: true, short: [{ length_mm: 1000, price: 0.5, needed: 4, available: 3 }] });
    expect(boardsFor([plan], shelf([[1000, 0, 3]]))).toMatchObject({ order_proven: true, short: [], cut: { cost: null } });
    expect(boardsFor([plan], shelf([[1000, 0, 3], [640, 2, 0]])).short).toEqual([{ stock: 'strip-19x38', length_mm: 640, price: 2, needed: 1, available: 0 }]);
  });
  test('no order that costs less is enough: every one of them was tried', () => {
    const kind = (length_mm: number) => fc.tuple(fc.constant(length_mm), fc.integer({ min: 2, max: 12 }), fc.integer({ min: 0, max: 2 }));
    fc.assert(fc.property(fc.tuple(kind(640), kind(1000), kind(1900)), (list) => {
      const { cut, short, order_proven } = boardsFor([plan], shelf(list));
      expect(cut.cost).not.toBeNull();
      if (!order_proven) return;
      const cost = short.reduce((sum, { needed, available, price }) => sum + (needed - available) * price, 0);
      for (let a = 0; a <= 4; a++)
        for (let b = 0; b <= 4; b++)
          for (let c = 0; c <= 2; c++) {
            const more = [a, b, c] as const;
            if (list.reduce((sum, [, price], i) => sum + price * more[i]!, 0) >= cost) continue;
            const there = list.map(([length, price, available], i) => [length, price, available + more[i]!] as const);
            expect(cutPlan([plan], shelf(there)).cost).toBeNull();
          }
    }), { numRuns: 40 });
  });
});
