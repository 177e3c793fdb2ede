import { describe, expect, test } from 'vitest';
import { drawer } from '../../src/place/draw.js';
import { placeBoards, usualEffort } from '../../src/place/place.js';
import { totalsOf } from '../../src/place/placing.js';
import type { Option, PlaceProblem } from '../../src/place/problem.js';
import { placePlans } from '../../src/place/place-plans.js';
import type { PileBoard } from '../../src/pile/pile.js';
import { assessWarp } from '../../src/risk/assess.js';
import { chanceBeyond } from '../../src/risk/normal.js';
import { byForce } from './by-force.js';
import { bench, board, pileOf, planOf, problemOf, someFrames } from './pile-for-tests.js';
import { runs } from '../effort.js';

const plans = Object.values(someFrames).map((text) => planOf(text));

/** A pile drawn from a seed: some boards with all readings, some with one, some with none; lengths for one piece or two. */
function drawn(below: (limit: number) => number, count: number): readonly PileBoard[] {
  const even = (most: number): number => (below(2001) / 1000 - 1) * most;
  return Array.from({ length: count }, (_, i) => board(`b${i}`, {
    length_mm: 1150 + below(3) * 600,
    ...(below(6) === 0 ? {} : { twist: even(2.5) }),
    bow_per_m: below(3) === 0 ? even(0.02) : null,
    crook_per_m: below(3) === 0 ? even(0.012) : null,
  }));
}

/** How many ways there are to go through, at most. */
const ways = ({ options }: PlaceProblem): number => options.reduce((product, own) => product * (own.length + 1), 1);

describe('two hundred small piles, half of them in `npm test`, every way tried', () => {
  const below = drawer(42);
  const cases = Array.from({ length: runs(200, 1 / 2) }, (_, n) => {
    for (;;) {
      const plan = plans[below(plans.length)]!;
      const boards = drawn(below, 3 + below(6));
      const problem = problemOf([plan], boards);
      if (ways(problem) < 6000) return { n, problem, force: byForce(problem) };
    }
  });

  test('the search finds the least aim, says so, and never claims more', () => {
    let unproven = 0;
    for (const { n, problem, force } of cases) {
      const placed = placeBoards(problem);
      expect(placed.placing.filter((option: Option) => option.board >= 0), `pile ${n}`).toHaveLength(force.filled);
      expect(placed.bound, `pile ${n}`).toBeLessThanOrEqual(force.aim + 1e-9);
      if (placed.proven) expect(placed.aim - force.aim, `pile ${n}`).toBeLessThan(2.5e-7);
      else unproven++;
      expect(placed.aim, `pile ${n}`).toBeGreaterThanOrEqual(force.aim - 1e-9);
    }
    expect(unproven).toBe(0);
    expect(new Set(cases.map(({ problem }) => problem.slots.length))).toEqual(new Set([4, 5, 6]));
  }, 120_000);

  test('a search that is cut short gives a bound that holds, and does not claim a proof', () => {
    for (const { problem, force } of cases.slice(0, 60)) {
      const cut = placeBoards(problem, { seed: 1, starts: 1, nodes: 0 });
      expect(cut.bound).toBeLessThanOrEqual(force.aim + 1e-9);
      if (cut.proven) expect(cut.aim - force.aim).toBeLessThan(2.5e-7);
    }
  }, 60_000);
});

test('what the search adds up is what the audit says of the plan with these boards', () => {
  const below = drawer(7);
  for (const plan of plans) {
    const boards = drawn(below, 7);
    const problem = problemOf([plan], boards);
    const placed = placeBoards(problem, { ...usualEffort, seed: bench.seed });
    const { mean, variance } = totalsOf(problem, placed.placing);
    const [frame] = problem.frames;
    const [judged] = placePlans([plan], pileOf(boards), bench).frames;
    const audited = assessWarp({ ...frame!.model, plan: { ...plan, boards: judged!.boards } }, frame!.solution, frame!.settings)!;
    expect(judged!.lift!.mean_mm).toBeCloseTo(audited.lift.mean, 9);
    expect(judged!.lift!.sd_mm).toBeCloseTo(audited.lift.sd, 9);
    expect(judged!.lift!.chance).toBeCloseTo(audited.lift_chance, 12);
    // The search adds up the lift at no pull; the growth with the pull comes after.
    expect(mean[0]).toBeCloseTo(audited.lift.unpulled.mean, 9);
    expect(Math.sqrt(variance[0]!)).toBeCloseTo(audited.lift.unpulled.sd, 9);
    expect(chanceBeyond(mean[0]!, Math.sqrt(variance[0]!), problem.measures[0]!.limit_mm)).toBeCloseTo(audited.lift_chance, 9);
    problem.measures.forEach(({ bar }, j) => {
      if (bar === null || j % 7 !== 4) return;
      const station = 8;
      const there = audited.terms.reduce((sum, term) => sum + (term.bow[bar][station] as number) * term.mean_per_m, 0);
      expect(mean[j]).toBeCloseTo(there, 9);
    });
  }
});
