import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cutSheets, leastSheets, tilesOf, type Flat } from '../../src/cost/cut-sheets.js';
import { suppliesOf } from '../../src/cost/supplies.js';
import { buildModel } from '../../src/model/build-model.js';
import { demoShelf, studioPlan } from '../cutting/studio.js';

const sheet: Flat = [700, 1000];
const area = (pieces: readonly Flat[]): number => pieces.reduce((sum, [a, b]) => sum + a * b, 0);
const piece = fc.tuple(fc.integer({ min: 40, max: 1000 }), fc.integer({ min: 40, max: 700 })) as fc.Arbitrary<[number, number]>;

describe('pieces cut out of sheets', () => {
  test('lie inside their sheets beside each other, every one once, on no more sheets than pieces and no fewer than any way takes', () => {
    fc.assert(fc.property(fc.array(piece, { minLength: 1, maxLength: 14 }), (pieces) => {
      const sheets = cutSheets(pieces, sheet);
      const sizes = (list: readonly Flat[]): readonly string[] => list.map(([a, b]) => `${Math.min(a, b)}×${Math.max(a, b)}`).sort();
      expect(sizes(sheets.flat().map(({ wide_mm, high_mm }): Flat => [wide_mm, high_mm]))).toEqual(sizes(pieces));
      for (const laid of sheets) {
        const [right, top] = [Math.max(...laid.map((p) => p.x_mm + p.wide_mm)), Math.max(...laid.map((p) => p.y_mm + p.high_mm))];
        expect((right <= 700 && top <= 1000) || (right <= 1000 && top <= 700)).toBe(true);
        laid.forEach((p, i) => { for (const q of laid.slice(i + 1)) expect(p.x_mm + p.wide_mm <= q.x_mm || q.x_mm + q.wide_mm <= p.x_mm || p.y_mm + p.high_mm <= q.y_mm || q.y_mm + q.high_mm <= p.y_mm).toBe(true); });
      }
      expect(sheets.length).toBeLessThanOrEqual(pieces.length);
      expect(sheets.length).toBeGreaterThanOrEqual(leastSheets(pieces, sheet));
    }));
  });
  test('a face is covered by its tiles, none larger than a sheet', () => {
    fc.assert(fc.property(fc.integer({ min: 60, max: 4000 }), fc.integer({ min: 60, max: 4000 }), (wide, high) => {
      const tiles = tilesOf([wide, high], sheet);
      expect(area(tiles)).toBeCloseTo(wide * high, 3);
      expect(() => cutSheets(tiles, sheet)).not.toThrow();
    }));
  });
  test('counted by hand: six of 480 by 330 are four to a sheet; two of 360 by 310 and one of 640 by 380 fill one', () => {
    expect(cutSheets(Array.from({ length: 6 }, (): Flat => [480, 330]), sheet)).toHaveLength(2);
    expect(cutSheets([[360, 310], [640, 380], [310, 360]], sheet)).toHaveLength(1);
    expect(leastSheets(Array.from({ length: 3 }, (): Flat => [510, 620]), sheet)).toBe(3);
  });
});

test('backings of all frames are cut from sheets together', () => {
  const line = (face: object, count: number) => suppliesOf(buildModel(studioPlan({ face, count }), demoShelf), demoShelf).lines.find(({ kind }) => kind === 'backing');
  expect(line({ width: '480 mm', height: '330 mm' }, 6)).toMatchObject({ for_one: 1, for_all: 6, sheets: { used: 2, least: 2 }, bought: 2, cost: 1.8 });
  expect(line({ width: '480 mm', height: '330 mm' }, 1)).toMatchObject({ for_one: 1, for_all: 1, bought: 1 });
});
