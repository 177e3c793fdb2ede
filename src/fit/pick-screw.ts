import type { Screw, Shelf } from '../shelf/shelf.js';
import { LEAST_PENETRATION_DIAMETERS, ndsDistances } from './distances.js';

/** Least wood to leave beyond a tip, mm (1/8 in). */
export const LEAST_EXIT_MM = 3.2;

/** Where a screw has to fit: through one piece, into another, no thicker than its edges allow. */
export interface ScrewSpace {
  readonly through_mm: number;
  /** Wood in line with the screw beyond the first piece; Infinity along the grain of a long piece. */
  readonly holding_mm: number;
  /** Distance from the screw to the nearest edge. */
  readonly edge_mm: number;
}

/**
 * The screw on the shelf that suits a space: none that would come within LEAST_EXIT_MM of the far side; those that keep
 * their distance to the edge first; then the shortest with LEAST_PENETRATION_DIAMETERS of penetration, or, when none
 * has that, the one that comes nearest to it. Null when no screw stays inside and reaches the second piece.
 */
export function pickScrew(shelf: Shelf, space: ScrewSpace): Screw | null {
  const { through_mm, holding_mm, edge_mm } = space;
  const keepsEdge = (s: Screw): number => (ndsDistances(s.shank_mm, true).edge_mm <= edge_mm ? 1 : 0);
  const reach = (s: Screw): number =>
    Math.min(1, (s.length_mm - through_mm) / (LEAST_PENETRATION_DIAMETERS * s.shank_mm));
  const order = (a: Screw, b: Screw): number =>
    keepsEdge(b) - keepsEdge(a) ||
    reach(b) - reach(a) ||
    a.length_mm - b.length_mm ||
    a.shank_mm - b.shank_mm ||
    (a.key < b.key ? -1 : 1);
  let best: Screw | null = null;
  for (const s of Object.values(shelf.screws)) {
    const inside = s.length_mm > through_mm && through_mm + holding_mm - s.length_mm >= LEAST_EXIT_MM;
    if (inside && (best === null || order(s, best) < 0)) best = s;
  }
  return best;
}
