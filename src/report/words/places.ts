import type { UnitSystem } from '../../base/names.js';
import { formatLength } from '../../base/units-format.js';

/** Places along a piece in one unit, said once: `75, 275 and 475 mm`. */
export function placesInWords(places_mm: readonly number[], units: UnitSystem): string {
  const figures = places_mm.map((mm) => formatLength(mm, units).replace(/ \w+$/u, ''));
  const unit = units === 'metric' ? 'mm' : 'in';
  const last = figures.at(-1);
  if (last === undefined) return 'nowhere';
  return figures.length === 1 ? `${last} ${unit}` : `${figures.slice(0, -1).join(', ')} and ${last} ${unit}`;
}
