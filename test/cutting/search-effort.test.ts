import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { parse } from 'yaml';
import { cutBoards } from '../../src/cutting/boards/pack.js';
import { problemOf, wrongCutting, type LengthsCase, type OneLengthCase } from '../tools/cases-cutting.js';

const data = (name: string): string => readFileSync(new URL(`../data/${name}`, import.meta.url), 'utf8');
const oneLength = JSON.parse(data('binpacking-own.json')) as OneLengthCase[];
const lengths = (parse(data('cutting.yaml')) as { cases: LengthsCase[] }).cases;

/** How often the search may look at the clock until it has proven a case: what it takes, and a quarter more. A change that lets it do more work for the same proof shows here, on every machine alike. */
it.each([
  ['own_triplet_36', 44], ['own_csp_14_8', 26], ['own_csp_12_7', 11], ['c05-n8', 11], ['c16-n27', 42], ['c17-n30', 55],
])('%s is proven within %i looks at the clock', (name, most) => {
  const item = [...oneLength, ...lengths].find((one) => ('name' in one ? one.name : one.id) === name)!;
  let looks = 0;
  const problem = problemOf(item, most, () => looks++);
  const result = cutBoards(problem);
  expect(wrongCutting(problem, result)).toBeNull();
  expect(result).toMatchObject({ ok: true, proven: true, cost: 'capacity' in item ? item.optimum : item.optimumCost, gap: 0 });
  expect(looks).toBeLessThanOrEqual(most);
});
