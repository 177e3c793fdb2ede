import { spokenName } from '../base/names.js';
import { isRead } from '../pile/pile.js';
import type { Place, PlacedFrame } from '../place/result.js';
import { markedSides } from '../place/turning.js';

/** Where the marked face of a board looks in its place, such as `to you`, `to the wall` or `outwards`. */
export function faceWords({ slot: { piece }, lie }: Pick<Place, 'slot' | 'lie'>): string {
  const shown = lie.face === 'marked';
  if (piece.lay === 'flat') return shown ? 'to you' : 'to the wall';
  if (piece.part === 'bar') return shown ? 'outwards' : 'inwards';
  if (piece.runs === 'level') return shown ? 'up' : 'down';
  return shown ? 'to the right' : 'to the left';
}

/** Where the marked end of a board points in its place. */
export function endWords({ slot: { piece }, lie }: Pick<Place, 'slot' | 'lie'>): string {
  const first = lie.end === 'marked-first';
  return piece.runs === 'level' ? (first ? 'left' : 'right') : first ? 'down' : 'up';
}

/**
 * Which side of the board the long side of a mitred piece lies on: the marked edge, of a piece mitred on edge the
 * marked face, or the side across from it; null for square ends.
 */
export function longSideOf({ slot: { piece }, lie }: Pick<Place, 'slot' | 'lie'>): 'marked' | 'other' | null {
  if (piece.ends !== 'mitre') return null;
  const axis = piece.runs === 'level' ? 1 : 0;
  const outward = piece.about === 'bottom' || piece.about === 'left' ? -1 : 1;
  const sides = markedSides(piece, lie);
  return (piece.lay === 'flat' ? sides.edge : sides.face)[axis] * outward > 0 ? 'marked' : 'other';
}

/** What the sides of a board are called that a mitre runs between. */
export const sideWords = ({ slot: { piece } }: Pick<Place, 'slot'>, side: 'marked' | 'other'): string =>
  `${side} ${piece.lay === 'flat' ? 'edge' : 'face'}`;

/** The same for its long side; null for square ends. */
export function longSideWords(place: Pick<Place, 'slot' | 'lie'>): string | null {
  const side = longSideOf(place);
  return side === null ? null : sideWords(place, side);
}

/** How a piece lies in the frame, in words; one that nobody has read may lie any way its ends allow. */
export function lieWords(place: Place): string {
  if (isRead(place.board)) return `marked face ${faceWords(place)}, marked end ${endWords(place)}`;
  return longSideOf(place) === null ? 'any way round' : 'any way round, its long side outwards';
}

/** Whether the chalk of a piece lies at the back of the frame. */
export const chalkBehind = ({ slot: { piece }, lie }: Pick<Place, 'slot' | 'lie'>): boolean =>
  piece.lay === 'flat' && lie.face === 'other';

/** The name of a piece as it stands on the wood, with a ring round it. */
export const ringed = (tag: string): string => `(${tag})`;

/** Plies of the bar or crossbar a piece belongs to. */
export const pliesOf = ({ plan }: Pick<PlacedFrame, 'plan'>, { piece }: Place['slot']): number =>
  piece.part === 'bar'
    ? plan.bars.plies
    : (plan.crossbars[Number(piece.about.replace('crossbar-', '')) - 1]?.plies ?? 1);

/** Words one after the other: `A, B and C`. */
export const listed = (words: readonly string[]): string =>
  words.length < 2 ? words.join() : `${words.slice(0, -1).join(', ')} and ${words.at(-1) ?? ''}`;

/** What a piece is called: `top bar`, `crossbar 1`, with the ply where there are several. */
export function partWords({
  slot: { piece },
  plies,
}: {
  readonly slot: Place['slot'];
  readonly plies: number;
}): string {
  const name = piece.part === 'bar' ? `${piece.about} bar` : spokenName(piece.about);
  return plies > 1 ? `${name}, ply ${piece.ply}` : name;
}
