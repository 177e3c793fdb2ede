import { describe, expect, it } from 'vitest';
import { cutPlan, cutPlanExactly, workClock } from '../../src/cutting/cut-plan.js';
import type { Shelf } from '../../src/shelf/shelf.js';
import { boards, demoShelf, shelfWith, studioPlan } from './studio.js';

const bare = { kerf_mm: 3, end_trim_mm: 0, knot_waste_share: { none: 0, few: 0, many: 0 } };
const strips = (...list: readonly (readonly [length_mm: number, price: number, available?: number])[]): Shelf => shelfWith('strip-19x38', boards(...list), bare);

describe('buying for one plan', () => {
  it('nests the mitres: four bars in a board one bar-width per cut shorter than end to end', () => {
    // 2 × 900 + 2 × 620 = 3040 end to end; three shared cuts save 38 each and take 3√2 along the board.
    const least_mm = 3040 - 3 * 38 + 3 * 3 * Math.SQRT2;
    const enough = cutPlan([studioPlan()], strips([Math.ceil(least_mm), 5]));
    expect(enough).toMatchObject({ cost: 5, boards: 1, proven: true, uncut: [], too_long: [] });
    expect(enough.stocks[0]?.boards[0]?.left_mm).toBeCloseTo(Math.ceil(least_mm) - least_mm, 3);
    expect(cutPlan([studioPlan()], strips([Math.floor(least_mm), 5]))).toMatchObject({ cost: 10, boards: 2 });
  });

  it('square pieces share nothing: kerf between them', () => {
    const plan = studioPlan({ corners: { cut: 'butt' } });
    const least_mm = 2 * 824 + 2 * 620 + 3 * 3;
    expect(cutPlan([plan], strips([least_mm, 5]))).toMatchObject({ cost: 5 });
    expect(cutPlan([plan], strips([least_mm - 1, 5]))).toMatchObject({ cost: 10 });
  });

  it('trims new boards at both ends and keeps a share back for knots, but takes a leftover on hand at its word', () => {
    const shelf = (length_mm: number, price: number): Shelf => shelfWith('strip-19x38', boards([length_mm, price]), { ...bare, end_trim_mm: 15, knot_waste_share: { none: 0, few: 0.05, many: 0.2 } });
    const plan = studioPlan({ corners: { cut: 'butt' }, lumber: { knots: 'few' } });
    const net_mm = 2 * 824 + 2 * 620 + 9;
    const gross_mm = net_mm / 0.95 + 30;
    expect(cutPlan([plan], shelf(Math.ceil(gross_mm), 4)).boards).toBe(1);
    expect(cutPlan([plan], shelf(Math.floor(gross_mm) - 1, 4)).boards).toBe(2);
    expect(cutPlan([plan], shelf(net_mm, 0)).stocks[0]?.boards).toHaveLength(1);
  });

  it('uses a leftover on hand for what fits it, and counts it neither in cost nor in boards to buy', () => {
    const plan = studioPlan({ corners: { cut: 'butt' } });
    const cut = cutPlan([plan], strips([2100, 4], [1660, 0, 1]));
    expect(cut).toMatchObject({ cost: 4, boards: 1, proven: true });
    expect(cut.stocks[0]?.kinds).toEqual([{ length_mm: 2100, price: 4, count: 1, on_hand: false }, { length_mm: 1660, price: 0, count: 1, on_hand: true }]);
  });

  it('cuts braces from what the bars leave', () => {
    const without = cutPlan([studioPlan()], strips([3600, 6]));
    const braced = cutPlan([studioPlan({ corners: { brace: { kind: 'timber', leg: '130 mm', stock: 'strip-19x38', lay: 'flat' } } })], strips([3600, 6]));
    expect(without.cost).toBe(6);
    expect(braced.cost).toBe(6);
    expect(braced.stocks[0]?.boards[0]?.pieces).toHaveLength(8);
    expect(braced.waste_share).toBeLessThan(without.waste_share as number);
  });
});

