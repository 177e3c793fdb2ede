/** Reserves of keyed frames of 19 × 44 bars, E 11000, from an independent program: about 5.0, 3.0, 1.6, and 3.1 with an upright (joints 100/8/8). Two printed digits. */
import { stringify } from 'yaml';
import { expect, test } from 'vitest';
import { readShelf } from '../../src/shelf/read-shelf.js';
import { demoShelf, demoSolved } from '../mechanics/fasteners/demo-model.js';

const shelf = readShelf(stringify({ shelf: 1, lumber: { 'bar-19x44': { size: '19 x 44 mm', E: '11000 MPa' } } }), 'shelf.yaml', demoShelf());
if (!shelf.ok) throw new Error(JSON.stringify(shelf.problems));

const reserve = (width: number, height: number, crossbars: object[], corners: object): number =>
  0.67 * demoSolved({ face: { width: `${width} mm`, height: `${height} mm` }, bars: { stock: 'bar-19x44', lay: 'flat' }, crossbars, corners, hang: { by: 'none' } }, shelf.value).solution.peak_factor!;

test.each([[400, 500, [], 5], [500, 600, [], 3], [600, 800, [], 1.6], [1000, 700, [{ runs: 'upright' }], 3.1]] as const)('%i × %i', (width, height, crossbars, expected) => {
  expect(Math.abs(reserve(width, height, [...crossbars], { cut: 'keyed' }) - expected)).toBeLessThan(0.06);
});

test('with 100 in every way the same frames would be worth nothing', () => {
  expect(reserve(400, 500, [], { cut: 'keyed', give: 100 })).toBeLessThan(0.65);
  expect(reserve(600, 800, [], { cut: 'keyed', give: 100 })).toBeLessThan(0.25);
});
