import type { Choosing } from '../base/names.js';

/** Mean and standard deviation of a normal spread. */
export interface Normal {
  readonly mean: number;
  readonly sd: number;
}

/**
 * How natural boards vary: twist (rad/m, right-handed positive), bow (flatwise) and crook (edgewise) curvature (1/m).
 */
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

/**
 * How the ends of a piece in hand are cut: square, or both at 45° across its wide face (for a bar that lies flat) or
 * across its narrow one (for a bar on edge).
 */
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

/** What a lumber entry falls back to; `species` is a key. */
export interface LumberDefaults {
  readonly E_MPa: number;
  readonly E_over_G: number;
  readonly density_kg_per_m3: number;
  readonly species: string;
}
