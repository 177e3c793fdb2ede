import fc from 'fast-check';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { workClock } from '../../src/cutting/cut-plan.js';
import { cutBoardsExactly, fullLoads, solveByLoads } from '../../src/cutting/boards/pack-fallback.js';
import { makeReady } from '../../src/cutting/boards/ready-problem.js';
import type { CutProblem, Cutting } from '../../src/cutting/boards/problem.js';
import { loadHighs } from '../../src/highs.js';
import { cutBoards } from '../../src/cutting/boards/pack.js';
import { problemOf, type LengthsCase, type OneLengthCase } from '../tools/cases-cutting.js';
import { fault, fresh, smallProblem } from './problems.js';
import { everything, runs, sampleOf } from '../effort.js';

const { cases } = parse(readFileSync(new URL('../data/cutting.yaml', import.meta.url), 'utf8')) as { cases: LengthsCase[] };
const own = JSON.parse(readFileSync(new URL('../data/binpacking-own.json', import.meta.url), 'utf8')) as OneLengthCase[];

/** The integer program alone, without the search before it; null when there are too many loads, no time, or no cutting. */
async function byIntegerProgram(problem: CutProblem): Promise<Cutting | null> {
  const bench = makeReady(problem);
  const loads = fullLoads(bench, 12_000);
  const solver = await loadHighs();
  return loads === null || solver === null ? null : solveByLoads(solver, problem, bench, loads, null, { ms: 20_000 });
}

describe('an integer program (HiGHS) as an independent check', () => {
  it.each(sampleOf(cases.slice(0, 12), 4).map((item) => [item.id, item] as const))('%s costs the same', async (_, item) => {
    const problem = problemOf(item, 1000, workClock());
    const other = await byIntegerProgram(problem);
    expect(other).not.toBeNull();
    expect(other).toMatchObject({ proven: true, cost: item.optimumCost });
    expect(fault(problem, other as NonNullable<typeof other>)).toBeNull();
  });

  it('agrees with the search on random problems, nested pieces and limits included', async () => {
    let both = 0;
    await fc.assert(fc.asyncProperty(smallProblem, async (problem) => {
      const found = cutBoards(fresh(problem));
      const other = await byIntegerProgram(fresh(problem));
      if (found.ok) both++;
      expect(other?.cost ?? null).toBe(found.ok ? found.cost : null);
    }), { numRuns: runs(80) });
    expect(both).toBeGreaterThan(everything ? 20 : 2);
  });
});

describe('falling back on the integer program', () => {
  const item = own.find(({ name }) => name === 'own_csp_12_6') as OneLengthCase;

  it('closes the gap the search left', async () => {
    const small = problemOf({ ...item, items: item.items.slice(0, 7) }, 0, workClock());
    const search = cutBoards({ ...small, now: workClock() });
    const result = await cutBoardsExactly({ ...small, now: workClock() }, { ms: 20_000 }, loadHighs);
    const free = cutBoards({ ...small, timeLimit_ms: 1e6, now: workClock() });
    expect(free).toMatchObject({ ok: true, proven: true });
    expect(result).toMatchObject({ ok: true, proven: true, cost: free.ok ? free.cost : Number.NaN });
    expect(search.ok && free.ok && search.cost >= free.cost).toBe(true);
  });

  it('keeps the honest gap when the program is too large', async () => {
    const triplets = own.find(({ name }) => name === 'own_triplet_90') as OneLengthCase;
    const result = await cutBoardsExactly(problemOf(triplets, 2, workClock()), { ms: 10 }, loadHighs);
    expect(result).toMatchObject({ ok: true, proven: false });
    if (result.ok) expect(result.bound).toBeLessThan(result.cost);
  });
});
