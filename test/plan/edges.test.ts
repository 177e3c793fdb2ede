import { describe, expect, it } from 'vitest';
import { stringify } from 'yaml';
import type { Problem } from '../../src/base/problem.js';
import { usualDrop_mm, usualLeg_mm, usualSlack_mm } from '../../src/plan/defaults.js';
import { byThickness, fittingScrew, plyScrewFit, plyScrewHolds, sameStack } from '../../src/plan/ply-screw.js';
import { readPlanWith } from '../../src/plan/read-plan.js';
import { ndsDistances, thinnestUnbored_mm } from '../../src/fit/distances.js';
import type { Screw } from '../../src/shelf/shelf.js';
import { shippedShelf } from './shelf-for-tests.js';

const shelf = shippedShelf();
const base = { plan: 1, name: 'Edges', face: { width: '1200 mm', height: '800 mm' }, bars: { stock: 'square-38x38', lay: 'flat' } };

/** What is found at a plan, warnings too. */
function problemsOf(plan: object): readonly Problem[] {
  const read = readPlanWith(stringify({ ...base, ...plan }), 'plan.yaml', shelf);
  return read.ok ? read.warnings : read.problems;
}
const codes = (plan: object): readonly string[] => problemsOf(plan).map(({ code }) => code);

describe('the limits a plan says of itself', () => {
  const square = (side: string) => ({ face: { width: side, height: side } });
  const measured = (reading: object) => ({ boards: [{ for: 'top', ply: 1, ...reading }] });
  it.each<[string, (value: string | number) => object, string | number | null, string | number, string | number, string | number | null]>([
    ['count', (count) => ({ count }), 0, 1, 500, 501],
    ['face', (side) => square(String(side)), '49 mm', '50 mm', '20 m', '20000.5 mm'],
    ['width', (width) => ({ face: { width, height: '800 mm' } }), '49 mm', '50 mm', '20 m', '20000.5 mm'],
    ['height', (height) => ({ face: { width: '800 mm', height } }), '49 mm', '50 mm', '20 m', '20000.5 mm'],
    ['lip', (lip) => ({ bars: { ...base.bars, lip } }), null, '0 mm', '50 mm', '51 mm'],
    ['plies of a bar', (plies) => ({ bars: { ...base.bars, plies } }), 0, 1, 4, 5],
    ['plies of a crossbar', (plies) => ({ crossbars: [{ runs: 'upright', at: 0.5, plies }] }), 0, 1, 4, 5],
    ['setback', (setback) => ({ crossbars: [{ runs: 'upright', at: 0.5, setback }] }), null, '0 mm', '300 mm', '301 mm'],
    ['give', (give) => ({ corners: { give } }), -1, 0, 1000, 1001],
    ['nails in a corner', (each) => ({ corners: { nails: { use: 'brad-18ga-25', each } } }), 0, 1, 12, 13],
    ['leg', (leg) => ({ corners: { brace: { kind: 'timber', leg } } }), '19 mm', '20 mm', '5 m', '5000.5 mm'],
    ['leg, low', (leg) => ({ corners: { brace: { kind: 'ply-gusset', leg } } }), '19.9 mm', '20 mm', '5 m', '5000.5 mm'],
    ['ply screws’ spacing', (every) => ({ 'ply-screws': { use: 'screw-6x32', every } }), '9 mm', '10 mm', '2 m', '2000.5 mm'],
    ['pilot', (pilot) => ({ 'ply-screws': { use: 'screw-6x32', pilot } }), '0.29 mm', '0.3 mm', '20 mm', '20.1 mm'],
    ['pull', (working) => ({ cloth: { pull: { working } } }), '0.9 N/m', '1 N/m', '5000 N/m', '5001 N/m'],
    ['staples', (every) => ({ cloth: { fixing: { every } } }), '4 mm', '5 mm', '500 mm', '501 mm'],
    ['turn', (turn) => ({ cloth: { fixing: { turn } } }), null, '0 mm', '500 mm', '501 mm'],
    ['roll', (roll) => ({ cloth: { roll } }), '99 mm', '100 mm', '20 m', '20000.5 mm'],
    ['coats', (coats) => ({ ground: { coats } }), -1, 0, 20, 21],
    ['moisture', (moisture) => ({ lumber: { moisture } }), '1.9 %', '2 %', '60 %', '60.1 %'],
    ['ply of a board', (ply) => ({ boards: [{ for: 'top', ply, twist: '0.4 deg/m' }] }), 0, 1, 4, 5],
    ['humidity, low', (low) => ({ room: { humidity: `${low}..95 %` } }), 4, 5, 95, 96],
    ['temperature', (temperature) => ({ room: { temperature } }), '-11 C', '-10 C', '50 C', '51 C'],
    ['drop', (drop) => ({ hang: { by: 'wire', drop } }), null, '0 mm', '10 m', '10000.5 mm'],
    ['hooks', (hooks) => ({ hang: { by: 'wire', hooks } }), 0, 1, 4, 5],
    ['slack', (slack) => ({ hang: { by: 'wire', slack } }), null, '0 mm', '2 m', '2000.5 mm'],
    ['spending', (limit) => ({ spend: { limit } }), -1, 0, 1_000_000, 1_000_001],
    ['door', (width) => ({ door: { width, height: '2 m' } }), '99 mm', '100 mm', '20 m', '20000.5 mm'],
    ['door height', (height) => ({ door: { width: '800 mm', height } }), '99 mm', '100 mm', '20 m', '20000.5 mm'],
  ])('%s: the ends themselves are read, what lies beyond is not', (_, plan, below, least, most, above) => {
    expect(codes(plan(least))).not.toContain('out-of-range');
    expect(codes(plan(most))).not.toContain('out-of-range');
    for (const value of [below, above]) if (value !== null) expect([value, ...codes(plan(value))]).toContain('out-of-range');
  });
  it('a board is read over 100 mm at least', () => {
    expect(codes(measured({ bow: '1 mm', over: '99 mm' }))).toContain('out-of-range');
    expect(codes(measured({ bow: '1 mm', over: '100 mm' }))).not.toContain('out-of-range');
  });
});

