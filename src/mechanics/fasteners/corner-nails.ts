import { remembered } from '../../base/remembered.js';
import type { Model } from '../../model/model.js';
import { nailLateral_N } from './design-load.js';
import { ndsDistances } from '../../fit/distances.js';
import { nailPath, type NailedPlace } from '../../fit/nail-path.js';
import { nailHoles } from './hole-plan.js';
import type { PlannedFastening } from './planned-fastening.js';

/** The corners as their nails meet them; null where the plan nails none. */
export function nailedPlace({ plan, bars }: Model): NailedPlace | null {
  const { cut, nails } = plan.corners;
  if (nails === null || cut === 'keyed') return null;
  const { w_mm, d_mm } = bars.top.section;
  return { cut, w_mm, d_mm, span_mm: Math.min(bars.top.span_mm, bars.left.span_mm), each: nails.each };
}

/**
 * The nails across the corners; null when the plan has none. In a mitre and a butt joint they run into end grain and
 * hold sideways only.
 */
export const planCornerNails = remembered((model: Model): PlannedFastening | null => {
  const { plan, shelf, bars } = model;
  const nails = plan.corners.nails;
  const nail = nails ? shelf.nails[nails.use] : undefined;
  const place = nailedPlace(model);
  if (!nails || !nail || nails.each < 1 || place === null) return null;
  const { cut, w_mm, d_mm } = place;
  const path = nailPath(place, nail);
  const G = bars.top.stock.species.specific_gravity;
  const penetration_mm = Math.max(0, path.reach_mm);
  const bored = ndsDistances(nail.diameter_mm, true);
  const across_mm = cut === 'half-lap' ? w_mm : d_mm;
  const along =
    nails.each > 1 ? (across_mm / nails.each) * (bored.along_grain_mm / bored.across_grain_mm) : place.span_mm;
  return {
    name: 'corner-nails',
    kind: 'nail',
    key: nail.key,
    label: nail.name,
    shank_mm: nail.diameter_mm,
    root_mm: nail.diameter_mm,
    length_mm: nail.length_mm,
    thread_mm: 0,
    head_mm: nail.diameter_mm,
    role: plan.corners.glue === null ? 'load' : 'clamp',
    G,
    density_kg_per_m3: bars.top.stock.density_kg_per_m3,
    through_mm: path.through_mm,
    reach_mm: path.reach_mm,
    penetration_mm,
    exit_mm: path.exit_mm,
    along_grain: cut !== 'half-lap',
    edge_mm: path.edge_mm,
    end_mm: path.end_mm,
    spacing_mm: along,
    thinnest_mm: path.through_mm,
    ...nailHoles(nail.diameter_mm, G, plan, shelf),
    lateral_N: nailLateral_N(nail, {
      G_side: G,
      G_main: G,
      side_mm: path.through_mm,
      main_mm: penetration_mm,
      end_grain: cut !== 'half-lap',
    }),
    count: 4 * nails.each,
    rows: [{ piece: 'each-corner', places_mm: [Math.round(path.end_mm)] }],
    way: {
      into: 'corners',
      each: nails.each,
      from: cut === 'half-lap' ? 'back' : 'outer-edge',
      glued: plan.corners.glue !== null,
    },
  };
});
