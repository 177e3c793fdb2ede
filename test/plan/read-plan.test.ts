import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readShelf } from '../../src/shelf/read-shelf.js';
import { readPlan, readPlanWith } from '../../src/plan/read-plan.js';
import type { Plan } from '../../src/plan/plan.js';
import { fileText, shippedShelf } from './shelf-for-tests.js';

const shelf = shippedShelf();
const smallest = fileText('test/plans/smallest.yaml');

function plan(text: string, on = shelf): Plan {
  const result = readPlanWith(text, 'plan.yaml', on);
  if (!result.ok) throw new Error(JSON.stringify(result.problems, null, 1));
  return result.value;
}

describe('the smallest plan', () => {
  it('takes every default', () => {
    expect(plan(smallest)).toEqual({
      name: 'Small study', student: null, count: 1, units: 'metric', face: { width_mm: 500, height_mm: 400 },
      bars: { stock: 'strip-19x38', lay: 'flat', lip_mm: 0, plies: 1, stack: 'side-by-side', bond: 'none', pairing: 'unsorted' },
      crossbars: [],
      corners: { cut: 'mitre', glue: 'pva', nails: { use: 'brad-18ga-25', each: 1 }, brace: null, give: null },
      ply_screws: null,
      cloth: { use: 'cotton-duck-340', working: { x_N_per_m: 200, y_N_per_m: 200 }, peak: { x_N_per_m: 400, y_N_per_m: 400 }, fixing: { to: 'back', every_mm: 50, turn_mm: 50 }, roll_mm: null },
      ground: { coats: 2 },
      lumber: { chosen: 'plain', moisture_pct: 12, knots: 'few', rough_faces: 'inward' },
      boards: [],
      room: { humidity_low: 0.35, humidity_high: 0.6, temperature_C: 20 },
      hang: { by: 'wire', drop_mm: 130, from: 'inside', hooks: 2, slack_mm: 60 },
      spend_limit: null, door: null,
      assumed: expect.anything(),
    });
  });

  it('lists every default it took, in the order of the file, in words', () => {
    expect(plan(smallest).assumed).toEqual([
      { path: 'count', value: 'one frame' },
      { path: 'bars.plies', value: 'one ply' }, { path: 'bars.lip', value: '0 mm' },
      { path: 'crossbars', value: 'none' },
      { path: 'corners.glue', value: 'pva' }, { path: 'corners.nails', value: 'brad-18ga-25, one in each corner' }, { path: 'corners.cut', value: 'mitre' },
      { path: 'cloth.pull.working', value: '200 N/m' }, { path: 'cloth.pull.peak', value: '400 N/m, twice the working pull' }, { path: 'cloth.roll', value: 'the width of the shelf’s roll' },
      { path: 'cloth.use', value: 'cotton-duck-340' }, { path: 'cloth.fixing.to', value: 'the back' }, { path: 'cloth.fixing.every', value: '50 mm' }, { path: 'cloth.fixing.turn', value: '50 mm' },
      { path: 'ground.coats', value: 'two coats' },
      { path: 'lumber.chosen', value: 'plain' }, { path: 'lumber.moisture', value: '12 %' }, { path: 'lumber.knots', value: 'few' }, { path: 'lumber.rough-faces', value: 'inward' },
      { path: 'room.humidity', value: '35 to 60 %' }, { path: 'room.temperature', value: '20 °C' },
      { path: 'hang.by', value: 'wire' }, { path: 'hang.drop', value: '130 mm' }, { path: 'hang.from', value: 'the inside of the bars' }, { path: 'hang.hooks', value: 'two hooks' }, { path: 'hang.slack', value: '60 mm' },
    ]);
  });
});

describe('a plan that says everything', () => {
  const full = plan(fileText('test/plans/everything.yaml'));

  it('assumes nothing', () => {
    expect(full.assumed).toEqual([]);
  });

  it('keeps every value', () => {
    expect(full).toMatchObject({
      count: 3, face: { width_mm: 1200, height_mm: 900 },
      bars: { lay: 'edge', lip_mm: 3, plies: 2, bond: 'glue+screws', pairing: 'opposed' },
      corners: { cut: 'half-lap', glue: 'aliphatic', nails: { use: 'pin-1.6x25', each: 2 }, brace: { kind: 'timber', leg_mm: 250, stock: 'board-19x64', lay: 'edge', give: null }, give: { plane: 4, out: 4, twist: 4 } },
      ply_screws: { use: 'screw-6x32', every_mm: 150, pilot_mm: 2.5 },
      cloth: { working: { x_N_per_m: 250, y_N_per_m: 120 }, peak: { x_N_per_m: 600, y_N_per_m: 600 }, fixing: { to: 'edge', every_mm: 40, turn_mm: 60 }, roll_mm: 1500 },
      lumber: { chosen: 'picked', moisture_pct: 11, knots: 'none', rough_faces: 'outward' },
      room: { humidity_low: 0.4, humidity_high: 0.55 },
      hang: { by: 'wire', drop_mm: 160, from: 'back', hooks: 1, slack_mm: 50 }, spend_limit: 60, door: { width_mm: 760, height_mm: 1980 },
    });
    expect(full.room.temperature_C).toBeCloseTo((66 - 32) / 1.8, 12);
  });

  it('counts crossbars across the face, by share or by length', () => {
    expect(full.crossbars).toEqual([
      { runs: 'upright', at: 0.5, stock: 'strip-19x38', lay: 'edge', plies: 1, setback_mm: 5, give: { plane: 7, out: 7, twist: 7 } },
      { runs: 'level', at: 400 / 900, stock: 'board-19x64', lay: 'flat', plies: 2, setback_mm: 6.35, give: { plane: 0, out: 0, twist: 0 } },
    ]);
  });

  it('turns readings of boards into curvature, 8 x rise / length squared', () => {
    expect(full.boards[0]).toEqual({ for: 'top', ply: 1, twist_rad_per_m: (0.4 * Math.PI) / 180, bow_per_m: (8 * 0.002) / 2.4 ** 2, crook_per_m: (8 * 0.001) / 2.4 ** 2 });
    expect(full.boards[1]).toEqual({ for: 'left', ply: 2, twist_rad_per_m: (-0.2 * Math.PI) / 180, bow_per_m: -0.001, crook_per_m: null });
  });
});

