import { describe, expect, it } from 'vitest';
import { layOut } from '../../src/cutting/boards/layout.js';
import { stockProblem } from '../../src/cutting/boards/stock-problem.js';
import { cutPlan } from '../../src/cutting/cut-plan.js';
import { frameName, type PooledPiece } from '../../src/cutting/pieces/pool.js';
import { piecesAssemble } from '../../src/cutting/pieces/assemble.js';
import { piecesOf } from '../../src/cutting/pieces/pieces.js';
import type { Piece } from '../../src/cutting/pieces/piece.js';
import { fillableLengths, fillableWidths, leastLength_mm, usableOf, type Level, type Waiting } from '../../src/cutting/roll/bounds.js';
import { boards, demoShelf, shelfWith, studioPlan } from './studio.js';

const bare = { kerf_mm: 3, end_trim_mm: 0, knot_waste_share: { none: 0, few: 0, many: 0 } };
const piece = (tag: string, cut_mm: number, across_mm = 0): PooledPiece =>
  ({ tag, plan: 0, copy: 1, piece: { label: tag, part: 'bar', ends: across_mm > 0 ? 'mitre' : 'square', across_mm, cut_mm, short_mm: cut_mm - 2 * across_mm, later: null, laps: [] } }) as unknown as PooledPiece;

describe('pieces on one board', () => {
  it('square ones first, longest first, a saw cut apart; then mitres, narrow before wide, each turned into the one before', () => {
    const { placed, end_mm } = layOut([piece('W', 500, 64), piece('M', 400, 38), piece('N', 600, 38), piece('S', 200), piece('Q', 300), piece('P', 300)], 15, 3);
    const mitre = 3 * Math.SQRT2;
    const places: [string, number, number, string][] = [];
    let at = 15;
    for (const [tag, cut, gap, side] of [['P', 300, 0, 'both'], ['Q', 300, 3, 'both'], ['S', 200, 3, 'both'], ['N', 600, 3, 'upper'], ['M', 400, mitre - 38, 'lower'], ['W', 500, mitre, 'upper']] as const) {
      places.push([tag, at + gap, at + gap + cut, side]);
      at += gap + cut;
    }
    expect(placed.map(({ tag, from_mm, to_mm, long_side }) => [tag, from_mm, to_mm, long_side])).toEqual(places.map(([tag, from, to, side]) => [tag, expect.closeTo(from, 9), expect.closeTo(to, 9), side]));
    expect(end_mm).toBeCloseTo(at, 9);
    expect(layOut([piece('A', 100, 20), piece('B', 100, 20), piece('C', 100, 20)], 0, 3).placed.map(({ long_side }) => long_side)).toEqual(['upper', 'lower', 'upper']);
  });

  it('what the search is asked: tenths of thousandths of a millimetre, up for pieces, down for boards; the first triangle is the setup', () => {
    const asked = stockProblem([piece('A', 500).piece, piece('B', 400, 38).piece, piece('C', 300, 64).piece], [{ length_mm: 2400, price: 3.2, available: null }, { length_mm: 700, price: 0, available: 1 }, { length_mm: 100, price: 1, available: 0 }], { kerf_mm: 3, end_trim_mm: 15 }, 0.1);
    const longer = Math.ceil(30_000 * Math.SQRT2 - 1e-3) - 30_000;
    expect(asked.kerf).toBe(30_000);
    // Widest mitres first among the groups; with two groups the longer saw cut at the end is paid.
    expect(asked.setups).toEqual([640_000, 380_000]);
    expect(asked.items).toEqual([{ length: 5_000_000, count: 1 }, { length: 4_000_000 + longer - 380_000, count: 1, group: 1 }, { length: 3_000_000 + longer - 640_000, count: 1, group: 0 }]);
    expect(asked.sound_mm).toEqual([2370, 700, 70]);
    expect(asked.stock).toEqual([
      { length: 21_330_000, price: 32_000, available: null, alone: 23_700_000 },
      { length: 7_000_000, price: 0, available: 1, alone: 7_000_000 },
      { length: 630_000, price: 10_000, available: 0, alone: 700_000 },
    ]);
    const one = stockProblem([piece('B', 400, 38).piece], [{ length_mm: 400, price: 1, available: null }], { kerf_mm: 3, end_trim_mm: 0 }, 0);
    expect(one.setups).toEqual([380_000 - longer]);
    expect(one.too_long).toEqual([]);
  });

  it('by how much a piece is too long for the longest board that is there', () => {
    const long = (cut_mm: number, across = 0) => stockProblem([piece('A', cut_mm, across).piece], [{ length_mm: 1000, price: 1, available: 2 }, { length_mm: 1500, price: 1, available: 0 }, { length_mm: 960, price: 0, available: 1 }], { kerf_mm: 3, end_trim_mm: 15 }, 0.2).too_long;
    expect([long(970), long(970.5), long(1200, 38)]).toEqual([[], [{ index: 0, over_mm: 0.5 }], [{ index: 0, over_mm: 230 }]]);
  });
});

