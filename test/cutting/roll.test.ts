import { describe, expect, test } from 'vitest';
import { packRoll } from '../../src/cutting/roll/roll.js';
import type { RollPiece } from '../../src/cutting/roll/piece.js';
import { overlaps, shortestByTrial } from './roll-trial.js';

const piece = (name: string, along_mm: number, across_mm: number, turnable = false): RollPiece => ({ name, along_mm, across_mm, turnable });

describe('several cloths on one roll', () => {
  test('two cloths that fit side by side take the length of the longer', () => {
    const layout = packRoll([piece('small study', 700, 600), piece('long study', 1100, 850)], 1500);
    expect(layout.length_mm).toBe(1100);
    expect(layout.proven).toBe(true);
    expect(layout.used_share).toBeCloseTo((700 * 600 + 1100 * 850) / (1500 * 1100), 12);
  });

  test('cloths are told from the beginning of the roll on, and from its left edge, in whichever order they were laid', () => {
    // Rows, longest first: the third goes beside the first, the fourth beside the second.
    const { placed, length_mm } = packRoll([piece('a', 1000, 800), piece('b', 900, 790), piece('c', 300, 700), piece('d', 290, 700)], 1500);
    expect(length_mm).toBe(1900);
    expect(placed.map(({ name, x_mm, y_mm }) => [name, x_mm, y_mm])).toEqual([['a', 0, 0], ['c', 800, 0], ['b', 0, 1000], ['d', 790, 1000]]);
  });

  test('two cloths wider than half the roll come one behind the other', () => {
    const layout = packRoll([piece('a', 900, 800), piece('b', 1250, 760)], 1500);
    expect(layout).toMatchObject({ length_mm: 2150, least_mm: 2150, proven: true });
  });

  test('a layout that rows cannot reach: three short beside one long', () => {
    const layout = packRoll([piece('long', 1500, 900), piece('s1', 500, 600), piece('s2', 480, 600), piece('s3', 520, 600)], 1500);
    expect(layout.length_mm).toBe(1500);
    expect(layout.used_share).toBeCloseTo(1, 12);
  });

  test('a layout that no straight cut across the roll divides (five cloths round a middle)', () => {
    const wheel = [piece('a', 500, 900), piece('b', 900, 500), piece('c', 500, 900), piece('d', 900, 500), piece('middle', 400, 400)];
    const layout = packRoll(wheel, 1400);
    expect(layout.length_mm).toBe(1400);
    expect(layout.proven).toBe(true);
    expect(overlaps(layout.placed, 1400)).toEqual([]);
  });

  test('thread direction is kept unless a piece may turn', () => {
    expect(packRoll([piece('kept', 1000, 700), piece('too', 600, 700)], 1400).placed.every((p) => !p.turned)).toBe(true);
    expect(packRoll([piece('kept', 1400, 700)], 1500).length_mm).toBe(1400);
    const turned = packRoll([piece('indifferent', 1400, 700, true)], 1500);
    expect(turned.length_mm).toBe(700);
    expect(turned.placed[0]).toMatchObject({ turned: true, across_mm: 1400, along_mm: 700 });
  });

  test('a cloth wider than the roll is named and never joined', () => {
    const layout = packRoll([piece('big', 2074, 1874), piece('small', 600, 500)], 1500);
    expect(layout.too_wide).toEqual(['big']);
    expect(layout.placed.map((p) => p.name)).toEqual(['small']);
  });

  test('nothing to cut takes nothing; a size that is no size is refused', () => {
    expect(packRoll([], 1500)).toMatchObject({ length_mm: 0, placed: [], proven: true });
    expect(() => packRoll([piece('a', Number.NaN, 500)], 1500)).toThrow(RangeError);
    expect(() => packRoll([piece('a', 500, 500)], 0)).toThrow(RangeError);
  });

  test('ten unequal cloths are proven', () => {
    const ten = [910, 1230, 640, 780, 1010, 560, 870, 690, 1140, 730].map((along, i) => piece(`c${i}`, along, [520, 640, 410, 700, 480, 350, 610, 430, 570, 390][i] as number));
    const layout = packRoll(ten, 1800);
    expect(layout.proven).toBe(true);
    expect(layout.placed).toHaveLength(10);
    expect(overlaps(layout.placed, 1800)).toEqual([]);
  });

  test('the trial search the laws lean on finds the wheel too', () => {
    expect(shortestByTrial([piece('a', 2, 3), piece('b', 3, 2), piece('c', 2, 3), piece('d', 3, 2)], 5)).toBe(5);
  });
});
