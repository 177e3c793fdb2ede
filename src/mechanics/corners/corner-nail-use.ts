import type { CornerStatics } from '../../model/frame-results.js';
import type { Model } from '../../model/model.js';
import { mitreNailPlace_mm, planCornerNails } from '../fasteners/corner-nails.js';
import { nailedUse, NOTHING_HOLDS } from './nailed-corner.js';

/** Demand over capacity of a corner's nails alone, as though there were no glue; `NOTHING_HOLDS` when it has none. `duration` is the load-duration factor. */
export function cornerNailUse(model: Model, corner: CornerStatics, duration: number): number {
  const nails = planCornerNails(model);
  const planned = model.plan.corners.nails;
  if (!nails || !planned) return NOTHING_HOLDS;
  const { w_mm, d_mm } = model.bars.top.section;
  const place_mm = mitreNailPlace_mm(w_mm, { diameter_mm: nails.shank_mm, length_mm: nails.length_mm });
  return nailedUse({ cut: model.plan.corners.cut, w_mm, d_mm, each: planned.each, lateral_N: nails.lateral_N * duration, place_mm }, corner);
}
