/**
 * Places of a row along a piece, mm from its long point: the first and last `start_mm` from the ends, the rest even and
 * never farther apart than `every_mm`.
 * A piece too short for two at least `least_mm` apart gets one in the middle. Rounded to whole mm.
 */
export function rowPlaces_mm(length_mm: number, start_mm: number, every_mm: number, least_mm = 0): readonly number[] {
  const run = length_mm - 2 * start_mm;
  if (run <= 0 || run < least_mm) return [Math.round(length_mm / 2)];
  const gaps = Math.max(1, Math.ceil(run / every_mm - 1e-9));
  const places: number[] = [];
  for (let i = 0; i <= gaps; i++) places.push(Math.round(start_mm + (run * i) / gaps));
  return places;
}

/**
 * The same places with those that are blocked moved to the nearest free one, by whole `step_mm`, never nearer than
 * `least_mm` to their neighbours; towards the middle where both
 * ways are as far. A place that finds no free one stays.
 */
export function freePlaces_mm(
  places_mm: readonly number[],
  blocked: (place_mm: number) => boolean,
  length_mm: number,
  least_mm: number,
  step_mm: number,
): readonly number[] {
  const placed: number[] = [...places_mm];
  placed.forEach((place, i) => {
    if (!blocked(place)) return;
    const lowest = Math.max((placed[i - 1] ?? -Infinity) + least_mm, least_mm);
    const highest = Math.min((placed[i + 1] ?? Infinity) - least_mm, length_mm - least_mm);
    const isFree = (to: number): boolean => to >= lowest && to <= highest && !blocked(to);
    const inward = place < length_mm / 2 ? step_mm : -step_mm;
    for (let n = 1; n * step_mm < length_mm; n++) {
      const off = n * inward;
      const free = isFree(place + off) ? place + off : isFree(place - off) ? place - off : null;
      if (free === null) continue;
      placed[i] = free;
      return;
    }
  });
  return placed;
}
