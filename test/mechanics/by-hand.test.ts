/** Choices and places worked out by hand: strips, hardware, rows of holes, drying, keyed corners, crossbars as they lie. */
import { describe, expect, test } from 'vitest';
import { airCoefficientFree } from '../../src/mechanics/cloth/air-free.js';
import { clothCutSize, clothMargin_mm, clothWrap_mm, rollShort_mm } from '../../src/mechanics/cloth/cut-size.js';
import { pullFromTap } from '../../src/mechanics/cloth/tap-note.js';
import { tongueUse } from '../../src/mechanics/corners/keyed-corner.js';
import { planBraceScrews } from '../../src/mechanics/fasteners/brace-fastening.js';
import { planCrossbarScrews } from '../../src/mechanics/fasteners/crossbar-screws.js';
import { clearanceDrill, nailHole_mm, nearestDrill, screwHole_mm } from '../../src/mechanics/fasteners/lead-hole.js';
import { freePlaces_mm, rowPlaces_mm } from '../../src/mechanics/fasteners/row-places.js';
import { centreOfGravity_mm } from '../../src/mechanics/hanging/centre-of-gravity.js';
import { cleatPlaces } from '../../src/mechanics/hanging/cleat.js';
import { pickRated, pickRing } from '../../src/mechanics/hanging/pick-hardware.js';
import { bottomOut_mm, standsOut } from '../../src/mechanics/hanging/stands-out.js';
import { barDried_share, daysToDry, dryingTime_days, plankDried_share } from '../../src/mechanics/moisture/drying.js';
import { crossbarEnds, crossbarsLie } from '../../src/mechanics/occupancy/crossbar-ends.js';
import type { CornerStatics } from '../../src/model/frame-results.js';
import type { Model } from '../../src/model/model.js';
import type { Drill, Hardware, Shelf } from '../../src/shelf/shelf.js';
import { demoModel, demoShelf } from './fasteners/demo-model.js';

const flat = { face: { width: '1200 mm', height: '800 mm' }, bars: { stock: 'strip-19x38', lay: 'flat' } };
const edge = { ...flat, bars: { stock: 'strip-19x38', lay: 'edge' } };
const crossbar = (more: object = {}) => ({ runs: 'upright', at: 0.5, stock: 'strip-19x38', lay: 'edge', setback: '5 mm', ...more });

describe('hanging strips under the top bar', () => {
  test('in the middle where it is free, 150 mm and 10 mm of room to each hand', () => {
    expect(cleatPlaces(demoModel(flat))).toEqual({ middles_mm: [600], high_mm: 40, meets: [] });
    const wide = (mm: number) => cleatPlaces(demoModel({ ...flat, face: { width: `${mm} mm`, height: '800 mm' } }));
    // 2 (38 + 10 + 150) = 396 mm.
    expect([wide(396), wide(395)].map(({ middles_mm, meets }) => [middles_mm, meets.map(({ kind }) => kind)])).toEqual([[[198], []], [[197.5], ['side-bars']]]);
  });
  test('beside an upright that comes within 12 mm of the backs: half a strip, room and half the crossbar away, in steps of 5 mm', () => {
    const places = (more: object) => cleatPlaces(demoModel({ ...edge, crossbars: [crossbar(more)] }));
    // Bars and crossbar 38 mm deep: it stands 5 mm out. 160 + 9.5 = 169.5 mm, so 170.
    expect(places({})).toEqual({ middles_mm: [430, 770], high_mm: 40, meets: [] });
    expect([places({ lay: 'flat', setback: '7 mm' }), places({ lay: 'flat', setback: '7.5 mm' })].map(({ middles_mm }) => middles_mm)).toEqual([[600], [600 - 180, 600 + 180]]);
    expect(places({ runs: 'level' }).middles_mm).toEqual([600]);
  });
  test('where it fits nowhere, what stands there is told: crossbars, braces, or the bars themselves', () => {
    const narrow = { ...edge, face: { width: '600 mm', height: '800 mm' } };
    const meets = (more: object) => cleatPlaces(demoModel({ ...narrow, ...more })).meets.map(({ kind, of }) => `${kind} of ${of}`);
    const brace = { corners: { brace: { kind: 'timber', leg: '250 mm', stock: 'strip-19x38', lay: 'flat' } } };
    expect(meets({ crossbars: [crossbar()] })).toEqual(['whole-crossbar of crossbar-1']);
    expect(meets(brace)).toEqual(['top-braces of frame']);
    expect(meets({ crossbars: [crossbar()], ...brace })).toEqual(['whole-crossbar of crossbar-1', 'top-braces of frame']);
  });
});

