import { describe, expect, it } from 'vitest';
import { allBuilds } from '../../src/suggest/builds.js';
import { applyEdit } from '../../src/suggest/edit.js';
import { firstAid } from '../../src/suggest/first-aid.js';
import { clothOptions, glueOptions, nailOptions, rollTooNarrow_mm } from '../../src/suggest/options.js';
import type { Plan } from '../../src/plan/plan.js';
import { readPlanWith } from '../../src/plan/read-plan.js';
import { shippedShelf } from '../plan/shelf-for-tests.js';

const shelf = shippedShelf();

function planOf(face: string, more = ''): Plan {
  const read = readPlanWith(`plan: 1\nname: Changes\nface: ${face}\nbars: { stock: stud-38x64, lay: edge }\n${more}`, 'plan.yaml', shelf);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
}

describe('a roll that is too narrow', () => {
  const wide = planOf('{ width: 1720 mm, height: 1490 mm }');
  // 1490 + 2 (64 + 38 + 50) + 20 = 1814 across, on 1500 mm
  it('is met by the wider cloths of the shelf, in the report only by those that fit', () => {
    expect(rollTooNarrow_mm(wide, shelf)).toBeCloseTo(314, 9);
    expect(clothOptions(wide, shelf).map(({ cloth }) => cloth)).toEqual(['cotton-duck-no-12', 'cotton-duck-500', 'linen-300']);
    const rows = firstAid({ plan: wide, shelf }).filter(({ cloth }) => cloth !== undefined);
    expect(rows.map(({ cloth }) => cloth)).toEqual(['cotton-duck-500', 'linen-300']);
    for (const edit of rows) expect(rollTooNarrow_mm(applyEdit(wide, edit, shelf), shelf)).toBeLessThanOrEqual(0);
  });

  it('leaves a cloth that fits alone', () => {
    expect(clothOptions(planOf('{ width: 900 mm, height: 700 mm }'), shelf)).toEqual([]);
  });
});

describe('corners', () => {
  it('dry ones may be glued, keyed ones may not, glued ones are', () => {
    expect(glueOptions(planOf('{ width: 900 mm, height: 700 mm }', 'corners: { glue: none }\n'), shelf).map(({ glue }) => glue)).toEqual(['pva']);
    expect(glueOptions(planOf('{ width: 900 mm, height: 700 mm }'), shelf)).toEqual([]);
    const dry = planOf('{ width: 900 mm, height: 700 mm }', 'corners: { glue: none }\n');
    expect(applyEdit(dry, glueOptions(dry, shelf)[0]!, shelf).corners.glue).toBe('pva');
    expect(firstAid({ plan: dry, shelf }).some(({ glue }) => glue === 'pva')).toBe(true);
  });

  it('a nail that the plan names may be another or none; one that was picked stays', () => {
    const named = planOf('{ width: 900 mm, height: 700 mm }', 'corners: { nails: { use: nail-2.5x50, each: 2 } }\n');
    const [fitting, none] = nailOptions(named).map((edit) => applyEdit(named, edit, shelf).corners.nails);
    expect(none).toBeNull();
    expect(fitting?.use ?? 'none').not.toBe('nail-2.5x50');
    expect(nailOptions(planOf('{ width: 900 mm, height: 700 mm }'))).toEqual([]);
    expect(allBuilds(named, shelf).builds.some(({ plan }) => plan.corners.nails === null)).toBe(true);
  });
});
