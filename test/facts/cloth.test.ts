import { describe, expect, test } from 'vitest';
import { catalogue, catalogueByPath } from '../../src/facts/catalogue.js';
import { clothFacts } from './of-subject.js';
import { clearances } from '../../src/mechanics/cloth/clearance.js';
import { clothSheet } from '../../src/mechanics/cloth/cloth-sheet.js';
import { keyLimit } from '../../src/mechanics/cloth/key-limit.js';
import type { Model, Solution } from '../../src/model/model.js';
import { solveStatics } from '../../src/solve/analyse-frame.js';
import { demoModel, demoSolved } from '../mechanics/fasteners/demo-model.js';
import { checkRows, given } from '../validation/check-rows.js';

const plan = (more: object = {}) => ({ face: { width: '1200 mm', height: '900 mm' }, bars: { stock: 'strip-19x38', lay: 'edge', plies: 2 }, ...more });
const withCloth = (cloth: object, more: object = {}) => demoSolved(plan({ cloth, ...more }));
const of = ({ model, solution }: { model: Model; solution: Solution }, path: string): number => {
  const fact = clothFacts(model, solution).find((f) => f.path === `cloth.${path}`);
  if (typeof fact?.value !== 'number') throw new Error(`no cloth.${path}`);
  return fact.value;
};

describe('the facts', () => {
  test('every fact of the catalogue’s cloth page, once, about the cloth, finite, in its unit', () => {
    const { model, solution } = demoSolved(plan());
    const facts = clothFacts(model, solution);
    expect(facts.map((f) => f.path).sort()).toEqual(catalogue.filter((s) => s.each === 'cloth').map((s) => s.path).sort());
    for (const fact of facts) {
      expect(fact.about).toBe('cloth');
      expect(fact.unit === 'word' ? typeof fact.value === 'string' : Number.isFinite(fact.value), fact.path).toBe(true);
      expect(fact.unit).toBe(catalogueByPath.get(fact.path)?.unit);
    }
  });
});

describe('size of the cloth: face + 2 (depth + wrap + turn) + 20 mm', () => {
  test('fixed to the back the wrap is the bar’s width (two strips on edge: 38 wide, 38 deep)', () => {
    const solved = withCloth({ fixing: { to: 'back', every: '50 mm', turn: '45 mm' } });
    expect(of(solved, 'cut_width_mm')).toBe(1200 + 2 * (38 + 38 + 45) + 20);
    expect(of(solved, 'cut_height_mm')).toBe(900 + 2 * (38 + 38 + 45) + 20);
  });
  test('fixed to the edge there is no wrap; a lip adds its height to the depth', () => {
    const solved = demoSolved(plan({ bars: { stock: 'stud-38x64', lay: 'edge', lip: '4 mm' }, cloth: { fixing: { to: 'edge', turn: '30 mm' } } }));
    expect(of(solved, 'cut_width_mm')).toBe(1200 + 2 * (64 + 4 + 30) + 20);
  });
});

describe('the roll', () => {
  test('1600 square on 38 × 89 on edge needs 1974 mm: a roll of 1500 is 474 short (practice)', () => {
    const solved = demoSolved({ face: { width: '1600 mm', height: '1600 mm' }, bars: { stock: 'stud-38x89', lay: 'edge' }, cloth: { roll: '1500 mm' } });
    expect(of(solved, 'roll_short_mm')).toBe(1600 + 2 * (89 + 38 + 50) + 20 - 1500);
    expect(of(solved, 'roll_short_mm')).toBeGreaterThan(0);
  });
  test('the shorter side lies across the roll, whichever way the face stands; without a roll the shelf’s width counts', () => {
    const wide = demoSolved(plan());
    const tall = demoSolved(plan({ face: { width: '900 mm', height: '1200 mm' } }));
    expect(of(wide, 'roll_short_mm')).toBe(900 + 2 * (38 + 38 + 50) + 20 - 1500);
    expect(of(tall, 'roll_short_mm')).toBe(of(wide, 'roll_short_mm'));
    expect(clothSheet(wide.model, wide.solution).roll.along).toBe('width');
    expect(clothSheet(tall.model, tall.solution).roll.along).toBe('height');
  });
});

