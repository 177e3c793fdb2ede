/** Moisture at which wood stops swelling, percent. Source: wood-handbook-2010, chapter 13. */
export const fibreSaturation_pct = 30;

/**
 * Moistures between which the change coefficient may be used as it stands, percent. Source: wood-handbook-2010, Table
 * 13-5.
 */
const coefficientRange_pct = { low: 6, high: 14 } as const;

/**
 * Change of size by the change coefficient (per 1 % moisture): ΔD = D C (M₂ − M₁), swelling positive, mm. Source:
 * wood-handbook-2010, eq. 13-2.
 */
export function movementByCoefficient_mm(
  size_mm: number,
  coefficient_per_pct: number,
  from_pct: number,
  to_pct: number,
): number {
  return size_mm * coefficient_per_pct * (to_pct - from_pct);
}

/**
 * Change of size from total shrinkage S (percent, green to oven-dry): ΔD = D (M₂ − M₁)/(3000/S − 30 + M₁), swelling
 * positive, mm; moisture above 30 % counts as 30 %.
 * Source: wood-handbook-2010, eq. 13-3.
 */
export function movementByShrinkage_mm(
  size_mm: number,
  shrinkage_pct: number,
  from_pct: number,
  to_pct: number,
): number {
  const M1 = Math.min(from_pct, fibreSaturation_pct);
  const M2 = Math.min(to_pct, fibreSaturation_pct);
  return (size_mm * (M2 - M1)) / (3000 / shrinkage_pct - 30 + M1);
}

/**
 * Total shrinkage in percent from a change coefficient C (per 1 % moisture): S = 3000/(1/C + 20), eq. 13-3 at 10 %
 * moisture turned round. Derived; agrees with
 * every pair of Table 13-5 read.
 */
export function shrinkageFromCoefficient_pct(coefficient_per_pct: number): number {
  return 3000 / (1 / coefficient_per_pct + 20);
}

/**
 * Change of size between two moistures, swelling positive, mm: eq. 13-2 between 6 and 14 %, eq. 13-3 as soon as one of
 * them lies outside.
 */
export function movement_mm(size_mm: number, coefficient_per_pct: number, from_pct: number, to_pct: number): number {
  const within = (M: number): boolean => M >= coefficientRange_pct.low && M <= coefficientRange_pct.high;
  return within(from_pct) && within(to_pct)
    ? movementByCoefficient_mm(size_mm, coefficient_per_pct, from_pct, to_pct)
    : movementByShrinkage_mm(size_mm, shrinkageFromCoefficient_pct(coefficient_per_pct), from_pct, to_pct);
}

/**
 * Shrinkage along the grain for a loss of moisture, fraction; the mean of 3,600 sticks, whose spread is as large as the
 * mean. Source: bow-crook-wfs-1542.
 */
export function lengthShrinkage(moistureLoss_fraction: number, coefficient = 0.0111): number {
  return coefficient * moistureLoss_fraction;
}