describe('a purchase, board by board', () => {
  const shelf = shelfWith('strip-19x38', boards([2400, 4], [1700, 3], [900, 0, 1]), { kerf_mm: 3, end_trim_mm: 15, knot_waste_share: { none: 0, few: 0.05, many: 0.2 } });
  const plan = studioPlan({ corners: { cut: 'butt' }, lumber: { knots: 'few' } });
  const cut = cutPlan([plan], shelf);
  const [stock] = cut.stocks;

  it('left and waste add up: what is bought less trims, cuts and pieces', () => {
    for (const board of stock!.boards) {
      const used = board.pieces.reduce((sum, one) => sum + one.piece.cut_mm, 0) + 3 * (board.pieces.length - 1);
      expect(board.left_mm).toBeCloseTo(board.length_mm - 2 * board.trim_mm - used, 6);
      expect(board.trim_mm).toBe(board.price === 0 ? 0 : 15);
    }
    const bought = stock!.boards.reduce((sum, { length_mm }) => sum + length_mm, 0);
    expect(stock!.waste_share).toBeCloseTo(1 - (2 * 824 + 2 * 620) / bought, 9);
    expect(cut.waste_share).toBeCloseTo(stock!.waste_share, 6);
    expect(cut.cost).toBe(stock!.boards.reduce((sum, { price }) => sum + price, 0));
    expect(cut.boards).toBe(stock!.boards.filter(({ on_hand }) => !on_hand).length);
    expect(stock!.boards.map(({ length_mm }) => length_mm)).toEqual([...stock!.boards].map(({ length_mm }) => length_mm).sort((p, q) => q - p));
    expect(stock!.kinds.reduce((sum, { count }) => sum + count, 0)).toBe(stock!.boards.length);
    expect([stock!.knot_share, stock!.gap, stock!.proven, stock!.bound]).toEqual([0.05, 0, true, stock!.cost]);
  });

  it('a mitred piece counts for waste by its middle length', () => {
    const mitred = cutPlan([studioPlan()], shelfWith('strip-19x38', boards([3200, 5]), bare));
    expect(mitred.waste_share).toBeCloseTo(1 - (2 * (900 - 38) + 2 * (620 - 38)) / 3200, 6);
  });

  it('tags tell plans and frames apart only where there are several', () => {
    const [one, twice] = [studioPlan(), studioPlan({ count: 2 })];
    expect([frameName([one], 0, 1), frameName([twice], 0, 2), frameName([one, twice], 0, 1), frameName([one, twice], 1, 2), frameName([one, twice], 1, 1, [7, 9])]).toEqual(['', '2', '1', '2.2', '9.1']);
  });

  it('a leg too long for any board: how much shorter, by √2', () => {
    const braced = studioPlan({ face: { width: '1700 mm', height: '1700 mm' }, bars: { stock: 'square-38x38', lay: 'flat' }, corners: { brace: { kind: 'timber', leg: '600 mm', stock: 'strip-19x38', lay: 'flat' } } });
    const short = cutPlan([braced], shelfWith('strip-19x38', boards([700, 3]), bare));
    const exact = Math.ceil(Math.SQRT2 * (600 - 38) + 38);
    expect(short.too_long[0]?.needs_mm).toBe(exact);
    const shorter = short.too_long[0]!.alternatives.find(({ kind }) => kind === 'shorter-leg') as { most_mm: number };
    expect(shorter.most_mm).toBeGreaterThan(0);
    const works = (leg: number): boolean => cutPlan([studioPlan({ face: { width: '1700 mm', height: '1700 mm' }, bars: { stock: 'square-38x38', lay: 'flat' }, corners: { brace: { kind: 'timber', leg: `${leg} mm`, stock: 'strip-19x38', lay: 'flat' } } })], shelfWith('strip-19x38', boards([700, 3]), bare)).cost !== null;
    expect([works(shorter.most_mm), works(shorter.most_mm + 2)]).toEqual([true, false]);
  });
});

