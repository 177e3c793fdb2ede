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
});
