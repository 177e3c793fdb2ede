import { formatLength } from '../base/units-format.js';
import type { Shelf, StockLength } from '../shelf/shelf.js';
import type { Pile, PileBoard } from './pile.js';
import { soundStretches } from './stretches.js';

/**
 * The shelf with the boards in hand laid on it at no cost, each sound stretch between knots as a length of its own,
 * each piece that is cut already as it is: what they give is not bought.
 */
export function shelfWithPile(shelf: Shelf, pile: Pile): Shelf {
  const lumber = Object.entries(shelf.lumber).map(([key, entry]) => {
    const boards = pile.boards.filter(({ stock }) => stock === key);
    return [
      key,
      boards.length === 0
        ? entry
        : { ...entry, lengths: [...boards.flatMap((board) => stretchLengths(board, pile)), ...(entry.lengths ?? [])] },
    ] as const;
  });
  return { ...shelf, lumber: Object.fromEntries(lumber) };
}

function stretchLengths(board: PileBoard, { units }: Pile): StockLength[] {
  if (board.cut !== null)
    return [{ length_mm: board.length_mm, price: 0, available: 1, mark: board.mark, as_is: board.cut }];
  return soundStretches(board).map(({ from_mm, to_mm }) => ({
    length_mm: to_mm - from_mm,
    price: 0,
    available: 1,
    hand: { mark: board.mark, from_mm },
    mark: from_mm === 0 ? board.mark : `${board.mark} from ${formatLength(from_mm, units)}`,
  }));
}
