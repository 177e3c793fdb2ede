import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { stapleOrder, staplesAlong } from '../../../src/mechanics/cloth/staples.js';

describe('staples along a side', () => {
  test('no farther apart than asked, and never fewer than three', () => {
    expect(staplesAlong(1200, 50)).toBe(24);
    expect(staplesAlong(1201, 50)).toBe(25);
    expect(staplesAlong(90, 50)).toBe(3);
  });
});

describe('order of fixing', () => {
  test('a small frame, by hand: middles of opposite sides, then outward, corners last', () => {
    const order = stapleOrder({ top: 5, bottom: 5, left: 3, right: 3 });
    expect(order.slice(0, 4).map((s) => `${s.side} ${s.at}`)).toEqual(['top 0.5', 'bottom 0.5', 'left 0.5', 'right 0.5']);
    expect(order.slice(4, 8).map((s) => s.side)).toEqual(['top', 'bottom', 'top', 'bottom']);
    expect(order.slice(-8).every((s) => Math.min(s.at, 1 - s.at) < 0.17)).toBe(true);
  });

  test('every staple once, the middle first, each side outward, the outermost of all sides in the last round', () => {
    fc.assert(fc.property(fc.integer({ min: 3, max: 60 }), fc.integer({ min: 3, max: 60 }), (level, upright) => {
      const order = stapleOrder({ top: level, bottom: level, left: upright, right: upright });
      expect(order).toHaveLength(2 * (level + upright));
      expect(new Set(order.map((s) => `${s.side} ${s.at}`)).size).toBe(order.length);
      const rounds = Math.max(...order.map((s) => s.round));
      for (const side of ['top', 'bottom', 'left', 'right'] as const) {
        const out = order.filter((s) => s.side === side).map((s) => Math.abs(s.at - 0.5));
        expect(out.every((d, i) => i === 0 || d >= (out[i - 1] as number) - 1e-12)).toBe(true);
        expect(order.filter((s) => s.side === side).at(-1)?.round).toBe(rounds);
        expect(out[0]).toBeLessThanOrEqual(0.5 / Math.min(level, upright) + 1e-12);
      }
    }), { seed: 41, numRuns: 60 });
  });
});
