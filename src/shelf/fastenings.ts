import type { Pack } from './supplies.js';

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
