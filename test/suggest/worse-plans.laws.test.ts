import fc from 'fast-check';
import { expect, test } from 'vitest';
import { compareGravity } from '../../src/findings/summary.js';
import { drawn, findingsOf, verdictOf, worsenings } from './worse-plans.js';

// What rightly speaks better of the worse frame is named, with its reason, beside each way of making it worse; many more frames are drawn in the long run.
test.each(worsenings)('made worse ($name), a frame gets no better verdict', async ({ make, except }) => {
  await fc.assert(fc.asyncProperty(drawn, async (frame) => {
    const [before, after] = [await findingsOf(frame), await findingsOf(make(frame))];
    fc.pre(before !== null && after !== null);
    if (before !== null && after !== null) expect(compareGravity(verdictOf(after, except), verdictOf(before, except))).toBeGreaterThanOrEqual(0);
  }), { numRuns: 3 });
});
