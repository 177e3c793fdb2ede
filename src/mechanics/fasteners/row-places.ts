/**
 * Places of a row along a piece, mm from its long point: the first and last `start_mm` from the ends, the rest even and never farther apart than `every_mm`.
 * A piece too short for two at least `least_mm` apart gets one in the middle. Rounded to whole mm.
 */
export function rowPlaces_mm(length_mm: number, start_mm: number, every_mm: number, least_mm = 0): readonly number[] {
  const run = length_mm - 2 * start_mm;
  if (run <= 0 || run < least_mm) return [Math.round(length_mm / 2)];
  const gaps = Math.max(1, Math.ceil(run / every_mm - 1e-9));
  return Array.from({ length: gaps + 1 }, (_, i) => Math.round(start_mm + (run * i) / gaps));
}
