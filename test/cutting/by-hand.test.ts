/** Cut lists, sheets and loads small enough to be worked out by hand, with bars that are off the tape. */
import { describe, expect, it } from 'vitest';
import { quickCutting } from '../../src/cutting/boards/greedy.js';
import { bestLoad } from '../../src/cutting/boards/knapsack.js';
import { makeReady } from '../../src/cutting/boards/ready-problem.js';
import { stockProblem } from '../../src/cutting/boards/stock-problem.js';
import { cutListCsv } from '../../src/cutting/csv.js';
import { cutPlan } from '../../src/cutting/cut-plan.js';
import { markingOrder } from '../../src/cutting/marking.js';
import { piecesAssemble } from '../../src/cutting/pieces/assemble.js';
import type { Piece, PieceList } from '../../src/cutting/pieces/piece.js';
import { piecesOf } from '../../src/cutting/pieces/pieces.js';
import { frameName, numbersOf, tagOrder } from '../../src/cutting/pieces/pool.js';
import { leastLength_mm, type Waiting } from '../../src/cutting/roll/bounds.js';
import { rollPieces } from '../../src/cutting/roll/plans.js';
import { packRoll } from '../../src/cutting/roll/roll.js';
import { demoModel } from '../mechanics/fasteners/demo-model.js';
import { fresh } from './problems.js';
import { readCsv } from './read-csv.js';
import { boards, demoShelf, shelfWith, studioPlan } from './studio.js';

const bare = { kerf_mm: 3, end_trim_mm: 0, knot_waste_share: { none: 0, few: 0, many: 0 } };
const strip = demoShelf.lumber['strip-19x38']!;
/** Strips of 19.2 × 38.3 mm: two of them are 76.6 mm, off the half millimetres of the tape. */
const offTape = { ...demoShelf, lumber: { ...demoShelf.lumber, 'strip-19x38': { ...strip, thickness_mm: 19.2, width_mm: 38.3 } } };
const listOf = (more: object, shelf = offTape): PieceList => piecesOf(studioPlan(more, shelf), shelf);
const lengths = (list: PieceList): object => Object.fromEntries(list.pieces.map(({ label, cut_mm, exact_mm, short_mm }) => [label, [cut_mm, exact_mm, short_mm].map((mm) => Math.round(mm * 1e6) / 1e6)]));