describe('defaults inside blocks that are given in part', () => {
  const inches = plan(fileText('test/plans/inches.yaml'));

  it('fills in the rest and reports in the unit system of the face', () => {
    expect(inches.units).toBe('inch');
    expect(inches.face).toEqual({ width_mm: 898.525, height_mm: 723.9 });
    expect(inches.bars).toMatchObject({ plies: 2, stack: 'side-by-side', bond: 'glue+screws', pairing: 'unsorted' });
    expect(inches.corners.brace).toEqual({ kind: 'timber', leg_mm: 203.2, stock: 'strip-19x38', lay: 'flat', give: null });
    expect(inches.ply_screws).toEqual({ use: 'screw-6x32', every_mm: 203.2, pilot_mm: null });
    expect(inches.crossbars).toEqual([{ runs: 'upright', at: 0.5, stock: 'strip-19x38', lay: 'edge', plies: 1, setback_mm: 6 * (25.4 / 16), give: null }]);
    const assumed = new Map(inches.assumed.map(({ path, value }) => [path, value]));
    for (const path of ['bars.stack', 'bars.bond', 'bars.pairing', 'corners.brace.kind', 'corners.brace.stock', 'corners.brace.lay', 'crossbars[0].at', 'crossbars[0].stock', 'crossbars[0].lay', 'crossbars[0].plies', 'ply-screws.use', 'ply-screws.every', 'ply-screws.pilot'])
      expect([...assumed.keys()]).toContain(path);
    expect(assumed.get('ply-screws.every')).toBe('8 in');
    expect(assumed.get('room.temperature')).toBe('68 °F');
    expect(assumed.get('crossbars[0].setback')).toBe('3/8 in, so that a firm brush clears it; it then stands 3/8 in out behind the bars');
  });

  it('glues and screws single bars not at all, but a crossbar of two plies, and says so', () => {
    const bond = (crossbars: string): readonly [string, boolean] => {
      const { bars, assumed } = plan(`${smallest}crossbars: [${crossbars}]\n`);
      return [bars.bond, assumed.some(({ path }) => path === 'bars.bond')];
    };
    const one = '{ runs: upright, at: 0.4 }';
    expect(bond(one)).toEqual(['none', false]);
    expect(bond(`${one}, { runs: level, at: 0.3, plies: 1 }`)).toEqual(['none', false]);
    expect(bond(`${one}, { runs: level, at: 0.3, plies: 2 }`)).toEqual(['glue+screws', true]);
  });

  const withPull = (pull: string): Plan => plan(`${smallest}cloth: { pull: ${pull} }\n`);
  const pulls = ({ cloth }: Plan): number[] => [cloth.working.x_N_per_m, cloth.working.y_N_per_m, cloth.peak.x_N_per_m, cloth.peak.y_N_per_m];

  it.each([
    ['{ working: 150 N/m, peak: 500 N/m }', [150, 150, 500, 500]],
    ['{ x: 250 N/m, y: 120 N/m }', [250, 120, 500, 240]],
    ['180 N/m', [180, 180, 360, 360]],
    ['{ working: 180 N/m }', [180, 180, 360, 360]],
    ['{ peak: 500 N/m }', [250, 250, 500, 500]],
    ['{ working: { x: 2 N/cm, y: 100 N/m }, peak: { x: 300 N/m, y: 350 N/m } }', [200, 100, 300, 350]],
  ])('reads the pull %s', (text, expected) => {
    expect(pulls(withPull(text))).toEqual(expected);
  });

  it('knows none', () => {
    const bare = plan(`${smallest}corners: { glue: none, nails: none, brace: none }\nhang: { by: none }\n`);
    expect(bare.corners).toEqual({ cut: 'mitre', glue: null, nails: null, brace: null, give: null });
    expect(bare.hang).toMatchObject({ by: 'none', hooks: 0 });
    const glued = plan('plan: 1\nname: a\nface: { width: 900 mm, height: 700 mm }\nbars: { stock: strip-19x38, lay: edge, plies: 2, bond: glue }\n');
    expect(glued.ply_screws).toBeNull();
  });
});

