/**
 * Ninety-four problems with one board length: fewest boards.
 * Reference: test/data/binpacking-own.json, 24 made for this project (optimum by construction, or by arc-flow integer programs in CBC and HiGHS), and,
 * where a file with published ones lies beside the project, 70 of them (BPPLib collection and OR-Library u120), optimum by the same programs.
 * The bar, in the long run: at least 87 of the 94 proven, none proven wrongly. Integers, so no tolerance. Stopped by counted readings of the clock.
 */
import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { workClock } from '../../src/cutting/cut-plan.js';
import { cutBoards } from '../../src/cutting/boards/pack.js';
import { problemOf, wrongCutting, type OneLengthCase } from '../tools/cases-cutting.js';
import { noteShare } from './recorded.js';
import { everything } from '../effort.js';

const read = (url: URL): OneLengthCase[] => JSON.parse(readFileSync(url, 'utf8')) as OneLengthCase[];
const own = read(new URL('../data/binpacking-own.json', import.meta.url));
const published = new URL('../../../shared/cases/binpacking-public.json', import.meta.url);

/** How many cases were proven; each answer is checked piece by piece, and against the optimum known. Those `noted` go to the validation page, which is the same on every machine. */
function provenAmong(cases: readonly OneLengthCase[], readings: number, noted: boolean): number {
  let proven = 0;
  for (const item of cases) {
    const problem = problemOf(item, readings, workClock());
    const result = cutBoards(problem);
    expect(wrongCutting(problem, result), item.name).toBeNull();
    if (!result.ok) continue;
    expect(result.cost, item.name).toBeGreaterThanOrEqual(item.optimum);
    expect(result.bound, item.name).toBeLessThanOrEqual(item.optimum);
    if (!result.proven) expect(result.gap).toBeGreaterThan(0);
    if (!result.proven) continue;
    if (noted) noteShare(result.cost, item.optimum, 0, 'independent program');
    expect(result.cost, item.name).toBe(item.optimum);
    proven++;
  }
  return proven;
}

describe('one board length', () => {
  it('made for this project: at least 21 of 24 proven, never wrongly', () => {
    expect(own).toHaveLength(24);
    expect(provenAmong(own, 400, true)).toBeGreaterThanOrEqual(21);
  });

  it.skipIf(!everything || !existsSync(published))('with the published ones: at least 87 of 94 proven, never wrongly', () => {
    const cases = [...own, ...read(published)];
    expect(cases).toHaveLength(94);
    expect(provenAmong(cases, 400, false)).toBeGreaterThanOrEqual(87);
  });
});
