import { describe, expect, test } from 'vitest';
import { readPile } from '../../src/pile/read-pile.js';
import { aimOf } from '../../src/place/aim.js';
import { drawer, shuffled } from '../../src/place/draw.js';
import { improve } from '../../src/place/improve.js';
import { placeBoards } from '../../src/place/place.js';
import { filledOf, fillInOrder } from '../../src/place/start.js';
import { roomOn } from '../../src/place/placing.js';
import { hardPlans, pileOfBoards } from '../bench/bench-piles.js';
import { bench, planOf, problemOf } from './pile-for-tests.js';
import { byForce } from './by-force.js';

function boardsOf(count: number, seed: number, shortest_mm: number) {
  const pile = readPile(pileOfBoards(count, 'half', seed, shortest_mm), 'pile.yaml', bench.shelf);
  if (!pile.ok) throw new Error(JSON.stringify(pile.problems));
  return pile.value.boards;
}

/** The least aim that small steps find from many other starts: never below what was proven. */
function byManyStarts(problem: ReturnType<typeof problemOf>, starts: number): number {
  const below = drawer(99);
  const hasRoom = roomOn(problem);
  const [slots, boards] = [problem.slots.map((_, i) => i), problem.boards.map((_, b) => b)];
  let least = Infinity;
  let filled = 0;
  for (let n = 0; n < starts; n++) {
    const start = fillInOrder(problem, shuffled(slots, below), shuffled(boards, below), hasRoom);
    filled = Math.max(filled, filledOf(start));
    if (filledOf(start) < problem.slots.length) continue;
    least = Math.min(least, improve(problem, start, hasRoom, ({ mean, variance }) => aimOf(problem.allGroups, mean, variance)).score);
  }
  expect(filled).toBe(problem.slots.length);
  return least;
}

/** One piece to a board, and boards that give two. */
const lengths_mm = [1650, 2900];

describe.each(Object.keys(hardPlans))('twelve pieces, every second board unread: %s', (name) => {
  const plan = planOf(hardPlans[name] as string);
  test.each([12, 14, 16, 20])('%i boards: proven with the usual effort, and no start by small steps comes below', (count) => {
    for (const seed of [1, 2, 3, 4, 5, 6]) for (const shortest_mm of lengths_mm) {
      const problem = problemOf([plan], boardsOf(count, seed, shortest_mm));
      const placed = placeBoards(problem);
      expect(placed.proven, `seed ${seed}, ${shortest_mm} mm`).toBe(true);
      expect(placed.bound).toBeGreaterThanOrEqual(placed.aim - 2e-7);
      expect(byManyStarts(problem, 30)).toBeGreaterThanOrEqual(placed.aim - 2e-7);
    }
  });
});

test('eight pieces in pairs from eight boards, half unread: every way tried finds nothing better', () => {
  const plan = planOf('plan: 1\nname: Pairs\nface: { width: 1480 mm, height: 1130 mm }\nbars: { stock: strip-19x38, lay: edge, plies: 2 }\nlumber: { chosen: unsorted, moisture: 9 % }\n');
  for (const seed of [1, 2, 3]) {
    const problem = problemOf([plan], boardsOf(8, seed, 1500));
    const [placed, force] = [placeBoards(problem), byForce(problem)];
    expect(placed.proven).toBe(true);
    expect(force.filled).toBe(8);
    expect(Math.abs(placed.aim - force.aim)).toBeLessThan(2.5e-7);
  }
});
