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
  const reach = (s: Screw): number => (s.length_mm - space.through_mm) / (LEAST_PENETRATION_DIAMETERS * s.shank_mm);
  const inside = Object.values(shelf.screws).filter(
    (s) => s.length_mm > space.through_mm && space.through_mm + space.holding_mm - s.length_mm >= LEAST_EXIT_MM,
  );
  const slender = inside.filter((s) => ndsDistances(s.shank_mm, true).edge_mm <= space.edge_mm);
  const list = slender.length > 0 ? slender : inside;
  const order = (a: Screw, b: Screw): number =>
    a.length_mm - b.length_mm || a.shank_mm - b.shank_mm || (a.key < b.key ? -1 : 1);
  const full = list.filter((s) => reach(s) >= 1).sort(order);
  if (full[0]) return full[0];
  return [...list].sort((a, b) => reach(b) - reach(a) || order(a, b))[0] ?? null;
}
