import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { cutPlan } from '../../src/cutting/cut-plan.js';
import type { CutPlan } from '../../src/cutting/boards/purchase.js';
import { shelfWithPile } from '../../src/pile/on-shelf.js';
import { readPile } from '../../src/pile/read-pile.js';
import { demoShelf, studioPlan } from './studio.js';

/** The demonstration shelf with these boards in hand. */
function shelfWithBoards(boards: string) {
  const pile = readPile(`pile: 1\nboards:\n${boards}`, 'pile.yaml', demoShelf);
  if (!pile.ok) throw new Error(JSON.stringify(pile.problems));
  return shelfWithPile(demoShelf, pile.value);
}

/** `mark: tag from–to, …` of every board in hand. */
const inHand = (cut: CutPlan): readonly string[] => cut.stocks.flatMap(({ boards }) => boards.filter(({ on_hand }) => on_hand).map(({ mark, pieces }) => `${mark}: ${pieces.map(({ tag, from_mm, to_mm }) => `${tag} ${Math.round(from_mm)}–${Math.round(to_mm)}`).join(', ')}`)).sort();
const tags = (cut: CutPlan): readonly string[] => cut.stocks.flatMap(({ boards }) => boards.flatMap(({ pieces }) => pieces.map(({ tag }) => tag))).sort();

describe('a piece that is cut already', () => {
  // 900 × 620 mm of 19 × 38 laid flat, mitred: pieces of 900 and 620 mm.
  it('is used as it is where length and ends fit, to half a mark of the tape, and never sawn', () => {
    const cut = cutPlan([studioPlan()], shelfWithBoards(`
  - { mark: P, stock: strip-19x38, length: 900.2 mm, cut: mitre }
  - { mark: Q, stock: strip-19x38, length: 901 mm, cut: mitre }
  - { mark: R, stock: strip-19x38, length: 620 mm, cut: square }
  - { mark: S, stock: strip-19x38, length: 620 mm, cut: mitre-on-edge }
  - { mark: U, stock: strip-19x38, length: 2000 mm, cut: square }
`));
    expect(inHand(cut)).toEqual(['P: T 0–900']);
    expect(tags(cut)).toEqual(['B', 'L', 'R', 'T']);
    expect(cut.boards).toBeGreaterThan(0);
  });

  it('one each for all four pieces leaves nothing to buy or to saw, proven', () => {
    const cut = cutPlan([studioPlan()], shelfWithBoards('  - { stock: strip-19x38, length: 900 mm, cut: mitre, count: 2 }\n  - { stock: strip-19x38, length: 620 mm, cut: mitre, count: 3 }\n'));
    expect(cut).toMatchObject({ boards: 0, cost: 0, proven: true, uncut: [], too_long: [] });
    expect(inHand(cut)).toEqual(['u1: T 0–900', 'u2: B 0–900', 'u3: L 0–620', 'u4: R 0–620']);
    expect(cut.stocks[0]?.waste_share).toBeCloseTo(4 * 38 / (2 * 1520), 9);
  });

  it('is left where plies are glued first and cut later', () => {
    const plan = studioPlan({ bars: { stock: 'strip-19x38', lay: 'flat', plies: 2, stack: 'front-to-back', bond: 'glue' } });
    expect(inHand(cutPlan([plan], shelfWithBoards('  - { mark: P, stock: strip-19x38, length: 900 mm, cut: mitre }\n')))).toEqual([]);
  });
});

