import type { Pack, Supply } from '../shelf/shelf.js';
import type { Flat } from './cut-sheets.js';

/** What a thing is, in the order in which it is picked up. */
export const needKinds = [
  'glue',
  'nail',
  'screw',
  'plywood',
  'angle',
  'key',
  'lip',
  'staple',
  'ground',
  'backing',
  'ring',
  'wire',
  'hook',
] as const;
export type NeedKind = (typeof needKinds)[number];

/** A size by which one finds the thing in the shop, mm. */
export interface Measure {
  readonly of: 'leg' | 'thickness' | 'length';
  readonly mm: number;
}

/**
 * How one pays for it: in packs, by the piece, by the length, by the ml; null when no price is known, `reason` then
 * says why.
 */
export type Sold =
  | { readonly by: 'pack'; readonly packs: readonly Pack[] }
  | { readonly by: 'length'; readonly price_per_m: number; readonly step_mm: number | null }
  | { readonly by: 'measure'; readonly price_per_unit: number }
  | { readonly by: 'sheet'; readonly sheets: readonly Supply[]; readonly leg_mm: number }
  | { readonly by: 'cut-sheet'; readonly sheet: Supply; readonly area_mm: Flat }
  | { readonly by: 'strip'; readonly strip: Supply; readonly pieces_mm: readonly number[] }
  | { readonly by: 'unknown'; readonly reason: string };

/** What one frame takes of one thing. */
export interface Need {
  readonly kind: NeedKind;
  /** Section and key on the shelf, such as `nails.brad-18ga-25`; null when the shelf has nothing that would do. */
  readonly entry: string | null;
  readonly name: string;
  readonly measures: readonly Measure[];
  readonly unit: 'pieces' | 'mm' | 'ml';
  readonly amount: number;
  /** What it is for: names of fastenings, `corners`, `cloth` … */
  readonly used_for: readonly string[];
  readonly sold: Sold;
}
