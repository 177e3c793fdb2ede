import { place, type Lie, type PlacedCloth, type RollPiece } from './piece.js';

/** A piece with the way it will lie. */
export interface LaidPiece {
  readonly piece: RollPiece;
  readonly lie: Lie;
}

/**
 * How a piece looks for its row: `next` only the last row, `first` the first with room, `best` the one it leaves least
 * room in.
 */
export type ShelfRule = 'next' | 'first' | 'best';

interface Row {
  readonly y: number;
  readonly depth: number;
  used: number;
}

/**
 * Rows across the roll, longest pieces first, each row as deep as its first piece: the rule of thumb that any better
 * layout must match.
 */
export function packInRows(laid: readonly LaidPiece[], roll_mm: number, rule: ShelfRule): PlacedCloth[] {
  const rows: Row[] = [];
  let end = 0;
  return longestFirst(laid).map(({ piece, lie }) => {
    let row = pickRow(rows, lie.across, roll_mm, rule);
    if (row === undefined) {
      row = { y: end, depth: lie.along, used: 0 };
      rows.push(row);
      end += lie.along;
    }
    const x = row.used;
    row.used += lie.across;
    return place(piece, lie, x, row.y);
  });
}

function longestFirst(laid: readonly LaidPiece[]): LaidPiece[] {
  return [...laid].sort((p, q) => q.lie.along - p.lie.along || q.lie.across - p.lie.across);
}

function pickRow(rows: readonly Row[], across: number, roll_mm: number, rule: ShelfRule): Row | undefined {
  const fits = (row: Row): boolean => row.used + across <= roll_mm + 1e-9;
  if (rule === 'first') return rows.find(fits);
  if (rule === 'next') {
    const last = rows.at(-1);
    return last !== undefined && fits(last) ? last : undefined;
  }
  return rows
    .filter(fits)
    .reduce<Row | undefined>((best, row) => (best === undefined || row.used > best.used ? row : best), undefined);
}