describe('what cannot be bought', () => {
  it('is unknown, with a reason, when the shelf gives no lengths', () => {
    const cut = cutPlan([studioPlan()], shelfWith('strip-19x38', null));
    expect(cut).toMatchObject({ cost: null, boards: null, waste_share: null, proven: false, uncut: [{ stock: 'strip-19x38', reason: 'The shelf gives no lengths and prices for strip-19x38.' }] });
  });

  it('is unknown when there are too few boards', () => {
    expect(cutPlan([studioPlan()], strips([1000, 3, 2]))).toMatchObject({ cost: null, uncut: [{ reason: 'There are not enough boards of strip-19x38 on the shelf for all pieces.' }] });
  });

  it('names pieces too long, once per plan, with a longer board and a smaller face that work', () => {
    const shelf = shelfWith('strip-19x38', boards([880, 3]), { ...bare, end_trim_mm: 10 });
    const plan = studioPlan({ count: 2 });
    const cut = cutPlan([plan], shelf);
    expect(cut.cost).toBeNull();
    expect(cut.too_long.map(({ piece }) => piece.piece.label)).toEqual(['T', 'B']);
    expect(cut.too_long[0]).toMatchObject({ needs_mm: 920, longest_mm: 880 });
    expect(cut.too_long[0]?.alternatives).toEqual([{ kind: 'longer-board', length_mm: 920 }, { kind: 'other-stock', stock: 'pine-19x38', length_mm: 1800 }, { kind: 'smaller-face', side: 'width', most_mm: 860 }]);
    expect(cutPlan([plan], shelfWith('strip-19x38', boards([920, 3]), { ...bare, end_trim_mm: 10 })).cost).not.toBeNull();
    expect(cutPlan([studioPlan({ face: { width: '860 mm', height: '620 mm' } })], shelf).cost).not.toBeNull();
    expect(cutPlan([studioPlan({ face: { width: '860.5 mm', height: '620 mm' } })], shelf).cost).toBeNull();
  });

  it('takes a whole board, to be picked clear, for a piece that only knots stand against', () => {
    const shelf = shelfWith('strip-19x38', boards([1000, 3]), { ...bare, knot_waste_share: { none: 0, few: 0.2, many: 0.3 } });
    const cut = cutPlan([studioPlan()], shelf);
    expect(cut.cost).not.toBeNull();
    expect(cut.stocks[0]?.boards.filter(({ pick_clear }) => pick_clear).map(({ pieces }) => pieces.map(({ tag }) => tag))).toEqual([['B'], ['T']]);
  });
});