describe('the pieces put together', () => {
  const list = piecesOf(studioPlan({ crossbars: [{ runs: 'upright', at: '0.4', stock: 'strip-19x38', lay: 'flat' }, { runs: 'level', at: '0.3', stock: 'board-19x64', lay: 'flat' }] }), demoShelf);
  const of = (label: string): Piece => list.pieces.find((one) => one.label === label)!;

  it('half-laps where crossbars cross: at the other’s place, as wide as it, half as deep as the piece', () => {
    expect(of('C1').laps).toEqual([{ from_mm: Math.round(0.3 * 620 - 38 - 32), width_mm: 64, depth_mm: 9.5 }]);
    expect(of('C2').laps).toEqual([{ from_mm: Math.round(0.4 * 900 - 38 - 19), width_mm: 38, depth_mm: 9.5 }]);
    expect([of('C1').cut_mm, of('C2').cut_mm, of('C1').runs, of('C2').stock]).toEqual([620 - 76, 900 - 76, 'upright', 'board-19x64']);
  });

  it('half-lapped corners: both ends, over the other bar, half the depth', () => {
    const lapped = piecesOf(studioPlan({ corners: { cut: 'half-lap' } }), demoShelf);
    const bar = (label: string): Piece => lapped.pieces.find((one) => one.label === label)!;
    expect(bar('T').laps).toEqual([{ from_mm: 0, width_mm: 38, depth_mm: 9.5 }, { from_mm: 862, width_mm: 38, depth_mm: 9.5 }]);
    expect(bar('L').laps[1]).toEqual({ from_mm: 582, width_mm: 38, depth_mm: 9.5 });
    expect([bar('T').notes, bar('L').notes]).toEqual([['half-laps: cut away the back half'], ['half-laps: cut away the front half']]);
  });

  it('the short side of a bar too short by a mark of the tape, and the thousandth that the tape lets pass, still closes; more does not', () => {
    const shorter = (by: number) => piecesAssemble({ ...list, pieces: list.pieces.map((one) => (one.label === 'T' ? { ...one, short_mm: one.short_mm - by } : one)) }).faults;
    expect(list.mark_mm).toBeGreaterThan(0);
    expect([shorter(list.mark_mm), shorter(1.0005 * list.mark_mm)]).toEqual([[], []]);
    expect(shorter(1.002 * list.mark_mm)).toEqual(['The inner plies are too short for the corners to close.']);
  });

  it('a crossbar off by less than a mark is planed, by more is a fault; short is a gap', () => {
    const changed = (label: string, by: number) => piecesAssemble({ ...list, pieces: list.pieces.map((one) => (one.label === label ? { ...one, cut_mm: one.cut_mm + by, short_mm: one.short_mm + by } : one)) });
    expect(piecesAssemble(list)).toMatchObject({ width_mm: 900, height_mm: 620, opening_mm: 0, tight_mm: 0, fits: true, faults: [] });
    expect(changed('C1', 0.4)).toMatchObject({ tight_mm: expect.closeTo(0.4, 9), fits: true });
    expect(changed('C1', list.mark_mm)).toMatchObject({ tight_mm: list.mark_mm, fits: false });
    expect(changed('C2', -0.4)).toMatchObject({ opening_mm: expect.closeTo(0.4, 9), fits: false });
    expect(changed('T', 0.4)).toMatchObject({ width_mm: expect.closeTo(900.4, 9), opening_mm: expect.closeTo(0.4, 9), fits: false });
    expect(changed('L', 2).height_mm).toBe(622);
  });
});

