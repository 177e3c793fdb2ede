import { describe, expect, it, test } from 'vitest';
import { assumedJoints } from '../../src/model/assumed-joints.js';
import { braceScrews, placesOf } from '../../src/model/brace-layout.js';
import { cornerJoint, endGive } from '../../src/model/joint-give.js';
import { leftOut } from '../../src/model/left-out.js';
import { plateStiffness_Nmm_per_rad } from '../../src/model/plate-stiffness.js';
import { plySection, type PlyBuild } from '../../src/model/ply-section.js';
import { weightParts } from '../../src/model/weight.js';
import type { Model } from '../../src/model/model.js';
import type { Plan } from '../../src/plan/plan.js';
import { demoModel, demoShelf } from '../mechanics/fasteners/demo-model.js';

const shelf = demoShelf();
const face = { width: '1140 mm', height: '690 mm' };
const build = (more: object): Model => demoModel({ face, bars: { stock: 'square-38x38', lay: 'flat' }, ...more });
const paths = (model: Model): Record<string, string> => Object.fromEntries(assumedJoints(model).map(({ path, value }) => [path, value]));
const crossbars = [{ runs: 'upright', at: 0.4, give: 3 }, { runs: 'level', at: 0.6 }];
const timber = { kind: 'timber', leg: '200 mm', stock: 'strip-19x38', lay: 'flat' };

describe('what was taken for the give of joints is told where the plan names none, and only there', () => {
  it('corners, crossbar ends and brace ends each by themselves, with the number taken', () => {
    expect(paths(build({ crossbars, corners: { cut: 'butt', brace: timber } }))).toEqual({
      'corners.give': 'as much as 12 bar-widths of bar, the shelf’s number for corners joined like this',
      'crossbars[1].give': 'as much as 6 bar-widths of bar, the shelf’s number for its ends',
      'corners.brace.give': 'as much as 6 bar-widths of bar, the shelf’s number for its ends',
    });
    expect(paths(build({ crossbars: [crossbars[0]], corners: { give: 5, brace: { ...timber, give: 2 } } }))).toEqual({});
  });
  it('three ways that differ are told apart; a give of nothing is rigid', () => {
    const keyed = build({ corners: { cut: 'keyed' } });
    expect(paths(keyed)['corners.give']).toMatch(/^as much as 100 bar-widths of bar in the plane, 8 out of it, 8 in twist,/u);
    const told = (give: object): string => paths({ ...keyed, shape: { ...keyed.shape, corner_give: { ...keyed.shape.corner_give, 'top-left': give } } } as Model)['corners.give']!;
    expect([told({ plane: 0, out: 0, twist: 0 }), told({ plane: 0, out: 0, twist: 2 }), told({ plane: 0, out: 3, twist: 3 })].map((words) => words.split(', the')[0])).toEqual([
      'rigid', 'as much as 0 bar-widths of bar in the plane, 0 out of it, 2 in twist', 'as much as 0 bar-widths of bar in the plane, 3 out of it, 3 in twist',
    ]);
  });
  it('a plate that nothing holds is told to add nothing; one that is held by screws or glue is not, nor is a timber brace', () => {
    const gusset = (glue: string, screws: Model['shelf']['screws'] = shelf.screws): boolean =>
      'corners.brace' in paths(demoModel({ face, bars: { stock: 'square-38x38', lay: 'flat' }, corners: { glue, nails: { use: 'brad-18ga-25', each: 2 }, brace: { kind: 'ply-gusset', leg: '150 mm' } } }, { ...shelf, screws }));
    expect([gusset('none', {}), gusset('none'), gusset('pva', {})]).toEqual([true, false, false]);
    expect('corners.brace' in paths(build({ corners: { brace: timber } }))).toBe(false);
  });
});

describe('what the computation leaves out follows the plan', () => {
  const said = (model: Model, words: RegExp): number => leftOut(model).filter((sentence) => words.test(sentence)).length;
  const four = (bond: string, plies: number): Model => build({ bars: { stock: 'strip-19x38', lay: 'edge', plies, bond }, corners: { cut: 'butt' } });
  it.each<[string, RegExp, readonly (readonly [Model, number])[]]>([
    ['plates', /^Corner plates/u, [[build({}), 0], [build({ corners: { brace: timber } }), 0], [build({ corners: { brace: { kind: 'steel-angle', leg: '100 mm' } } }), 1]]],
    ['crossings', /^Crossbars that cross/u, [[build({}), 0], [build({ crossbars: [crossbars[0]] }), 1]]],
    ['braces', /^Natural warp of the corner braces/u, [[build({}), 0], [build({ corners: { brace: timber } }), 1]]],
    ['four boards on screws', /^Four boards/u, [[four('screws', 3), 0], [four('screws', 4), 1], [four('glue', 4), 0]]],
    ['the limits of the method', /^Joints give like springs/u, [[build({}), 1]]],
  ])('%s', (_, words, cases) => cases.forEach(([model, times]) => expect(said(model, words)).toBe(times)));
});

