import type { JointGive } from '../base/joint-give.js';
import type { Choosing } from '../base/names.js';

/** Mean and standard deviation of a normal spread. */
export interface Normal {
  readonly mean: number;
  readonly sd: number;
}

/** How natural boards vary: twist (rad/m, right-handed positive), bow (flatwise) and crook (edgewise) curvature (1/m). */
export interface WarpSpread {
  readonly twist_rad_per_m: Normal;
  readonly bow_per_m: Normal;
  readonly crook_per_m: Normal;
}

export interface Species {
  readonly key: string;
  readonly name: string;
  /** Oven-dry specific gravity for fastener formulas. */
  readonly specific_gravity: number;
  /** Dimensional change per 1 % moisture, across the rings and along them (fraction). */
  readonly change_radial: number;
  readonly change_tangential: number;
  readonly source: string;
}

/** One way a shop sells something: `holds` pieces or ml in a `called` (`box`; empty where it is sold loose). */
export interface Pack {
  readonly holds: number;
  readonly price: number;
  readonly called: string;
}

/** How the ends of a piece in hand are cut: square, or both at 45° across its wide face (for a bar that lies flat) or across its narrow one (for a bar on edge). */
export type CutEnds = 'square' | 'mitre' | 'mitre-on-edge';

export interface StockLength {
  readonly length_mm: number;
  /** What an inch shop sells in its place; null when nothing is said. */
  readonly inches_mm?: number | null;
  readonly price: number;
  /** Null = as many as wanted. */
  readonly available: number | null;
  /** What is chalked on a board in hand, and from where on it is meant, in words; only boards of a pile have one. */
  readonly mark?: string;
  /** The board in hand that this is, and where on it this begins. */
  readonly hand?: { readonly mark: string; readonly from_mm: number };
  /** Of a piece that is cut already: it is used as it is or not at all. */
  readonly as_is?: CutEnds;
}

export interface Lumber {
  readonly key: string;
  readonly nominal: string | null;
  /** Actual size, smaller first. */
  readonly thickness_mm: number;
  readonly width_mm: number;
  /** The same section as an inch shop gives it. */
  readonly inches?: { readonly thickness_mm: number; readonly width_mm: number } | null;
  readonly E_MPa: number;
  readonly G_MPa: number;
  readonly density_kg_per_m3: number;
  readonly species: Species;
  /** Null when the entry gives none: the buying facts are then unknown. */
  readonly lengths: readonly StockLength[] | null;
  readonly spread: Readonly<Record<Choosing, WarpSpread>>;
  readonly source: string;
  /** Fields that fell back to the shelf's defaults. */
  readonly assumed: readonly string[];
}

export interface Nail {
  readonly key: string;
  readonly name: string;
  readonly diameter_mm: number;
  readonly length_mm: number;
  readonly yield_MPa: number;
  /** Price of one. */
  readonly price: number;
  /** Empty when it is sold one by one, at `price`. */
  readonly packs: readonly Pack[];
  readonly source: string;
}

export interface Screw {
  readonly key: string;
  readonly name: string;
  readonly shank_mm: number;
  readonly root_mm: number;
  readonly head_mm: number;
  readonly length_mm: number;
  /** Threaded length from the tip. */
  readonly thread_mm: number;
  readonly yield_MPa: number;
  readonly price: number;
  /** Empty when it is sold one by one, at `price`. */
  readonly packs: readonly Pack[];
  readonly source: string;
}

export interface Drill {
  /** As printed on the drill: `5/64 in`, `2.5 mm`. */
  readonly label: string;
  readonly diameter_mm: number;
}

export interface Glue {
  readonly key: string;
  readonly name: string;
  readonly spread_g_per_m2: number;
  readonly density_g_per_ml: number;
  readonly open_min: number;
  readonly clamp_min: number;
  readonly handle_h: number;
  readonly cure_h: number;
  readonly least_temperature_C: number;
  /** Price per 100 ml. */
  readonly price_per_100ml: number;
  /** Bottles or tubs, ml; empty when it is sold by the measure. */
  readonly packs: readonly Pack[];
  readonly source: string;
}

export interface Cloth {
  readonly key: string;
  readonly name: string;
  readonly mass_g_per_m2: number;
  readonly roll_mm: number;
  /** Price per metre of roll. */
  readonly price_per_m: number;
  /** Secant stiffness E·t, N per metre of width. */
  readonly stiffness_N_per_m: number;
  /** Shrinkage on first wetting, fraction. */
  readonly shrinkage: number;
  /** Working pull the studio reaches with it, for plans that name none; null = what every plan takes then. */
  readonly pull_N_per_m: number | null;
  /** Cut off the roll in whole steps of this; null = to the next mark of the tape. */
  readonly sold_by_mm: number | null;
  readonly inches?: { readonly roll_mm: number | null; readonly sold_by_mm: number | null } | null;
  readonly source: string;
}

export interface Ground {
  readonly key: string;
  readonly name: string;
  /** Dry mass of one coat. */
  readonly mass_g_per_m2_per_coat: number;
  /** Wet volume of one coat. */
  readonly ml_per_m2_per_coat: number;
  readonly price_per_100ml: number;
  /** Strain at which the ground cracks. */
  readonly crack_strain: number;
  readonly dry_h: number;
  /** Bottles or tubs, ml; empty when it is sold by the measure. */
  readonly packs: readonly Pack[];
  readonly source: string;
}

