import type { Plan } from '../../plan/plan.js';
import type { Lumber, Shelf } from '../../shelf/shelf.js';
import type { Pool, PooledPiece } from '../pieces/pool.js';
import { holdPieces, type Held } from './held.js';
import type { CutResult } from './problem.js';
import type { StockPurchase } from './purchase.js';
import { stockProblem, type StockProblem } from './stock-problem.js';
import type { LongPiece } from './too-long.js';

/** One stock's question: its pieces, its boards, and the search's problem. */
export interface Asked extends Held {
  readonly key: string;
  readonly lumber: Lumber;
  /** Null when there is nothing to search: no lengths on the shelf, or pieces too long. */
  readonly problem: StockProblem | null;
  readonly long: readonly LongPiece[];
  readonly knot_share: number;
}

/** The same with what came of it: what was found, or what was cut already. */
export interface Answered extends Asked {
  readonly result?: CutResult;
  readonly kept?: StockPurchase | undefined;
}

/** What one stock of a pool becomes for the search. */
export function ask(plans: readonly Plan[], shelf: Shelf, pool: Pool, key: string): Asked {
  const lumber = shelf.lumber[key] as Lumber;
  const held = holdPieces(
    pool.pieces[key] as readonly PooledPiece[],
    lumber.lengths ?? [],
    plans,
    shelf.cutting.kerf_mm,
  );
  const { pieces, lengths } = held;
  const known = lengths.length > 0 || pieces.length === 0;
  const knot_share = pool.knot_share[key] ?? 0;
  const problem = stockProblem(
    pieces.map(({ piece }) => piece),
    lengths,
    shelf.cutting,
    knot_share,
  );
  const long = !known
    ? []
    : problem.too_long.map(({ index, over_mm }) => ({ ...(pieces[index] as PooledPiece), over_mm }));
  return { ...held, key, lumber, problem: !known || long.length > 0 ? null : problem, long, knot_share };
}
