import fc from 'fast-check';
import { expect, test } from 'vitest';
import { schedule } from '../../src/timetable/schedule.js';
import { toyFrames, toyProblem, toyShop } from './small-problems.js';

const sessionsOf = (...args: Parameters<typeof toyProblem>): number => {
  const { sessions, proven } = schedule(toyProblem(...args));
  expect(proven).toBe(true);
  return sessions ?? Infinity;
};

test('one more clamp, person, saw or minute never takes more sessions, and one more frame never fewer', () => {
  fc.assert(fc.property(toyFrames(1, 6), toyShop, (frames, shop) => {
    const now = sessionsOf(frames, shop, 12);
    for (const more of [{ clamps: shop.clamps + 1 }, { people: shop.people + 1 }, { saws: shop.saws + 1 }, { length: shop.length + 1 }]) expect(sessionsOf(frames, { ...shop, ...more }, 12)).toBeLessThanOrEqual(now);
    expect(sessionsOf([...frames, frames[0]!], shop, 12)).toBeGreaterThanOrEqual(now);
    expect(sessionsOf(frames, shop, 13)).toBeLessThanOrEqual(now);
  }), { numRuns: 30 });
});
