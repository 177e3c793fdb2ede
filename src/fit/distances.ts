/** Whether the end of a piece is pulled towards (tension) or pressed away from (compression) by the fastening. */
export type EndLoad = 'tension' | 'compression';

/** Least distances of a fastening, mm. */
export interface LeastDistances {
  readonly edge_mm: number;
  readonly end_mm: number;
  readonly along_grain_mm: number;
  readonly across_grain_mm: number;
  readonly staggered_rows_mm: number;
}

/**
 * Advisory least distances for nails and screws in wood, in diameters of the shank. Source: nds-2018-memory, Commentary
 * Tables C12.1.5.7 and C12.1.6.6.
 */
export function ndsDistances(diameter_mm: number, bored: boolean, end: EndLoad = 'tension'): LeastDistances {
  const D = diameter_mm;
  return {
    edge_mm: 2.5 * D,
    end_mm: (end === 'tension' ? (bored ? 10 : 15) : bored ? 5 : 10) * D,
    along_grain_mm: (bored ? 10 : 15) * D,
    across_grain_mm: (bored ? 5 : 10) * D,
    staggered_rows_mm: 2.5 * D,
  };
}

/**
 * Thinnest piece a nail may go into without drilling, mm: the larger of 7 d and (13 d − 30) ρ/400. Source:
 * en1995-1-1-memory 8.3.1.2(6).
 */
export function thinnestUnbored_mm(diameter_mm: number, density_kg_per_m3: number): number {
  return Math.max(7 * diameter_mm, ((13 * diameter_mm - 30) * density_kg_per_m3) / 400);
}

/** Least penetration into the holding piece, in shank diameters. Source: nds-2018 12.1.5.6, 12.1.6.4. */
export const LEAST_PENETRATION_DIAMETERS = 6;
