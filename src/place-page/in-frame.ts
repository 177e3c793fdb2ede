import { formatLength } from '../base/units-format.js';
import { isRead } from '../pile/pile.js';
import type { Place, PlacedFrame } from '../place/result.js';
import { bullets, paragraph, strong, type Block, type Cell } from '../report/tree.js';
import { markOf } from './chalk.js';
import { chalkBehind, lieWords, listed, longSideOf, partWords, pliesOf, ringed } from './lie-words.js';

/** Where every piece goes in the frame and which way round, in words. */
export function inFrame(frame: PlacedFrame): readonly Block[] {
  const { places } = frame;
  const behind = places
    .filter((place) => isRead(place.board) && chalkBehind(place))
    .map(({ slot }) => ringed(slot.tag));
  const edge = places.some(({ slot }) => slot.piece.lay === 'edge');
  const turned =
    behind.length === 0
      ? ' If you turn it over side over side, left and right change places.'
      : ` If you turn it over side over side, left and right change places and only the chalk of ${listed(behind)} shows.`;
  return [
    paragraph(
      `Lay the frame out with its front up, before you glue; left, right, top and bottom are as seen from the front. “To you” is the side of the cloth, “to the wall” the back.${turned}${places.some((place) => longSideOf(place) !== null) ? ' The long side of every mitred piece lies outside; if it does not, the piece is the wrong way round.' : ''}${edge ? ' Bars on edge show a narrow side to you: their marked face looks outwards (away from the middle of the frame) or inwards.' : ''}`,
    ),
    bullets(places.map((place) => pieceLine(frame, place))),
  ];
}

function pieceLine(frame: PlacedFrame, place: Place): Cell {
  const { board, slot, from_mm } = place;
  const mm = (length: number): string => formatLength(length, frame.plan.units);
  const tip = isRead(board) && chalkBehind(place) ? ` ${turning(place)}: its name and arrow are now behind.` : '';
  return [
    strong(ringed(slot.tag)),
    ` ${partWords({ slot, plies: pliesOf(frame, slot) })}: board ${markOf(board)}, ${lieWords(place)}; ${board.cut === null ? `cut ${mm(slot.piece.cut_mm)} from ${mm(from_mm)}` : 'as it is'}.${tip}`,
  ];
}

/**
 * How a piece whose chalk ends up behind is turned from how it lay for marking: letter up, marked end left, of an
 * upright piece then a quarter turn.
 */
function turning({ slot: { piece }, lie }: Place): string {
  if (piece.runs !== 'level') return `Lay it letter down, its marked end ${lie.end === 'marked-first' ? 'down' : 'up'}`;
  return lie.end === 'marked-last'
    ? 'From how it lay for marking, tip it end over end'
    : 'From how it lay for marking, roll it over sideways';
}
