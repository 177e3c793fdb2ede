import type { CutEnds } from '../../shelf/shelf.js';
import type { Piece } from './piece.js';

/**
 * Whether a piece that is cut already can be this piece as it is: the same ends, and as long to half a mark of the
 * tape. Blanks to be cut later and
 * half-lapped pieces are never made of one.
 */
export function fitsAsIs(
  { length_mm, as_is }: { readonly length_mm: number; readonly as_is: CutEnds },
  { ends, lay, cut_mm, later, laps }: Piece,
  mark_mm: number,
): boolean {
  const wanted: CutEnds = ends === 'square' ? 'square' : lay === 'flat' ? 'mitre' : 'mitre-on-edge';
  return as_is === wanted && later === null && laps.length === 0 && Math.abs(length_mm - cut_mm) <= mark_mm / 2 + 1e-6;
}
