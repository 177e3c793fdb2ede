import fc from 'fast-check';
import { expect, test } from 'vitest';
import { demoSolved } from '../mechanics/fasteners/demo-model.js';
import { compared, drawn, findingsOf, ruleIds, worsenings, type Drawn } from './worse-plans.js';

// What rightly speaks better of the worse frame is named with its mechanism beside each way of making it worse; many more frames are drawn in the long run.
test.each(worsenings)('made worse ($name), a frame gets no better verdict', async (worsening) => {
  await fc.assert(fc.asyncProperty(drawn, async (frame) => {
    const [before, after] = [await findingsOf(frame), await findingsOf(worsening.make(frame))];
    fc.pre(before !== null && after !== null);
    expect(compared(before!, after!, worsening)).toMatchObject({ better: false, lost: expect.anything() });
  }), { numRuns: 1 });
});

test('every exception is of a rule that there is', () => {
  const rules = new Set(ruleIds);
  for (const { except } of worsenings) for (const { rule } of except) expect([...rules], rule).toContain(rule);
});

test('the board of a crossbar turns the frame with it: without it fewer unsorted frames of that shape lift a corner', async () => {
  const frame: Drawn = { width_mm: 393, height_mm: 850, thickness_mm: 20, board_mm: 46, lay: 'edge', plies: 1, cut: 'mitre', glue: 'pva', brace: 'none', leg_mm: 152, crossbar: 'upright', chosen: 'unsorted', moisture_pct: 9, pull_N_per_m: 180 };
  const chance = async (crossbar: Drawn['crossbar']) => Number((await findingsOf({ ...frame, crossbar }))!.find(({ rule }) => rule === 'warp/corner-lift')!.actual);
  expect(await chance('upright')).toBeGreaterThan((await chance('none')) + 0.01);
});

test('a crossbar that props the short bars is a tie: they turn less at their ends, so the corners take more of the long bars’ moment', () => {
  const moment = (crossbars: object[]): number => demoSolved({ face: { width: '933 mm', height: '390 mm' }, bars: { stock: 'board-19x64', lay: 'edge' }, crossbars, hang: { by: 'none' } }).solution.peak.corners['top-left'].moment_Nmm;
  expect(moment([{ runs: 'level', stock: 'strip-19x38', lay: 'flat' }])).toBeGreaterThan(1.02 * moment([]));
});
