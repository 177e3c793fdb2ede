/**
 * Twenty cutting cases with several board lengths, test/data/cutting.yaml: lengths in 1/16 in, prices in cents, kerf 1/8 in.
 * Reference: the optimum of each was proven beforehand by exact methods independent of this code (a search over board combinations; pattern and
 * arc-flow integer programs in HiGHS 1.15.3, CBC 2.10.8 and GLPK 5.0), all that finished agreeing. Integers, so no tolerance.
 * The search is stopped by counting its readings of the clock, not by time, so that a slow machine gives the same answer.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { cutBoards } from '../../src/cutting/boards/pack.js';
import { workClock } from '../../src/cutting/cut-plan.js';
import { problemOf, runCuttingCases, wrongCutting, type LengthsCase } from '../tools/cases-cutting.js';
import { noteShare } from './recorded.js';

const document = parse(readFileSync(new URL('../data/cutting.yaml', import.meta.url), 'utf8')) as { cases: (LengthsCase & { proofs: number })[] };

describe('several board lengths', () => {
  it('has all twenty cases, each proven elsewhere', () => {
    expect(document.cases).toHaveLength(20);
    for (const item of document.cases) expect(item.proofs).toBeGreaterThanOrEqual(1);
  });

  it.each(document.cases.map((item) => [item.id, item] as const))('%s: least cost, proven', (_, item) => {
    const problem = problemOf(item, 1000, workClock());
    const result = cutBoards(problem);
    noteShare(result.ok ? result.cost : NaN, item.optimumCost, 0, 'independent program');
    expect(wrongCutting(problem, result)).toBeNull();
    expect(result).toMatchObject({ ok: true, cost: item.optimumCost, proven: true, tiesProven: true, bound: item.optimumCost, gap: 0 });
  });

  it('is reported case by case', async () => {
    const run = await runCuttingCases(document);
    expect(run.total).toBe(20);
    expect(run.lines).toHaveLength(20);
    expect(run.tolerance).toBe('1 s, proven optimum');
    expect(run.lines.filter((line) => line.includes('WRONG'))).toEqual([]);
  });

  it('is reported as off when the expected cost is not the one found', async () => {
    const first = document.cases[0] as LengthsCase;
    const run = await runCuttingCases({ cases: [{ ...first, optimumCost: first.optimumCost - 1 }] });
    expect(run.within).toBe(0);
    expect(run.lines[0]).toContain('WRONG PROOF');
  });
});
