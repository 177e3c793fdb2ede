import { describe, expect, test } from 'vitest';
import { withMeasured } from '../../src/bench-sheet/judge-sheet.js';
import { suppliesOf } from '../../src/cost/supplies.js';
import type { Audit } from '../../src/report/audit-view.js';
import { composeReport } from '../../src/report/compose.js';
import { writeMarkdown } from '../../src/report/markdown.js';
import { benchSheetSection } from '../../src/report/sections/bench-sheet.js';
import { sheetInputSchema } from '../../src/bench-sheet/sheet-schema.js';
import { sheetsOf } from '../../src/sheets/sheets.js';
import { telling } from '../../src/report/telling.js';
import { trial } from '../report/applied.js';
import { nothing, promisedBy, ruled } from './audited.js';

function audited(changes: object = {}): Audit {
  const promised = promisedBy(changes);
  const { shelf } = promised.model;
  const supplies = suppliesOf(promised.model, shelf);
  return {
    ...promised, shelf, silent: [], assumed: [], left_out: [], applied: trial, seed: 1, samples: 2000, changes: [], cut: supplies.cut, supplies, sources: [], sheets: sheetsOf({ ...promised, cut: supplies.cut }),
  };
}

const page = (audit: Audit): string => writeMarkdown(composeReport(audit).tree);

describe('the report', () => {
  test('tells nothing of readings when there are none, and all of them when there are', () => {
    const plain = audited();
    expect(page(plain)).not.toContain('What you measured');
    const said = page(withMeasured(plain, { ...nothing, corner_lift_mm: 9, tap_Hz: 15, diagonals_mm: [1081, 1082] }));
    const part = said.slice(said.indexOf('## What you measured'), said.indexOf('## What to buy and cut'));
    expect(part).toContain('| Corner lift, table | 9 mm | 4 mm | ✕ Stop |');
    expect(part).toMatch(/\| Diagonals differ by \| 1 mm \| 2 mm \| ● Clear \|/);
    expect(part).toContain('Why it twists, most likely first');
    expect(part).toContain('was not written down');
    // Said once, with the verdict; what to do about it stands below.
    expect(said.split('Off the table the fourth corner stands up 9 mm').length - 1).toBe(1);
    expect(part).toMatch(/^- \*\*✕ Stop\*\*, Corner lift: Do not hang it as it is\./mu);
  });

  test('what was measured leads, and nothing says that all is well under a stop', () => {
    const bad = { ...nothing, corner_lift_mm: 9 };
    // A plan that must stop by itself as well, with more of its limits used than the reading uses of its own.
    const own = (verdict: 'clear' | 'caution' | 'stop') => ({ ...ruled('frame.dish_mm', 1, 'frame', verdict), say: `The plan itself says ${verdict}.`, used: 40 });
    for (const findings of [[], [own('clear')], [own('caution')], [own('stop')]]) {
      const whole = withMeasured({ ...audited(), findings }, bad);
      const said = page(whole);
      expect(whole.verdict).toBe('stop');
      expect(said).toMatch(/^> What you measured: \*\*✕ Stop\*\*\.\n>\n> \*\*✕ Stop: /mu);
      expect(/^- (.*)$/mu.exec(said)?.[1]).toContain('Off the table the fourth corner stands up 9 mm');
      expect(said).not.toContain('Nothing has to change');
      expect(said.indexOf('What to do now')).toBeGreaterThan(0);
    }
  });

  test('in inches throughout when the plan is', () => {
    const inches = withMeasured(audited({ face: { width: '36 in', height: '24 in' } }), { ...nothing, corner_lift_mm: 12.7, winding_mm: 6.35, bow_mm: { left: 6.35 }, push: { weight_g: 500, sag_mm: 9, pad_mm: 50 }, weight_kg: 2 });
    const said = page(inches);
    const part = said.slice(said.indexOf('## What you measured'), said.indexOf('## What to buy and cut'));
    expect(part).toContain('1/2 in');
    expect(part).not.toMatch(/\d (mm|kg|N\/m)\b/);
  });

  test('a name that a person wrote cannot become markup', () => {
    const sheet = { ...nothing, plan: '<script>alert(1)</script> **bold** | [x](y)' };
    const said = page(withMeasured(audited(), sheet));
    expect(said).not.toMatch(/(^|[^\\])<script/);
    expect(said).toContain('script');
    expect(said).not.toMatch(/[^\\]\*\*bold\*\*/);
  });

  test('every reading the sheet can hold has its name on the paper', () => {
    const paper = JSON.stringify(benchSheetSection(telling(audited())).blocks);
    const { sheet: _format, plan: _plan, ...readings } = sheetInputSchema.shape;
    for (const key of Object.keys(readings)) expect(paper, key).toContain(key);
  });

  test('what if: slips, readings, door and lifting stand in the report', () => {
    const said = page(audited());
    for (const words of ['What if I am a little off?', 'Blade half a degree out of upright', 'What to measure first', 'a common door', 'One person lifts it']) expect(said).toContain(words);
  });
});

test('with readings the verdict speaks of a frame that is being built, and the plan’s own line keeps the plan’s verdict', () => {
  const change = { words: 'Turn the bars on edge.', verdict: 'clear', twist_reserve: 9, lift_chance: 0.01, cost: null, weight_kg: null, drawn: audited() } as const;
  const said = page(withMeasured({ ...audited(), findings: [ruled('frame.dish_mm', 2)], changes: [change] }, { ...nothing, corner_lift_mm: 9 }));
  expect(said).toContain('Stop: do not go on with this frame yet.');
  expect(said).toMatch(/\| As planned \| ● Clear \|/);
});
