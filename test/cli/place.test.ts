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

  it('is honoured by cut --pile once it is written into the plan: every piece from its board and place', () => {
    const here = folder();
    here.write('plan.yaml', plan);
    here.write('pile.yaml', pile);
    const placed = JSON.parse(here.run('place', 'plan.yaml', '--pile', 'pile.yaml', '--format', 'json').out) as PlaceJson;
    expect(here.run('place', 'plan.yaml', '--pile', 'pile.yaml', '--write', '--out', 'bench').code).toBe(0);
    const cut = JSON.parse(here.run('cut', 'plan.yaml', '--pile', 'pile.yaml', '--format', 'json').out) as { boards: number; cut: readonly { mark: string; pieces: readonly { part: string; from_mm: number }[] }[] };
    expect(cut.boards).toBe(0);
    // A board with a knot is named by where its sound stretch begins.
    const beginning = (mark: string): number => Number(/ from (\d+) mm/u.exec(mark)?.[1] ?? 0);
    const lies = cut.cut.flatMap(({ mark, pieces }) => pieces.map(({ part, from_mm }) => `${part}: ${mark.split(' ')[0]} from ${Math.round(from_mm + beginning(mark))}`));
    expect(lies.sort()).toEqual(placed.frames[0]!.places.map(({ for: bar, board, from_mm }) => `${bar}: ${board} from ${Math.round(from_mm)}`).sort());
    // The audit is of the same boards, with and without the pile.
    expect(here.run('audit', 'plan.yaml', '--pile', 'pile.yaml', '--out', 'report').code).not.toBe(1);
  });

  it('a piece that is cut already takes the place it fits, its long side outwards, and the page says not to saw it', () => {
    const here = folder();
    here.write('plan.yaml', plan);
    here.write('pile.yaml', `${pile}  - { mark: K, stock: square-38x38, length: 650 mm, cut: mitre, twist: 0.05 deg/m }\n  - { mark: M, stock: square-38x38, length: 640 mm, cut: mitre, twist: 0 deg/m }\n`.replace(/^ {2}- \{ mark: D.*\n/mu, ''));
    const answer = JSON.parse(here.run('place', 'plan.yaml', '--pile', 'pile.yaml', '--format', 'json').out) as PlaceJson;
    const own = answer.frames[0]!.places.filter(({ board }) => board === 'K' || board === 'M');
    expect(own).toEqual([expect.objectContaining({ board: 'K', from_mm: 0, length_mm: 650 })]);
    // Long side on the marked edge and outwards: of the left bar, face to you and marked end down, or both turned; of the right bar the others.
    expect(own[0]!.face === 'marked').toBe(own[0]!.end === (own[0]!.for === 'left' ? 'marked-first' : 'marked-last'));
    here.run('place', 'plan.yaml', '--pile', 'pile.yaml', '--out', 'bench');
    const page = readFileSync(join(here.path, 'bench/place.md'), 'utf8');
    expect(page).toContain('is cut already: as it is it becomes');
    expect(page).toContain('It is cut already, and no piece has its length and ends.');
  });

  it('the page says which side of every board gets the chalk, as its readings stand in the pile', () => {
    const here = folder();
    here.write('plan.yaml', plan);
    here.write('pile.yaml', pile.replace('twist: 1.8 deg/m, bow: 5 mm', 'twist: 1.8 deg/m, bow: 5 mm, hollow: other-face, crook: 2 mm'));
    here.run('place', 'plan.yaml', '--pile', 'pile.yaml', '--out', 'bench');
    const page = readFileSync(join(here.path, 'bench/place.md'), 'utf8');
    const { frames } = JSON.parse(here.run('place', 'plan.yaml', '--pile', 'pile.yaml', '--format', 'json').out) as PlaceJson;
    const used = new Set(frames[0]!.places.map(({ board }) => board));
    const chalk = {
      A: '**A**: letter on the round side, across from the hollow of 5 mm; marked edge = its hollow edge, the neighbouring side with the hollow of 2 mm. With the letter towards you and that edge on top, the stroke is at the left end.',
      C: '**C**: letter on any face, stroke at the end that its bad place was measured from; marked edge = the one on top when the letter is towards you and the stroke on your left. The bad place at 310 mm to 340 mm from the stroke stays out of every piece.',
    };
    expect(used.has('A') && used.has('C')).toBe(true);
    for (const line of Object.values(chalk)) expect(page).toContain(line);
    // A piece is told by its bar and its ringed letter, which may be that of a board as well.
    expect(page).toMatch(/(top|bottom) bar \([TB]\) from \d/u);
  });

  it('a class uses the boards in hand once, first and at no cost', () => {
    const here = folder();
    here.write('class/one.yaml', plan);
    here.write('class/two.yaml', plan.replace('Rack panel', 'Second panel'));
    here.write('pile.yaml', 'pile: 1\nboards:\n  - { mark: A, stock: square-38x38, length: 2400 mm }\n  - { mark: K, stock: square-38x38, length: 650 mm, cut: mitre }\n');
    const pooled = (...flags: readonly string[]) => (JSON.parse(here.run('audit', 'class', '--format', 'json', ...flags).out) as { roll_up: { pooled: { boards_cost: number; cut: readonly { mark: string | null; pieces: readonly { tag: string; cut_mm: number }[] }[] } } }).roll_up.pooled;
    const [without, withPile] = [pooled(), pooled('--pile', 'pile.yaml')];
    expect(withPile.boards_cost).toBeLessThan(without.boards_cost);
    const marked = withPile.cut.filter(({ mark }) => mark !== null);
    expect(marked.map(({ mark }) => mark).sort()).toEqual(['A', 'K']);
    expect(marked.find(({ mark }) => mark === 'K')!.pieces.map(({ cut_mm }) => cut_mm)).toEqual([650]);
    expect(withPile.cut.flatMap(({ pieces }) => pieces.map(({ tag }) => tag)).sort()).toEqual(without.cut.flatMap(({ pieces }) => pieces.map(({ tag }) => tag)).sort());
  });

  it('a board that a plan names and the pile lacks is told with its place by cut and audit, as is a place that is no sound wood', () => {
    const here = folder();
    here.write('plan.yaml', plan);
    here.write('pile.yaml', pile);
    expect(here.run('place', 'plan.yaml', '--pile', 'pile.yaml', '--write').code).toBe(0);
    expect(here.run('cut', 'plan.yaml', '--pile', 'pile.yaml', '--even-so', '--format', 'json').err).not.toContain('board-not-in-pile');
    here.write('pile.yaml', pile.replace('mark: A,', 'mark: Q,'));
    const line = readFileSync(join(here.path, 'plan.yaml'), 'utf8').split('\n').findIndex((text) => text.includes('board: A')) + 1;
    expect(line).toBeGreaterThan(0);
    for (const args of [['cut', 'plan.yaml', '--pile', 'pile.yaml', '--even-so', '--format', 'json'], ['audit', 'plan.yaml', '--pile', 'pile.yaml', '--format', 'json']]) {
      const { err } = here.run(...args);
      expect(err).toContain(`plan.yaml:${line}:`);
      expect(err).toContain('found board `A`, which is not in “Rack”');
      expect(err).not.toMatch(looksLikeABug);
    }
    here.write('pile.yaml', pile);
    here.write('plan.yaml', `${plan}boards:\n  - { for: top, board: C, from: 320 mm, twist: -1.7 deg/m }\n`);
    expect(here.run('cut', 'plan.yaml', '--pile', 'pile.yaml', '--even-so', '--format', 'json').err).toContain('a piece that begins at 320 mm on board `C`');
  });
});
