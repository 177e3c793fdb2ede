import type { StockLength } from '../../shelf/shelf.js';
import type { Piece } from '../pieces/piece.js';
import type { PieceKind, StockKind } from './problem.js';

/** Units of the search per mm: a ten-thousandth of a millimetre holds 1/16 in and 0.5 mm exactly. */
export const unitsPerMm = 10_000;
const unitsPerCoin = 10_000;

/** What one stock's pieces and boards become for the search, with the way back. */
export interface StockProblem {
  readonly kerf: number;
  readonly stock: readonly StockKind[];
  readonly items: readonly PieceKind[];
  readonly setups: readonly number[];
  /** Sound length of each board after its ends are trimmed, mm (knots not yet taken off). */
  readonly sound_mm: readonly number[];
  /** Pieces longer than every board, and by how much, mm. */
  readonly too_long: readonly { readonly index: number; readonly over_mm: number }[];
}

/** Price in the search's whole coins, and back. */
export const toCoins = (price: number): number => Math.round(price * unitsPerCoin);
export const fromCoins = (coins: number): number => coins / unitsPerCoin;

/** Length along the board that the kerf of a 45° cut takes. */
export const mitreKerf_mm = (kerf_mm: number): number => kerf_mm * Math.SQRT2;

/** Whether a piece can share its mitres with its neighbours: both its sides must be there. */
export const nests = (piece: Piece): boolean => piece.ends === 'mitre' && piece.short_mm > 0;

/**
 * Pieces and boards of one stock in whole units. Mitred pieces with the same `across` nest: turned end for end in turn,
 * neighbours share a cut, so
 * each takes long point − across + the mitre's kerf, and the first triangle is paid once per board (`setup`). On a
 * board the square pieces come first, then the
 * nested groups. With one group the mitre's longer kerf at the very end may fall off the board; with several it is
 * paid, which is never too little.
 * New boards lose `end_trim` at both ends and the share for knots. A board of price 0 is a leftover on hand: its stated
 * length is its sound length.
 * A piece that fits a board's sound length but not what knots leave of it may take such a board alone, to be picked
 * clear.
 */
export function stockProblem(
  pieces: readonly Piece[],
  lengths: readonly StockLength[],
  cutting: { kerf_mm: number; end_trim_mm: number },
  knotShare: number,
): StockProblem {
  const up = (mm: number): number => Math.ceil(mm * unitsPerMm - 1e-3);
  const down = (mm: number): number => Math.floor(mm * unitsPerMm + 1e-3);
  const kerf = up(cutting.kerf_mm);
  const longer = up(mitreKerf_mm(cutting.kerf_mm)) - kerf;
  const groups = [...new Set(pieces.filter(nests).map((piece) => piece.across_mm))].sort((p, q) => q - p);
  const setups = groups.map((across_mm) => Math.max(0, up(across_mm) - (groups.length === 1 ? longer : 0)));
  const sound_mm = lengths.map(({ length_mm, price }) =>
    price === 0 ? length_mm : length_mm - 2 * cutting.end_trim_mm,
  );
  const usable = lengths.map(({ price }, s) => down((sound_mm[s] as number) * (price === 0 ? 1 : 1 - knotShare)));
  const had = lengths.map(({ available }, s) => available !== 0 && (usable[s] as number) > 0);
  const longest = Math.max(0, ...sound_mm.filter((_, s) => had[s]).map(down));
  const too_long: { index: number; over_mm: number }[] = [];
  const items = pieces.map((piece, index): PieceKind => {
    const group = nests(piece) ? groups.indexOf(piece.across_mm) : -1;
    const length = up(piece.cut_mm) + (piece.ends === 'mitre' ? longer : 0) - (group < 0 ? 0 : down(piece.across_mm));
    const over = length + (group < 0 ? 0 : (setups[group] as number)) - longest;
    if (over > 0) too_long.push({ index, over_mm: over / unitsPerMm });
    return group < 0 ? { length, count: 1 } : { length, count: 1, group };
  });
  const stock = lengths.map(({ price, available }, s): StockKind => {
    const length = Math.max(1, usable[s] as number);
    return {
      length,
      price: toCoins(price),
      available: had[s] ? available : 0,
      alone: Math.max(length, down(sound_mm[s] as number)),
    };
  });
  return { kerf, stock, items, setups, sound_mm, too_long };
}
