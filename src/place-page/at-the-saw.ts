import type { UnitSystem } from '../base/names.js';
import { formatLength } from '../base/units-format.js';
import { isRead } from '../pile/pile.js';
import { inOrder, endOf, meetingsOf, slackAtStart, type Meeting } from '../place/off-cuts.js';
import type { Place, PlacedPile } from '../place/result.js';
import { userText } from '../report/clean-text.js';
import { bullets, paragraph, strong, type Block, type Cell } from '../report/tree.js';
import { markOf } from './chalk.js';
import { listed, longSideOf, longSideWords, partWords, pliesOf, ringed, sideWords } from './lie-words.js';

/** The pieces on their boards in words: what to measure, along which side, and what falls out between. */
export function markingBlocks({ frames }: PlacedPile, units: UnitSystem): readonly Block[] {
  const places = frames.flatMap((frame) =>
    frame.places.map((place) => ({
      ...place,
      name: `${partWords({ slot: place.slot, plies: pliesOf(frame, place.slot) })} ${ringed(place.slot.tag)}`,
      plies: pliesOf(frame, place.slot),
    })),
  );
  const boards = [...new Set(places.map(({ board }) => board))];
  const mitred = places.some((place) => longSideOf(place) !== null);
  const marking = [
    'Lay each board with its letter up and the stroke on your left. Before you saw, write on every piece, on the marked face, its name with a ring round it (a B in a ring is written (B) here; it is the bottom bar and not board B), and an arrow to the marked end: once that is sawn off, nothing else tells which way round it was.',
    mitred
      ? 'Lengths run from the marked end and are measured along the long side of the piece; each end at 45° runs inward from there. Saw on the waste side of every line, and keep the figures even if your saw cuts thinner.'
      : 'Saw on the waste side of every line, and keep the figures even if your saw cuts thinner.',
    ...(places.some(({ plies }) => plies > 1)
      ? ['A figure after a name is the ply (1 is the outer or front one).']
      : []),
  ];
  return [
    paragraph(marking.join(' ')),
    bullets(
      boards.map((board) =>
        onBoard(board, inOrder(places.filter((place) => place.board === board)) as typeof places, units),
      ),
    ),
  ];
}

function onBoard(board: Place['board'], own: readonly (Place & { readonly name: string })[], units: UnitSystem): Cell {
  const name = strong(markOf(board));
  if (board.cut !== null)
    return [
      name,
      ` (${userText(board.stock, 40)}) is cut already: as it is it becomes ${own.map((place) => place.name).join()}. Do not saw it.`,
    ];
  const each = own.map(
    (place) =>
      `${place.name} from ${formatLength(place.from_mm, units)} to ${formatLength(endOf(place), units)}${sidePhrase(place)}`,
  );
  const more = [
    ...meetingsOf(board, own, longSideOf).map((one) => meetingWords(one, units)),
    ...startWords(board, own, units),
  ];
  return [
    name,
    ` (${userText(board.stock, 40)}, ${formatLength(board.length_mm, units)}${isRead(board) ? '' : ', nobody has read it: any one of its kind will do'}): ${each.join('; ')}. ${more.join(' ')}`.trimEnd(),
  ];
}

function sidePhrase(place: Place): string {
  const side = longSideWords(place);
  return side === null ? ', square ends' : `, 45° at both ends, long side on the ${side}`;
}

function meetingWords({ before, after, marked_mm, other_mm }: Meeting, units: UnitSystem): string {
  const [a, b] = [before, after].map(({ slot }) => ringed(slot.tag)) as [string, string];
  const [long, next] = [longSideOf(before), longSideOf(after)];
  if (long === null && next === null)
    return `${marked_mm > before.kerf_mm + 1e-3 ? `Between ${a} and ${b} are two cuts, ${formatLength(marked_mm, units)} apart` : `The ${formatLength(marked_mm, units)} between ${a} and ${b} are the saw cut`}.`;
  const mm = (side: 'marked' | 'other', more = ''): string =>
    `${formatLength(side === 'marked' ? marked_mm : other_mm, units)} along the ${sideWords(long === null ? after : before, side)}${more}`;
  const wide = (long ?? next) as 'marked' | 'other';
  if (long !== null && next !== null && long !== next)
    return `Between ${a} and ${b} the ends lean the same way: make two cuts; a slanting strip falls out, ${mm('marked')} and as much on the other.`;
  const why = long === null || next === null ? 'one end is square and the other slants' : 'the ends lean opposite ways';
  return `Between ${a} and ${b} ${why}: make two cuts; a wedge falls out, ${mm(wide, ' (the long side)')}, ${mm(wide === 'marked' ? 'other' : 'marked')}.`;
}

/** What to look at where a piece begins at the very end of its board, or reaches to the other one. */
function startWords(board: Place['board'], own: readonly Place[], units: UnitSystem): readonly string[] {
  const [first] = own;
  const last = own.at(-1);
  const atEnd =
    last !== undefined && endOf(last) > board.length_mm - 0.5
      ? [`${ringed(last.slot.tag)} reaches to the board’s far end: see that it is sound and square there.`]
      : [];
  const slack_mm = slackAtStart(board, own);
  if (first === undefined || slack_mm === null) return atEnd;
  const name = ringed(first.slot.tag);
  const with_it = own
    .filter((place) => place !== first && place.from_mm < (board.knots[0]?.from_mm ?? Infinity))
    .map(({ slot }) => ringed(slot.tag));
  const move =
    slack_mm < 0.5
      ? 'There is no room to move it: if the end is bad, note that as a bad place in the pile and place again.'
      : `If not, it may begin up to ${formatLength(slack_mm, units)} further in${with_it.length === 0 ? '' : `, and ${listed(with_it)} with it`}.`;
  const stroke =
    longSideOf(first) === null ? '' : ' The stroke may fall away with the triangle at that end; the arrow stays.';
  return [`${name} begins at the board’s own end: see that it is sound and square. ${move}${stroke}`, ...atEnd];
}

/** What else to heed at the saw. */
export function sawing({ frames }: PlacedPile): readonly Block[] {
  const later = frames.some(({ places }) => places.some(({ slot }) => slot.piece.later !== null));
  return [
    ...(later
      ? [
          paragraph(
            'Plies that are glued are cut square and a little long here; they are cut to their final length once they are one bar, as the cut list of the plan says.',
          ),
        ]
      : []),
    paragraph('Wear eye protection, keep hands clear of the blade, and clamp short pieces rather than holding them.'),
  ];
}