describe('defaults that depend on the shelf', () => {
  const bars = (rest: string): string => `plan: 1\nname: a\nface: { width: 1500 mm, height: 1200 mm }\nbars: { ${rest} }\n`;

  it('picks a ply screw that holds the second ply and stays inside it', () => {
    expect(plan(bars('stock: strip-19x38, lay: edge, plies: 2')).ply_screws?.use).toBe('screw-6x32');
    const thick = plan(bars('stock: square-38x38, lay: flat, plies: 2')).ply_screws;
    const screw = shelf.screws[thick?.use ?? ''];
    expect(screw?.length_mm).toBeGreaterThan(38 * 1.3);
    expect(screw?.length_mm).toBeLessThan(76 - 3);
  });

  it('says so when no screw of the shelf fits', () => {
    const result = readPlanWith(bars('stock: stud-38x89, lay: flat, plies: 2'), 'plan.yaml', shelf);
    expect(result.ok && result.warnings.map(({ code }) => code)).toEqual(['no-screw-fits']);
  });

  it('sets a crossbar back so far that a firm brush clears it, and says how far it then stands out behind', () => {
    const of = (stock: string, crossbar: string) => plan(`${bars(`stock: ${stock}, lay: edge`)}crossbars: [ { runs: upright, ${crossbar} } ]\n`);
    const deep = of('stud-38x64', 'stock: strip-19x38, lay: edge');
    const flush = of('stud-38x64', 'stock: stud-38x64, lay: edge');
    const setback_mm = deep.crossbars[0]?.setback_mm ?? 0;
    expect(setback_mm).toBeGreaterThan(5);
    expect(Number.isInteger(setback_mm)).toBe(true);
    expect(flush.crossbars[0]?.setback_mm).toBe(setback_mm);
    const said = ({ assumed }: typeof deep) => assumed.find(({ path }) => path === 'crossbars[0].setback')?.value;
    expect(said(deep)).toBe(`${setback_mm} mm, so that a firm brush clears it`);
    expect(said(flush)).toBe(`${setback_mm} mm, so that a firm brush clears it; it then stands ${setback_mm} mm out behind the bars`);
    expect(of('stud-38x64', 'setback: 2 mm').crossbars[0]?.setback_mm).toBe(2);
  });

  it('leaves at least a third of a thin crossbar beside the bar it ends at', () => {
    const thin = plan(`${bars('stock: strip-19x38, lay: flat')}crossbars: [ { runs: upright } ]\ncloth: { pull: 60 N/m }\n`);
    expect(thin.crossbars[0]?.setback_mm).toBe(12);
    expect(thin.assumed.find(({ path }) => path === 'crossbars[0].setback')?.value).toContain('as far back as its ends can still be joined');
  });

  it.each([
    ['mitre', 'strip-19x38, lay: flat', 'brad-18ga-25'], ['mitre', 'strip-19x38, lay: edge', 'brad-18ga-25'], ['half-lap', 'strip-19x38, lay: flat', null],
    ['half-lap', 'square-38x38, lay: flat', 'brad-16ga-32'], ['butt', 'square-38x38, lay: flat', null], ['keyed', 'strip-19x38, lay: flat', null],
  ])('%s of %s: a nail that reaches, stays inside and keeps its distances, or none with a word', (cut, stock, nail) => {
    const read = plan(`${bars(`stock: ${stock}`)}corners: { cut: ${cut} }\n`);
    expect(read.corners.nails?.use ?? null).toBe(nail);
    expect(read.assumed.find(({ path }) => path === 'corners.nails')?.value).toMatch(nail === null ? /^none: / : /, one in each corner$/u);
  });
});

describe('plans from practice', () => {
  const slim = readShelf(fileText('test/plans/practice/slim-bars.shelf.yaml'), 'slim-bars.shelf.yaml', shelf);
  const keyed = readShelf(fileText('test/plans/practice/keyed-bars.shelf.yaml'), 'keyed-bars.shelf.yaml', shelf);
  const files = readdirSync(new URL('../plans/practice', import.meta.url)).filter((name) => !name.endsWith('.shelf.yaml'));

  it('has all of them', () => {
    expect(files).toHaveLength(24);
  });

  it.each(files)('%s is readable without errors', (name) => {
    if (!slim.ok || !keyed.ok) throw new Error('the fragment of shelf must be readable');
    const result = readPlanWith(fileText(`test/plans/practice/${name}`), name, name.startsWith('published') ? slim.value : name.startsWith('keyed') ? keyed.value : shelf);
    expect(result).toMatchObject({ ok: true, warnings: [] });
  });
});

describe('reading without a shelf', () => {
  it('looks no names up', () => {
    const text = smallest.replace('strip-19x38', 'my-own-bar');
    expect(readPlan(text, 'plan.yaml').ok).toBe(true);
    expect(readPlanWith(text, 'plan.yaml', shelf).ok).toBe(false);
  });
});
