import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readPlanWith } from '../../src/plan/read-plan.js';
import { allBuilds } from '../../src/suggest/builds.js';
import { applyEdit, mergeEdits, noEdit } from '../../src/suggest/edit.js';
import { knownObjections, readable } from '../../src/suggest/objections.js';
import { boardOptions, hangOptions, setbackOptions } from '../../src/suggest/options.js';
import { writeEdit } from '../../src/suggest/write-plan.js';
import { planTexts } from './random-plans.js';
import { bench, benchWith, planOf, withoutNotes } from './studio.js';
import { runs } from '../effort.js';

const few = benchWith('strip-19x38', 'stud-38x64');

describe('a changed plan', () => {
  it('is what the reader makes of the changed file, defaults and their list too, and has nothing said against it', () => {
    fc.assert(
      fc.property(planTexts, fc.nat(), fc.nat(), (text, which, other) => {
        const read = readPlanWith(text, 'plan.yaml', few.shelf);
        fc.pre(read.ok);
        if (!read.ok) return;
        const plan = read.value;
        const { builds } = allBuilds(plan, few.shelf);
        const build = builds[which % builds.length];
        if (build === undefined) throw new Error('the plan itself must be among the builds');
        const pick = <T>(list: readonly T[], n: number): T | undefined => (list.length === 0 ? undefined : list[n % list.length]);
        const edit = mergeEdits(build.edit, pick(setbackOptions(build.plan), other) ?? noEdit, pick(boardOptions(build.plan), other) ?? noEdit, pick(hangOptions(build.plan), other) ?? noEdit);
        const changed = applyEdit(plan, edit, few.shelf);
        fc.pre(readable(changed, few.shelf, knownObjections(plan, few.shelf)));
        const written = writeEdit(text, edit, changed);
        expect(written).not.toBeNull();
        const again = readPlanWith(written ?? '', 'plan.yaml', few.shelf);
        if (!again.ok) throw new Error(`${written}\n${JSON.stringify(again.problems)}`);
        expect(withoutNotes(again.value)).toEqual(withoutNotes(changed));
        expect(new Map(again.value.assumed.map(({ path, value }) => [path, value]))).toEqual(new Map(changed.assumed.map(({ path, value }) => [path, value])));
        expect(written).toContain('# A plan from the Gullmark Street Studio.');
      }),
      { numRuns: runs(25) },
    );
  });

  it('keeps every comment, and every line that does not change as it was typed', () => {
    const text = [
      '# Top of the file', 'plan: 1', 'name: Harbour wall     # working title', 'face: { width: 900 mm, height: 700 mm }', '', '# The bars', 'bars:', '  stock: strip-19x38   # from the rack', '  lay: flat', '  plies: 2',
      "ply-screws: { use: screw-6x32, every: '180 mm' }   # what was left in the box", 'hang: { by: two-hooks }', '# the end', '',
    ].join('\n');
    const plan = planOf(text);
    const edit = { words: [], bars: { lay: 'edge' as const, bond: 'glue' as const }, crossbars: [{ runs: 'level' as const, at: 1 / 3, lay: 'edge' as const }], brace: 'timber' as const };
    const written = writeEdit(text, edit, applyEdit(plan, edit, bench.shelf)) ?? '';
    for (const line of ['# Top of the file', 'name: Harbour wall     # working title', '# The bars', '  stock: strip-19x38   # from the rack', '# the end']) expect(written.split('\n')).toContain(line);
    expect(written).not.toContain('ply-screws');
    expect(written).toContain('- { runs: level, at: 1/3, lay: edge }');
    expect(withoutNotes(planOf(written))).toEqual(withoutNotes(applyEdit(plan, edit, bench.shelf)));
  });

  it('refuses a file it could only guess at', () => {
    expect(writeEdit('plan: 1\nbars: [', { words: [], chosen: 'picked' }, planOf('plan: 1\nname: A\nface: { width: 500 mm, height: 400 mm }\nbars: { stock: strip-19x38, lay: flat }'))).toBeNull();
  });
});
