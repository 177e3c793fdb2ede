import { describe, expect, it } from 'vitest';
import { cutBoardsExactly, fullLoads, solveByLoads, type IntegerProgram, type Patience } from '../../src/cutting/boards/pack-fallback.js';
import type { Cutting } from '../../src/cutting/boards/problem.js';
import { makeReady } from '../../src/cutting/boards/ready-problem.js';
import { poolOnly, poolPieces } from '../../src/cutting/pieces/pool.js';
import { piecesOf } from '../../src/cutting/pieces/pieces.js';
import { fresh, fault } from './problems.js';
import { demoShelf, studioPlan } from './studio.js';

/** Two boards of 100 for 7 each, there are two; endless ones of 60 for 5. Three pieces of 50, two of 30. */
const problem = fresh({ kerf: 0, stock: [{ length: 100, price: 7, available: 2 }, { length: 60, price: 5 }], items: [{ length: 50, count: 3 }, { length: 30, count: 2 }] });
const bench = makeReady(problem);
const loads = fullLoads(bench, 100)!;
const known: Cutting = { ok: true, boards: [], cost: 25, waste: 0, proven: false, tiesProven: false, bound: 12, gap: 0.5 };

/** A solver that answers so many of each load, by its board and counts, and keeps what it was asked. */
function answering(status: string, uses: Readonly<Record<string, number>>) {
  const asked: { text: string; options: object }[] = [];
  const solver: IntegerProgram = {
    solve(text, options) {
      asked.push({ text, options });
      return { Status: status, Columns: Object.fromEntries(loads.map(({ bin, counts }, j) => [`x${j}`, { Primal: (uses[`${bin}: ${counts}`] ?? 0) + 1e-7 }])) };
    },
  };
  const solve = (best: Cutting | null, patience: Patience = { nodes: 9 }) => solveByLoads(solver, problem, bench, loads, best, patience);
  return { asked, solve };
}

