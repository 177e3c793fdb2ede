import fc from 'fast-check';
import { expect, it } from 'vitest';
import { holdToTheBill, somePlan } from './amounts-on-paper.js';

it('every amount on paper appears once as data, for 300 plans of one to nine frames in both unit systems', async () => {
  let read = 0;
  await fc.assert(fc.asyncProperty(somePlan, async (text) => {
    if (await holdToTheBill(text)) read++;
  }), { numRuns: 300 });
  expect(read).toBeGreaterThan(200);
}, 1_200_000);
