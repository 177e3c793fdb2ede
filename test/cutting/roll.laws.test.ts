import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { lengthOf, type RollPiece } from '../../src/cutting/roll/piece.js';
import { packInRows } from '../../src/cutting/roll/shelves.js';
import { packRoll } from '../../src/cutting/roll/roll.js';
import { overlaps, shortestByTrial } from './roll-trial.js';
import { runs } from '../effort.js';

const roll_mm = 1500;
const anyPieces = (least: number, most: number): fc.Arbitrary<RollPiece[]> =>
  fc.array(fc.record({ along_mm: fc.integer({ min: 250, max: 1600 }), across_mm: fc.integer({ min: 200, max: 1400 }), turnable: fc.boolean() }), { minLength: least, maxLength: most })
    .map((sizes) => sizes.map((size, i) => ({ name: `c${i}`, ...size })));

describe('cloths on a roll, for any sizes', () => {
  test('agrees with trying every place, up to four pieces on a coarse grid', () => {
    const small = fc.array(fc.record({ along_mm: fc.integer({ min: 1, max: 6 }), across_mm: fc.integer({ min: 1, max: 5 }), turnable: fc.boolean() }), { minLength: 1, maxLength: 4 });
    fc.assert(fc.property(small, fc.integer({ min: 5, max: 9 }), (sizes, roll) => {
      const pieces = sizes.map((size, i) => ({ name: `c${i}`, ...size }));
      const layout = packRoll(pieces, roll);
      expect(layout.proven).toBe(true);
      expect(layout.length_mm).toBe(shortestByTrial(pieces, roll));
    }), { numRuns: runs(150), seed: 20 });
  });

  test('nothing overlaps, nothing leaves the roll, every size is kept', () => {
    fc.assert(fc.property(anyPieces(1, 16), (pieces) => {
      const layout = packRoll(pieces, roll_mm);
      expect(overlaps(layout.placed, roll_mm)).toEqual([]);
      expect(layout.placed).toHaveLength(pieces.length);
      for (const placed of layout.placed) {
        const piece = pieces.find((p) => p.name === placed.name) as RollPiece;
        expect(placed.turned ? [placed.across_mm, placed.along_mm] : [placed.along_mm, placed.across_mm]).toEqual([piece.along_mm, piece.across_mm]);
        if (placed.turned) expect(piece.turnable).toBe(true);
      }
      expect(layout.length_mm).toBe(lengthOf(layout.placed));
      expect(layout.least_mm).toBeLessThanOrEqual(layout.length_mm + 1e-6);
    }), { numRuns: runs(40), seed: 21 });
  });

  test('never longer than rows by next fit or first fit, longest first', () => {
    fc.assert(fc.property(anyPieces(1, 30), (pieces) => {
      const asGiven = pieces.map((piece) => ({ piece, lie: { across: piece.across_mm, along: piece.along_mm, turned: false } }));
      const layout = packRoll(pieces, roll_mm);
      for (const rule of ['next', 'first'] as const) expect(layout.length_mm).toBeLessThanOrEqual(lengthOf(packInRows(asGiven, roll_mm, rule)) + 1e-6);
    }), { numRuns: runs(40), seed: 22 });
  });

  test('a wider roll never needs more length where both are proven, and the order of the pieces does not matter', () => {
    fc.assert(fc.property(anyPieces(1, 6), fc.integer({ min: 0, max: 600 }), (pieces, more) => {
      const [narrow, wide, reversed] = [packRoll(pieces, roll_mm), packRoll(pieces, roll_mm + more), packRoll([...pieces].reverse(), roll_mm)];
      expect([narrow.proven, wide.proven, reversed.proven]).toEqual([true, true, true]);
      expect(wide.length_mm).toBeLessThanOrEqual(narrow.length_mm + 1e-6);
      expect(reversed.length_mm).toBeCloseTo(narrow.length_mm, 6);
    }), { numRuns: runs(60), seed: 23 });
  });

  test('never shorter than the area asks, the longest piece, or the pieces wider than half the roll', () => {
    fc.assert(fc.property(anyPieces(1, 8), (pieces) => {
      const layout = packRoll(pieces, roll_mm);
      const area = pieces.reduce((sum, p) => sum + p.along_mm * p.across_mm, 0);
      const kept = pieces.map((p) => ({ ...p, turnable: false }));
      const strict = packRoll(kept, roll_mm);
      const wide = kept.filter((p) => 2 * p.across_mm > roll_mm).reduce((sum, p) => sum + p.along_mm, 0);
      expect(layout.length_mm).toBeGreaterThanOrEqual(area / roll_mm - 1e-6);
      expect(strict.length_mm).toBeGreaterThanOrEqual(Math.max(wide, ...kept.map((p) => p.along_mm)) - 1e-6);
    }), { numRuns: runs(40), seed: 24 });
  });
});
