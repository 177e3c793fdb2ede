import type { Nail } from '../shelf/shelf.js';
import { LEAST_EXIT_MM } from './pick-screw.js';
import { nailFits, type NailedPlace } from './nail-path.js';

/**
 * The nail that fits a corner: the usual one where it does, else the thinnest, then shortest; null when none on the
 * shelf reaches, stays inside and keeps its distances.
 */
export function pickNail(nails: readonly Nail[], usual: string, place: NailedPlace): Nail | null {
  const fits = nails.filter((nail) => nailFits(place, nail, LEAST_EXIT_MM));
  return (
    fits.find(({ key }) => key === usual) ??
    [...fits].sort(
      (a, b) => a.diameter_mm - b.diameter_mm || a.length_mm - b.length_mm || (a.key < b.key ? -1 : 1),
    )[0] ??
    null
  );
}
