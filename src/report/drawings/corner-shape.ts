import type { UnitSystem } from '../../base/names.js';
import type { Point } from './svg.js';

/** One corner as built, seen from the front, in mm: the top left one stands for all. */
export interface CornerBuild {
  readonly units: UnitSystem;
  readonly cut: 'mitre' | 'butt' | 'half-lap' | 'keyed';
  readonly glued: boolean;
  /** Size of the level and of the upright bar in the plane of the cloth. */
  readonly level_w_mm: number;
  readonly upright_w_mm: number;
  /**
   * Nails in one corner, driven from outside (a half-lap: from the back), `place_mm` from the corner along the edge;
   * null = none.
   */
  readonly nails: {
    readonly count: number;
    readonly length_mm: number;
    /** How many and what: `two 25 mm brads`. */
    readonly name: string;
    readonly place_mm: number;
  } | null;
  /**
   * The leg of a timber brace along the middles of the bars, that of a plate from the outer corner; the width of the
   * brace, or of the steel.
   */
  readonly brace: {
    readonly kind: 'timber' | 'ply-gusset' | 'steel-angle';
    readonly leg_mm: number;
    readonly w_mm: number;
  } | null;
  /**
   * Screws of the brace or plate; null = none. `places_mm`: from the outer corner along each bar; for a timber brace
   * from the toe of its slanted end.
   */
  readonly plate_screws: { readonly places_mm: readonly number[]; readonly length_mm: number } | null;
  /**
   * Screws that hold the plies together, from the inner edge or from the back; their places along each bar from the
   * corner.
   */
  readonly ply_screws: {
    readonly level_mm: readonly number[];
    readonly upright_mm: readonly number[];
    readonly length_mm: number;
    readonly from: 'inner-edge' | 'back';
  } | null;
  /** Seams between plies, mm from the outer edge of each bar; empty where none shows from the front. */
  readonly seams_mm: readonly number[];
}

/** Where millimetres of the corner lie on the sheet, and how much of each bar is drawn. */
export interface CornerOnSheet {
  readonly at: (x_mm: number, y_mm: number) => Point;
  readonly scale: number;
  readonly stub_mm: number;
}