describe('hardware from the shelf', () => {
  const on = (kind: Hardware['kind'], ...list: readonly (readonly [key: string, rating_N: number, thread_mm?: number])[]): Shelf =>
    ({ hardware: Object.fromEntries(list.map(([key, rating_N, thread_mm = 20]) => [key, { key, kind, rating_N, thread_length_mm: thread_mm, thread_diameter_mm: 4 }])) }) as unknown as Shelf;
  test('the weakest that carries twice the factor times the load, else the strongest, else none', () => {
    const hooks = on('hook', ['c', 400], ['b', 200], ['a', 100], ['also-b', 200]);
    const picked = (load_N: number, factor: number) => pickRated(hooks, 'hook', load_N, factor)?.key;
    expect([picked(50, 2), picked(50.1, 2), picked(25, 2), picked(25.1, 2), picked(100, 0.5), picked(1000, 2)]).toEqual(['also-b', 'c', 'a', 'also-b', 'a', 'c']);
    expect(pickRated(hooks, 'wire', 1, 1)).toBeNull();
  });
  test('a ring stays an eighth of an inch inside; of those the weakest that is used by half, else the one used least; else the shortest', () => {
    const rings = on('ring', ['long', 900, 40], ['mid', 500, 27], ['short', 300, 15], ['stub', 100, 15]);
    const picked = (along_N: number, wood_mm: number) => pickRing(rings, { along_N, across_N: 0 }, 0.42, wood_mm)?.key;
    // By rating alone: twice the load is carried by 100 N up to 50, by 300 N up to 150; 43.2 mm of wood lets the long one in, 30.2 mm the middle one.
    expect([picked(50, 30), picked(51, 30), picked(5000, 30.3), picked(5000, 30.1), picked(5000, 43.3), picked(5000, 43.1), picked(10, 12)]).toEqual(['stub', 'short', 'mid', 'short', 'long', 'mid', 'stub']);
    expect(pickRing(rings, { along_N: 0, across_N: 10 }, 0.42, 30, 'strap')).toBeNull();
  });
});

test('the centre of gravity: wood in the middle, cloth, ground and paint at the front of the lip, hardware at the back', () => {
  const model = { plan: { bars: { lip_mm: 5 } }, bars: { top: { section: { d_mm: 40 } } }, weight: { wood_kg: 2, cloth_kg: 0.3, ground_kg: 0.2, paint_kg: 0.4, total_kg: 3.1 } } as unknown as Model;
  expect(centreOfGravity_mm(model)).toBeCloseTo((2 * 20 + 0.9 * 45) / 3.1, 12);
});