describe('the name by which the shelf knows a corner', () => {
  const nails = { use: 'brad-18ga-25', each: 1 };
  const short = { ...shelf, nails: { ...shelf.nails, 'brad-18ga-25': { ...shelf.nails['brad-18ga-25']!, length_mm: 19.2 } } };
  const joint = (corners: object, on = shelf): string => {
    const { plan, bars } = demoModel({ face, bars: { stock: 'square-38x38', lay: 'flat' }, corners }, on);
    return cornerJoint(plan, on, bars.top.section);
  };
  it.each<[object, string]>([
    [{ cut: 'keyed' }, 'keyed'],
    [{ glue: 'none', nails }, 'mitre_nailed'],
    [{ glue: 'none', nails: 'none', brace: timber }, 'nothing'],
    [{ cut: 'half-lap', nails }, 'half_lap_glued'],
    [{ cut: 'butt', nails }, 'butt_glued'],
    [{ cut: 'mitre', nails }, 'mitre_glued_nailed'],
    [{ cut: 'mitre', nails: 'none' }, 'mitre_glued'],
  ])('%j: %s', (corners, name) => expect(joint(corners)).toBe(name));
  it('nails count from six diameters beyond the joint on', () => {
    // Half of a short nail's length lies in either bar, so it takes twelve diameters of 1.21 mm.
    const at = (length_mm: number): string => joint({ cut: 'mitre', nails }, { ...short, nails: { ...short.nails, 'brad-18ga-25': { ...short.nails['brad-18ga-25']!, length_mm } } });
    // … and at least ten diameters before the joint: 16 diameters in all.
    expect([at(16 * 1.21 - 0.01), at(16 * 1.21 + 0.01)]).toEqual(['mitre_glued', 'mitre_glued_nailed']);
  });
  it('ends give as the plan says, else by the corners: tongued, dry or glued', () => {
    const ends = (corners: object, give: object = {}): unknown => {
      const { plan } = demoModel({ face, bars: { stock: 'square-38x38', lay: 'flat' }, crossbars: [{ runs: 'upright', at: 0.4, ...give }], corners });
      return endGive(plan.crossbars[0]!, plan, shelf.joints);
    };
    expect([ends({ cut: 'keyed' }), ends({ cut: 'keyed' }, { give: 7 }), ends({ glue: 'none', nails }), ends({}), ends({}, { give: 7 })]).toEqual([
      { plane: 100, out: 8, twist: 8 }, { plane: 7, out: 7, twist: 7 }, { plane: 20, out: 20, twist: 20 }, { plane: 6, out: 6, twist: 6 }, { plane: 7, out: 7, twist: 7 },
    ]);
  });
});

