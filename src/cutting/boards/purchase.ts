import type { UnitSystem } from '../../base/names.js';
import type { Lumber } from '../../shelf/shelf.js';
import type { PlacedPiece } from './layout.js';
import type { PieceList } from '../pieces/piece.js';
import type { PooledPiece } from '../pieces/pool.js';

/** One board to take, and what is cut from it. */
export interface BoughtBoard {
  /** Shelf key. */
  readonly stock: string;
  readonly length_mm: number;
  readonly price: number;
  /** A leftover of price 0 that is there already. */
  readonly on_hand: boolean;
  /** What is chalked on a board in hand; null for all others. */
  readonly mark: string | null;
  /** Its piece is cut already and used as it is: nothing is sawn. */
  readonly ready: boolean;
  /** Cut away at each end first, mm. */
  readonly trim_mm: number;
  readonly pieces: readonly PlacedPiece[];
  /** Sound length left at the end, mm, before knots are cut out of it. */
  readonly left_mm: number;
  /** One of its pieces needs a board without knots in the way. */
  readonly pick_clear: boolean;
}

/** All boards of one stock. */
export interface StockPurchase {
  readonly stock: string;
  readonly lumber: Lumber;
  /** Longest first. */
  readonly boards: readonly BoughtBoard[];
  /** The buying list: boards of one length and price together. */
  readonly kinds: readonly {
    readonly length_mm: number;
    readonly price: number;
    readonly count: number;
    readonly on_hand: boolean;
  }[];
  /** Share of each new board kept back for knots. */
  readonly knot_share: number;
  readonly cost: number;
  /** True when no choice of boards on the shelf costs less, with pieces nested, trimmed and spaced as told. */
  readonly proven: boolean;
  /** True when no choice that costs as little wastes less or takes fewer boards. */
  readonly ties_proven: boolean;
  /** No choice costs less than this. */
  readonly bound: number;
  /** (cost − bound) / cost. */
  readonly gap: number;
  /** Share of the bought length that is not in the pieces. */
  readonly waste_share: number;
}

/** A stock whose boards are not known, and why, in a sentence. */
export interface UncutStock {
  readonly stock: string;
  readonly reason: string;
}

/** What would make a piece possible without joining boards end to end. */
export type Alternative =
  | { readonly kind: 'longer-board'; readonly length_mm: number }
  /** Another stock of the same section that is sold long enough. */
  | { readonly kind: 'other-stock'; readonly stock: string; readonly length_mm: number }
  /** Largest width or height of the face that the longest board allows. */
  | { readonly kind: 'smaller-face'; readonly side: 'width' | 'height'; readonly most_mm: number }
  | { readonly kind: 'shorter-leg'; readonly most_mm: number };

/** A piece longer than any board of its stock. */
export interface TooLong {
  readonly stock: string;
  readonly piece: PooledPiece;
  /** Length of board it needs, ends trimmed. */
  readonly needs_mm: number;
  /** Longest board there is. */
  readonly longest_mm: number;
  readonly alternatives: readonly Alternative[];
}

/** The whole answer for one plan or many: what to buy, how to cut it, what it costs. */
export interface CutPlan {
  /** Pieces of one frame of each plan. */
  readonly lists: readonly PieceList[];
  readonly plan_names: readonly string[];
  /** Units of the first plan. */
  readonly units: UnitSystem;
  readonly currency: string;
  readonly demo_prices: boolean;
  readonly kerf_mm: number;
  readonly stocks: readonly StockPurchase[];
  readonly uncut: readonly UncutStock[];
  readonly too_long: readonly TooLong[];
  /** Cost of all wood; null when some stock is uncut, `reason` then says why. Leftovers on hand cost nothing. */
  readonly cost: number | null;
  /** Boards to buy, leftovers on hand not counted. */
  readonly boards: number | null;
  readonly waste_share: number | null;
  readonly proven: boolean;
  /** Lower bound on the cost of the stocks that could be cut. */
  readonly bound: number;
  readonly reason: string | null;
}
