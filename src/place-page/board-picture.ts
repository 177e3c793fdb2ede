import type { UnitSystem } from '../base/names.js';
import { soundStretches } from '../pile/stretches.js';
import type { Place, PlacedPile } from '../place/result.js';
import { userText } from '../report/clean-text.js';
import { cutBoards } from '../report/drawings/cut-boards.js';
import type { Picture } from '../report/drawings/picture.js';
import { longSideWords } from './lie-words.js';

/** Boards on one picture. */
const perPicture = 8;

/** The boards that are cut, each seen with its marked face up and its marked end on the left. */
export function pileBoardPictures({ frames, left }: Pick<PlacedPile, 'frames' | 'left'>, units: UnitSystem): readonly Picture[] {
  const places = frames.flatMap((frame) => frame.places);
  const boards = [...new Set(places.map(({ board }) => board))].map((board) => {
    const own = places.filter((place) => place.board === board).sort((a, b) => a.from_mm - b.from_mm);
    const end = left.find((one) => one.board === board)?.left.at(-1);
    const end_mm = Math.max(...own.map((place) => place.from_mm + place.slot.piece.cut_mm));
    return {
      label: `Board ${userText(board.mark, 12)}`,
      length_mm: board.length_mm,
      left_mm: end !== undefined && end.from_mm >= end_mm ? end.to_mm - end.from_mm : 0,
      cut_out: gaps(soundStretches(board), board.length_mm),
      pieces: own.map(pieceOf),
    };
  });
  return Array.from({ length: Math.ceil(boards.length / perPicture) }, (_, i) => cutBoards({ units, boards: boards.slice(i * perPicture, (i + 1) * perPicture) }, i === 0 ? 'place-boards.svg' : `place-boards-${i + 1}.svg`));
}

function pieceOf(place: Place) {
  const { slot: { piece, tag }, from_mm } = place;
  const long = longSideWords(place);
  return {
    label: tag,
    from_mm,
    to_mm: from_mm + piece.cut_mm,
    slant_mm: long !== null && piece.lay === 'flat' ? piece.across_mm : 0,
    long_side: long === null || piece.lay === 'edge' ? ('both' as const) : long === 'marked edge' ? ('upper' as const) : ('lower' as const),
  };
}

/** What is cut out between the sound stretches. */
function gaps(stretches: readonly { readonly from_mm: number; readonly to_mm: number }[], length_mm: number): readonly (readonly [number, number])[] {
  const edges = [0, ...stretches.flatMap(({ from_mm, to_mm }) => [from_mm, to_mm]), length_mm];
  return Array.from({ length: edges.length / 2 }, (_, i) => [edges[2 * i] as number, edges[2 * i + 1] as number] as const).filter(([from, to]) => to > from);
}
