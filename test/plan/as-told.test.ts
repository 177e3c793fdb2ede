/** What a plan leaves open and what it may not say, at the very ends: defaults of both unit systems, readings of boards, the words of what was assumed. */
import { describe, expect, test } from 'vitest';
import { stringify } from 'yaml';
import { builtSize, laidSize, plyThickness_mm } from '../../src/plan/build-up.js';
import { usualSlack_mm } from '../../src/plan/defaults.js';
import type { Plan } from '../../src/plan/plan.js';
import { readPlanWith } from '../../src/plan/read-plan.js';
import type { Shelf } from '../../src/shelf/shelf.js';
import { shippedShelf } from './shelf-for-tests.js';

const shelf = shippedShelf();
const base = { plan: 1, name: 'As told', face: { width: '1200 mm', height: '800 mm' }, bars: { stock: 'square-38x38', lay: 'flat' } };
const read = (more: object, on: Shelf = shelf) => readPlanWith(stringify({ ...base, ...more }), 'plan.yaml', on);
const told = (more: object, on: Shelf = shelf) => { const one = read(more, on); return one.ok ? one.warnings : one.problems; };
const codes = (more: object, on: Shelf = shelf): readonly string[] => told(more, on).map(({ code }) => code);
function planOf(more: object, on: Shelf = shelf): Plan {
  const one = read(more, on);
  if (!one.ok) throw new Error(JSON.stringify(one.problems));
  return one.value;
}
const assumed = (more: object, path: string, on: Shelf = shelf): string | undefined => planOf(more, on).assumed.find((one) => one.path === path)?.value;
const inch = 25.4;