describe('screws of plates on one bar', () => {
  const row = (brace: object, stock = 'square-38x38') => {
    const { plan, bars } = demoModel({ face, bars: { stock, lay: 'flat' }, corners: { brace } });
    const held = braceScrews(plan, shelf, bars.top.section)!;
    return { per_bar: held.per_bar, end_mm: held.end_mm, spacing_mm: held.spacing_mm, places: placesOf(held), diameter: held.screw.shank_mm };
  };
  it('an angle takes two once its leg leaves ten diameters between them, at a third and five sixths of the leg from the inner edge', () => {
    const { diameter } = row({ kind: 'steel-angle', leg: '100 mm' });
    const turns = 20 * diameter;
    const [one, two] = [row({ kind: 'steel-angle', leg: `${Math.floor(turns)} mm` }), row({ kind: 'steel-angle', leg: `${Math.ceil(turns)} mm` })];
    expect(one).toMatchObject({ per_bar: 1, spacing_mm: Math.floor(turns), end_mm: expect.closeTo((Math.floor(turns) * 5) / 6 + 19, 9) });
    expect(two).toMatchObject({ per_bar: 2, spacing_mm: Math.ceil(turns) / 2, end_mm: expect.closeTo(Math.ceil(turns) / 3 + 19, 9) });
    expect(two.places).toEqual([Math.round(two.end_mm), Math.round(two.end_mm + two.spacing_mm)]);
  });
  it('ten diameters exactly are enough', () => {
    const four = { ...shelf, screws: Object.fromEntries(Object.entries(shelf.screws).map(([key, screw]) => [key, { ...screw, shank_mm: 4 }])) };
    const { plan, bars } = demoModel({ face, bars: { stock: 'square-38x38', lay: 'flat' }, corners: { brace: { kind: 'steel-angle', leg: '80 mm' } } }, four);
    expect(braceScrews(plan, four, bars.top.section)!.per_bar).toBe(2);
  });
  it('pass 2 mm of steel, 9 mm of sheet or that of its stock, 16 mm of a mitred end; and hold in what is beyond', () => {
    const space = (brace: object): unknown => {
      const { plan, bars } = demoModel({ face, bars: { stock: 'stud-38x64', lay: 'edge' }, corners: { brace } });
      return braceScrews(plan, shelf, bars.top.section)!.space;
    };
    expect(space({ kind: 'steel-angle', leg: '100 mm' })).toEqual({ through_mm: 2, holding_mm: 64, edge_mm: 19 });
    expect(space({ kind: 'ply-gusset', leg: '150 mm' })).toEqual({ through_mm: 9, holding_mm: 64, edge_mm: 19 });
    expect(space({ kind: 'ply-gusset', leg: '150 mm', stock: 'planed-21x45' })).toEqual({ through_mm: 21, holding_mm: 64, edge_mm: 19 });
    expect(space({ kind: 'timber', leg: '150 mm', stock: 'strip-19x38', lay: 'flat' })).toEqual({ through_mm: 16, holding_mm: 38, edge_mm: 9.5 });
    expect(space({ kind: 'timber', leg: '150 mm', stock: 'stud-38x89', lay: 'edge' })).toEqual({ through_mm: 16, holding_mm: 38, edge_mm: 32 });
  });
  it('a gusset takes one, two or three as there is room for ten diameters between them, even and a sixth of the run from either end', () => {
    const rows = Array.from({ length: 46 }, (_, i) => 70 + 3 * i).map((leg) => ({ leg, ...row({ kind: 'ply-gusset', leg: `${leg} mm` }) }));
    for (const { leg, per_bar, end_mm, spacing_mm, places, diameter } of rows) {
      const margin = Math.max(2.5 * diameter, (leg - 38) / 6);
      const first = Math.max(38 + margin, 10 * diameter);
      const run = leg - margin - first;
      expect(per_bar, `${leg}`).toBe(run < 10 * diameter ? 1 : run < 20 * diameter ? 2 : 3);
      expect(end_mm).toBeCloseTo(per_bar === 1 ? first + run / 2 : first, 9);
      expect(spacing_mm).toBeCloseTo(per_bar === 1 ? leg : run / (per_bar - 1), 9);
      expect(places).toHaveLength(per_bar);
    }
    expect(new Set(rows.map(({ per_bar }) => per_bar))).toEqual(new Set([1, 2, 3]));
  });
  it('a gusset without room between mitre and slanted edge takes none', () => {
    const { plan, bars } = demoModel({ face, bars: { stock: 'square-38x38', lay: 'flat' }, corners: { brace: { kind: 'ply-gusset', leg: '150 mm' } } });
    const at = (leg_mm: number) => braceScrews({ ...plan, corners: { ...plan.corners, brace: { ...plan.corners.brace!, leg_mm } } } as Plan, shelf, bars.top.section);
    // The margin is 2.5 diameters on such short legs, the first place one margin beyond the mitre: twice that must fit.
    const diameter = at(60)!.screw.shank_mm;
    expect([at(38 + 5 * diameter - 0.01), at(38 + 5 * diameter + 0.01)?.per_bar]).toEqual([null, 1]);
  });
});

test('a glued gusset whose leg ends before the middle of the bar has no glued face', () => {
  const { plan, bars } = demoModel({ face, bars: { stock: 'square-38x38', lay: 'flat' }, corners: { glue: 'pva', brace: { kind: 'ply-gusset', leg: '150 mm' } } });
  const at = (leg_mm: number): number =>
    plateStiffness_Nmm_per_rad({ ...plan, corners: { ...plan.corners, brace: { ...plan.corners.brace!, leg_mm } } } as Plan, { ...shelf, screws: {} }, bars.top.stock, bars.top.section);
  expect([at(12), at(19)]).toEqual([0, 0]);
  expect(at(21)).toBeCloseTo(((500 / 9) * 38 * 2 * (38 ** 2 + 2 ** 2)) / 12 / 2, 6);
});