describe('a frame of bars that are off the tape', () => {
  it('butted: what stands between goes up to the mark by itself, and the face grows with it', () => {
    const list = listOf({ corners: { cut: 'butt' } });
    expect(lengths(list)).toEqual({ T: [823.5, 823.4, 823.5], B: [823.5, 823.4, 823.5], L: [620, 620, 620], R: [620, 620, 620] });
    expect([list.opening.width_mm, list.opening.height_mm, list.bar_mm]).toEqual([823.5, 543.5, 38.25]);
    expect(piecesAssemble(list)).toMatchObject({ width_mm: expect.closeTo(900.1, 9), height_mm: 620, opening_mm: 0, fits: true });
  });

  it('mitred: the short point follows the long one; opening and two bars as the tape shows them make up the face', () => {
    const list = listOf({});
    expect(lengths(list)).toEqual({ T: [900, 900, 823.4], B: [900, 900, 823.4], L: [620, 620, 543.4], R: [620, 620, 543.4] });
    expect([list.opening, 2 * list.bar_mm + list.opening.width_mm]).toEqual([{ width_mm: 823.5, height_mm: 543.5 }, 900]);
  });

  it('half-lapped and keyed: crossbars are told where the other lies, less half its width, to the nearest mark', () => {
    const crossed = { crossbars: [{ runs: 'upright', at: 0.3345, stock: 'strip-19x38', lay: 'edge' }, { runs: 'level', at: '1/2', stock: 'strip-19x38', lay: 'flat' }] };
    const laps = (more: object) => Object.fromEntries(listOf({ ...crossed, ...more }).pieces.filter(({ part }) => part === 'crossbar').map(({ label, laps: cut }) => [label, cut.map(({ from_mm, width_mm, depth_mm }) => [from_mm, width_mm, depth_mm])]));
    // 310 − 38.3 − 19.15 = 252.55; 301.05 − 38.3 − 9.6 = 253.15: to 252.5 and 253.
    expect(laps({})).toEqual({ C1: [[252.5, 38.3, 19.15]], C2: [[253, 19.2, 9.6]] });
    // Tongues of half a bar's width: 271.7 and 272.3.
    expect(laps({ corners: { cut: 'keyed' } })).toEqual({ C1: [[271.5, 38.3, 19.15]], C2: [[272.5, 19.2, 9.6]] });
    const keyed = listOf({ ...crossed, corners: { cut: 'keyed' } }).pieces.find(({ label }) => label === 'C1')!;
    expect([keyed.cut_mm, keyed.exact_mm]).toEqual([582, expect.closeTo(620 - 38.3, 9)]);
    // Level bars end in tongues, upright ones in slots, a third of the depth, as long as the bar is wide.
    const notes = Object.fromEntries(piecesOf(studioPlan({ corners: { cut: 'keyed' }, bars: { stock: 'square-38x38', lay: 'flat' } }), demoShelf).pieces.map(({ label, notes: some }) => [label, some.join()]));
    expect([notes['T'], notes['L']]).toEqual([expect.stringMatching(/^a tongue at each end, 1[23](\.\d)? mm thick, 38 mm long, /u), expect.stringMatching(/^a slot at each end, 1[23](\.\d)? mm wide, 38 mm deep, /u)]);
  });

  it('glued up: blanks of one length, ten millimetres more at each end where the shelf does not say how much', () => {
    const glued = { bars: { stock: 'strip-19x38', lay: 'edge', plies: 2, bond: 'glue' } };
    const [silent, told] = [{ ...offTape, proposals: {} }, { ...offTape, proposals: { ...offTape.proposals, 'blank-trim': { ...offTape.proposals['blank-trim']!, value: 7.1 } } }];
    const first = (shelf: typeof offTape) => piecesOf(studioPlan(glued, offTape), shelf).pieces[0]!;
    expect([first(silent).cut_mm, first(told).cut_mm]).toEqual([920, 914.5]);
    expect(first(silent)).toMatchObject({ exact_mm: 900, short_mm: 920, across_mm: 0, later: { ends: 'mitre', cut_mm: 900, short_mm: expect.closeTo(900 - 4 * 19.2, 9) } });
  });

  it('no opening is left where two bars fill the face', () => {
    const wide = (width_mm: number) => piecesOf({ ...studioPlan(), face: { width_mm, height_mm: 620 } }, offTape).faults;
    expect([wide(76.5), wide(77)]).toEqual([['The bars are as wide as the face: there is no opening left between them.'], []]);
    expect(piecesOf({ ...studioPlan(), face: { width_mm: 620, height_mm: 76.5 } }, offTape).faults).toHaveLength(1);
  });
});

