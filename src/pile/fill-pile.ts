import { readQuantity, readRange } from '../base/units.js';
import type { Dimension } from '../base/unit-table.js';
import { twistRateOf } from '../mechanics/board-shape.js';
import { readBoard } from '../plan/board-readings.js';
import type { PileInput } from './pile-schema.js';
import type { Pile, PileBoard } from './pile.js';

type BoardInput = PileInput['boards'][number];

function quantity(text: string, dimension: Dimension): number {
  const reading = readQuantity(text, dimension);
  if (!reading.ok) throw new Error(`the schema let a ${dimension} through that cannot be read: ${text}`);
  return reading.value;
}

const mm = (text: string): number => quantity(text, 'length');

/**
 * The pile of a checked input: every board by itself, unmarked ones named `u1`, `u2` … past the marks that are taken.
 */
export function fillPile(input: PileInput): Pile {
  const first = readQuantity(input.boards[0]?.length ?? '', 'length');
  const taken = new Set(input.boards.flatMap(({ mark }) => (mark === undefined ? [] : [mark])));
  let free = 0;
  const nextMark = (): string => {
    do free += 1;
    while (taken.has(`u${free}`));
    return `u${free}`;
  };
  const boards = input.boards.flatMap((board) =>
    Array.from({ length: board.count ?? 1 }, () => fillBoard(board, nextMark)),
  );
  return {
    name: input.name?.trim() ?? 'The pile',
    units: first.ok && first.system === 'inch' ? 'inch' : 'metric',
    boards,
  };
}

function fillBoard(board: BoardInput, nextMark: () => string): PileBoard {
  const length_mm = mm(board.length);
  const { bow_per_m, crook_per_m } = readBoard({
    bow: board.bow,
    crook: board.crook,
    over: board.over ?? board.length,
  });
  const turned = (curve: number | null, other: boolean): number | null =>
    curve === null ? null : (other ? -1 : 1) * curve + 0;
  return {
    mark: board.mark ?? nextMark(),
    marked: board.mark !== undefined,
    stock: board.stock,
    length_mm,
    twist_rad_per_m: twistOf(board.twist, length_mm),
    bow_per_m: turned(bow_per_m, board.hollow === 'other-face'),
    crook_per_m: turned(crook_per_m, board['hollow-edge'] === 'other-edge'),
    cut: board.cut ?? null,
    knots: (board.knots ?? []).map(knotOf).sort((a, b) => a.from_mm - b.from_mm),
  };
}

function twistOf(twist: BoardInput['twist'], length_mm: number): number | null {
  if (twist === undefined) return null;
  if (typeof twist === 'string') return quantity(twist, 'twist');
  const over_m = (twist.over === undefined ? length_mm : mm(twist.over)) / 1000;
  return (twist.for === 'left' ? -1 : 1) * twistRateOf(mm(twist.rise), mm(twist.width), over_m) + 0;
}

function knotOf(text: string): { from_mm: number; to_mm: number } {
  const reading = readRange(text, 'length');
  if (reading === null) throw new Error(`the schema let a knot through that cannot be read: ${text}`);
  return { from_mm: reading.low, to_mm: reading.high };
}