describe('pull and how to read it', () => {
  const pull = { x: '250 N/m', y: '120 N/m' };
  test('the smaller and the larger pull, and the load on a staple at peak', () => {
    const solved = withCloth({ pull, fixing: { every: '40 mm' } });
    expect([of(solved, 'pull_low_N_per_m'), of(solved, 'pull_high_N_per_m')]).toEqual([120, 250]);
    expect(of(solved, 'staple_load_N')).toBeCloseTo(500 * 0.04, 12);
  });
  test.each(checkRows('cloth.yaml', 'staple-load').map((row) => [`${row.id} (${row.status})`, row] as const))('%s', (_, row) => {
    const peak = `${given(row, 'T_N_per_m')} N/m`;
    const solved = withCloth({ pull: { working: '100 N/m', peak }, fixing: { every: `${1000 * given(row, 'spacing_m')} mm` } });
    expect(of(solved, 'staple_load_N')).toBeCloseTo(given(row, 'F_N'), 9);
  });
  test('over a lip the whole face swings: 900 × 600 of 450 g/m² sounds between 13.1 and 14.8 Hz (rows tap-tone)', () => {
    const { model, solution } = demoSolved({ face: { width: '900 mm', height: '600 mm' }, bars: { stock: 'strip-19x38', lay: 'flat', lip: '3 mm' } });
    const cloth = { ...(model.shelf.cloths['cotton-duck-340'] as object), mass_g_per_m2: 450 } as Model['shelf']['cloths'][string];
    const heavier: Model = { ...model, shelf: { ...model.shelf, cloths: { ...model.shelf.cloths, 'cotton-duck-340': cloth } } };
    expect(of({ model: heavier, solution }, 'tap_note_low_Hz')).toBeCloseTo(13.124, 2);
    expect(of({ model: heavier, solution }, 'tap_note_high_Hz')).toBeCloseTo(14.841, 2);
  });
  test('without a lip the free rectangle is smaller: higher note, less sag', () => {
    const flat = (lip: string) => demoSolved({ face: { width: '900 mm', height: '600 mm' }, bars: { stock: 'strip-19x38', lay: 'flat', lip } });
    expect(of(flat('0 mm'), 'tap_note_low_Hz')).toBeGreaterThan(of(flat('3 mm'), 'tap_note_low_Hz'));
    expect(of(flat('0 mm'), 'push_sag_mm')).toBeLessThan(of(flat('3 mm'), 'push_sag_mm'));
  });
  test('a ground makes the note of the finished cloth lower than that of the bare one', () => {
    const { model, solution } = demoSolved(plan());
    const { tap } = clothSheet(model, solution);
    expect(tap.grounded.high_Hz).toBeLessThan(tap.bare.high_Hz);
    expect(of({ model, solution }, 'tap_note_high_Hz')).toBe(tap.bare.high_Hz);
    expect(tap.heard).toBe(false);
    const small = demoSolved({ face: { width: '500 mm', height: '400 mm' }, bars: { stock: 'strip-19x38', lay: 'flat' } });
    expect(clothSheet(small.model, small.solution).tap.heard).toBe(true);
  });
});

