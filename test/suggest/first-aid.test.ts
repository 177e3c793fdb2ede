import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { audit, withChanges } from '../../src/audit.js';
import { compareGravity } from '../../src/findings/summary.js';
import { readPlanWith } from '../../src/plan/read-plan.js';
import { applyEdit } from '../../src/suggest/edit.js';
import { compareChanges, firstAid } from '../../src/suggest/first-aid.js';
import { writeEdit } from '../../src/suggest/write-plan.js';
import { planTexts } from './random-plans.js';
import { bench, planOf, stairwell } from './studio.js';

const head = 'plan: 1\nname: Trial\n';
/** Wider and higher than any one change can save. */
const hopeless = `${head}face: { width: 1690 mm, height: 1480 mm }\nbars: { stock: strip-19x38, lay: flat }\nlumber: { chosen: unsorted, moisture: 16 % }\ncloth: { roll: 2100 mm }\n`;
const wordsFor = (text: string): string => firstAid({ plan: planOf(text), shelf: bench.shelf }).flatMap(({ words }) => words).join(' ');

describe('the usual changes', () => {
  it('are six for a bare single frame of damp boards', () => {
    const edits = firstAid({ plan: planOf(stairwell), shelf: bench.shelf });
    expect(edits.map(({ words }) => words.length)).toEqual([1, 1, 1, 1, 1, 1]);
    expect(edits.map((edit) => Object.keys(edit).filter((key) => key !== 'words'))).toEqual([['bars'], ['bars'], ['crossbars'], ['brace'], ['chosen'], ['moisture_pct']]);
  });

  it('taken together they never settle one thing twice: of two wider cloths one is taken', async () => {
    const plan = planOf(`${head}face: { width: 2350 mm, height: 1720 mm }\nbars: { stock: strip-19x38, lay: flat }\n`);
    const edits = firstAid({ plan, shelf: bench.shelf });
    expect(edits.filter(({ cloth }) => cloth !== undefined).length).toBeGreaterThan(1);
    const { changes } = await withChanges(await audit(plan, bench), bench);
    expect(changes[0]?.verdict).not.toBe('stop');
    expect(changes[0]?.edit.words.filter((words) => words.includes('from a roll'))).toHaveLength(1);
  });

  it('do not offer what is there already', () => {
    const words = wordsFor(`${head}face: { width: 1200 mm, height: 900 mm }\nbars: { stock: strip-19x38, lay: edge, plies: 3 }\ncrossbars: [ { runs: level, lay: flat } ]\ncorners: { brace: { leg: 150 mm } }\nlumber: { chosen: picked, moisture: 9 % }\n`);
    expect(words).toBe('');
  });

  it('turn no square board on edge, add no board to measured ones, and glue plies that are loose', () => {
    expect(wordsFor(`${head}face: { width: 900 mm, height: 700 mm }\nbars: { stock: square-38x38, lay: flat }\n`)).not.toContain('on edge');
    expect(wordsFor(`${head}face: { width: 900 mm, height: 700 mm }\nbars: { stock: strip-19x38, lay: flat }\nboards: [ { for: top, twist: 1 deg/m } ]\n`)).not.toContain('board to each bar');
    expect(wordsFor(`${head}face: { width: 900 mm, height: 700 mm }\nbars: { stock: strip-19x38, lay: flat, plies: 2, bond: none }\n`)).toContain('Glue the boards of each bar together');
  });

  it('are plans the reader takes, on any plan', () => {
    fc.assert(
      fc.property(planTexts, (text) => {
        const read = readPlanWith(text, 'plan.yaml', bench.shelf);
        fc.pre(read.ok);
        if (!read.ok) return;
        const known = new Set(read.warnings.map(({ code }) => code));
        for (const edit of firstAid({ plan: read.value, shelf: bench.shelf })) {
          const again = readPlanWith(writeEdit(text, edit, applyEdit(read.value, edit, bench.shelf)) ?? '', 'plan.yaml', bench.shelf);
          expect({ text, edit, problems: again.ok ? again.warnings.filter(({ code }) => !known.has(code)) : again.problems }).toEqual({ text, edit, problems: [] });
        }
      }),
      { numRuns: 100 },
    );
  });

  it('come most useful first, with a cure for a stop that no single one cures', async () => {
    const audited = await audit(planOf(hopeless), bench);
    const { changes } = await withChanges(audited, bench);
    const [cure, ...singles] = changes;
    expect(singles.map(({ verdict }) => verdict)).toEqual(['stop', 'stop', 'stop', 'stop', 'stop', 'stop']);
    expect(compareGravity(cure?.verdict ?? 'stop', 'stop')).toBeLessThan(0);
    expect((cure?.words.match(/\.(?= |$)/g) ?? []).length).toBe(2);
    expect([...singles].sort(compareChanges)).toEqual(singles);
    expect(singles.map(({ lift_chance }) => lift_chance)).toEqual(singles.map(({ lift_chance }) => lift_chance).sort((a, b) => (a ?? 1) - (b ?? 1)));
  });
});