describe('rows of holes', () => {
  test('even between both ends, never farther apart than told; one in the middle where two would be too near', () => {
    expect([rowPlaces_mm(100, 10, 200), rowPlaces_mm(100, 10, 40), rowPlaces_mm(100, 10, 39), rowPlaces_mm(101, 10, 40)]).toEqual([[10, 90], [10, 50, 90], [10, 37, 63, 90], [10, 37, 64, 91]]);
    // Less than a millimetre between the first and the last is still two places, where no least distance is asked.
    expect(rowPlaces_mm(101.7, 50.4, 40)).toEqual([50, 51]);
    expect([rowPlaces_mm(100, 10, 40, 80), rowPlaces_mm(100, 10, 40, 80.5), rowPlaces_mm(100, 50, 40), rowPlaces_mm(100, 49.5, 40)]).toEqual([[10, 50, 90], [50], [50], [50, 51]]);
  });
  test('one that is blocked goes to the nearest free place, inwards first, and keeps from neighbours and ends', () => {
    const moved = (places: readonly number[], blocked: readonly number[], least = 10) => freePlaces_mm(places, (mm) => blocked.includes(mm), 100, least, 5);
    expect([moved([20], [20]), moved([80], [80]), moved([50], [50])]).toEqual([[25], [75], [45]]);
    expect([moved([20, 35], [35, 40]), moved([20, 35], [35, 40], 11), moved([20, 35], [35, 40, 30])]).toEqual([[20, 30], [20, 45], [20, 45]]);
    expect([moved([15], [15, 20]), moved([15], [15, 20, 10]), moved([15], [15, 20], 11)]).toEqual([[10], [25], [25]]);
    expect([moved([85], [85, 80]), moved([85], [85, 80], 11), moved([60, 75], [60]), moved([60, 65], [60])]).toEqual([[90], [75], [55, 75], [55, 65]]);
    expect(moved([50], Array.from({ length: 101 }, (_, i) => i))).toEqual([50]);
  });
  test('a lead hole by where it is and how dense the wood: dense above 0.6', () => {
    const screw = { shank_mm: 4, root_mm: 3 };
    const holes = (G: number) => [screwHole_mm(screw, G, 'shank'), screwHole_mm(screw, G, 'shank', 'withdrawal'), screwHole_mm(screw, G, 'thread'), screwHole_mm(screw, G, 'thread', 'withdrawal'), nailHole_mm(2, G)];
    expect(holes(0.6)).toEqual([3.5, 3.5, 2.625, expect.closeTo(2.1, 9), 1.5]);
    expect(holes(0.61)).toEqual([4, 4, 3, expect.closeTo(2.7, 9), 1.8]);
  });
  test('a drill of the plan’s own units where one of them fits, else any; the nearest below a rule, the nearest above a shank', () => {
    const drills = [['2 mm', 2], ['3 mm', 3], ['1/8 in', 3.175], ['5/64 in', 1.984], ['3 mm, old', 3]].map(([label, diameter_mm]) => ({ label, diameter_mm }) as Drill);
    const names = (rule: number, units: 'metric' | 'inch' | null) => [nearestDrill(drills, rule, units)?.label, clearanceDrill(drills, rule, units)?.label];
    expect([names(3, 'metric'), names(3, 'inch'), names(3.1, null), names(1.99, 'metric'), names(3.175, 'inch'), names(3.1, 'metric')]).toEqual([['3 mm', '3 mm'], ['5/64 in', '1/8 in'], ['3 mm', '1/8 in'], ['5/64 in', '2 mm'], ['1/8 in', '1/8 in'], ['3 mm', '1/8 in']]);
    expect([nearestDrill(drills, 1.9), clearanceDrill(drills, 3.2)]).toEqual([null, null]);
  });
});

describe('drying (Crank’s plank, from memory)', () => {
  const D = 2e-10;
  test('its time is L²/(π² D); for long all but the first term is gone, and four sides dry together', () => {
    expect(dryingTime_days(38, D)).toBeCloseTo(0.038 ** 2 / (Math.PI ** 2 * D) / 86400, 9);
    const days = 3 * dryingTime_days(38, D);
    expect(plankDried_share(38, D, days)).toBeCloseTo(1 - (8 / Math.PI ** 2) * (Math.exp(-3) + Math.exp(-27) / 9), 12);
    expect([plankDried_share(38, D, 0), plankDried_share(38, D, -1)]).toEqual([0, 0]);
    const [x, y] = [plankDried_share(38, D, 20), plankDried_share(64, D, 20)];
    expect(barDried_share(38, 64, D, 20)).toBeCloseTo(x + y - x * y, 12);
    expect(x).toBeGreaterThan(y);
  });
  test('both answers meet where one takes over from the other', () => {
    const at = 0.1 * dryingTime_days(38, D);
    expect(plankDried_share(38, D, at * (1 + 1e-9)) - plankDried_share(38, D, at * (1 - 1e-9))).toBeCloseTo(0, 7);
  });
  test('the days to a share are those after which it is reached, to a thousandth of a day', () => {
    for (const share of [0.2, 0.5, 0.9, 0.99]) {
      const days = daysToDry(38, 64, D, share);
      expect([barDried_share(38, 64, D, days) >= share, barDried_share(38, 64, D, days - 1.1e-3) < share]).toEqual([true, true]);
    }
    expect(daysToDry(38, 64, D)).toBe(daysToDry(38, 64, D, 0.9));
    for (const share of [0, 1, -1, Number.NaN]) expect(() => daysToDry(38, 64, D, share)).toThrow(RangeError);
  });
});

