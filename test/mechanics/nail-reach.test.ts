import { describe, expect, test } from 'vitest';
import { nailHolds, nailPath } from '../../src/fit/nail-path.js';
import { fasteningFacts } from '../facts/of-subject.js';
import { demoModel, demoSolved } from './fasteners/demo-model.js';

const brad = { diameter_mm: 1.21, length_mm: 25 };
const plan = (corners: object, stock = 'square-38x38') => ({ face: { width: '620 mm', height: '470 mm' }, bars: { stock, lay: 'flat' }, corners });

describe('a nail that never reaches the other piece', () => {
  test('25 mm through a bar of 38: 13 mm short of a butt joint', () => {
    const path = nailPath({ cut: 'butt', w_mm: 38, d_mm: 38, span_mm: 430, each: 1 }, brad);
    expect(path.reach_mm).toBe(25 - 38);
    expect(nailHolds(path, brad)).toBe(false);
    const { model, solution } = demoSolved(plan({ cut: 'butt', nails: { use: 'brad-18ga-25', each: 1 } }));
    expect(fasteningFacts(model, solution).find(({ path: name }) => name === 'fastening.reach_mm')?.value).toBe(-13);
  });
  test('makes no nailed joint: dry, it gives like nothing; glued, like glue alone', () => {
    const give = (corners: object, stock?: string): number => demoModel(plan(corners, stock)).shape.corner_give['top-left'].plane;
    const short = { use: 'brad-18ga-19', each: 2 };
    const long = { use: 'brad-16ga-32', each: 2 };
    expect([give({ glue: 'none', nails: short }), give({ glue: 'none', nails: long }), give({ glue: 'none', nails: 'none' })]).toEqual([100, 40, 100]);
    expect([give({ nails: short }), give({ nails: long }), give({ nails: 'none' })]).toEqual([6, 4, 6]);
  });
});