/** The build-ups of joints whose give the shelf states. */
export type JointBuild =
  | 'mitre_glued_nailed' | 'mitre_glued' | 'mitre_nailed' | 'nothing' | 'half_lap_glued' | 'butt_glued' | 'keyed' | 'crossbar_glued' | 'crossbar_dry';

/** Joint give by build-up (extra bar-widths), and the bond stress of a glued face. */
export interface Joints {
  readonly give: Readonly<Record<JointBuild, JointGive>>;
  readonly bond_MPa: { readonly mitre: number; readonly butt: number; readonly half_lap: number };
  readonly source: string;
}

export interface Hardware {
  readonly key: string;
  readonly name: string;
  readonly kind: 'hook' | 'wire' | 'ring' | 'strap' | 'cleat';
  /** Rated load, N (for a wire: breaking load). */
  readonly rating_N: number;
  /** Ring or hook thread; 0 for a wire. */
  readonly thread_diameter_mm: number;
  readonly thread_length_mm: number;
  /** Of one, or of one metre of wire. */
  readonly mass_g: number;
  /** Of one, or of one metre of wire. */
  readonly price: number;
  /** Empty when it is sold one by one, at `price`. */
  readonly packs: readonly Pack[];
  /** For wire: cut off in whole steps of this; null = to the next mark of the tape. */
  readonly sold_by_mm: number | null;
  readonly inches?: { readonly sold_by_mm: number | null } | null;
  readonly source: string;
}

/** What else the bench takes: staples, steel angles, plywood for gussets, strips for a lip, corner keys. Lengths that do not belong to its kind are null. */
export interface Supply {
  readonly key: string;
  readonly name: string;
  readonly kind: 'staple' | 'angle' | 'plywood' | 'lip' | 'key' | 'backing';
  /** Of a staple, or of an angle from its outer corner. */
  readonly leg_mm: number | null;
  readonly thickness_mm: number | null;
  /** Of a sheet, the smaller side first. */
  readonly sheet_mm: readonly [number, number] | null;
  /** Of a strip. */
  readonly length_mm: number | null;
  readonly inches: { readonly leg_mm?: number; readonly thickness_mm?: number; readonly sheet_mm?: readonly [number, number]; readonly length_mm?: number } | null;
  /** Empty when no price is known. */
  readonly packs: readonly Pack[];
  readonly source: string;
}

/** What a lumber entry falls back to; `species` is a key. */
export interface LumberDefaults {
  readonly E_MPa: number;
  readonly E_over_G: number;
  readonly density_kg_per_m3: number;
  readonly species: string;
}

/** What can be bought and what it is like: the default shelf, or one laid over it. Every entry by its key; lengths in mm, stresses in MPa, prices in `currency`. */
export interface Shelf {
  readonly name: string;
  readonly currency: string;
  /** True when the prices are invented demo numbers. */
  readonly demo_prices: boolean;
  /** Key of the source of all prices that name none of their own. */
  readonly prices_source: string;
  readonly lumber: Readonly<Record<string, Lumber>>;
  /** What lumber falls back to that gives only its size. */
  readonly lumber_defaults: LumberDefaults;
  /** The spread of boards that name none of their own. */
  readonly spread: Readonly<Record<Choosing, WarpSpread>>;
  readonly species: Readonly<Record<string, Species>>;
  readonly nails: Readonly<Record<string, Nail>>;
  readonly screws: Readonly<Record<string, Screw>>;
  readonly drills: readonly Drill[];
  readonly glues: Readonly<Record<string, Glue>>;
  readonly cloths: Readonly<Record<string, Cloth>>;
  readonly grounds: Readonly<Record<string, Ground>>;
  readonly joints: Joints;
  readonly hardware: Readonly<Record<string, Hardware>>;
  readonly supplies: Readonly<Record<string, Supply>>;
  /** Saw kerf and waste allowances for cutting. */
  readonly cutting: { readonly kerf_mm: number; readonly end_trim_mm: number; readonly knot_waste_share: { readonly none: number; readonly few: number; readonly many: number } };
  /** Other editable numbers by name (drying addition, push force …) with their source; the names are in `shelf/proposals`. */
  readonly proposals: Readonly<Record<string, { readonly value: number; readonly unit: string; readonly source: string; readonly inches_mm?: number }>>;
  /** Every number of the shelf, such as `lumber.strip-19x38.E`, and the key of its source; for the sources page of the report. */
  readonly sources: Readonly<Record<string, string>>;
  /** The numbers whose source is `measured`: which of them are the studio's own. */
  readonly measured: readonly string[];
  /** Numbers learned from finished frames, such as `lumber.strip-19x38.spread.plain.twist`, and from how many. */
  readonly learned: Readonly<Record<string, LearnedFrom>>;
}

/** What a learned number rests on. */
export interface LearnedFrom {
  readonly frames: number;
  readonly boards: number;
  readonly joints: number;
  /** The day it was learned, as the user gave it; null when not given. */
  readonly date: string | null;
}
