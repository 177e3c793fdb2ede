import type { UnitSystem } from '../../base/names.js';
import { series } from '../../base/series.js';
import { lengthFigures } from '../../base/units-format.js';

/** Places along a piece in one unit, said once: `75, 275 and 475 mm`. */
export function placesInWords(places_mm: readonly number[], units: UnitSystem): string {
  const figures = places_mm.map((mm) => lengthFigures(mm, units));
  const unit = units === 'metric' ? 'mm' : 'in';
  return figures.length === 0 ? 'nowhere' : `${series(figures)} ${unit}`;
}