describe('what fits into the frame, to the mark', () => {
  const crossbar = (at: string, more: object = {}) => ({ crossbars: [{ runs: 'upright', at, stock: 'strip-19x38', lay: 'flat', setback: '0 mm', ...more }] });
  it('bars narrower than half the shorter side', () => {
    expect(codes({ face: { width: '900 mm', height: '76 mm' } })).toContain('no-opening');
    expect(codes({ face: { width: '76 mm', height: '900 mm' } })).toContain('no-opening');
    expect(codes({ face: { width: '900 mm', height: '77 mm' } })).not.toContain('no-opening');
  });
  it('a crossbar beside the bars: its middle a bar and half its own width from the edge', () => {
    expect([['57 mm'], ['56 mm'], ['1143 mm'], ['1144 mm']].map(([at]) => codes(crossbar(at!)).includes('crossbar-on-bar'))).toEqual([false, true, false, true]);
    const level = (at: string): boolean => codes({ crossbars: [{ runs: 'level', at, stock: 'strip-19x38', lay: 'flat' }] }).includes('crossbar-on-bar');
    expect([level('57 mm'), level('743 mm'), level('744 mm')]).toEqual([false, false, true]);
  });
  it('two crossbars of one way side by side, half of both widths apart; of two ways wherever they lie', () => {
    const two = (at: string, runs = 'upright') => codes({ crossbars: [{ runs: 'upright', at: '500 mm', stock: 'strip-19x38', lay: 'flat' }, { runs, at, stock: 'strip-19x38', lay: 'edge' }] }).includes('crossbars-overlap');
    expect([two('528 mm'), two('529 mm'), two('471 mm'), two('472 mm'), two('500 mm', 'level')]).toEqual([true, false, false, true, false]);
  });
  it('a setback less than the bars are deep with their lip; what then stands out behind is said', () => {
    expect(codes(crossbar('1/2', { setback: '37.9 mm' }))).not.toContain('setback-too-deep');
    expect(codes(crossbar('1/2', { setback: '38 mm' }))).toContain('setback-too-deep');
    expect(codes({ ...crossbar('1/2', { setback: '43 mm' }), bars: { ...base.bars, lip: '6 mm' } })).not.toContain('setback-too-deep');
    expect([18.9, 19, 19.1].map((mm) => codes(crossbar('1/2', { setback: `${mm} mm` })).includes('crossbar-stands-out'))).toEqual([false, false, true]);
    const lipped = (mm: number): boolean => codes({ ...crossbar('1/2', { setback: `${mm} mm` }), bars: { ...base.bars, lip: '6 mm' } }).includes('crossbar-stands-out');
    expect([lipped(25), lipped(25.1)]).toEqual([false, true]);
  });
  it('a brace between the corner and half the shorter side', () => {
    const leg = (mm: number, kind = 'timber'): readonly string[] => codes({ corners: { brace: { kind, leg: `${mm} mm`, ...(kind === 'timber' ? { stock: 'strip-19x38', lay: 'flat' } : {}) } } });
    // Between the inner edges a brace of 38 mm vanishes at a leg of 38 + 38/√2 = 64.9 mm.
    expect([leg(64).includes('leg-too-short'), leg(65).includes('leg-too-short')]).toEqual([true, false]);
    expect([leg(20, 'ply-gusset').includes('leg-too-short')]).toEqual([false]);
    const wide = (mm: number): boolean => codes({ bars: { stock: 'stud-38x89', lay: 'flat' }, corners: { brace: { kind: 'ply-gusset', leg: `${mm} mm` } } }).includes('leg-too-short');
    expect([wide(44), wide(45)]).toEqual([true, false]);
    // The middles of the bars are (800 − 38)/2 = 381 mm from the middle of the side.
    expect([leg(380.9), leg(381), leg(399.9)].map((found) => found.includes('leg-too-long'))).toEqual([false, true, true]);
  });
  it('a brace that meets a crossbar is told of', () => {
    const meets = (at: number): boolean => codes({ ...crossbar(`${at} mm`), corners: { brace: { kind: 'timber', leg: '200 mm', stock: 'strip-19x38', lay: 'flat' } } }).includes('brace-meets-crossbar');
    expect([meets(237), meets(238), meets(962), meets(963)]).toEqual([true, false, false, true]);
  });
});

