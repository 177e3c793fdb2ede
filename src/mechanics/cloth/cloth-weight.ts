/** Exact by definition: the avoirdupois ounce in grams and the inch in millimetres. */
const ounce_g = 28.349523125;
const inch_mm = 25.4;
const yard_mm = 36 * inch_mm;

/** Ounces per square yard → grams per square metre. */
export function fromOuncesPerYard2_g_per_m2(oz_per_yd2: number): number {
  return (oz_per_yd2 * ounce_g) / (yard_mm / 1000) ** 2;
}

/**
 * Weight in ounces of the reference piece of numbered duck, 36 × 22 in: 19 less the number. Source: numbered-duck.
 * Throws RangeError outside 1..18.
 */
export function numberedDuck_oz(duckNumber: number): number {
  if (!(duckNumber >= 1 && duckNumber <= 18))
    throw new RangeError(`duck is numbered from 1 to 18, found ${duckNumber}`);
  return 19 - duckNumber;
}

/** Areal mass of numbered duck, g/m²; heavier for lower numbers. Source: numbered-duck. */
export function numberedDuck_g_per_m2(duckNumber: number): number {
  return fromOuncesPerYard2_g_per_m2((numberedDuck_oz(duckNumber) * 36) / 22);
}

/**
 * Number of the duck whose weight comes within 4 % of an areal mass (g/m²), or null when none does or the cloth lies
 * outside No. 1 to 12.
 */
export function nearestDuck(mass_g_per_m2: number): number | null {
  const perOunce_g_per_m2 = fromOuncesPerYard2_g_per_m2(36 / 22);
  const number = Math.round(19 - mass_g_per_m2 / perOunce_g_per_m2);
  if (number < 1 || number > 12) return null;
  return Math.abs(numberedDuck_g_per_m2(number) / mass_g_per_m2 - 1) <= 0.04 ? number : null;
}
