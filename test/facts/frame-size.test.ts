import { expect, it } from 'vitest';
import type { Fact } from '../../src/facts/fact.js';
import { peopleToLift } from '../../src/mechanics/lifting.js';
import { demoModel } from '../mechanics/fasteners/demo-model.js';
import { ofSubject } from './of-subject.js';

const plan = {
  face: { width: '1900 mm', height: '1240 mm' }, bars: { stock: 'square-38x38', lay: 'flat', lip: '6 mm' }, crossbars: [{ runs: 'upright', at: 0.4 }, { runs: 'level', at: 0.3 }, { runs: 'level', at: 0.6 }],
  door: { width: '800 mm', height: '1240 mm' },
};
const valuesOf = (more: object): ReadonlyMap<string, Fact['value']> => new Map(ofSubject('frame.width', 'frame.height', 'frame.shorter', 'frame.longer', 'frame.crossbars', 'frame.diagonal', 'frame.weight', 'frame.lift_people', 'frame.fits')(demoModel({ ...plan, ...more })).map(({ path, value }) => [path, value]));

it('the whole frame: sides, diagonal, crossbars, weight, hands', () => {
  const of = valuesOf({});
  const model = demoModel(plan);
  expect([of.get('frame.width_mm'), of.get('frame.height_mm'), of.get('frame.shorter_side_mm'), of.get('frame.longer_side_mm'), of.get('frame.crossbars_count')]).toEqual([1900, 1240, 1240, 1900, 3]);
  expect(of.get('frame.diagonal_mm')).toBeCloseTo(Math.sqrt(1900 ** 2 + 1240 ** 2), 9);
  expect(of.get('frame.weight_kg')).toBe(model.weight.total_kg);
  expect(of.get('frame.lift_people')).toBe(peopleToLift(model.weight.total_kg, 1900, 1240));
});

it('half a degree off square, a parallelogram’s diagonals differ by √(W² + H² + 2WH sin ½°) − √(W² + H² − 2WH sin ½°)', () => {
  const [W, H, s] = [1900, 1240, Math.sin(Math.PI / 360)];
  expect(valuesOf({}).get('frame.diagonal_difference_mm')).toBeCloseTo(Math.sqrt(W ** 2 + H ** 2 + 2 * W * H * s) - Math.sqrt(W ** 2 + H ** 2 - 2 * W * H * s), 1);
});

it('goes through a door with its lip: 38 + 6 mm deep, the shorter side under the head', () => {
  const through = (width: string, height: string) => valuesOf({ door: { width, height } }).get('frame.fits_door');
  expect([through('100 mm', '1240 mm'), through('100 mm', '1239 mm')]).toEqual(['yes', 'no']);
  const deep = { bars: { stock: 'stud-38x89', lay: 'edge', lip: '12 mm' } };
  expect([['101 mm', 'yes'], ['100 mm', 'no']].every(([width, answer]) => valuesOf({ ...deep, door: { width, height: '2 m' } }).get('frame.fits_door') === answer)).toBe(true);
  expect(valuesOf({ door: undefined }).get('frame.fits_door')).toBe('not-asked');
});

it('boards: each ply by its own reading in degrees a metre, else as its kind is expected', () => {
  const model = demoModel({ ...plan, bars: { stock: 'strip-19x38', lay: 'flat', plies: 2 }, boards: [{ for: 'left', ply: 2, twist: '-0.7 deg/m' }, { for: 'top', ply: 1, bow: '2 mm', over: '1000 mm' }] });
  const expected = (model.bars.top.stock.spread.plain.twist_rad_per_m.mean * 180) / Math.PI;
  const facts = ofSubject('board.')(model);
  const of = (path: string, about: string): unknown => facts.find((one) => one.path === path && one.about === about)?.value;
  expect(facts.filter(({ path }) => path === 'board.measured').map(({ about }) => about)).toEqual([...['top', 'bottom', 'left', 'right'].flatMap((bar) => [`${bar}-1`, `${bar}-2`]), 'crossbar-1-1', 'crossbar-2-1', 'crossbar-3-1']);
  expect([of('board.twist_deg_per_m', 'left-2'), of('board.measured', 'left-2')]).toEqual([expect.closeTo(-0.7, 9), 'yes']);
  expect([of('board.twist_deg_per_m', 'left-1'), of('board.measured', 'left-1')]).toEqual([expect.closeTo(expected, 9), 'no']);
  expect([of('board.twist_deg_per_m', 'top-1'), of('board.measured', 'top-1')]).toEqual([expect.closeTo(expected, 9), 'no']);
  expect(Math.abs(expected)).toBeGreaterThan(0.1);
});
