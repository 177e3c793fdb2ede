import type { Choosing } from '../base/names.js';
import type { Drill, Hardware, Nail, Screw } from './fastenings.js';
import type { Joints } from './joints.js';
import type { Lumber, LumberDefaults, Species, WarpSpread } from './lumber.js';
import type { Cloth, Glue, Ground, Supply } from './supplies.js';

export type { Drill, Hardware, Nail, Screw } from './fastenings.js';
export type { JointBuild, Joints } from './joints.js';
export type { CutEnds, Lumber, LumberDefaults, Normal, Species, StockLength, WarpSpread } from './lumber.js';
export type { Cloth, Glue, Ground, Pack, Supply } from './supplies.js';

/**
 * What can be bought and what it is like: the default shelf, or one laid over it. Every entry by its key; lengths in
 * mm, stresses in MPa, prices in `currency`.
 */
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
  readonly cutting: {
    readonly kerf_mm: number;
    readonly end_trim_mm: number;
    readonly knot_waste_share: { readonly none: number; readonly few: number; readonly many: number };
  };
  /**
   * Other editable numbers by name (drying addition, push force …) with their source; the names are in
   * `shelf/proposals`.
   */
  readonly proposals: Readonly<
    Record<
      string,
      { readonly value: number; readonly unit: string; readonly source: string; readonly inches_mm?: number }
    >
  >;
  /**
   * Every number of the shelf, such as `lumber.strip-19x38.E`, and the key of its source; for the sources page of the
   * report.
   */
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