describe('a placing that stands in the plan', () => {
  const boards = parse('[ { for: top, board: A, from: 100 mm, twist: 1 deg/m }, { for: left, board: A, from: 1100 mm }, { for: right, board: B } ]') as object;

  it('is kept: pieces lie where their plan says, the rest of the board is still used, and only the rest is bought', () => {
    const cut = cutPlan([studioPlan({ boards })], shelfWithBoards('  - { mark: A, stock: strip-19x38, length: 2700 mm }\n  - { mark: B, stock: strip-19x38, length: 700 mm }\n'));
    const [a, b] = inHand(cut);
    expect(b).toBe('B: R 0–620');
    expect(a).toMatch(/^A: T 100–1000, L 1100–1720, B 172[3-5]–262[3-5]$/u);
    expect(cut).toMatchObject({ boards: 0, cost: 0, proven: true });
    // What is left of A in one length: 100 mm less a saw cut at its beginning, or what lies behind the last piece.
    expect(cut.stocks[0]?.boards.find(({ mark }) => mark === 'A')?.left_mm).toBeCloseTo(100 - Math.SQRT2 * demoShelf.cutting.kerf_mm, 6);
    expect(cut.stocks[0]?.waste_share).toBeCloseTo(1 - (4 * (1520 / 2) - 4 * 38) / 3400, 9);
  });

  it('gives way where the board is not there, is too short or has a knot there: then it is cut from what there is', () => {
    for (const pile of ['  - { mark: X, stock: strip-19x38, length: 2700 mm }\n', '  - { mark: A, stock: strip-19x38, length: 950 mm }\n', '  - { mark: A, stock: strip-19x38, length: 2700 mm, knots: [ 400..420 mm ] }\n'])
      expect(tags(cutPlan([studioPlan({ boards })], shelfWithBoards(pile)))).toEqual(['B', 'L', 'R', 'T']);
  });

  it('never lays two frames on one stretch', () => {
    const plan = studioPlan({ boards });
    const cut = cutPlan([plan, plan], shelfWithBoards('  - { mark: A, stock: strip-19x38, length: 2700 mm }\n'));
    for (const { pieces } of cut.stocks.flatMap((stock) => stock.boards.filter(({ mark }) => mark === 'A')))
      pieces.slice(1).forEach((piece, i) => expect(piece.from_mm).toBeGreaterThan((pieces[i]?.to_mm ?? Infinity) - 38));
    expect(tags(cut)).toHaveLength(8);
    expect(new Set(tags(cut)).size).toBe(8);
  });

  /** Where pieces lie on board A, and which of its edges their long side lies on. */
  const onA = (cut: CutPlan): readonly string[] =>
    cut.stocks.flatMap(({ boards }) => boards.filter(({ mark }) => mark === 'A').flatMap(({ pieces }) => pieces.map(({ tag, from_mm, long_side }) => `${tag} ${from_mm} ${long_side}`)));
  const placedOnA = (length: string, places: string, more: object = {}): readonly string[] =>
    onA(cutPlan([studioPlan({ boards: parse(`[ ${places} ]`) as object, ...more })], shelfWithBoards(`  - { mark: A, stock: strip-19x38, length: ${length} }\n`)));

  it('a settled mitre lies with its long side on the marked edge, square ends on both', () => {
    expect(placedOnA('930 mm', '{ for: top, board: A, from: 20 mm }')).toEqual(['T 20 upper']);
    expect(placedOnA('930 mm', '{ for: top, board: A, from: 20 mm }', { corners: { cut: 'half-lap' } })).toEqual(['T 20 both']);
    const ready = (cut: string, corners: string) => cutPlan([studioPlan({ corners: { cut: corners } })], shelfWithBoards(`  - { mark: A, stock: strip-19x38, length: 620 mm, cut: ${cut} }\n`));
    expect([onA(ready('mitre', 'mitre')), onA(ready('square', 'butt'))]).toEqual([['L 0 upper'], ['L 0 both']]);
    // Where wood is cut away for a lap, a piece that is cut already is left.
    expect(onA(ready('square', 'half-lap'))).toEqual([]);
  });

  it('counts where the pieces do not lie over each other and end on the board, to a hundredth of a millimetre', () => {
    const two = (from: string, length = '2000 mm') => placedOnA(length, `{ for: top, board: A, from: 0 mm }, { for: left, board: A, from: ${from} }`).filter((one) => one.startsWith('L') || one.startsWith('T'));
    const kept = (from: number) => ['T 0 upper', `L ${from} upper`];
    expect(two('900 mm')).toEqual(kept(900));
    expect(two('899.995 mm')).toEqual(kept(899.995));
    expect(two('899.98 mm')).not.toEqual(kept(899.98));
    // Ends at 1520 mm.
    expect([two('900 mm', '1520 mm'), two('900 mm', '1519.995 mm')]).toEqual([kept(900), kept(900)]);
    expect(two('900 mm', '1519.98 mm')).toEqual(['T 0 upper']);
    // In the other order, the first ends where the second begins.
    const turned = (from: string) => placedOnA('1600 mm', `{ for: top, board: A, from: ${from} }, { for: left, board: A, from: 0 mm }`);
    expect(turned('620 mm')).toEqual(['L 0 upper', 'T 620 upper']);
    expect(turned('619.995 mm')).toEqual(['L 0 upper', 'T 619.995 upper']);
    expect(turned('619.98 mm')[0]).toBe('T 619.98 upper');
  });

  it('between knots lies from the marked end of the whole board, and nothing before its stretch', () => {
    const behind = (from: string) => onA(cutPlan([studioPlan({ boards: parse(`[ { for: left, board: A, from: ${from} } ]`) as object })], shelfWithBoards('  - { mark: A, stock: strip-19x38, length: 2000 mm, knots: [ 300..340 mm ] }\n')));
    const marks = (from: string) => cutPlan([studioPlan({ boards: parse(`[ { for: left, board: A, from: ${from} } ]`) as object })], shelfWithBoards('  - { mark: A, stock: strip-19x38, length: 2000 mm, knots: [ 300..340 mm ] }\n')).stocks[0]!.boards.filter(({ pieces }) => pieces.some(({ tag }) => tag === 'L')).map(({ mark, pieces }) => [mark, pieces.find(({ tag }) => tag === 'L')!.from_mm]);
    expect(behind('400 mm')).toEqual([]);
    expect(marks('400 mm')).toEqual([['A from 340 mm', 60]]);
    expect(marks('340 mm')).toEqual([['A from 340 mm', 0]]);
    expect(marks('339 mm')[0]![1]).not.toBe(-1);
  });

  it('leaves beside each piece what is left once the saw has passed: a mitre takes √2 of its cut', () => {
    // A board of 1000 with T from 60 to 960: neither end holds a piece; the longer one counts as what is left.
    const left = (corners: string, from: string) => cutPlan([studioPlan({ corners: { cut: corners }, boards: parse(`[ { for: top, board: A, from: ${from} } ]`) as object })], shelfWithBoards('  - { mark: A, stock: strip-19x38, length: 1000 mm }\n')).stocks[0]!.boards.find(({ mark }) => mark === 'A')!.left_mm;
    const kerf = demoShelf.cutting.kerf_mm;
    expect(left('mitre', '60 mm')).toBeCloseTo(60 - Math.SQRT2 * kerf, 9);
    expect(left('half-lap', '60 mm')).toBeCloseTo(60 - kerf, 9);
    expect(left('half-lap', '30 mm')).toBeCloseTo(70 - kerf, 9);
    expect(left('half-lap', '0 mm')).toBeCloseTo(100 - kerf, 9);
    expect(left('half-lap', '100 mm')).toBeCloseTo(100 - kerf, 9);
  });

  it('a cut piece goes to the piece that the plan names it for, else to the first that no plan places elsewhere', () => {
    const ready = '  - { mark: P, stock: strip-19x38, length: 620 mm, cut: mitre }\n';
    const taken = (places: string) => inHand(cutPlan([studioPlan({ boards: parse(`[ ${places} ]`) as object })], shelfWithBoards(ready)));
    expect(taken('')).toEqual(['P: L 0–620']);
    expect(taken('{ for: right, board: P }')).toEqual(['P: R 0–620']);
    expect(taken('{ for: left, board: Q }')).toEqual(['P: R 0–620']);
    expect(taken('{ for: left, board: Q }, { for: right, board: Q }')).toEqual([]);
  });

  it('speaks of the first frame only', () => {
    const cut = cutPlan([studioPlan({ count: 2, boards: parse('[ { for: top, board: A, from: 30 mm } ]') as object })], shelfWithBoards('  - { mark: A, stock: strip-19x38, length: 1950 mm }\n'));
    expect(onA(cut)[0]).toBe('1-T 30 upper');
    expect(onA(cut).filter((one) => / 30 /u.test(one))).toHaveLength(1);
  });
});