describe('a dry tongue in its slot', () => {
  const corner = (more: Partial<CornerStatics>): CornerStatics => ({ moment_Nmm: 0, plate_moment_Nmm: 0, out_moment_Nmm: 0, torque_Nmm: 0, axial_N: 0, shear_N: 0, ...more });
  const [w, d] = [44, 36];
  const [long, tongue] = [w * Math.SQRT2, d / 3];
  test('bends under what the thrust at the shoulder does not carry, at 14 · 0.8/1.3 MPa', () => {
    const out = (9000 + 3000) / Math.SQRT2;
    expect(tongueUse(corner({ out_moment_Nmm: -9000, torque_Nmm: 3000 }), w, d)).toBeCloseTo((6 * out) / (long * tongue ** 2) / ((14 * 0.8) / 1.3), 9);
    const thrust = (30 + 12) / Math.SQRT2;
    expect(tongueUse(corner({ out_moment_Nmm: 9000, torque_Nmm: 3000, axial_N: -30, shear_N: 12 }), w, d)).toBeCloseTo((6 * (out - thrust * 12)) / (long * tongue ** 2) / ((14 * 0.8) / 1.3), 9);
    // Pulled open the shoulders carry none of it.
    expect(tongueUse(corner({ out_moment_Nmm: 9000, torque_Nmm: 3000, axial_N: 30, shear_N: 12 }), w, d)).toBeCloseTo((6 * out) / (long * tongue ** 2) / ((14 * 0.8) / 1.3), 9);
  });
  test('or is pressed at its shoulders, at 3 MPa: by the thrust evenly, by a moment in the plane at one end', () => {
    const thrust = (600 + 500) / Math.SQRT2;
    expect(tongueUse(corner({ axial_N: -600, shear_N: 500, moment_Nmm: -7000 }), w, d)).toBeCloseTo((thrust / (long * tongue) + (6 * 7000) / (2 * tongue * long ** 2)) / 3, 9);
  });
});