describe('pieces put together', () => {
  const spoilt = (change: (piece: Piece) => Partial<Piece> | null, more: object = {}) => {
    const list = piecesOf(studioPlan(more), demoShelf);
    return piecesAssemble({ ...list, pieces: list.pieces.flatMap((piece) => { const other = change(piece); return other === null ? [] : [{ ...piece, ...other }]; }) });
  };
  const level = ({ runs }: Piece): boolean => runs === 'level';

  it('a pair too short or a mark too long makes another face, less than a mark does not', () => {
    const width = (cut_mm: number) => { const { faults, fits } = spoilt((piece) => (level(piece) ? { cut_mm, short_mm: cut_mm - 76 } : {})); return [fits, ...faults]; };
    expect(width(899.5)).toEqual([false, 'The width comes out 899.5 mm instead of 900 mm.']);
    expect(width(900.5)).toEqual([false, 'The width comes out 900.5 mm instead of 900 mm.']);
    expect(width(900.25)).toEqual([true]);
    expect(spoilt((piece) => (level(piece) ? {} : { cut_mm: 619, short_mm: 543 })).faults).toEqual(['The height comes out 619 mm instead of 620 mm.']);
  });

  it('what is not there counts as nothing: a place without any piece, or without its first ply', () => {
    for (const change of [(piece: Piece) => (piece.about === 'top' ? null : {}), (piece: Piece) => (piece.about === 'top' ? { ply: 2 } : {})]) {
      const { faults, opening_mm, width_mm, fits } = spoilt(change);
      expect([faults.slice(0, 2), opening_mm, width_mm, fits]).toEqual([['There is no piece for top.', 'Opposite bars differ in length.'], 900, 900, false]);
    }
    // With both gone they are alike, and each wants two bars' widths to its mitres.
    expect(spoilt(({ about }) => (about === 'top' || about === 'bottom' ? null : {}))).toMatchObject({ width_mm: 0, opening_mm: 76 });
  });

  it('a mitre may be a mark of the tape too long inside, no more, and not at all too short', () => {
    const inside = (off: number) => { const { faults, opening_mm } = spoilt((piece) => ({ short_mm: piece.short_mm - off })); return [faults.length, opening_mm]; };
    expect([inside(0.4), inside(0.6), inside(-0.25)]).toEqual([[0, 0], [4, 0], [0, 0.25]]);
  });

  it('a crossbar may be up to a mark too long, to be planed off, and is never short; a brace is told by itself', () => {
    const more = { crossbars: [{ runs: 'level', at: '1/2', stock: 'strip-19x38', lay: 'flat' }], corners: { brace: { kind: 'timber', leg: '150 mm', stock: 'strip-19x38', lay: 'flat' } } };
    const long = (label: string, over: number) => { const { faults, tight_mm, opening_mm } = spoilt((piece) => (piece.label === label ? { cut_mm: (label === 'TL' ? piece.exact_mm : piece.cut_mm) + over } : {}), more); return [faults, tight_mm, opening_mm]; };
    expect(long('C1', 0.25)).toEqual([[], 0.25, 0]);
    expect(long('C1', 0.5)).toEqual([['C1 is more than a mark of the tape longer than the room for it.'], 0.5, 0]);
    expect(long('C1', -0.25)).toEqual([['C1 is shorter than the room for it.'], 0, 0.25]);
    expect(long('TL', -0.25)).toEqual([['TL is shorter than the room for it.'], 0, expect.closeTo(0.25, 9)]);
    expect(long('TL', 0.25)).toEqual([[], 0, 0]);
  });
});

describe('the cut list as a sheet', () => {
  const rowsOf = (more: object) => readCsv(cutListCsv(cutPlan([studioPlan(more)], demoShelf)));
  it('tells strips of lips after the pieces, for one frame or for each of several', () => {
    const lip = { bars: { stock: 'strip-19x38', lay: 'flat', lip: '6 mm' } };
    const [one, two] = [rowsOf(lip), rowsOf({ ...lip, count: 2 })];
    expect(one.slice(5).map((row) => [row[0], row[2], row[8], row[9], row[14]])).toEqual(
      [['lip T', 900], ['lip B', 900], ['lip L', 620], ['lip R', 620]].map(([tag, mm]) => ['strip for the lip', tag, `${mm} mm`, String(mm), 'From the strips of the buying list.']));
    expect(two).toHaveLength(1 + 8 + 4);
    expect(two.slice(9).every((row) => row[14] === 'From the strips of the buying list, one for each of 2 frames.')).toBe(true);
    expect(one[0]).toHaveLength(15);
  });
  it('tells the later cut of a blank, ply by ply', () => {
    const rows = rowsOf({ bars: { stock: 'strip-19x38', lay: 'edge', plies: 2, bond: 'glue' } });
    expect(rows.slice(1).map((row) => [row[2], row[5], row[9], row[12]]).sort()).toEqual(['B1', 'B2', 'L1', 'L2', 'R1', 'R2', 'T1', 'T2'].map((tag) => [tag, tag.charAt(1), 'TB'.includes(tag.charAt(0)) ? '920' : '640', 'TB'.includes(tag.charAt(0)) ? '900' : '620']));
  });
});

