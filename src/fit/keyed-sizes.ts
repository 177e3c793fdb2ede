/** Thickness of the tongue and width of the slot, share of the bar's depth (practice). */
const TONGUE_SHARE = 1 / 3;

/** Keys of one corner: one drives each bar outwards (practice). */
export const KEYS_PER_CORNER = 2;

/**
 * A keyed corner: level bars end in a tongue, upright ones in a slot; both run the full width of the bar behind mitred
 * shoulders.
 */
export interface KeyedSizes {
  readonly tongue_mm: number;
  readonly long_mm: number;
}

/** Tongue and slot of bars `w` × `d` (in the plane of the cloth, off the wall), mm. */
export function keyedSizes(w_mm: number, d_mm: number): KeyedSizes {
  return { tongue_mm: d_mm * TONGUE_SHARE, long_mm: w_mm };
}
