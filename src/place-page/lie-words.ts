import type { Place } from '../place/result.js';
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

/** Which side of the board the long point of a mitred piece lies on; null for square ends. */
export function longSideWords({ slot: { piece }, lie }: Pick<Place, 'slot' | 'lie'>): string | null {
  if (piece.ends !== 'mitre') return null;
  const axis = piece.runs === 'level' ? 1 : 0;
  const outward = piece.about === 'bottom' || piece.about === 'left' ? -1 : 1;
  const sides = markedSides(piece, lie);
  const marked = (piece.lay === 'flat' ? sides.edge : sides.face)[axis] * outward > 0;
  return `${marked ? 'marked' : 'other'} ${piece.lay === 'flat' ? 'edge' : 'face'}`;
}

/** What a piece is called: `top bar`, `crossbar 1`, with the ply where there are several. */
export function partWords({ slot: { piece }, plies }: { readonly slot: Place['slot']; readonly plies: number }): string {
  const name = piece.part === 'bar' ? `${piece.about} bar` : piece.about.replace('-', ' ');
  return plies > 1 ? `${name}, ply ${piece.ply}` : name;
}
