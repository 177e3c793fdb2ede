import type { JointGive } from '../base/joint-give.js';
import type { Choosing, UnitSystem } from '../base/names.js';

export type Lay = 'flat' | 'edge';
export type Stack = 'side-by-side' | 'front-to-back';
export type Bond = 'none' | 'screws' | 'glue' | 'glue+screws';
export type Pairing = 'opposed' | 'unsorted' | 'matched';

/** A pull of the cloth along the width (x) and the height (y), N per metre of edge. */
export interface ClothPull {
  readonly x_N_per_m: number;
  readonly y_N_per_m: number;
}

export interface PlanBars {
  readonly stock: string;
  readonly lay: Lay;
  readonly lip_mm: number;
  readonly plies: number;
  readonly stack: Stack;
  readonly bond: Bond;
  readonly pairing: Pairing;
}

export interface PlanCrossbar {
  readonly runs: 'upright' | 'level';
  /** Fraction of the way across the face: from the left for an upright, from the bottom for a level one. 0 < at < 1. */
  readonly at: number;
  readonly stock: string;
  readonly lay: Lay;
  readonly plies: number;
  /** How far the crossbar's front stays behind the front of the bars. */
  readonly setback_mm: number;
  /** Overrides the shelf's joint give at both ends; null = the shelf's. */
  readonly give: JointGive | null;
}

export interface PlanBrace {
  readonly kind: 'timber' | 'ply-gusset' | 'steel-angle';
  /** Distance from the corner along the bars' centre lines. */
  readonly leg_mm: number;
  /** Shelf key of the stock; null for a gusset or an angle that names none. */
  readonly stock: string | null;
  readonly lay: Lay;
  /** Overrides the shelf's give of a timber brace's ends, in its own widths; null = the shelf's. */
  readonly give: JointGive | null;
}

export interface PlanCorners {
  readonly cut: 'mitre' | 'butt' | 'half-lap' | 'keyed';
  /** Shelf key of the glue; null = no glue. */
  readonly glue: string | null;
  readonly nails: { readonly use: string; readonly each: number } | null;
  readonly brace: PlanBrace | null;
  /** Overrides the shelf's joint give; null = the shelf's for this build-up. */
  readonly give: JointGive | null;
}

/** One measured board. A reading that was not taken is null. */
export interface PlanBoard {
  /** A bar, or `crossbar-1` … */
  readonly for: string;
  readonly ply: number;
  /** Right-handed positive. */
  readonly twist_rad_per_m: number | null;
  /** Flatwise and edgewise curvature, 1/m, from the reading over its length: 8·rise/length². */
  readonly bow_per_m: number | null;
  readonly crook_per_m: number | null;
  /** The board in hand it is cut from, and where on it the piece begins, from the marked end; absent = any. */
  readonly on?: { readonly mark: string; readonly from_mm: number };
}

/** A default that was taken because the plan does not say. */
export interface Assumed {
  /** Dotted place in the plan, such as `cloth.pull`. */
  readonly path: string;
  /** What was taken, in words. */
  readonly value: string;
}

/** A complete plan: every default filled in, every length in mm. Text fields are the user's own and untrusted. */
export interface Plan {
  readonly name: string;
  /** Who builds it: `student:` or `maker:`; null when the plan does not say. */
  readonly student: string | null;
  /** How many of this frame. */
  readonly count: number;
  readonly units: UnitSystem;
  readonly face: { readonly width_mm: number; readonly height_mm: number };
  readonly bars: PlanBars;
  readonly crossbars: readonly PlanCrossbar[];
  readonly corners: PlanCorners;
  readonly ply_screws: { readonly use: string; readonly every_mm: number; readonly pilot_mm: number | null } | null;
  readonly cloth: {
    readonly use: string;
    readonly working: ClothPull;
    readonly peak: ClothPull;
    readonly fixing: { readonly to: 'back' | 'edge'; readonly every_mm: number; readonly turn_mm: number };
    /** Width of the roll; null = the shelf's. */
    readonly roll_mm: number | null;
  };
  readonly ground: { readonly coats: number };
  readonly lumber: {
    readonly chosen: Choosing;
    readonly moisture_pct: number;
    readonly knots: 'none' | 'few' | 'many';
    readonly rough_faces: 'inward' | 'outward';
  };
  readonly boards: readonly PlanBoard[];
  /** Relative humidity as fractions 0..1, low and high of the year. */
  readonly room: { readonly humidity_low: number; readonly humidity_high: number; readonly temperature_C: number };
  readonly hang: {
    readonly by: 'wire' | 'two-hooks' | 'd-rings' | 'cleat' | 'none';
    readonly drop_mm: number;
    readonly from: 'inside' | 'back';
    readonly hooks: number;
    readonly slack_mm: number;
  };
  /** Most the materials may cost, in the shelf's currency; null = no limit. */
  readonly spend_limit: number | null;
  /** The smallest door the finished frame must pass, and its height; null = not asked. */
  readonly door: { readonly width_mm: number; readonly height_mm: number } | null;
  readonly assumed: readonly Assumed[];
}
