import type { UnitSystem } from '../../base/names.js';
import type { Plan } from '../../plan/plan.js';
import type { Shelf } from '../../shelf/shelf.js';
import type { Piece, PieceList } from './piece.js';
import { piecesOf } from './pieces.js';

/** One piece to cut, and the frame it belongs to. */
export interface PooledPiece {
  readonly piece: Piece;
  /** Index of the plan, and which of its copies (1-based). */
  readonly plan: number;
  readonly copy: number;
  /**
   * What to write on the wood: the piece's label, with plan number and copy when there is more than one frame, such as
   * `2.1-T1`.
   */
  readonly tag: string;
}

/** All pieces of several plans, by stock. */
export interface Pool {
  readonly lists: readonly PieceList[];
  /** Stock keys in the order they are met. */
  readonly stocks: readonly string[];
  readonly pieces: Readonly<Record<string, readonly PooledPiece[]>>;
  /** Share of a board lost to knots: the worst plan's wish for that stock. */
  readonly knot_share: Readonly<Record<string, number>>;
}

/** The pool with some of its pieces only; stocks without any drop out. */
export function poolOnly(pool: Pool, keep: (piece: PooledPiece) => boolean): Pool {
  const pieces = Object.fromEntries(
    Object.entries(pool.pieces)
      .map(([stock, all]) => [stock, all.filter(keep)] as const)
      .filter(([, left]) => left.length > 0),
  );
  return { ...pool, pieces, stocks: pool.stocks.filter((stock) => stock in pieces) };
}

/**
 * Numbers of plans in a pool when nobody gives them others: 1, 2, 3 … A letter would meet those of pieces and of
 * boards.
 */
export const numbersOf = (plans: readonly Plan[]): readonly number[] => plans.map((_, i) => i + 1);

/**
 * What goes before the dash on a piece: `3` for plan 3, `3.2` for its second frame, `2` for the second frame of a plan
 * that stands alone; empty for a single frame.
 */
export function frameName(
  plans: readonly Plan[],
  index: number,
  copy: number,
  numbers: readonly number[] = numbersOf(plans),
): string {
  return [
    ...(plans.length > 1 ? [numbers[index] ?? index + 1] : []),
    ...((plans[index]?.count ?? 1) > 1 ? [copy] : []),
  ].join('.');
}

/** Sorts tags as one counts: 2 before 10. */
export const tagOrder = (tag: string): string => tag.replace(/\d+/gu, (digits) => digits.padStart(6, '0'));

/**
 * The rule for plans that are bought together: in inches where all are, else in millimetres, which show a length in
 * inches to a tenth of a millimetre, while a sixteenth of an inch
 * would hide more. It decides which twin of a shop's boards, rolls, sheets and strips is bought, and in what the lists
 * are told.
 */
export function commonUnits(plans: readonly Plan[]): UnitSystem {
  return plans.length > 0 && plans.every(({ units }) => units === 'inch') ? 'inch' : 'metric';
}

/** Puts the pieces of all plans, each as often as it is wanted, together by stock. */
export function poolPieces(plans: readonly Plan[], shelf: Shelf, numbers: readonly number[] = numbersOf(plans)): Pool {
  const lists = plans.map((plan) => piecesOf(plan, shelf));
  const pieces: Record<string, PooledPiece[]> = {};
  const knot_share: Record<string, number> = {};
  lists.forEach((list, index) => {
    const plan = plans[index] as Plan;
    for (let copy = 1; copy <= plan.count; copy++)
      for (const piece of list.pieces) {
        const frame = frameName(plans, index, copy, numbers);
        (pieces[piece.stock] ??= []).push({
          piece,
          plan: index,
          copy,
          tag: frame === '' ? piece.label : `${frame}-${piece.label}`,
        });
        knot_share[piece.stock] = Math.max(
          knot_share[piece.stock] ?? 0,
          shelf.cutting.knot_waste_share[plan.lumber.knots],
        );
      }
  });
  return { lists, stocks: Object.keys(pieces), pieces, knot_share };
}