describe('what a plan leaves open', () => {
  const glued = { bars: { stock: 'strip-19x38', lay: 'edge', plies: 2, bond: 'glue+screws' } };
  test('lengths as one says them in either system: ply screws 200 mm or 8 in apart, staples and turn 50 mm or 2 in', () => {
    const inInches = planOf({ ...glued, face: { width: '48 in', height: '32 in' } });
    const metric = planOf(glued);
    expect([metric.ply_screws!.every_mm, metric.cloth.fixing.every_mm, metric.cloth.fixing.turn_mm]).toEqual([200, 50, 50]);
    expect([inInches.ply_screws!.every_mm, inInches.cloth.fixing.every_mm, inInches.cloth.fixing.turn_mm].map((mm) => mm / inch)).toEqual([8, 2, 2].map((value) => expect.closeTo(value, 9)));
    expect([assumed(glued, 'ply-screws.every'), assumed({ ...glued, face: { width: '48 in', height: '32 in' } }, 'ply-screws.every')]).toEqual(['200 mm', '8 in']);
  });

  test('a hook stays 30 mm, or an inch and a quarter, below the top, however wide the frame', () => {
    expect(usualSlack_mm(100, 2000, 'metric')).toBe(70);
    expect(usualSlack_mm(4 * inch, 80 * inch, 'inch') / inch).toBeCloseTo(2.75, 9);
    expect(usualSlack_mm(12, 2000, 'metric')).toBe(5);
  });

  test('the rest as it was agreed: 2 coats, 12 %, 35 to 60 % at 20 °C, two hooks, one frame', () => {
    const { ground, lumber, room, hang, count, cloth } = planOf({});
    expect([ground.coats, lumber.moisture_pct, lumber.chosen, lumber.knots, room, hang.by, hang.hooks, hang.from, count, cloth.use]).toEqual([2, 12, 'plain', 'few', { humidity_low: 0.35, humidity_high: 0.6, temperature_C: 20 }, 'wire', 2, 'inside', 1, 'cotton-duck-340']);
    expect(assumed({}, 'room.temperature')).toBe('20 °C');
    expect(assumed({}, 'lumber.moisture')).toBe('12 %');
  });

  test('pulls: 200 and 400 N/m; one from the other by two, said once where both ways are alike', () => {
    const both = (x: number, y = x) => ({ x_N_per_m: x, y_N_per_m: y });
    const pulls = (pull?: object | string, on: Shelf = shelf) => { const { cloth } = planOf(pull === undefined ? {} : { cloth: { pull } }, on); return [cloth.working, cloth.peak]; };
    const silent = { ...shelf, cloths: { ...shelf.cloths, 'cotton-duck-340': { ...shelf.cloths['cotton-duck-340']!, pull_N_per_m: null } } };
    const reached = { ...shelf, cloths: { ...shelf.cloths, 'cotton-duck-340': { ...shelf.cloths['cotton-duck-340']!, pull_N_per_m: 250 } } };
    expect(pulls(undefined, silent)).toEqual([both(200), both(400)]);
    expect(pulls(undefined, reached)).toEqual([both(250), both(500)]);
    expect([assumed({}, 'cloth.pull.working', reached), assumed({}, 'cloth.pull.peak', reached)]).toEqual(['250 N/m, the shelf’s number for this cloth', '500 N/m, twice the working pull']);
    expect(pulls({ working: '150 N/m' }, reached)).toEqual([both(150), both(300)]);
    expect(pulls({ peak: { x: '150 N/m', y: '90 N/m' } }, reached)).toEqual([both(75, 45), both(150, 90)]);
    const said = (pull: object, path: string) => assumed({ cloth: { pull } }, path);
    expect(said({ x: '250 N/m', y: '120 N/m' }, 'cloth.pull.peak')).toBe('500 N/m along the width, 240 N/m along the height, twice the working pull');
    expect(said({ working: '150 N/m' }, 'cloth.pull.peak')).toBe('300 N/m, twice the working pull');
    expect(said({ peak: { x: '150 N/m', y: '90 N/m' } }, 'cloth.pull.working')).toBe('75 N/m along the width, 45 N/m along the height');
  });

  test('is listed in the order in which a plan names its parts', () => {
    const { assumed: list } = planOf({ crossbars: [{ runs: 'upright' }], corners: { brace: { kind: 'timber' } }, ...glued });
    const order = ['count', 'bars', 'crossbars', 'corners', 'ply-screws', 'cloth', 'ground', 'lumber', 'room', 'hang'];
    const places = list.map(({ path }) => order.indexOf(path.split(/[.[]/u)[0]!));
    expect(places.every((place, i) => place >= 0 && (i === 0 || place >= places[i - 1]!))).toBe(true);
    expect(new Set(places).size).toBe(order.length);
  });

  test.each(['none', 'cleat'])('nothing of hooks and drops where it hangs by %s, unless the plan says so', (by) => {
    const { hang, assumed: list } = planOf({ hang: { by } });
    expect(hang).toEqual({ by, drop_mm: 0, from: 'inside', hooks: 0, slack_mm: 0 });
    expect(list.filter(({ path }) => path.startsWith('hang'))).toEqual([]);
    expect(planOf({ hang: { by, drop: '70 mm', from: 'back', hooks: 1, slack: '8 mm' } }).hang).toEqual({ by, drop_mm: 70, from: 'back', hooks: 1, slack_mm: 8 });
  });

  test('two hooks have no slack, d-rings lie on the back; a wire has all three', () => {
    const of = (by: string) => planOf({ hang: { by } }).assumed.flatMap(({ path }) => (path.startsWith('hang') ? [path] : []));
    expect([of('two-hooks'), of('d-rings'), of('wire')]).toEqual([['hang.drop', 'hang.from', 'hang.hooks'], ['hang.drop', 'hang.hooks'], ['hang.drop', 'hang.from', 'hang.hooks', 'hang.slack']]);
    expect([planOf({ hang: { by: 'two-hooks' } }).hang.slack_mm, planOf({ hang: { by: 'd-rings' } }).hang.from]).toEqual([0, 'back']);
  });

  test('where a board lies: from its beginning, or as far along as is told', () => {
    const on = (more: object) => planOf({ boards: [{ for: 'left', board: 'A', ...more }] }).boards[0]!.on;
    expect([on({}), on({ from: '340 mm' })]).toEqual([{ mark: 'A', from_mm: 0 }, { mark: 'A', from_mm: 340 }]);
    expect(planOf({ boards: [{ for: 'left', twist: '1 deg/m' }] }).boards[0]!.on).toBeUndefined();
  });
});

describe('what is read of a board', () => {
  const refused = (more: object): boolean => codes({ boards: [{ for: 'top', ...more }] }).includes('out-of-range');
  test.each<[string, (value: string) => object, readonly string[], readonly string[]]>([
    ['twist', (twist) => ({ twist }), ['40 deg/m', '-40 deg/m'], ['41 deg/m', '-41 deg/m']],
    ['bow, as a rise', (bow) => ({ bow, over: '2 m' }), ['500 mm', '-500 mm'], ['501 mm', '-501 mm']],
    ['crook, as a rise', (crook) => ({ crook, over: '2 m' }), ['500 mm', '-500 mm'], ['501 mm', '-501 mm']],
    ['bow, as a curvature', (bow) => ({ bow }), ['0.2 /m', '-0.2 /m'], ['0.21 /m', '-0.21 /m']],
    ['crook, as a curvature', (crook) => ({ crook }), ['0.2 /m', '-0.2 /m'], ['0.21 /m', '-0.21 /m']],
    ['length', (over) => ({ bow: '2 mm', over }), ['100 mm', '20 m'], ['99.5 mm', '20000.5 mm']],
  ])('%s: to its ends and not beyond', (_, more, within, beyond) => {
    expect([...within, ...beyond].map((value) => refused(more(value)))).toEqual([...within.map(() => false), ...beyond.map(() => true)]);
  });
  test('a rise becomes the curvature of an arc: eight times it over the length squared', () => {
    const [board] = planOf({ boards: [{ for: 'top', bow: '3 mm', crook: '-1.5 mm', over: '1.5 m', twist: '-2 deg/m' }] }).boards;
    expect(board!.bow_per_m).toBeCloseTo((8 * 0.003) / 1.5 ** 2, 12);
    expect(board!.crook_per_m).toBeCloseTo((8 * -0.0015) / 1.5 ** 2, 12);
    expect(board!.twist_rad_per_m).toBeCloseTo((-2 * Math.PI) / 180, 12);
    expect(planOf({ boards: [{ for: 'top', bow: '0.004 /m' }] }).boards[0]).toMatchObject({ bow_per_m: 0.004, crook_per_m: null, twist_rad_per_m: null });
  });
});

describe('sizes of bars', () => {
  const board = { thickness_mm: 19, width_mm: 64 };
  test('flat or on edge, plies side by side or one behind the other', () => {
    expect([laidSize(board, 'flat'), laidSize(board, 'edge')]).toEqual([{ w_mm: 64, d_mm: 19 }, { w_mm: 19, d_mm: 64 }]);
    expect([builtSize(board, 'flat', 3, 'side-by-side'), builtSize(board, 'flat', 3, 'front-to-back'), builtSize(board, 'edge', 2, 'side-by-side'), builtSize(board, 'edge', 2, 'front-to-back')]).toEqual([
      { w_mm: 192, d_mm: 19 }, { w_mm: 64, d_mm: 57 }, { w_mm: 38, d_mm: 64 }, { w_mm: 19, d_mm: 128 },
    ]);
    expect([plyThickness_mm(board, 'flat', 'side-by-side'), plyThickness_mm(board, 'flat', 'front-to-back'), plyThickness_mm(board, 'edge', 'side-by-side')]).toEqual([64, 19, 19]);
  });
});

describe('what parts of a plan say against each other', () => {
  test('ply screws where nothing is built of plies are told of, and stand where a crossbar is', () => {
    const screws = { 'ply-screws': { use: 'screw-6x32' } };
    const crossbar = (plies: number) => ({ crossbars: [{ runs: 'upright', at: 0.3, stock: 'strip-19x38', lay: 'edge', plies: 1 }, { runs: 'upright', at: 0.6, stock: 'strip-19x38', lay: 'edge', plies }] });
    expect([codes(screws), codes({ ...screws, ...crossbar(1) })].map((list) => list.includes('screws-without-plies'))).toEqual([true, true]);
    expect(codes({ ...screws, ...crossbar(2) })).not.toContain('screws-without-plies');
    expect(codes({ ...screws, bars: { ...base.bars, plies: 2, bond: 'glue' } })).toContain('screws-without-bond');
    expect(codes({ ...screws, bars: { ...base.bars, plies: 2, bond: 'screws' } })).not.toContain('screws-without-bond');
    expect(codes({ 'ply-screws': 'none', bars: { ...base.bars, plies: 2, bond: 'screws' } })).toContain('ply-screws-missing');
  });

  test('no screw on the shelf for two plies is told of only where one was left to be chosen', () => {
    const glued = { bars: { stock: 'strip-19x38', lay: 'edge', plies: 2, bond: 'glue+screws' } };
    const bare = { ...shelf, screws: { 'screw-6x32': { ...shelf.screws['screw-6x32']!, length_mm: 60 } } };
    expect([codes(glued), codes(glued, bare), codes({ ...glued, 'ply-screws': { use: 'screw-6x32' } }, bare)].map((list) => list.includes('no-screw-fits'))).toEqual([false, true, false]);
  });

  test('a hook hangs above the bottom edge; a wire that stands above the top is told of', () => {
    const hang = (drop: string, more: object = {}) => codes({ hang: { by: 'wire', drop, slack: '60 mm', ...more } });
    expect(['799.5 mm', '800 mm'].map((drop) => hang(drop).includes('drop-too-deep'))).toEqual([false, true]);
    expect(['60 mm', '59.5 mm'].map((drop) => hang(drop).includes('wire-above-frame'))).toEqual([false, true]);
    expect([1, 2, 3].map((hooks) => codes({ hang: { by: 'two-hooks', hooks } }).includes('one-of-two-hooks'))).toEqual([true, false, true]);
    expect([1, 2].map((hooks) => codes({ hang: { by: 'd-rings', hooks } }).includes('one-of-two-hooks'))).toEqual([true, false]);
    expect(hang('180 mm', { hooks: 1 })).not.toContain('one-of-two-hooks');
  });

  test('a leg reaches less than half the shorter side', () => {
    const leg = (mm: string) => codes({ face: { width: '800 mm', height: '1200 mm' }, corners: { brace: { kind: 'ply-gusset', leg: mm } } });
    expect(leg('400 mm').filter((code) => code === 'leg-too-long')).toHaveLength(1);
    expect(leg('300 mm')).not.toContain('leg-too-long');
  });

  test('what stands out behind by more than a twentieth of a millimetre is told of, and of a setback left open in its note', () => {
    const deep = (width_mm: number): Shelf => ({ ...shelf, lumber: { ...shelf.lumber, odd: { ...shelf.lumber['strip-19x38']!, key: 'odd', nominal: null, width_mm } } });
    const plan = (more: object) => ({ bars: { stock: 'strip-19x38', lay: 'edge' }, cloth: { pull: { working: '900 N/m' } }, crossbars: [{ runs: 'upright', at: 0.3, stock: 'odd', lay: 'edge', ...more }] });
    // Bars 38 mm deep, a setback of 5 mm.
    const depths = [33.04, 33.052, 33.06];
    expect(depths.map((mm) => codes(plan({ setback: '5 mm' }), deep(mm)).includes('crossbar-stands-out'))).toEqual([false, true, true]);
    expect(depths.map((mm) => assumed(plan({}), 'crossbars[0].setback', deep(mm)))).toEqual([expect.not.stringContaining('out behind'), expect.stringContaining('out behind'), expect.stringContaining('out behind')]);
    expect(codes(plan({}), deep(40))).not.toContain('crossbar-stands-out');
  });

  test('a setback is settled in an opening of a millimetre too, and not where there is none', () => {
    const in77 = (height: string) => { const one = read({ face: { width: '900 mm', height }, crossbars: [{ runs: 'level', at: 0.5, stock: 'strip-19x38', lay: 'edge' }] }); return one.ok ? one.value.assumed.find(({ path }) => path === 'crossbars[0].setback')?.value : one.problems.map(({ code }) => code); };
    expect(in77('76 mm')).toContain('no-opening');
    const square = read({ face: { width: '77 mm', height: '900 mm' }, crossbars: [{ runs: 'level', at: 0.5, stock: 'strip-19x38', lay: 'edge' }] });
    expect(square.ok && square.value.assumed.find(({ path }) => path === 'crossbars[0].setback')?.value).toContain('so that a firm brush clears it');
  });
});