describe('what a plan falls back to', () => {
  it('the drop: 180 mm; more on a wide frame, a ninth of it and 30 mm; a third of the height at most; whole centimetres', () => {
    expect([usualDrop_mm(800, 900, 'metric'), usualDrop_mm(800, 1350, 'metric'), usualDrop_mm(800, 1359, 'metric'), usualDrop_mm(1200, 1800, 'metric'), usualDrop_mm(400, 900, 'metric'), usualDrop_mm(20, 900, 'metric')]).toEqual([180, 180, 190, 230, 130, 10]);
    expect(usualDrop_mm(40 * 25.4, 36 * 25.4, 'inch') / 25.4).toBeCloseTo(7, 9);
    expect(usualDrop_mm(40 * 25.4, 63 * 25.4, 'inch') / 25.4).toBeCloseTo(8.5, 9);
  });
  it('the slack: a ninth of the width up to 5 mm steps, the hook 30 mm below the top', () => {
    expect([usualSlack_mm(180, 900, 'metric'), usualSlack_mm(180, 901, 'metric'), usualSlack_mm(180, 540, 'metric'), usualSlack_mm(100, 900, 'metric'), usualSlack_mm(30, 900, 'metric'), usualSlack_mm(104, 900, 'metric')]).toEqual([100, 105, 60, 70, 5, 70]);
    expect(usualSlack_mm(7 * 25.4, 36 * 25.4, 'inch') / 25.4).toBeCloseTo(4, 9);
    // A ninth that is a whole step stays it, whatever rounding makes of the ninth.
    for (let n = 1; n <= 60; n++) {
      expect(usualSlack_mm(1000, 45 * n, 'metric')).toBe(5 * n);
      expect(usualSlack_mm(1000, 2.25 * 25.4 * n, 'inch') / 25.4).toBeCloseTo(n / 4, 9);
    }
    expect(usualSlack_mm(7 * 25.4, 60 * 25.4, 'inch') / 25.4).toBeCloseTo(5.75, 9);
  });
  it('the leg: a quarter of the shorter side in whole centimetres or half inches, 400 mm or 16 in at most', () => {
    expect([800, 839, 840, 1600, 3000, 30].map((side) => usualLeg_mm(side, 'metric'))).toEqual([200, 200, 210, 400, 400, 10]);
    expect([30, 33, 90].map((inches) => usualLeg_mm(inches * 25.4, 'inch') / 25.4)).toEqual([expect.closeTo(7.5, 9), expect.closeTo(8, 9), expect.closeTo(16, 9)]);
  });
});

