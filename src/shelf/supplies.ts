/** One way a shop sells something: `holds` pieces or ml in a `called` (`box`; empty where it is sold loose). */
export interface Pack {
  readonly holds: number;
  readonly price: number;
  readonly called: string;
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

/**
 * What else the bench takes: staples, steel angles, plywood for gussets, strips for a lip, corner keys. Lengths that do
 * not belong to its kind are null.
 */
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
  readonly inches: {
    readonly leg_mm?: number;
    readonly thickness_mm?: number;
    readonly sheet_mm?: readonly [number, number];
    readonly length_mm?: number;
  } | null;
  /** Empty when no price is known. */
  readonly packs: readonly Pack[];
  readonly source: string;
}