describe('what an integer program is asked and what becomes of its answer', () => {
  it('every full load of either board is a column', () => {
    expect(loads.map(({ bin, counts }) => `${bin}: ${counts}`).sort()).toEqual(['0: 0,2', '0: 1,1', '0: 2,0', '1: 0,2', '1: 1,0']);
    expect([fullLoads(bench, 5), fullLoads(bench, 4)]).toEqual([loads, null]);
  });

  it('pieces of one group pay their setup once: 50 and 40 with 10 fill a board of 100', () => {
    const nested = makeReady(fresh({ kerf: 0, setups: [10], stock: [{ length: 100, price: 7 }], items: [{ length: 50, count: 1, group: 0 }, { length: 40, count: 2, group: 0 }] }));
    expect(fullLoads(nested, 9)!.map(({ counts }) => `${counts}`).sort()).toEqual(['0,2', '1,1']);
  });

  it('least cost, every piece cut, boards that are limited no more than there are, cheaper than what is known', () => {
    const { asked, solve } = answering('Optimal', {});
    solve(known);
    const { text } = asked[0]!;
    const x = (load: string): string => `x${loads.findIndex(({ bin, counts }) => `${bin}: ${counts}` === load)}`;
    const terms = (line: string): readonly string[] => text.split('\n').find((one) => one.trim().startsWith(`${line}:`))!.replace(/^[^:]*: /u, '').replace(/ [<>]=.*$/u, '').split(' + ').sort();
    expect(terms('cost')).toEqual([`7 ${x('0: 0,2')}`, `7 ${x('0: 1,1')}`, `7 ${x('0: 2,0')}`, `5 ${x('1: 0,2')}`, `5 ${x('1: 1,0')}`].sort());
    expect(terms('piece0')).toEqual([`1 ${x('0: 1,1')}`, `2 ${x('0: 2,0')}`, `1 ${x('1: 1,0')}`].sort());
    expect(text).toMatch(/ piece0: .* >= 3\n piece1: .* >= 2\n board0: .* <= 2\n cheaper: .* <= 24\nGeneral\n/u);
    expect(terms('board0')).toHaveLength(3);
    expect(text).not.toContain('board1:');
    const bare = answering('Optimal', {});
    bare.solve(null);
    expect(bare.asked[0]!.text).not.toContain('cheaper');
  });

  it('its patience is counted in nodes, or in seconds', () => {
    const { asked, solve } = answering('Optimal', {});
    solve(known, { nodes: 70 });
    solve(known, { ms: 2500 });
    expect(asked.map(({ options }) => options)).toEqual([{ mip_rel_gap: 0, mip_abs_gap: 0.5, output_flag: false, mip_max_nodes: 70 }, { mip_rel_gap: 0, mip_abs_gap: 0.5, output_flag: false, time_limit: 2.5 }]);
  });

  const best = { '0: 2,0': 1, '0: 1,1': 1, '1: 0,2': 1 };
  it('an answer is recounted: cost, waste, each piece once though a load holds one too many', () => {
    const found = answering('Optimal', best).solve(known)!;
    expect(found).toMatchObject({ ok: true, cost: 19, waste: 260 - 210, proven: true, tiesProven: false, bound: 19, gap: 0 });
    expect(fault(problem, found)).toBeNull();
    expect(found.boards.map(({ stock }) => stock).sort()).toEqual([0, 0, 1]);
    // A board of which no piece is left over is not taken.
    expect(answering('Optimal', { ...best, '1: 1,0': 1 }).solve(known)!.cost).toBe(19);
  });

  it('one that was stopped keeps the bound that was known, and says how far it may be off', () => {
    expect(answering('Time limit reached', best).solve(known)).toMatchObject({ cost: 19, proven: false, bound: 12, gap: 7 / 19 });
    expect(answering('Time limit reached', best).solve(null)).toMatchObject({ cost: 19, proven: false, bound: 0, gap: 1 });
  });

  it('no answer where a piece is missing, a board is not there, or nothing is won', () => {
    expect(answering('Optimal', { '0: 2,0': 1, '0: 1,1': 1 }).solve(known)).toBeNull();
    expect(answering('Optimal', { '0: 2,0': 2, '0: 0,2': 1 }).solve(known)).toBeNull();
    expect(answering('Optimal', best).solve({ ...known, cost: 19 })).toBeNull();
    expect(answering('Optimal', best).solve({ ...known, cost: 20 })).not.toBeNull();
  });

  it('where nothing is cheaper, what is known is proven; where nothing is known, there is no way', () => {
    expect(answering('Infeasible', {}).solve(known)).toEqual({ ...known, proven: true, bound: 25, gap: 0 });
    expect(answering('Infeasible', {}).solve(null)).toBeNull();
  });
});

describe('where the search runs out', () => {
  const rushed = (timeLimit_ms: number) => {
    let looks = 0;
    return { ...problem, timeLimit_ms, now: () => looks++ };
  };
  it('the integer program is fetched and asked; without one, or where the search is done by itself, the search’s answer stands', async () => {
    let fetched = 0;
    const none: IntegerProgram = { solve: () => ({ Status: 'Infeasible', Columns: {} }) };
    const cut = (timeLimit_ms: number, solver: IntegerProgram | null) => cutBoardsExactly(rushed(timeLimit_ms), { nodes: 9 }, async () => { fetched++; return solver; });
    const left = await cut(1, null);
    expect([left.ok && left.proven, fetched]).toEqual([false, 1]);
    expect(await cut(1, none)).toEqual({ ...left, proven: true, bound: left.ok && left.cost, gap: 0 });
    expect(fetched).toBe(2);
    expect([await cut(1e6, none), fetched]).toEqual([expect.objectContaining({ ok: true, cost: 17, proven: true }), 2]);
  });
});

