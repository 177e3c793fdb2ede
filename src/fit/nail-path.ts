import { LEAST_PENETRATION_DIAMETERS, ndsDistances } from './distances.js';

/** The cut of a corner that nails may cross; a keyed corner takes none. */
export type NailedCut = 'mitre' | 'butt' | 'half-lap';

/**
 * A corner as a nail meets it: its cut, the bars' size in the plane of the cloth and at right angles to it, the shorter
 * run of wood beyond the joint.
 */
export interface NailedPlace {
  readonly cut: NailedCut;
  readonly w_mm: number;
  readonly d_mm: number;
  readonly span_mm: number;
  /** Nails in one corner. */
  readonly each: number;
}

/** What a nail is to its place. */
export interface Pin {
  readonly diameter_mm: number;
  readonly length_mm: number;
}

/** Where a nail lies in a corner, mm. */
export interface NailPath {
  /** Wood before the joint. */
  readonly through_mm: number;
  /** How far the tip goes into the other piece; negative when it stops short of it. */
  readonly reach_mm: number;
  /** Wood beyond the tip; negative when it comes out. */
  readonly exit_mm: number;
  readonly end_mm: number;
  readonly edge_mm: number;
}

/**
 * Deepest place of a nail on a mitre, share of the bar's width: beyond it hardly any wood is left to the inner end
 * (proposal).
 */
const DEEPEST_SHARE = 2 / 3;

/**
 * Where a nail driven square through the outer edge crosses a mitre, mm from the corner along that edge (and so deep
 * into the nail's length): half its length but at
 * most the middle of the mitre; ten diameters from the end where two thirds of the mitre allow that. `w_mm` is the
 * width of the bar.
 */
export function mitreNailPlace_mm(w_mm: number, nail: Pin): number {
  return Math.min(w_mm * DEEPEST_SHARE, Math.max(Math.min(nail.length_mm / 2, w_mm / 2), 10 * nail.diameter_mm));
}

/**
 * The way of a nail through a corner. A half-lap is nailed from the back, a mitre and a butt joint square through the
 * outer edge.
 */
export function nailPath({ cut, w_mm, d_mm, span_mm, each }: NailedPlace, nail: Pin): NailPath {
  if (cut === 'half-lap')
    return {
      through_mm: d_mm / 2,
      reach_mm: Math.min(d_mm / 2, nail.length_mm - d_mm / 2),
      exit_mm: d_mm - nail.length_mm,
      end_mm: w_mm / 2,
      edge_mm: w_mm / (2 * each),
    };
  const through_mm = cut === 'mitre' ? mitreNailPlace_mm(w_mm, nail) : w_mm;
  const reach_mm = nail.length_mm - through_mm;
  return {
    through_mm,
    reach_mm,
    exit_mm: span_mm - reach_mm,
    end_mm: cut === 'mitre' ? through_mm : w_mm / 2,
    edge_mm: d_mm / (2 * each),
  };
}

/**
 * Whether a nail goes deep enough into the other piece to count as holding it: six diameters. Source: nds-2018
 * 12.1.6.4.
 */
export const nailHolds = (path: NailPath, nail: Pin): boolean =>
  path.reach_mm >= LEAST_PENETRATION_DIAMETERS * nail.diameter_mm;

/**
 * Whether a nail reaches, stays inside with `cover_mm` of wood beyond its tip, and keeps its distances to edge and end
 * in a drilled hole.
 */
export function nailFits(place: NailedPlace, nail: Pin, cover_mm: number): boolean {
  const path = nailPath(place, nail);
  const least = ndsDistances(nail.diameter_mm, true);
  return (
    nailHolds(path, nail) && path.exit_mm >= cover_mm && path.end_mm >= least.end_mm && path.edge_mm >= least.edge_mm
  );
}
