import type { Plan } from '../../plan/plan.js';
import type { Lumber, Shelf, StockLength } from '../../shelf/shelf.js';
import type { PooledPiece } from '../pieces/pool.js';
import type { Alternative, TooLong } from './purchase.js';
import { downToMark, tapeMark_mm } from '../../base/tape.js';

/** A piece of the pool that exceeds the longest board by `over_mm`. */
export interface LongPiece extends PooledPiece {
  readonly over_mm: number;
}

/**
 * The pieces of one stock that no board is long enough for, one entry per label and plan, each with what would help
 * without joining boards end to end.
 */
export function tooLong(
  pieces: readonly LongPiece[],
  plans: readonly Plan[],
  shelf: Shelf,
  stock: string,
  lengths: readonly StockLength[],
): TooLong[] {
  const trim_mm = shelf.cutting.end_trim_mm;
  const offered = lengths.filter(({ available }) => available !== 0);
  const sound = ({ length_mm, price }: StockLength): number => (price === 0 ? length_mm : length_mm - 2 * trim_mm);
  const longest_mm = Math.max(0, ...offered.map(({ length_mm }) => length_mm));
  return pieces
    .filter(({ copy }) => copy === 1)
    .map(({ over_mm, ...piece }) => {
      const plan = plans[piece.plan] as Plan;
      const others = Object.values(shelf.lumber).filter(
        (other) => sameSection(other, shelf.lumber[stock]) && other.key !== stock,
      );
      const alternatives: Alternative[] = [
        { kind: 'longer-board', length_mm: Math.ceil(piece.piece.cut_mm + 2 * trim_mm) },
      ];
      for (const other of others) {
        const enough = (other.lengths ?? []).filter(
          (length) => sound(length) >= piece.piece.cut_mm && length.available !== 0,
        );
        if (enough.length > 0)
          alternatives.push({
            kind: 'other-stock',
            stock: other.key,
            length_mm: Math.min(...enough.map(({ length_mm }) => length_mm)),
          });
      }
      const smaller = shrink(piece, plan, over_mm);
      return {
        stock,
        piece,
        needs_mm: piece.piece.cut_mm + 2 * trim_mm,
        longest_mm,
        alternatives: smaller === null ? alternatives : [...alternatives, smaller],
      };
    });
}

function sameSection(other: Lumber, lumber: Lumber | undefined): boolean {
  return (
    lumber !== undefined &&
    Math.abs(other.thickness_mm - lumber.thickness_mm) < 0.5 &&
    Math.abs(other.width_mm - lumber.width_mm) < 0.5
  );
}

/** Largest face, or brace leg, that the longest board allows; null when nothing sensible is left. */
function shrink({ piece }: PooledPiece, plan: Plan, over_mm: number): Alternative | null {
  const mark_mm = tapeMark_mm(plan.units);
  if (piece.part === 'brace') {
    const most_mm = downToMark((plan.corners.brace?.leg_mm ?? 0) - over_mm / Math.SQRT2, mark_mm);
    return most_mm > 0 ? { kind: 'shorter-leg', most_mm } : null;
  }
  const side = piece.runs === 'upright' ? 'height' : 'width';
  const most_mm = downToMark((side === 'height' ? plan.face.height_mm : plan.face.width_mm) - over_mm, mark_mm);
  return most_mm > 0 ? { kind: 'smaller-face', side, most_mm } : null;
}
