import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { folder, looksLikeABug } from './command.js';

const plan = `plan: 1
name: Rack panel # kept
face: { width: 900 mm, height: 650 mm }
bars: { stock: square-38x38, lay: flat }
corners: { cut: mitre, glue: pva, brace: { kind: ply-gusset, leg: 120 mm } } # kept too
lumber: { chosen: picked, moisture: 9 % }
`;
const pile = `pile: 1
name: Rack
boards:
  - { mark: A, stock: square-38x38, length: 2400 mm, twist: 1.8 deg/m, bow: 5 mm }
  - { mark: B, stock: square-38x38, length: 1000 mm, twist: 1.3 deg/m }
  - { mark: C, stock: square-38x38, length: 1800 mm, twist: -1.7 deg/m, knots: [ 310..340 mm ] }
  - { mark: D, stock: square-38x38, length: 700 mm, twist: -1.4 deg/m }
`;

interface PlaceJson {
  readonly format: string;
  readonly frames: readonly { readonly plan: string; readonly places: readonly { readonly for: string; readonly ply: number; readonly board: string; readonly from_mm: number; readonly length_mm: number; readonly face: string; readonly end: string }[]; readonly lift_mm: { readonly mean: number; readonly sd: number; readonly chance: number; readonly limit: number }; readonly by_luck: { readonly mean_chance: number; readonly worst_mm: number } }[];
  readonly proven: boolean;
  readonly bound: number;
  readonly left: readonly unknown[];
  readonly buy: readonly { readonly stock: string; readonly count: number }[];
}

describe('place', () => {
  it('prints one document as agreed; pieces lie on their boards and clear of knots', () => {
    const here = folder();
    here.write('plan.yaml', plan);
    here.write('pile.yaml', pile);
    const { code, out, err } = here.run('place', 'plan.yaml', '--pile', 'pile.yaml', '--format', 'json');
    expect({ code, err }).toEqual({ code: 0, err: '' });
    const answer = JSON.parse(out) as PlaceJson;
    expect(answer).toMatchObject({ format: 'place/1', proven: true, buy: [] });
    const [frame] = answer.frames;
    expect(frame!.places.map(({ for: bar, ply }) => `${bar} ${ply}`)).toEqual(['top 1', 'bottom 1', 'left 1', 'right 1']);
    for (const { board, from_mm, length_mm, face, end } of frame!.places) {
      expect(['marked', 'other']).toContain(face);
      expect(['marked-first', 'marked-last']).toContain(end);
      expect(from_mm + length_mm).toBeLessThanOrEqual({ A: 2400, B: 1000, C: 1800, D: 700 }[board]!);
      if (board === 'C') expect(from_mm >= 340 || from_mm + length_mm <= 310).toBe(true);
    }
    expect(frame!.lift_mm.chance).toBeLessThan(0.01);
    expect(frame!.by_luck.mean_chance).toBeGreaterThan(0.3);
    expect(frame!.by_luck.worst_mm).toBeGreaterThan(5 * Math.abs(frame!.lift_mm.mean));
    expect(answer.bound).toBeLessThanOrEqual(frame!.lift_mm.chance + 1e-6);
    expect(here.files()).toEqual(['pile.yaml', 'plan.yaml']);
  });

  it('writes the page with its pictures, and the boards into the plan with its comments kept, so that the audit has the same chance', () => {
    const here = folder();
    here.write('plan.yaml', plan);
    here.write('pile.yaml', pile);
    const { code, out } = here.run('place', 'plan.yaml', '--pile', 'pile.yaml', '--write', '--out', 'bench');
    expect(code).toBe(0);
    expect(out).toContain('Boards written into plan.yaml');
    expect(here.files()).toEqual(['bench/place-boards.svg', 'bench/place.md', 'bench/place.svg', 'pile.yaml', 'plan.yaml']);
    const text = readFileSync(join(here.path, 'plan.yaml'), 'utf8');
    expect(text.match(/# kept/g)).toHaveLength(2);
    expect((parse(text) as { boards: readonly unknown[] }).boards).toHaveLength(4);
    const placed = JSON.parse(here.run('place', 'plan.yaml', '--pile', 'pile.yaml', '--format', 'json').out) as PlaceJson;
    const audited = JSON.parse(here.run('audit', 'plan.yaml', '--format', 'json').out) as { facts: readonly { path: string; value: number }[] };
    expect(audited.facts.find(({ path }) => path === 'warp.corner_lift_mean_mm')!.value).toBeCloseTo(placed.frames[0]!.lift_mm.mean, 3);
  });

  it('with too few boards fills what it can and buys the rest', () => {
    const here = folder();
    here.write('plan.yaml', plan);
    here.write('pile.yaml', 'pile: 1\nboards:\n  - { mark: A, stock: square-38x38, length: 1000 mm, twist: 0.2 deg/m }\n');
    const answer = JSON.parse(here.run('place', 'plan.yaml', '--pile', 'pile.yaml', '--format', 'json').out) as PlaceJson;
    expect(answer.frames[0]!.places).toHaveLength(1);
    expect(answer.buy.reduce((sum, { count }) => sum + count, 0)).toBeGreaterThan(0);
  });

  it('says what is wrong with plan and pile and writes nothing: exit 1', () => {
    const here = folder();
    here.write('plan.yaml', plan.replace('900 mm', '900'));
    here.write('pile.yaml', pile.replace('mark: B', 'mark: A'));
    const { code, out, err } = here.run('place', 'plan.yaml', '--pile', 'pile.yaml');
    expect({ code, out }).toEqual({ code: 1, out: '' });
    expect(err).toContain('plan.yaml');
    expect(err).toContain('pile.yaml');
    expect(err).not.toMatch(looksLikeABug);
    expect(here.run('place', 'plan.yaml').code).toBe(1);
    expect(here.files()).toEqual(['pile.yaml', 'plan.yaml']);
  });
});

describe('--pile for cut and audit', () => {
  it('uses the boards in hand first, at no cost, and buys only what they lack; still proven', () => {
    const here = folder();
    here.write('plan.yaml', plan);
    here.write('full.yaml', pile);
    here.write('some.yaml', 'pile: 1\nboards:\n  - { mark: A, stock: square-38x38, length: 905 mm }\n  - { mark: K, stock: square-38x38, length: 1800 mm, knots: [ 600..620 mm, 1200..1260 mm ] }\n');
    const cut = (...more: readonly string[]) => JSON.parse(here.run('cut', 'plan.yaml', '--format', 'json', ...more).out) as { boards_cost: number; boards: number; proven: boolean; cut: readonly { mark: string | null; pieces: readonly { tag: string }[] }[] };
    const [bought, all, some] = [cut(), cut('--pile', 'full.yaml'), cut('--pile', 'some.yaml')];
    expect(bought.cut.every(({ mark }) => mark === null)).toBe(true);
    expect(all).toMatchObject({ boards: 0, boards_cost: 0, proven: true });
    // A gives one long piece; no stretch of K between its knots is long enough for any.
    expect(some.cut.filter(({ mark }) => mark !== null).map(({ mark, pieces }) => [mark, pieces.length])).toEqual([['A', 1]]);
    expect(some.boards_cost).toBeLessThanOrEqual(bought.boards_cost);
    const boards = (...more: readonly string[]) => (JSON.parse(here.run('audit', 'plan.yaml', '--format', 'json', ...more).out) as { facts: readonly { path: string; value: number }[] }).facts.find(({ path }) => path === 'cutting.boards')!.value;
    expect(boards()).toBeGreaterThan(0);
    expect(boards('--pile', 'full.yaml')).toBe(0);
  });
});