describe('crossbars as they lie', () => {
  test('their middles from the left or the bottom, their depth from the backs; a setback counts from the front', () => {
    const model = demoModel({ ...edge, crossbars: [crossbar({ at: 0.3 }), crossbar({ runs: 'level', at: 0.45, lay: 'flat', setback: '7 mm' })] });
    expect(crossbarsLie(model)).toEqual([
      { name: 'crossbar-1', runs: 'upright', middle_mm: expect.closeTo(360, 9), w_mm: 19, deep_mm: [-5, 33] },
      { name: 'crossbar-2', runs: 'level', middle_mm: expect.closeTo(360, 9), w_mm: 38, deep_mm: [12, 31] },
    ]);
  });
  test('one screw in the middle of its depth, from 60 mm on two a quarter from either face', () => {
    const shelf = demoShelf();
    const deep = (width_mm: number) => {
      const model = demoModel({ face: { width: '1200 mm', height: '800 mm' }, bars: { stock: 'stud-38x89', lay: 'edge' }, crossbars: [crossbar({ stock: 'odd' })] }, { ...shelf, lumber: { ...shelf.lumber, odd: { ...shelf.lumber['stud-38x64']!, key: 'odd', nominal: null, width_mm } } });
      const screws = planCrossbarScrews(model)!;
      const shafts = crossbarEnds(model).filter(({ kind, bar }) => kind === 'crossbar-screw' && bar === 'top');
      return { count: screws.count, spacing_mm: screws.spacing_mm, middles: shafts.map(({ deep_mm: [from, to] }) => (from + to) / 2), along: shafts.map(({ along_mm: [from, to] }) => [(from + to) / 2, to - from]), shank: screws.shank_mm };
    };
    const [less, more] = [deep(59), deep(60)];
    expect([less.count, less.middles]).toEqual([2, [expect.closeTo(89 - 5 - 29.5, 9)]]);
    expect([more.count, more.spacing_mm, more.middles]).toEqual([4, 60, [expect.closeTo(89 - 5 - 45, 9), expect.closeTo(89 - 5 - 15, 9)]]);
    expect(more.along).toEqual([[600, expect.closeTo(more.shank, 9)], [600, expect.closeTo(more.shank, 9)]]);
  });
  test('the shallowest tells how many screws each takes, of those as slender the shorter whose wood counts', () => {
    const shelf = demoShelf();
    const stock = (more: object) => ({ ...shelf.lumber['stud-38x64']!, nominal: null, ...more });
    const lumber = { ...shelf.lumber, dense: stock({ density_kg_per_m3: 520 }), light: stock({ density_kg_per_m3: 390 }) };
    const screws = (level: string, upright: string, first: 'level' | 'upright') => {
      const both = [crossbar({ runs: 'level', at: 0.4, stock: level }), crossbar({ at: 0.3, stock: upright })];
      const crossbars = first === 'level' ? both : both.toReversed();
      const words = { ...flat, bars: { stock: 'stud-38x89', lay: 'edge' }, crossbars };
      const { way, density_kg_per_m3, edge_mm } = planCrossbarScrews(demoModel(words, { ...shelf, lumber }))!;
      return [way.into === 'crossbar-ends' && way.each, density_kg_per_m3, edge_mm];
    };
    const square = demoShelf().lumber['square-38x38']!.density_kg_per_m3;
    for (const first of ['level', 'upright'] as const) {
      // All 38 mm thin. The upright is the shorter, 800 mm less two bars against 1200.
      expect(screws('dense', 'light', first)).toEqual([2, 390, 16]);
      expect(screws('light', 'dense', first)).toEqual([2, 520, 16]);
      // A 38 mm square between them leaves no room for two, wherever it lies.
      expect(screws('square-38x38', 'dense', first)).toEqual([1, 520, 19]);
      expect(screws('dense', 'square-38x38', first)).toEqual([1, square, 19]);
    }
  });
  test('what is left beyond the tip: straight in, the crossbar’s length; slanting, 19 mm and the bar less the screw', () => {
    const of = (bars: object) => planCrossbarScrews(demoModel({ ...flat, bars, crossbars: [crossbar({ at: 0.3, stock: 'stud-38x64' })] }))!;
    const straight = of({ stock: 'stud-38x89', lay: 'edge' });
    expect(straight.way).toMatchObject({ straight: true });
    // Between the bars 800 − 2 × 38 mm, into which the screw goes by what is left of it behind one bar.
    expect(straight.exit_mm).toBeCloseTo(800 - 2 * 38 - (straight.length_mm - 38), 9);
    const slanting = of({ stock: 'stud-38x89', lay: 'flat' });
    expect(slanting.way).toMatchObject({ straight: false });
    expect(slanting.exit_mm).toBeCloseTo(19 + 89 - slanting.length_mm, 9);
  });
  test('their ends lie on both bars, and what they stand out behind keeps the frame off the wall', () => {
    const model = demoModel({ ...edge, crossbars: [crossbar({ runs: 'level', at: 0.25 }), crossbar({ setback: '2 mm' })] });
    const ends = crossbarEnds(model).filter(({ kind }) => kind === 'crossbar');
    expect(ends.map(({ bar, along_mm, across_mm, deep_mm }) => [bar, along_mm, across_mm, deep_mm])).toEqual([
      ...['left', 'right'].map((bar) => [bar, [190.5, 209.5], [-19, 0], [-5, 33]]), ...['top', 'bottom'].map((bar) => [bar, [590.5, 609.5], [-19, 0], [-2, 36]]),
    ]);
    expect(standsOut(model)).toEqual({ what: { kind: 'whole-crossbar', of: 'crossbar-1' }, out_mm: 5, up_mm: [[190.5, 209.5]] });
    expect(bottomOut_mm(model)).toBe(5);
    // A level crossbar whose lower side lies a quarter up or higher lets the lower edge swing in; the upright still reaches down.
    const higher = demoModel({ ...edge, crossbars: [crossbar({ runs: 'level', at: 0.5 }), crossbar({ setback: '2 mm' })] });
    expect([standsOut(higher)!.out_mm, bottomOut_mm(higher)]).toEqual([5, 2]);
    // 1000 mm high: half of 19 mm over a quarter of it and no less.
    const quarter = (at: number) =>
      bottomOut_mm(demoModel({ ...edge, face: { width: '800 mm', height: '1000 mm' }, crossbars: [crossbar({ runs: 'level', at })] }));
    expect([quarter(0.2595), quarter(0.2594)]).toEqual([0, 5]);
    expect(standsOut(demoModel({ ...edge, crossbars: [crossbar({ setback: '0.5 mm' })] }))).toBeNull();
    const upright = standsOut(demoModel({ ...edge, bars: { stock: 'strip-19x38', lay: 'edge' }, crossbars: [crossbar()] }))!;
    expect(upright.up_mm).toEqual([[19, 781]]);
  });
});

