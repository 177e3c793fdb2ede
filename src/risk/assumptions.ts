import type { Pairing } from '../plan/plan.js';
import { shelfNumber } from '../shelf/shelf-number.js';
import type { Shelf } from '../shelf/shelf.js';

/** The numbers of natural warp that are nobody's measurement: proposals, editable on the shelf. */
export interface WarpAssumptions {
  /** Warp added per percentage point of moisture lost, as a share of the unsorted spread. */
  readonly drying_per_pct: number;
  /** Correlation of curvature between two boards of one bar, −1..1. */
  readonly correlation: Readonly<Record<Pairing, number>>;
  /** One standard deviation of a reading of twist, rad/m. */
  readonly reading_twist_rad_per_m: number;
  /** The same of bow or crook, 1/m. */
  readonly reading_curve_per_m: number;
}

/** Takes the assumptions from the shelf; throws when the shelf lacks one. */
export function warpAssumptions(shelf: Shelf): WarpAssumptions {
  return {
    drying_per_pct: shelfNumber(shelf, 'drying-factor'),
    correlation: {
      opposed: shelfNumber(shelf, 'pairing-opposed'),
      unsorted: 0,
      matched: shelfNumber(shelf, 'pairing-matched'),
    },
    reading_twist_rad_per_m: shelfNumber(shelf, 'reading-error-twist') * (Math.PI / 180),
    reading_curve_per_m: shelfNumber(shelf, 'reading-error-curve'),
  };
}
