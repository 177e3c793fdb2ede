import { describe, expect, test } from 'vitest';
import { stringify } from 'yaml';
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
