import type { Drill } from '../../shelf/shelf.js';

export type FasteningName = 'ply-screws' | 'crossbar-ply-screws' | 'corner-nails' | 'brace-screws' | 'crossbar-screws';

/** One row of fastenings on one piece: places along it, mm from its long point or end. */
export interface FasteningRow {
  /** `top`, `crossbar-1`, `each-corner` … */
  readonly piece: string;
  readonly places_mm: readonly number[];
}

/**
 * Where a fastening is driven and from where: plies from their inner face or from the back, in so many sets; the ends
 * of crossbars, straight through the bar or slanting; corners; braces; plates.
 */
export type FasteningWay =
  | { readonly into: 'plies'; readonly lines: 1 | 2; readonly from: 'inner-face' | 'back'; readonly sets: number }
  | { readonly into: 'crossbar-ends'; readonly each: number; readonly straight: boolean }
  | { readonly into: 'corners'; readonly each: number; readonly from: 'outer-edge' | 'back'; readonly glued: boolean }
  | { readonly into: 'brace-ends'; readonly toe_mm: number }
  /** A gusset's legs from the outer corner: the plan measures them along the middles of the bars. */
  | { readonly into: 'gussets'; readonly leg_mm: number }
  | { readonly into: 'angles' };

/** One kind of fastening as it will be driven, with the distances that decide whether it holds. */
export interface PlannedFastening {
  readonly name: FasteningName;
  readonly kind: 'screw' | 'nail';
  /** Shelf key and name. */
  readonly key: string;
  readonly label: string;
  readonly shank_mm: number;
  readonly root_mm: number;
  readonly length_mm: number;
  readonly thread_mm: number;
  readonly head_mm: number;
  /**
   * `clamp`: glue carries the joint and the fastening holds it while it sets; `load`: it carries the joint for good.
   */
  readonly role: 'clamp' | 'load';
  readonly G: number;
  readonly density_kg_per_m3: number;
  /**
   * Wood in front of the holding piece, how far the tip goes into it (negative when it stops short), and how much of
   * that lies in wood.
   */
  readonly through_mm: number;
  readonly reach_mm: number;
  readonly penetration_mm: number;
  /** Wood left beyond the tip; negative when it comes out. */
  readonly exit_mm: number;
  /** The fastening runs along the grain of the holding piece, so there is no face near its tip. */
  readonly along_grain: boolean;
  /** Nearest edge, nearest end, and next fastening along the grain. */
  readonly edge_mm: number;
  readonly end_mm: number;
  readonly spacing_mm: number;
  readonly thinnest_mm: number;
  /** Widest hole the rule allows where the thread (or nail) bites, and the hole that will be drilled. */
  readonly pilot_rule_mm: number;
  readonly pilot_mm: number | null;
  /** Of the drill on hand; null where none is of that size, or nothing is drilled. */
  readonly pilot_label: string | null;
  readonly pilot_planned: boolean;
  /** Hole through the first piece; null for nails and when no drill suits. */
  readonly clearance: Drill | null;
  /** Design lateral load of one, N, normal load duration. */
  readonly lateral_N: number;
  readonly count: number;
  readonly rows: readonly FasteningRow[];
  /** Where it is driven, and from where. */
  readonly way: FasteningWay;
}