describe('what changes the pull later', () => {
  test('the share lost to bowing bars: what is left of the pull bends the bars just so far that the cloth keeps just that pull, the worse direction', () => {
    const { model, solution } = demoSolved(plan());
    // Step by step: the pull that is left bends the bars, the bow takes pull away, until nothing changes any more.
    const lost = { x: 0, y: 0 };
    const middle = (bar: 'top' | 'bottom' | 'left' | 'right', bars: typeof solution.working.bars): number => bars[bar].bow_line[16]!.inward_mm;
    for (let n = 0; n < 200; n++) {
      const { bars } = solveStatics(model.shape, { x: model.working.x * (1 - lost.x), y: model.working.y * (1 - lost.y) });
      lost.x += 0.5 * ((50_000 * (middle('left', bars) + middle('right', bars))) / 1200 / 200 - lost.x);
      lost.y += 0.5 * ((50_000 * (middle('top', bars) + middle('bottom', bars))) / 900 / 200 - lost.y);
    }
    expect(of({ model, solution }, 'relax_share')).toBeCloseTo(lost.y, 9);
    expect(lost.y).toBeGreaterThan(lost.x);
  });
  test('never all of it, however soft the bars', () => {
    const share = of(demoSolved({ face: { width: '2000 mm', height: '1000 mm' }, bars: { stock: 'strip-19x38', lay: 'edge' } }), 'relax_share');
    expect(share).toBeGreaterThan(0.5);
    expect(share).toBeLessThan(1);
  });
  test('keys: the ground’s crack strain over the shorter side; bare cloth stops at its peak pull', () => {
    const grounded = demoModel(plan());
    expect(keyLimit(grounded)).toEqual({ travel_mm: (0.005 * 900) / 2, because: 'ground' });
    const bare = demoModel(plan({ ground: { coats: 0 }, cloth: { pull: { working: '200 N/m', peak: '300 N/m' } } }));
    expect(keyLimit(bare)).toEqual({ travel_mm: ((100 / 50_000) * 900) / 2, because: 'pull' });
  });
});

describe('clearance', () => {
  const crossbars = [{ runs: 'upright', at: '1/3', stock: 'strip-19x38', lay: 'edge', setback: '9 mm' }];
  test('over a crossbar: setback and lip less the sag there, less than the sag in the middle', () => {
    const model = demoModel(plan({ bars: { stock: 'stud-38x64', lay: 'edge', lip: '4 mm' }, crossbars }));
    const [over] = clearances(model);
    expect(over).toMatchObject({ behind: 'crossbar-1', depth_mm: 13 });
    expect(over?.left_mm).toBeCloseTo(13 - (over?.sag_mm ?? 0), 12);
    const middle = clearances(demoModel(plan({ bars: { stock: 'stud-38x64', lay: 'edge', lip: '4 mm' }, crossbars: [{ ...crossbars[0], at: '1/2' }] })));
    expect(over?.sag_mm).toBeLessThan(middle[0]?.sag_mm ?? 0);
  });
  test('without a crossbar: the wall, a bar’s depth away', () => {
    expect(clearances(demoModel(plan()))[0]).toMatchObject({ behind: 'wall', depth_mm: 38 });
  });
  test('the fact is the tightest place', () => {
    const solved = demoSolved(plan({ crossbars: [...crossbars, { runs: 'level', at: '1/2', stock: 'strip-19x38', lay: 'edge', setback: '6 mm' }] }));
    expect(of(solved, 'clearance_mm')).toBe(Math.min(...clearances(solved.model).map((c) => c.left_mm)));
    expect(clearances(solved.model)).toHaveLength(2);
  });
});

describe('the page on cloth', () => {
  const { model, solution } = withCloth({ fixing: { to: 'back', every: '50 mm', turn: '45 mm' } });
  const sheet = clothSheet(model, solution);
  test('fold lines: face, back edge, staples along the middle of the back, in that order inward to outward', () => {
    expect(sheet.folds).toEqual([{ name: 'face', in_from_edge_mm: 131 }, { name: 'back-edge', in_from_edge_mm: 93 }, { name: 'staples', in_from_edge_mm: 74 }]);
    expect(sheet.cut.margin_mm).toBe(131);
  });
  test('fixed to the edge there is no fold at the back', () => {
    const edge = withCloth({ fixing: { to: 'edge', turn: '30 mm' } });
    expect(clothSheet(edge.model, edge.solution).folds).toEqual([{ name: 'face', in_from_edge_mm: 38 + 30 + 10 }, { name: 'staples', in_from_edge_mm: 19 + 30 + 10 }]);
  });
  test('staples, ground and washed length', () => {
    expect(sheet.staples_per_side).toEqual({ top: 24, bottom: 24, left: 18, right: 18 });
    expect(sheet.staples).toBe(84);
    expect(sheet.order).toHaveLength(84);
    expect(sheet.ground?.volume_ml).toBeCloseTo(model.plan.ground.coats * 150 * 1.08, 9);
    expect(sheet.length_if_washed_mm).toBeCloseTo(sheet.roll.length_mm / 0.98, 9);
  });
});
