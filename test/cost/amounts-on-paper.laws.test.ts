import fc from 'fast-check';
import { expect, it } from 'vitest';
import { holdToTheBill, somePlan } from './amounts-on-paper.js';

it('every amount on paper appears once as data: report, cloth page, order of work, buying list and JSON agree', async () => {
  let read = 0;
  await fc.assert(fc.asyncProperty(somePlan, async (text) => {
    if (await holdToTheBill(text)) read++;
  }), { numRuns: 5 });
  expect(read).toBeGreaterThan(2);
}, 120_000);
