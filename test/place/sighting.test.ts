import { describe, expect, test } from 'vitest';
import { betterPlaces } from '../../src/place/better-places.js';
import { liftSum, sightingTable, type LiftSum } from '../../src/place/sighting.js';
import { assessWarp } from '../../src/risk/assess.js';
import { chanceBeyond } from '../../src/risk/normal.js';
import { framesOf, planOf, someFrames } from './pile-for-tests.js';

describe('how many boards to sight', () => {
  // One place and two boards, read without error: the straighter one is taken, so both must be bad. Chance p² for two, p³ for three.
  const one: LiftSum = { by: [3], rest: { mean: 0, variance: 0 }, twist: { mean: 0.4, sd: 1.1 }, reading_sd: 0, limit_mm: 4 };
  const p = chanceBeyond(0.4, 1.1, 4 / 3);

  test('agrees with the closed form of two boards for one place', () => {
    const { rows, by_luck, pieces } = sightingTable(one, 5, 20_000);
    expect(pieces).toBe(1);
    expect(by_luck).toBeCloseTo(p, 12);
    expect(rows.map(({ sighted }) => sighted)).toEqual([1, 2, 3]);
    rows.forEach(({ chance, error }, k) => {
      expect(error).toBeGreaterThan(0);
      expect(Math.abs(chance - p ** (k + 1))).toBeLessThan(4 * error);
    });
  });

  test('a reading that says nothing helps nobody: with a huge reading error the chance stays that of luck', () => {
    const { rows, by_luck } = sightingTable({ ...one, reading_sd: 1e6 }, 5, 200);
    for (const { chance } of rows) expect(chance).toBeCloseTo(by_luck, 3);
  });

  test('luck is the audit’s own chance, more boards are never worse, and the same seed gives the same table', () => {
    for (const text of Object.values(someFrames)) {
      const [frame] = framesOf([planOf(text)]);
      const sum = liftSum(frame!)!;
      const table = sightingTable(sum, 3);
      expect(table.by_luck).toBeCloseTo(assessWarp(frame!.model, frame!.solution, frame!.settings)!.lift_chance, 9);
      table.rows.forEach(({ chance }, k) => expect(chance).toBeLessThanOrEqual(table.rows[k - 1]?.chance ?? 1));
      expect(sightingTable(sum, 3)).toEqual(table);
    }
  });
});

describe('measured boards in better places', () => {
  const placed = (order: readonly number[]) => {
    const boards = ['top', 'bottom', 'left', 'right'].map((bar, i) => `  - { for: ${bar}, twist: ${order[i]} deg/m }`).join('\n');
    return framesOf([planOf(`${someFrames.single}boards:\n${boards}\n`)])[0]!;
  };

  test('names the swap that helps, and the lift it leaves is the audit’s of the plan so changed', () => {
    const frame = placed([1.9, 1.3, -1.5, -2]);
    const found = betterPlaces(frame)!;
    expect(found.boards).toBe(4);
    expect(found.swaps.length).toBeGreaterThan(0);
    expect(found.then_mm).toBeLessThan(found.now_mm / 5);
    const order: Record<string, number> = { top: 1.9, bottom: 1.3, left: -1.5, right: -2 };
    for (const [a, b] of found.swaps) [order[a], order[b]] = [order[b]!, order[a]!];
    const swapped = placed(['top', 'bottom', 'left', 'right'].map((bar) => order[bar]!));
    const audited = assessWarp(swapped.model, swapped.solution, swapped.settings)!;
    expect(found.chance_then).toBeCloseTo(audited.lift_chance, 9);
    expect(betterPlaces(swapped)!.swaps).toEqual([]);
  });

  test('says nothing of a single board', () => {
    const plan = planOf(`${someFrames.single}boards:\n  - { for: top, twist: 2 deg/m }\n`);
    expect(betterPlaces(framesOf([plan])[0]!)).toBeNull();
  });
});