test('screws of a brace only clamp where glue holds it as well; steel is never glued', () => {
  const role = (brace: object, glue = 'pva') => planBraceScrews(demoModel({ face: { width: '1200 mm', height: '800 mm' }, bars: { stock: 'square-38x38', lay: 'flat' }, corners: { glue, brace } }))?.role;
  const timber = { kind: 'timber', leg: '250 mm', stock: 'strip-19x38', lay: 'flat' };
  expect([role(timber), role(timber, 'none'), role({ kind: 'ply-gusset', leg: '150 mm' }), role({ kind: 'steel-angle', leg: '100 mm' })]).toEqual(['clamp', 'load', 'clamp', 'load']);
});

describe('cloth', () => {
  test('cut for the back or the edge: depth, wrap, turn and half the grip beyond the face, up to the mark', () => {
    const cut = { face_width_mm: 900, face_height_mm: 620, depth_mm: 19.2, bar_width_mm: 38, fixed_to: 'back' as const, turn_mm: 50, grip_mm: 20, mark_mm: 0.5 };
    expect([clothWrap_mm(cut), clothMargin_mm(cut), clothCutSize(cut)]).toEqual([38, 117.5, { width_mm: 1135, height_mm: 855 }]);
    expect([clothWrap_mm({ ...cut, fixed_to: 'edge' }), clothMargin_mm({ ...cut, fixed_to: 'edge' })]).toEqual([0, 79.5]);
    expect([rollShort_mm(1135, 855, 800), rollShort_mm(855, 1135, 900)]).toEqual([55, -45]);
  });
  test('air carried freely: the table’s rows themselves, held beyond ten; no shape below a square', () => {
    for (const [aspect, C] of [[1, 0.5383], [1.25, 0.5964], [1.5, 0.64], [2, 0.6996], [3, 0.7624], [5, 0.8104], [10, 0.84]] as const) expect(airCoefficientFree(aspect)).toBeCloseTo(C, 10);
    expect(airCoefficientFree(40)).toBe(airCoefficientFree(10));
    for (const aspect of [0.99, 0, -2, Number.NaN, Infinity]) expect(() => airCoefficientFree(aspect)).toThrow(RangeError);
  });
  test('a note read with no error means the pulls of free and of walled air; an error as large as the note means nothing', () => {
    const span = { width_mm: 800, height_mm: 600 };
    const sure = pullFromTap(span, 30, 0.4);
    const unsure = pullFromTap(span, 30, 0.4, 3);
    expect(sure.value_N_per_m).toBeCloseTo((sure.low_N_per_m + sure.high_N_per_m) / 2, 9);
    expect([unsure.low_N_per_m / sure.low_N_per_m, unsure.high_N_per_m / sure.high_N_per_m]).toEqual([expect.closeTo(0.81, 9), expect.closeTo(1.21, 9)]);
    for (const error of [30, 31, -1, Number.NaN]) expect(() => pullFromTap(span, 30, 0.4, error)).toThrow(RangeError);
  });
});
