import type { Plan } from '../../plan/plan.js';
import type { StockLength } from '../../shelf/shelf.js';
import { fitsAsIs } from '../pieces/as-is.js';
import type { PlacedPiece } from './layout.js';
import type { PooledPiece } from '../pieces/pool.js';
import { mitreKerf_mm } from './stock-problem.js';
import { tapeMark_mm } from '../../base/tape.js';

/**
 * A stretch of a board in hand whose pieces are settled before anything is searched, and the gaps between them that may
 * still be cut, from its own beginning, mm.
 */
export interface HeldBoard {
  readonly length: StockLength;
  readonly pieces: readonly PlacedPiece[];
  readonly gaps: readonly { readonly from_mm: number; readonly to_mm: number }[];
}

/** What is settled, and what is left to search. A length of a gap tells the board it belongs to. */
export interface Held {
  readonly boards: readonly HeldBoard[];
  readonly pieces: readonly PooledPiece[];
  readonly lengths: readonly (StockLength & { readonly gap?: { readonly board: number; readonly from_mm: number } })[];
}

/** Lengths that differ by less are the same. */
const dust_mm = 0.01;

/**
 * Settles what the plans and the boards in hand say already: a piece whose plan names its board and place is cut there,
 * a piece that is cut already is
 * used as it is and never sawn, and a cut piece that fits nothing stays. Everything else is left to search.
 */
export function holdPieces(
  pieces: readonly PooledPiece[],
  lengths: readonly StockLength[],
  plans: readonly Plan[],
  kerf_mm: number,
): Held {
  const open = [...pieces];
  const boards = lengths.flatMap((length): { length: StockLength; pieces: PlacedPiece[] }[] => {
    const own = length.as_is === undefined ? placedOn(length, open, plans) : asItIs(length, open, plans);
    for (const one of own)
      open.splice(
        open.findIndex(({ tag }) => tag === one.tag),
        1,
      );
    return own.length === 0 ? [] : [{ length, pieces: own }];
  });
  const held = boards.map(({ length, pieces: own }): HeldBoard => ({
    length,
    pieces: own,
    gaps: length.as_is === undefined ? gapsOf(length.length_mm, own, kerf_mm) : [],
  }));
  const rest = lengths.filter((length) => length.as_is === undefined && !held.some((one) => one.length === length));
  const gaps = held.flatMap(({ length, gaps: all }, board) =>
    all.map(({ from_mm, to_mm }) => ({ ...length, length_mm: to_mm - from_mm, gap: { board, from_mm } })),
  );
  return { boards: held, pieces: open, lengths: [...gaps, ...rest] };
}

/**
 * The piece that a cut piece is by its plan, else the first that it can be and that no plan places elsewhere; if any.
 */
function asItIs(length: StockLength, open: readonly PooledPiece[], plans: readonly Plan[]): PlacedPiece[] {
  const fitting = open.filter(({ piece, plan }) =>
    fitsAsIs(
      { length_mm: length.length_mm, as_is: length.as_is ?? 'square' },
      piece,
      tapeMark_mm(plans[plan]?.units ?? 'metric'),
    ),
  );
  const found =
    fitting.find((one) => placeOf(one, plans)?.mark === length.mark) ??
    fitting.find((one) => placeOf(one, plans) === undefined);
  return found === undefined
    ? []
    : [{ ...found, from_mm: 0, to_mm: length.length_mm, long_side: found.piece.ends === 'square' ? 'both' : 'upper' }];
}

/** Where its plan says that a piece lies; the boards of a plan are those of its first frame. */
const placeOf = ({ piece, plan, copy }: PooledPiece, plans: readonly Plan[]): Plan['boards'][number]['on'] =>
  copy === 1
    ? plans[plan]?.boards.find((board) => board.for === piece.about && board.ply === piece.ply)?.on
    : undefined;

/** Pieces whose plans say that they lie on this stretch, none over another. */
function placedOn(
  { length_mm, hand }: StockLength,
  open: readonly PooledPiece[],
  plans: readonly Plan[],
): PlacedPiece[] {
  if (hand === undefined) return [];
  const found: PlacedPiece[] = [];
  for (const pooled of open) {
    const { piece } = pooled;
    const on = placeOf(pooled, plans);
    if (on?.mark !== hand.mark) continue;
    const from_mm = on.from_mm - hand.from_mm;
    const to_mm = from_mm + piece.cut_mm;
    if (
      from_mm < -dust_mm ||
      to_mm > length_mm + dust_mm ||
      found.some((other) => from_mm < other.to_mm - dust_mm && to_mm > other.from_mm + dust_mm)
    )
      continue;
    found.push({ ...pooled, from_mm, to_mm, long_side: piece.ends === 'square' ? 'both' : 'upper' });
  }
  return found.sort((a, b) => a.from_mm - b.from_mm);
}

/** What is left between and beyond pieces once a saw cut is paid on the side of each. */
function gapsOf(length_mm: number, pieces: readonly PlacedPiece[], kerf_mm: number): HeldBoard['gaps'] {
  const cut = ({ piece }: PlacedPiece): number => (piece.ends === 'mitre' ? mitreKerf_mm(kerf_mm) : kerf_mm);
  const gaps: { from_mm: number; to_mm: number }[] = [];
  let from_mm = 0;
  for (const piece of pieces) {
    gaps.push({ from_mm, to_mm: piece.from_mm - cut(piece) });
    from_mm = piece.to_mm + cut(piece);
  }
  return [...gaps, { from_mm, to_mm: length_mm }].filter((gap) => gap.to_mm - gap.from_mm > dust_mm);
}
