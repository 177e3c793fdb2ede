import type { CornerStatics } from '../../model/frame-results.js';
import type { Model } from '../../model/model.js';
import { LEAST_PENETRATION_DIAMETERS } from '../../fit/distances.js';
import { mitreNailPlace_mm } from '../../fit/nail-path.js';
import { nailedPlace, planCornerNails } from '../fasteners/corner-nails.js';
import { nailedUse, NOTHING_HOLDS } from './nailed-corner.js';

/**
 * Demand over capacity of a corner's nails alone, as though there were no glue; `NOTHING_HOLDS` when it has none that
 * reach. `duration` is the load-duration factor.
 */
export function cornerNailUse(model: Model, corner: CornerStatics, duration: number): number {
  const nails = planCornerNails(model);
  const place = nailedPlace(model);
  if (!nails || !place || nails.reach_mm < LEAST_PENETRATION_DIAMETERS * nails.shank_mm) return NOTHING_HOLDS;
  const { cut, w_mm, d_mm, each } = place;
  const place_mm = mitreNailPlace_mm(w_mm, { diameter_mm: nails.shank_mm, length_mm: nails.length_mm });
  return nailedUse({ cut, w_mm, d_mm, each, lateral_N: nails.lateral_N * duration, place_mm }, corner);
}
