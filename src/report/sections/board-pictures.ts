import type { CutPlan } from '../../cutting/boards/purchase.js';
import { userText } from '../clean-text.js';
import { cutBoards, type BoardsPicture } from '../drawings/cut-boards.js';
import { stockNames } from '../words/stock.js';
import type { Picture } from '../drawings/picture.js';

/** Boards on one picture. */
const perPicture = 8;

/** The boards of a cutting as pictures of at most eight boards each: `boards.svg`, `boards-2.svg` … */
export function boardPictures(cut: CutPlan): readonly Picture[] {
  const named = stockNames(cut);
  const boards = cut.stocks.flatMap(({ stock, boards: own }) =>
    own.map((board, i): BoardsPicture['boards'][number] => ({
      label:
        board.mark === null ? `${named(stock)}, board ${i + 1}` : `${named(stock)}, board ${userText(board.mark, 40)}`,
      length_mm: board.length_mm,
      left_mm: board.left_mm,
      pieces: board.pieces.map(({ piece, tag, from_mm, to_mm, long_side }) => ({
        label: tag,
        from_mm,
        to_mm,
        slant_mm: piece.ends === 'mitre' ? piece.across_mm : 0,
        long_side,
      })),
    })),
  );
  const sheets = Array.from({ length: Math.ceil(boards.length / perPicture) }, (_, i) =>
    boards.slice(i * perPicture, (i + 1) * perPicture),
  );
  return sheets.map((sheet, i) =>
    cutBoards({ units: cut.units, boards: sheet }, i === 0 ? 'boards.svg' : `boards-${i + 1}.svg`),
  );
}
