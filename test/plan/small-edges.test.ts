import { describe, expect, test } from 'vitest';
import { stringify } from 'yaml';
import { pliesOf } from '../../src/plan/plies-of.js';
import { plyScrewFor, plyStack } from '../../src/plan/ply-screw.js';
import { readPlanWith } from '../../src/plan/read-plan.js';
import { shippedShelf } from './shelf-for-tests.js';

const shelf = shippedShelf();
const base = { plan: 1, name: 'Edges', face: { width: '1200 mm', height: '800 mm' }, bars: { stock: 'square-38x38', lay: 'flat' } };
const read = (more: object) => readPlanWith(stringify({ ...base, ...more }), 'plan.yaml', shelf);
const told = (more: object) => { const one = read(more); return one.ok ? one.warnings : one.problems; };
const codes = (more: object): readonly string[] => told(more).map(({ code }) => code);

describe('texts of a plan', () => {
  test.each([['name', 200], ['student', 200], ['maker', 200]])('%s: %i letters, and not one more', (key, most) => {
    expect(codes({ [key]: 'a'.repeat(most) })).toEqual([]);
    expect(codes({ [key]: 'a'.repeat(most + 1) })).toHaveLength(1);
  });
});

describe('where a crossbar may stand', () => {
  const at = (place: number | string, runs = 'upright') => told({ crossbars: [{ runs, at: place, stock: 'strip-19x38', lay: 'flat', setback: '0 mm' }] }).filter(({ code }) => code !== 'crossbar-stands-out');
  test('between the ends of the face, never at them', () => {
    for (const edge of [0, 1, '0 mm', '1200 mm', -0.1, 1.1]) expect(at(edge), String(edge)).toHaveLength(1);
    expect(at(0.5)).toEqual([]);
  });
  test('the second of two is named by its number', () => {
    const both = told({ crossbars: [{ runs: 'upright', at: 0.5, stock: 'strip-19x38', lay: 'flat' }, { runs: 'upright', at: '610 mm', stock: 'strip-19x38', lay: 'flat' }] }).find(({ code }) => code === 'crossbars-overlap');
    expect(both).toMatchObject({ path: 'crossbars[1].at' });
    expect(both!.found).toContain('crossbar-1 and crossbar-2');
    expect(`${both!.found} ${both!.allowed}`).toMatch(/10 mm.*38 mm/u);
  });
});

describe('pulls', () => {
  const pull = (one: object) => told({ cloth: { pull: one } }).map(({ code, path }) => `${code} ${path}`);
  test('a peak as large as the working pull will do, each way', () => {
    expect(pull({ working: { x: '200 N/m', y: '300 N/m' }, peak: { x: '200 N/m', y: '300 N/m' } })).toEqual([]);
    expect(pull({ working: { x: '200 N/m', y: '300 N/m' }, peak: { x: '199 N/m', y: '300 N/m' } })).toHaveLength(1);
    expect(pull({ working: { x: '200 N/m', y: '300 N/m' }, peak: { x: '200 N/m', y: '299 N/m' } })).toHaveLength(1);
  });
  test('one way alone: the missing one is asked for', () => {
    const missing = (one: object) => told({ cloth: { pull: one } }).map(({ path, found, allowed, hint }) => `${path} ${found} ${allowed} ${hint}`).join();
    expect([missing({ x: '200 N/m' }), missing({ y: '200 N/m' })]).toEqual([expect.stringContaining('a pull with only `x`'), expect.stringContaining('a pull with only `y`')]);
    expect(missing({ x: '200 N/m' })).toMatch(/\by\b/u);
    expect(missing({ y: '200 N/m' })).toMatch(/\bx\b/u);
    expect(missing({ x: '200 N/m' })).not.toBe(missing({ y: '200 N/m' }).replaceAll('y', 'x'));
    const given = read({ cloth: { pull: { x: '250 N/m', y: '120 N/m' } } });
    expect(given.ok && [given.value.cloth.working, given.value.cloth.peak]).toEqual([{ x_N_per_m: 250, y_N_per_m: 120 }, { x_N_per_m: 500, y_N_per_m: 240 }]);
  });
});

describe('boards that were read', () => {
  const board = (one: object, bars: object = {}) => { const got = read({ bars: { ...base.bars, ...bars }, boards: [{ for: 'top', ...one }] }); return got.ok ? { ply: got.value.boards[0]!.ply, assumed: got.value.assumed.filter(({ path }) => path.startsWith('boards')) } : got.problems.map(({ code }) => code); };
  test('the ply is taken to be the first, and said so only where there are several', () => {
    expect(board({ twist: '0.4 deg/m' })).toEqual({ ply: 1, assumed: [] });
    expect(board({ twist: '0.4 deg/m' }, { plies: 2, stack: 'front-to-back' })).toEqual({ ply: 1, assumed: [{ path: 'boards[0].ply', value: 'ply 1' }] });
    expect(board({ twist: '0.4 deg/m', ply: 2 }, { plies: 2, stack: 'front-to-back' })).toEqual({ ply: 2, assumed: [] });
  });
});

