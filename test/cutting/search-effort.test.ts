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

it('pieces are too dear to be left uncut, so that what they are worth proves the cost at once', () => {
  // Worth two coins each, as if left uncut for that, they would prove little: it takes three times as many looks then.
  const lengths = [[219, 2], [338, 2], [498, 2], [497, 2], [428, 4], [320, 1], [304, 1], [306, 3], [190, 2], [333, 1], [373, 3], [469, 2], [499, 3], [332, 4]];
  let looks = 0;
  const stock = [{ length: 911, price: 66 }, { length: 858, price: 114 }, { length: 1124, price: 81 }];
  const items = lengths.map(([length, count]) => ({ length: length!, count: count! }));
  const found = cutBoards({ kerf: 0, stock, items, timeLimit_ms: 150, now: () => looks++ });
  expect(found).toMatchObject({ ok: true, cost: 882, proven: true, tiesProven: true });
  expect(looks).toBeLessThanOrEqual(14);
});