describe('screws through plies', () => {
  const screw = (key: string, length_mm: number, shank_mm: number) => ({ key, length_mm, shank_mm }) as Screw;
  it('the usual one where it holds a third of the second ply and stays 3 mm inside; else the thinnest, then longest', () => {
    const usual = screw('screw-6x32', 31.75, 3.5);
    expect(fittingScrew([screw('a', 30, 3), usual], 19)).toBe('screw-6x32');
    expect(fittingScrew([screw('a', 30, 3), usual], 17.3)).toBe('a');
    expect(fittingScrew([screw('b', 32, 3.5), screw('a', 34, 3.5), screw('c', 30, 4), screw('d', 34, 3.5)], 19)).toBe('a');
    expect(fittingScrew([screw('b', 34, 3.5), screw('a', 30, 3)], 19)).toBe('a');
    // 24 mm plies: from 32 to 45 mm.
    expect([31.9, 32, 45, 45.1].map((length) => fittingScrew([screw('x', length, 4)], 24))).toEqual([null, 'x', 'x', null]);
  });
  it('passes whole plies and holds in the one that has its tip', () => {
    expect(plyScrewFit(32, 19, 2)).toEqual({ passes: 1, penetration_mm: 13, exit_mm: 6 });
    expect(plyScrewFit(50, 19, 4)).toEqual({ passes: 2, penetration_mm: 12, exit_mm: 26 });
    expect(plyScrewFit(38, 19, 4)).toEqual({ passes: 1, penetration_mm: 19, exit_mm: 38 });
    expect(plyScrewFit(19, 19, 2)).toEqual({ passes: 0, penetration_mm: 0, exit_mm: 19 });
    expect(plyScrewFit(70, 19, 2)).toEqual({ passes: 1, penetration_mm: 19, exit_mm: -32 });
  });
  it('hold where a tip as long as the shank is thick is all in the next ply', () => {
    const stack = { ply_mm: 19, face_mm: 38, plies: 2, specific_gravity: 0.42 };
    expect([22.4, 22.5, 22.6].map((length_mm) => plyScrewHolds({ length_mm, shank_mm: 3.5 }, stack))).toEqual([false, true, true]);
    expect(sameStack(stack, { ...stack })).toBe(true);
    for (const other of [{ ply_mm: 20 }, { face_mm: 37 }, { plies: 3 }, { specific_gravity: 0.5 }]) expect(sameStack(stack, { ...stack, ...other })).toBe(false);
    expect([byThickness(stack, { ...stack, plies: 3 }) < 0, byThickness(stack, { ...stack, ply_mm: 12 }) > 0]).toEqual([true, true]);
  });
});

describe('least distances in diameters (NDS commentary, EN 1995-1-1 8.3.1.2, from memory)', () => {
  it('bored and not, pulled and pressed', () => {
    expect(ndsDistances(4, true)).toEqual({ edge_mm: 10, end_mm: 40, along_grain_mm: 40, across_grain_mm: 20, staggered_rows_mm: 10 });
    expect(ndsDistances(4, false)).toEqual({ edge_mm: 10, end_mm: 60, along_grain_mm: 60, across_grain_mm: 40, staggered_rows_mm: 10 });
    expect([ndsDistances(4, true, 'compression').end_mm, ndsDistances(4, false, 'compression').end_mm]).toEqual([20, 40]);
  });
  it('thinner than 7 d, or (13 d − 30) ρ/400, is drilled first', () => {
    expect([thinnestUnbored_mm(2, 400), thinnestUnbored_mm(6, 400), thinnestUnbored_mm(6, 500), thinnestUnbored_mm(5, 400)]).toEqual([14, 48, 60, 35]);
  });
});