describe('a piece too long for every board of its stock', () => {
  const long = (lengths: Shelf['lumber'][string]['lengths'], other: Shelf['lumber'][string]['lengths'], more: object = {}, trim = 10, size = { thickness_mm: 19, width_mm: 38 }) => {
    const shelf = shelfWith('strip-19x38', lengths, { ...bare, end_trim_mm: trim });
    const only = { 'strip-19x38': shelf.lumber['strip-19x38']!, 'pine-19x38': { ...shelf.lumber['pine-19x38']!, ...size, lengths: other } };
    return cutPlan([studioPlan(more)], { ...shelf, lumber: only }).too_long[0]!;
  };
  const alternatives = (...from: Parameters<typeof long>) => long(...from).alternatives.map((one) => ('stock' in one ? `${one.stock} ${one.length_mm}` : `${one.kind} ${'length_mm' in one ? one.length_mm : one.most_mm}`));

  it('another stock of its section helps where a sound length is long enough: less both trims of a new board, all of a leftover', () => {
    // 900 mm: a new board of 920 mm, a leftover of 900 mm.
    const helps = (length_mm: number, price: number, available: number | null = null) => alternatives(boards([800, 3]), [{ length_mm, price, available }]).includes(`pine-19x38 ${length_mm}`);
    expect([helps(920, 2), helps(919.9, 2), helps(900, 0), helps(899.9, 0), helps(920, 2, 0), helps(920, 2, 1)]).toEqual([true, false, true, false, false, true]);
    expect(alternatives(boards([800, 3]), boards([2400, 4], [1000, 2], [950, 3]))).toEqual(['longer-board 920', 'pine-19x38 950', 'smaller-face 780']);
  });

  it('a section is the same to half a millimetre', () => {
    const helps = (thickness_mm: number, width_mm: number) => alternatives(boards([800, 3]), boards([2400, 4]), {}, 10, { thickness_mm, width_mm }).includes('pine-19x38 2400');
    expect([helps(19.4, 38), helps(19.5, 38), helps(19, 37.6), helps(19, 37.5), helps(18.4, 38)]).toEqual([true, false, true, false, false]);
  });

  it('what is longest counts boards that are there, a leftover at its word; the side that shrinks is the piece’s own', () => {
    expect(long([...boards([800, 3], [2400, 3, 0]), { length_mm: 850, price: 0, available: 1 }], null)).toMatchObject({ needs_mm: 920, longest_mm: 850 });
    const tall = long(boards([800, 3]), null, { face: { width: '500 mm', height: '1100.5 mm' } });
    expect([tall.piece.piece.about, tall.needs_mm, tall.alternatives]).toEqual(['left', 1120.5, [{ kind: 'longer-board', length_mm: 1121 }, { kind: 'smaller-face', side: 'height', most_mm: 780 }]]);
    expect(alternatives(boards([900, 3]), null, { face: { width: '930 mm', height: '930 mm' } })).toEqual(['longer-board 950', 'smaller-face 880']);
  });

  it('nothing is asked of a shelf where every piece is in hand', () => {
    const hand = (n: number) => cutPlan([studioPlan()], shelfWith('strip-19x38', [900, 900, 620, 620].slice(0, n).map((length_mm) => ({ length_mm, price: 0, available: 1, as_is: 'mitre' as const }))));
    expect(hand(4)).toMatchObject({ cost: 0, boards: 0, uncut: [] });
    expect(hand(3).uncut).toEqual([{ stock: 'strip-19x38', reason: 'The shelf gives no lengths and prices for strip-19x38.' }]);
  });
});

describe('buying for many plans', () => {
  const small = studioPlan({ name: 'Two herons', face: { width: '410 mm', height: '330 mm' }, count: 3 });

  it('pools them, each as often as it is wanted, under tags that tell them apart', () => {
    const cut = cutPlan([studioPlan(), small], strips([2400, 4]));
    const tags = cut.stocks.flatMap(({ boards: all }) => all.flatMap(({ pieces }) => pieces.map(({ tag }) => tag)));
    expect(tags).toHaveLength(16);
    expect(new Set(tags).size).toBe(16);
    expect(tags).toContain('1-T');
    expect(tags).toContain('2.3-R');
    expect(cut).toMatchObject({ boards: 3, cost: 12, proven: true });
    const apart = [[studioPlan()], [small]].map((plans) => cutPlan(plans, strips([2400, 4])).cost as number);
    expect(cut.cost as number).toBeLessThanOrEqual((apart[0] as number) + (apart[1] as number));
  });

  it('keeps stocks apart and adds them up; one unknown stock leaves the sum unknown', () => {
    const mixed = studioPlan({ crossbars: [{ runs: 'upright', at: '1/2', stock: 'board-19x64', lay: 'edge' }] });
    const cut = cutPlan([mixed], demoShelf);
    expect(cut.stocks.map(({ stock }) => stock)).toEqual(['strip-19x38', 'board-19x64']);
    expect(cut.cost).toBeCloseTo(cut.stocks.reduce((sum, { cost }) => sum + cost, 0), 9);
    expect(cutPlan([mixed], shelfWith('board-19x64', null))).toMatchObject({ cost: null, stocks: [{ stock: 'strip-19x38' }] });
  });

  it('gives the same with the program behind it, and nothing for no plans', async () => {
    const time = { timeLimit_ms: 400, now: workClock() };
    expect(await cutPlanExactly([studioPlan(), small], demoShelf, time, { ms: 1000 }, async () => null)).toEqual(cutPlan([studioPlan(), small], demoShelf));
    expect(cutPlan([], demoShelf)).toMatchObject({ cost: 0, boards: 0, stocks: [] });
  });
});