describe('bounds for cloths on a roll', () => {
  const lie = (across: number, along: number) => ({ across, along, turned: false });
  const waiting: Waiting = [[lie(500, 700), { across: 700, along: 500, turned: true }], [lie(400, 900)], [lie(300, 200)]];

  it('widths and lengths that some set fills exactly, each piece once, in any of its ways', () => {
    expect(fillableWidths(waiting, 1200)).toEqual([0, 300, 400, 500, 700, 800, 900, 1000, 1100, 1200]);
    expect(fillableWidths(waiting, 799)).toEqual([0, 300, 400, 500, 700]);
    expect(fillableLengths(waiting, 1500)).toEqual([0, 200, 500, 700, 900, 1100, 1400]);
    expect(fillableWidths(Array.from({ length: 14 }, (_, i) => [lie(2 ** i, 1)]), 1e9)).toBeNull();
    const twelve = fillableWidths(Array.from({ length: 12 }, (_, i) => [lie(2 ** i, 1)]), 1e9);
    expect(twelve).toHaveLength(4096);
  });

  it('of a free width, the largest sum it holds; all of it where sums are too many', () => {
    const sums = [0, 300, 500, 800];
    expect([-5, 0, 299, 300, 499.9, 500, 5000].map((free) => usableOf(sums, free))).toEqual([0, 0, 0, 300, 300, 500, 800]);
    expect([usableOf(null, 333), usableOf(null, -1)]).toEqual([333, 0]);
  });

  it('the length left is at least what area, a single piece, and pieces too wide to lie abreast ask', () => {
    const start: Level[] = [{ y: 0, used: 0 }];
    const least = (levels: readonly Level[], of: Waiting, roll = 1000, widths: readonly number[] | null = fillableWidths(of, roll)): number => leastLength_mm(levels, of, widths, roll);
    // Area: two of 500 × 600 side by side on 1000.
    expect(least(start, [[lie(500, 600)], [lie(500, 600)]])).toBe(600);
    // A width of which only 900 can be filled: 2 × 450 × 600 over 900.
    expect(least(start, [[lie(450, 600)], [lie(450, 600)]])).toBe(600);
    // One piece from the first level with room for it.
    expect(least([{ y: 0, used: 700 }, { y: 250, used: 200 }, { y: 400, used: 0 }], [[lie(800, 100)]])).toBe(350);
    expect(least([{ y: 0, used: 700 }, { y: 250, used: 200 }, { y: 400, used: 0 }], [[lie(801, 100)]])).toBe(500);
    // Three too wide to lie abreast come one behind the other; a fourth that fits beside does not count.
    expect(least(start, [[lie(600, 100)], [lie(550, 200)], [lie(510, 300)], [lie(100, 50)]])).toBe(600);
    expect(least([{ y: 0, used: 450 }, { y: 90, used: 0 }], [[lie(600, 100)], [lie(560, 100)]])).toBe(290);
    // Area that the levels before the open one take up first: 300 wide for 250 long, then all of it.
    expect(least([{ y: 0, used: 700 }, { y: 250, used: 0 }], [[lie(300, 200)], [lie(300, 200)], [lie(300, 200)], [lie(100, 200)]], 1000, null)).toBeCloseTo(250 + (200_000 - 75_000) / 1000, 9);
    expect(least([{ y: 0, used: 700 }, { y: 250, used: 0 }], [[lie(300, 100)], [lie(300, 100)]], 1000, null)).toBeCloseTo(200, 9);
    expect(least([{ y: 30, used: 0 }], [], 1000)).toBe(0);
  });
});