describe('the order at the saw', () => {
  it('mitres of one length but of unlike widths are two settings', () => {
    // A brace on edge, 19 mm across, that comes out at 400 mm: √2 (leg − 38) + 19.
    const braced = studioPlan({ face: { width: '1000 mm', height: '900 mm' }, corners: { brace: { kind: 'timber', leg: `${(381 / Math.SQRT2 + 38).toFixed(4)} mm`, stock: 'strip-19x38', lay: 'edge' } } });
    const { steps } = markingOrder(cutPlan([studioPlan({ face: { width: '400 mm', height: '330 mm' } }), braced], demoShelf));
    expect(steps.map(({ stop_mm, cuts }) => [stop_mm, cuts.length])).toEqual([[400, 4], [1000, 2], [900, 2], [400, 2], [330, 2]]);
  });
  it('says how the second end of a mitre is made without a saw of one’s own, and by hand', () => {
    const cut = cutPlan([studioPlan()], shelfWith('strip-19x38', boards([940, 1])));
    const last = (saw: 'none' | 'hand') => markingOrder(cut, saw).steps[0]!.words;
    expect(last('none')).toMatch(/from board \d\. The two ends lean towards each other\.$/u);
    expect(last('hand')).toMatch(/from board \d\. Mark the ends with a mitre square, leaning towards each other, and the next piece only when this one is off\.$/u);
  });
});

describe('what is bought', () => {
  it('lists only kinds of boards that are used, dearer lengths first, and what each leaves', () => {
    const cut = cutPlan([studioPlan({ corners: { cut: 'butt' } })], shelfWith('strip-19x38', boards([900, 2], [700, 1.5], [3000, 90]), bare));
    expect(cut.stocks[0]!.kinds).toEqual([{ length_mm: 900, price: 2, count: 2, on_hand: false }, { length_mm: 700, price: 1.5, count: 2, on_hand: false }]);
    expect(cut.stocks[0]!.boards.map(({ left_mm, length_mm, pick_clear }) => [length_mm, left_mm, pick_clear])).toEqual([[900, 76, false], [900, 76, false], [700, 80, false], [700, 80, false]]);
    expect(cut.waste_share).toBeCloseTo(1 - (2 * 824 + 2 * 620) / 3200, 12);
  });

  it('a board in hand that its piece fills to the last leaves nothing; else the longest of its gaps', () => {
    const left = (length_mm: number, from: string) => {
      const shelf = shelfWith('strip-19x38', [...boards([2400, 3]), { length_mm, price: 0, available: 1, mark: 'A', hand: { mark: 'A', from_mm: 0 } } as never], bare);
      return cutPlan([studioPlan({ corners: { cut: 'butt' }, boards: [{ for: 'left', board: 'A', from }] }, shelf)], shelf).stocks[0]!.boards.find(({ mark }) => mark === 'A')!.left_mm;
    };
    expect([left(620, '0 mm'), left(900, '0 mm'), left(900, '100 mm')]).toEqual([0, 277, 177]);
  });

  it('a length a ten-thousandth of a millimetre over a board is too long; what rounding alone adds is not', () => {
    const over = (cut_mm: number, length_mm: number) => stockProblem([{ ends: 'square', cut_mm, short_mm: cut_mm, across_mm: 0 } as Piece], boards([length_mm, 3]), { kerf_mm: 3, end_trim_mm: 0 }, 0).too_long;
    expect(over(1000.0001, 1000)).toEqual([{ index: 0, over_mm: 0.0001 }]);
    expect(over(1000, 1000)).toEqual([]);
    // 0.035 × 10,000 comes out above 350, and 0.043 × 10,000 below 430.
    expect([0.035 * 10_000 > 350, 0.043 * 10_000 < 430]).toEqual([true, true]);
    expect([over(0.035, 0.035), over(0.043, 0.043)]).toEqual([[], []]);
  });
});

describe('names of frames and pieces', () => {
  it('tell plan and frame where there are several, by the numbers that plans were given', () => {
    const [one, three] = [studioPlan(), studioPlan({ count: 3 })];
    expect([frameName([one], 0, 1), frameName([three], 0, 2), frameName([one, three], 0, 1), frameName([one, three], 1, 3), frameName([one, three], 1, 3, [7, 9])]).toEqual(['', '2', '1', '2.3', '9.3']);
    expect(numbersOf([one, three])).toEqual([1, 2]);
    expect(['10-T', '2-T', '2.10-L', '2.9-L'].sort((a, b) => (tagOrder(a) < tagOrder(b) ? -1 : 1))).toEqual(['2-T', '2.9-L', '2.10-L', '10-T']);
  });
  it('of cloths: counted from one, after a dot where the name ends in a number', () => {
    const names = (name: string, count: number) => rollPieces(demoModel({ name, count, face: { width: '500 mm', height: '400 mm' }, bars: { stock: 'strip-19x38', lay: 'flat' } })).map((piece) => piece.name);
    expect([names('Study', 1), names('Study', 2), names('Study 3', 2)]).toEqual([['Study'], ['Study 1', 'Study 2'], ['Study 3.1', 'Study 3.2']]);
  });
});

