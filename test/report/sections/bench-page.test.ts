import { expect, test } from 'vitest';
import { judgeSheet, withMeasured } from '../../../src/bench-sheet/judge-sheet.js';
import type { Sheet } from '../../../src/bench-sheet/sheet.js';
import { composeReport } from '../../../src/report/compose.js';
import { writeMarkdown } from '../../../src/report/markdown.js';
import { nothing } from '../../bench-sheet/audited.js';
import { auditOf } from '../audits.js';

const plan = (moisture: number): string => `plan: 1
name: Weir gate
face: { width: 830 mm, height: 610 mm }
bars: { stock: strip-19x38, lay: edge }
lumber: { moisture: ${moisture} % }
`;

const page = async (text: string): Promise<string> => writeMarkdown(composeReport(await auditOf(text)).tree);
const amount = (text: string, row: RegExp): number => Number(row.exec(text)?.[1]);

test('the sheet and the first step name one moisture, and a meter that reads it is content', async () => {
  for (const moisture of [19, 12, 8]) {
    const text = await page(plan(moisture));
    const onSheet = amount(text, /Moisture of the boards when cut \| up to ([\d.]+) %/);
    if (moisture > 10) expect(amount(text, /a meter may read ([\d.]+) % at most/)).toBe(onSheet);
    expect(onSheet).toBeLessThanOrEqual(moisture);
    const audit = await auditOf(plan(moisture));
    const verdict = (moisture_pct: number) => judgeSheet(audit, { ...nothing, moisture_pct }).findings.find(({ rule }) => rule === 'measured/moisture')!.verdict;
    expect(verdict(onSheet)).toBe('clear');
    expect(verdict(onSheet + 1.6)).toBe('caution');
  }
});

test('every lift and bow that the sheet prints is what a reading is held against', async () => {
  const text = await page(plan(9));
  const audit = await auditOf(plan(9));
  const verdict = (sheet: Partial<Sheet>, rule: string, bar = 'frame'): string =>
    judgeSheet(audit, { ...nothing, ...sheet }).findings.find((f) => f.rule === `measured/${rule}` && f.about === bar)!.verdict;
  const table = amount(text, /fourth corner up by \| up to ([\d.]+) mm/);
  const sticks = amount(text, /their far ends disagree by \| up to ([\d.]+) mm/);
  const stretched = amount(text, /off the table, cloth on \| up to ([\d.]+) mm/);
  const bow = amount(text, /plane of its corners, cloth on \| up to ([\d.]+) mm/);
  const inward = amount(text, /middle out of straight \| up to ([\d.]+) mm/);
  const step = 0.051; // half of the last printed digit
  for (const [good, bad, rule, bar] of [
    [{ when: 'before-cloth', corner_lift_mm: table - step }, { when: 'before-cloth', corner_lift_mm: table + step }, 'corner-lift', 'frame'],
    [{ when: 'before-cloth', winding_mm: sticks - step }, { when: 'before-cloth', winding_mm: sticks + step }, 'winding', 'frame'],
    [{ corner_lift_mm: stretched - step }, { corner_lift_mm: stretched + step }, 'corner-lift', 'frame'],
    [{ bow_mm: { top: bow - step } }, { bow_mm: { top: bow + step } }, 'bar-bow', 'top'],
    [{ inward_bow_mm: { top: inward - step } }, { inward_bow_mm: { top: inward + step } }, 'inward-bow', 'top'],
  ] as const) {
    expect([rule, verdict(good, rule, bar)]).toEqual([rule, 'clear']);
    expect([rule, verdict(bad, rule, bar)]).not.toEqual([rule, 'clear']);
  }
});

test('a stop of the bench sheet is never followed by “nothing has to change”', async () => {
  const audit = { ...(await auditOf(plan(9))), changes: [] };
  const clean = { ...audit, findings: audit.findings.filter(({ verdict }) => verdict === 'clear') };
  const said = writeMarkdown(composeReport(withMeasured(clean, { ...nothing, corner_lift_mm: 14 })).tree);
  expect(said).toMatch(/^> What you measured: \*\*✕ Stop\*\*\./m);
  expect(said).toContain('### What to do now');
  expect(said).not.toContain('## What to change');
  expect(said).not.toMatch(/^Nothing has to change\.$/m);
  expect(writeMarkdown(composeReport(clean).tree)).toMatch(/^Nothing has to change\.$/m);
});

test('rings are drilled for, and the hole in a steel angle passes its own screw', async () => {
  const text = await page('plan: 1\nname: Ferry\nface: { width: 610 mm, height: 430 mm }\nbars: { stock: square-38x38, lay: flat }\ncorners: { brace: { kind: steel-angle, leg: 80 mm } }\n');
  expect(text).toMatch(/Drill [\d.]+ mm for each ring, \d+ mm deep/);
  const shank_mm = 0.138 * 25.4;
  expect(amount(text, /Drill: ([\d.]+) mm through the steel/)).toBeGreaterThanOrEqual(shank_mm);
});