describe('what a shelf lacks weighs nothing, and what is not on the frame neither', () => {
  const { plan } = demoModel({ face, bars: { stock: 'strip-19x38', lay: 'edge', plies: 2, bond: 'glue+screws' }, 'ply-screws': { use: 'screw-6x32', every: '150 mm' }, hang: { by: 'wire' } });
  const weight = (on: Partial<typeof shelf>, of: Partial<Plan> = {}) => weightParts({ ...plan, ...of }, { ...shelf, ...on }, 2);
  it('cloth, ground, nails, screws, hardware', () => {
    expect([weight({ cloths: {} }).cloth_kg, weight({ grounds: {} }).ground_kg]).toEqual([0, 0]);
    const [all, bare] = [weight({}), weight({ nails: {}, screws: {}, hardware: {} })];
    expect(bare.hardware_kg).toBeCloseTo(((2 * (1140 + 690)) / plan.cloth.fixing.every_mm) * 0.00015, 12);
    expect(all.hardware_kg).toBeGreaterThan(bare.hardware_kg);
    expect(all.wood_kg).toBe(2);
  });
  it('ply screws only between plies that screws hold', () => {
    const with_bars = (bars: object): number => weight({}, { bars: { ...plan.bars, ...bars } as Plan['bars'] }).hardware_kg;
    const none = with_bars({ bond: 'none' });
    expect([with_bars({ bond: 'glue' }), with_bars({ plies: 1, bond: 'screws' })]).toEqual([none, none]);
    expect(with_bars({ bond: 'screws' })).toBe(with_bars({ bond: 'glue+screws' }));
    expect(with_bars({ bond: 'screws' })).toBeGreaterThan(none);
  });
});

describe('the outermost fibre of a bar, times its moment over I, as it is built', () => {
  const built = (more: Partial<PlyBuild>) => plySection({ ply_w_mm: 19, ply_d_mm: 44, plies: 3, stack: 'side-by-side', bond: 'glue', E_MPa: 9000, G_MPa: 560, density_kg_per_m3: 420, span_mm: 1100, screws: { shank_mm: 4, every_mm: 120 }, ...more }, 1);
  it('one board and glued ones: half the width of the whole', () => {
    expect([built({ plies: 1, bond: 'none' }).fibre_mm, built({}).fibre_mm, built({ bond: 'glue+screws', plies: 4 }).fibre_mm, built({ stack: 'front-to-back' }).fibre_mm]).toEqual([9.5, 28.5, 38, 9.5]);
  });
  it('loose ones, four on screws, and those without a screw that holds: half of one', () => {
    for (const more of [{ bond: 'none' }, { bond: 'screws', plies: 4 }, { bond: 'screws', screws: null }] as const) {
      const { section, fibre_mm } = built(more);
      const n = 'plies' in more ? 4 : 3;
      expect([fibre_mm, section.w_mm, section.I_plane_mm4, section.I_out_mm4]).toEqual([9.5, 19 * n, expect.closeTo((n * 44 * 19 ** 3) / 12, 6), expect.closeTo((n * 19 * 44 ** 3) / 12, 6)]);
    }
  });
  it('one behind the other on screws they slip across the depth only: in the plane each bends by half its width', () => {
    const { section, fibre_mm } = built({ stack: 'front-to-back', bond: 'screws' });
    expect([fibre_mm, section.d_mm, section.I_plane_mm4]).toEqual([9.5, 132, expect.closeTo((3 * 44 * 19 ** 3) / 12, 6)]);
    expect(section.I_out_mm4).toBeGreaterThan((3 * 19 * 44 ** 3) / 12);
    expect(section.I_out_mm4).toBeLessThan((19 * 132 ** 3) / 12);
  });
  it('three side by side on screws: γ a + h/2 of the outer ones, between loose and glued', () => {
    const { section, fibre_mm } = built({ bond: 'screws' });
    const gamma = 1 / (1 + (Math.PI ** 2 * 9000 * 19 * 44 * 120) / (((420 ** 1.5 * 4) / 23) * 1100 ** 2));
    expect(fibre_mm).toBeCloseTo(gamma * 19 + 9.5, 9);
    expect(section.I_plane_mm4).toBeCloseTo((3 * 44 * 19 ** 3) / 12 + 2 * gamma * 19 * 44 * 19 ** 2, 4);
  });
});
