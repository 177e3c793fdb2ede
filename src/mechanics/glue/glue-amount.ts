import type { Glue } from '../../shelf/shelf.js';
import type { GlueLine } from './glue-lines.js';

/** End grain gets a thin first coat, left to soak in, and then the glue (practice): twice the spread. */
export const END_GRAIN_COATS = 2;

/** Glue for some glue lines, ml: area × spread / density, end grain twice. Source: the shelf's spread; practice. */
export function glueAmount_ml(
  lines: readonly GlueLine[],
  glue: Pick<Glue, 'spread_g_per_m2' | 'density_g_per_ml'>,
): number {
  const coated_mm2 = lines.reduce(
    (sum, line) => sum + line.count * line.area_mm2 * (line.end_grain ? END_GRAIN_COATS : 1),
    0,
  );
  return ((coated_mm2 / 1e6) * glue.spread_g_per_m2) / glue.density_g_per_ml;
}