describe('loads by hand', () => {
  it('a quick cutting on one kind of board gives each load the cheapest board that is still there', () => {
    const quick = (available: number) => {
      const bench = makeReady(fresh({ kerf: 0, stock: [{ length: 1000, price: 10 }, { length: 600, price: 4, available }], items: [{ length: 550, count: 3 }] }));
      return quickCutting(bench, (bin) => bin === 0)!.map(({ bin }) => bench.bins[bin]!.length);
    };
    expect([quick(1), quick(2)]).toEqual([[600, 1000, 1000], [600, 600, 1000]]);
  });
  it('a piece that is worth one, and only what there is of it, with one setup for its group', () => {
    const bench = makeReady(fresh({ kerf: 0, stock: [{ length: 100, price: 5 }], setups: [10], items: [{ length: 40, count: 2, group: 0 }, { length: 30, count: 3 }] }));
    expect(bestLoad(bench, [1, 0], 89)).toEqual({ value: 1, counts: [1, 0], exact: true });
    expect(bestLoad(bench, [1, 0], 90)).toEqual({ value: 2, counts: [2, 0], exact: true });
    expect(bestLoad(bench, [1, 0], 90, [1, 3])).toEqual({ value: 1, counts: [1, 0], exact: true });
    expect(bestLoad(bench, [1, 0], 49)).toEqual({ value: 0, counts: [0, 0], exact: true });
    expect(bestLoad(bench, [0, 1], 90, [2, 2])).toEqual({ value: 2, counts: [0, 2], exact: true });
    const pair = makeReady(fresh({ kerf: 0, stock: [{ length: 100, price: 5 }], setups: [10], items: [{ length: 40, count: 1, group: 0 }, { length: 30, count: 1, group: 0 }] }));
    expect([80, 79].map((room) => bestLoad(pair, [4, 3], room).value)).toEqual([7, 4]);
  });
});

describe('how long a roll must be', () => {
  const lie = (across: number, along: number) => ({ across, along, turned: false });
  const least = (levels: readonly (readonly [number, number])[], waiting: Waiting) => leastLength_mm(levels.map(([y, used]) => ({ y, used })), waiting, null, 1000);
  it('by the area that is left at each level, from where the level begins', () => {
    expect(least([[100, 0], [200, 500]], [[lie(500, 150)], [lie(500, 150)]])).toBe(200 + (2 * 500 * 150 - 100 * 1000) / 500);
    expect(least([[0, 0], [100, 1000]], Array.from({ length: 4 }, () => [lie(500, 50)]))).toBe(100);
    expect(least([[0, 0]], [])).toBe(0);
    expect(least([[0, 1000]], [[lie(500, 50)]])).toBe(Infinity);
  });
  it('by the first room for any one piece, whichever way it lies there', () => {
    expect(least([[0, 800], [400, 0]], [[lie(300, 10), lie(10, 300)]])).toBe(300);
    expect(least([[0, 800], [400, 0]], [[lie(300, 10), lie(10, 500)]])).toBe(410);
    expect(least([[0, 700], [400, 0]], [[lie(300, 10)]])).toBe(10);
  });
  it('by pieces too wide to lie beside each other, one behind the other', () => {
    expect(least([[0, 0]], [[lie(600, 100)], [lie(500, 70)], [lie(450, 60)]])).toBe(170);
    expect(least([[0, 600], [30, 0]], [[lie(600, 100)], [lie(500, 70)]])).toBe(30 + 170);
  });
  it('is told with its cloths from the cut end on, at one level from the left', () => {
    const pieces = [910, 1230, 640, 780, 1010, 560].map((along_mm, i) => ({ name: `c${i}`, along_mm, across_mm: 400 + 20 * i, turnable: false }));
    const { placed } = packRoll(pieces, 1500);
    expect(placed).toHaveLength(6);
    placed.forEach((one, i) => { if (i > 0) expect(placed[i - 1]!.y_mm < one.y_mm || (placed[i - 1]!.y_mm === one.y_mm && placed[i - 1]!.x_mm < one.x_mm)).toBe(true); });
  });
});