describe('plies', () => {
  const planOf = (more: object) => { const one = read(more); if (!one.ok) throw new Error(JSON.stringify(one.problems)); return one.value; };
  test('of a bar, of each crossbar by its number, of none that is not there', () => {
    const plan = planOf({ bars: { stock: 'square-38x38', lay: 'flat', plies: 2, stack: 'front-to-back' }, crossbars: [{ runs: 'upright', at: 0.3, stock: 'strip-19x38', plies: 3 }, { runs: 'level', at: 0.6, stock: 'strip-19x38' }] });
    expect(['top', 'right', 'crossbar-1', 'crossbar-2', 'crossbar-3', 'crossbar-0'].map((member) => pliesOf(plan, member))).toEqual([2, 2, 3, 1, null, null]);
  });
  test('a screw too long for two plies holds three; one too thick for the edge holds none', () => {
    const strips = shelf.lumber['strip-19x38']!;
    const screw = Object.values(shelf.screws)[0]!;
    const found = (plies: number, length_mm: number, shank_mm = 3.5) => {
      const plan = planOf({ bars: { stock: 'strip-19x38', lay: 'edge', plies, bond: 'glue+screws' } });
      return plyScrewFor(plan, { ...shelf, screws: { x: { ...screw, key: 'x', length_mm, shank_mm } } }, plyStack(strips, { lay: 'edge', plies }, 'side-by-side'))?.key ?? null;
    };
    // Two strips are 38 mm: 31.75 mm stays 6 mm inside, 45 mm comes out; in three it stays 12 mm inside.
    expect([found(2, 31.75), found(2, 45), found(3, 45), found(3, 60)]).toEqual(['x', null, 'x', null]);
  });
  test('a screw that the plan names is taken, whether or not it holds', () => {
    const plan = planOf({ bars: { stock: 'strip-19x38', lay: 'edge', plies: 2, bond: 'glue+screws' }, 'ply-screws': { use: 'screw-8x64', every: '200 mm' } });
    expect(plyScrewFor(plan, shelf, plyStack(shelf.lumber['strip-19x38']!, { lay: 'edge', plies: 2 }, 'side-by-side'))?.key).toBe('screw-8x64');
  });
  test('how a stack meets its screws: by its thickness side by side, by its depth front to back', () => {
    const strips = shelf.lumber['strip-19x38']!;
    const stack = (lay: 'flat' | 'edge', way: 'side-by-side' | 'front-to-back') => { const { ply_mm, face_mm, plies } = plyStack(strips, { lay, plies: 2 }, way); return [ply_mm, face_mm, plies]; };
    expect([stack('edge', 'side-by-side'), stack('flat', 'side-by-side'), stack('flat', 'front-to-back'), stack('edge', 'front-to-back')]).toEqual([[19, 38, 2], [38, 19, 2], [19, 38, 2], [38, 19, 2]]);
  });
});

describe('nails that the plan leaves open', () => {
  const nails = (corners: object) => { const one = read({ corners: { cut: 'mitre', ...corners } }); return one.ok ? [one.value.corners.nails, one.value.assumed.find(({ path }) => path.startsWith('corners.nails'))] : one.problems.map(({ code }) => code); };
  test('one in each corner, or so many as the plan says', () => {
    expect(nails({})).toEqual([{ use: 'brad-18ga-25', each: 1 }, { path: 'corners.nails', value: 'brad-18ga-25, one in each corner' }]);
    expect(nails({ nails: { each: 2 } })).toEqual([{ use: 'brad-18ga-25', each: 2 }, { path: 'corners.nails.use', value: 'brad-18ga-25' }]);
    expect(nails({ nails: { use: 'brad-18ga-25', each: 3 } })).toEqual([{ use: 'brad-18ga-25', each: 3 }, undefined]);
    expect(nails({ nails: 'none' })).toEqual([null, undefined]);
    expect(nails({ cut: 'keyed' })).toEqual([null, { path: 'corners.nails', value: 'none: a keyed corner stays dry' }]);
  });
  test('the shorter side tells how much wood is left beyond the tip', () => {
    const [nail] = Object.values(shelf.nails);
    const only = { ...shelf, nails: { long: { ...nail!, key: 'long', length_mm: 100, diameter_mm: 1.2 } } };
    const bars = { stock: 'strip-19x38', lay: 'flat' };
    // Butted, it goes 100 − 38 = 62 mm into the other bar, of which a side of 140 mm leaves 102, one of 100 just 62.
    const taken = (width: string, height: string) => {
      const words = { ...base, bars, face: { width, height }, corners: { cut: 'butt' } };
      const one = readPlanWith(stringify(words), 'plan.yaml', only);
      return one.ok ? (one.value.corners.nails?.use ?? null) : one.problems.map(({ code }) => code);
    };
    expect([taken('500 mm', '140 mm'), taken('140 mm', '500 mm')]).toEqual(['long', 'long']);
    expect([taken('500 mm', '100 mm'), taken('100 mm', '500 mm')]).toEqual([null, null]);
  });
});