describe('pieces of a pool', () => {
  const plan = studioPlan({ crossbars: [{ runs: 'upright', at: 0.3, stock: 'board-19x64', lay: 'edge' }, { runs: 'level', at: 0.6, stock: 'strip-19x38', lay: 'flat' }, { runs: 'upright', at: 0.7, stock: 'strip-19x38', lay: 'flat', plies: 2 }] });

  it('with some of its pieces only, stocks without any drop out', () => {
    const pool = poolPieces([plan], demoShelf);
    expect(pool.stocks).toEqual(['strip-19x38', 'board-19x64']);
    const some = poolOnly(pool, ({ piece }) => piece.part === 'bar');
    expect([some.stocks, Object.keys(some.pieces), some.pieces['strip-19x38']!.map(({ tag }) => tag)]).toEqual([['strip-19x38'], ['strip-19x38'], ['T', 'B', 'L', 'R']]);
    expect(poolOnly(pool, () => false)).toMatchObject({ stocks: [], pieces: {} });
    expect(poolOnly(pool, () => true)).toEqual(pool);
  });

  it('crossbars are named and numbered as they are listed; plies with them; each is as long as the opening asks, to the hair', () => {
    const list = piecesOf({ ...plan, face: { width_mm: 900.2, height_mm: 620.3 } }, demoShelf);
    const crossbars = list.pieces.filter(({ part }) => part === 'crossbar').map(({ label, about, ply, exact_mm, cut_mm, stock }) => [label, about, ply, exact_mm, cut_mm, stock]);
    expect(crossbars).toEqual([
      ['C1', 'crossbar-1', 1, expect.closeTo(620.3 - 76, 9), 544.5, 'board-19x64'], ['C2', 'crossbar-2', 1, expect.closeTo(900.2 - 76, 9), 824.5, 'strip-19x38'],
      ['C31', 'crossbar-3', 1, expect.closeTo(620.3 - 76, 9), 544.5 + 20, 'strip-19x38'], ['C32', 'crossbar-3', 2, expect.closeTo(620.3 - 76, 9), 564.5, 'strip-19x38'],
    ].map((one) => (one[0] === 'C31' || one[0] === 'C32' ? [...one.slice(0, 4), expect.any(Number), one[5]] : one)));
  });

  it('tongues of a keyed frame reach to the middle of either bar, and laps lie from their end', () => {
    const keyed = piecesOf(studioPlan({ corners: { cut: 'keyed' }, bars: { stock: 'square-38x38', lay: 'flat' }, crossbars: [{ runs: 'upright', at: 0.3, stock: 'strip-19x38', lay: 'edge' }, { runs: 'level', at: 0.6, stock: 'strip-19x38', lay: 'flat' }] }), demoShelf);
    const of = (label: string) => keyed.pieces.find((one) => one.label === label)!;
    expect([of('C1').exact_mm, of('C1').cut_mm, of('C2').exact_mm]).toEqual([620 - 76 + 38, 582, 900 - 76 + 38]);
    // Along the upright piece, from the tip of its tongue, 19 mm into the bar: 0.6 of the height less 38, plus 19, less half of 38 across.
    expect(of('C1').laps).toEqual([{ from_mm: 0.6 * 620 - 38 + 19 - 19, width_mm: 38, depth_mm: 19 }]);
    expect(of('C2').laps).toEqual([{ from_mm: expect.closeTo(Math.round(2 * (0.3 * 900 - 38 + 19 - 9.5)) / 2, 9), width_mm: 19, depth_mm: 9.5 }]);
    expect(of('C1').notes.at(-1)).toMatch(/19 mm long, for a slot in the bar; snug, not glued$/u);
  });

  it('bars as wide as the face, either way, leave no opening', () => {
    const faults = (width_mm: number, height_mm: number) => piecesOf({ ...studioPlan(), face: { width_mm, height_mm } }, demoShelf).faults;
    const told = ['The bars are as wide as the face: there is no opening left between them.'];
    expect([faults(76, 620), faults(900, 76), faults(76.5, 76.5), faults(900, 76.5)]).toEqual([told, told, [], []]);
  });
});
