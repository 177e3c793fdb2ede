import fc from 'fast-check';
import { expect, test } from 'vitest';
import { compareGravity } from '../../src/findings/summary.js';
import { demoSolved } from '../mechanics/fasteners/demo-model.js';
import { drawn, findingsOf, verdictOf, worsenings } from './worse-plans.js';

// What rightly speaks better of the worse frame is named, with its reason, beside each way of making it worse; many more frames are drawn in the long run.
test.each(worsenings)('made worse ($name), a frame gets no better verdict', async ({ make, except }) => {
  await fc.assert(fc.asyncProperty(drawn, async (frame) => {
    const [before, after] = [await findingsOf(frame), await findingsOf(make(frame))];
    fc.pre(before !== null && after !== null);
    if (before !== null && after !== null) expect(compareGravity(verdictOf(after, except), verdictOf(before, except))).toBeGreaterThanOrEqual(0);
  }), { numRuns: 1 });
});

test('a crossbar that props the short bars is a tie: they turn less at their ends, so the corners take more of the long bars’ moment', () => {
  const moment = (crossbars: object[]): number => demoSolved({ face: { width: '933 mm', height: '390 mm' }, bars: { stock: 'board-19x64', lay: 'edge' }, crossbars, hang: { by: 'none' } }).solution.peak.corners['top-left'].moment_Nmm;
  expect(moment([{ runs: 'level', stock: 'strip-19x38', lay: 'flat' }])).toBeGreaterThan(1.02 * moment([]));
});
