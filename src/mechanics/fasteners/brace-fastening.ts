import { remembered } from '../../base/remembered.js';
import { BRACE_END_MM, braceScrews, placesOf } from '../../model/brace-layout.js';
import type { Model } from '../../model/model.js';
import { screwLateral_N } from './design-load.js';
import { screwHoles } from './hole-plan.js';
import type { PlannedFastening } from './planned-fastening.js';
import { screwFields } from './screw-fields.js';

/**
 * The screws of the corner braces, gussets or angles: picked from the shelf to fit; null when there is no brace or no
 * screw fits.
 */
export const planBraceScrews = remembered((model: Model): PlannedFastening | null => {
  const { plan, shelf, bars } = model;
  const brace = plan.corners.brace;
  if (!brace) return null;
  const { w_mm, d_mm } = bars.top.section;
  const timber = model.braces[0];
  const G = bars.top.stock.species.specific_gravity;
  const held = braceScrews(plan, shelf, { w_mm, d_mm });
  if (held === null) return null;
  const { space, screw } = held;
  const role = plan.corners.glue === null || brace.kind === 'steel-angle' ? 'load' : 'clamp';
  const penetration_mm = Math.min(space.holding_mm, screw.length_mm - space.through_mm);
  return {
    name: 'brace-screws',
    ...screwFields(screw),
    role,
    G,
    density_kg_per_m3: bars.top.stock.density_kg_per_m3,
    through_mm: space.through_mm,
    reach_mm: screw.length_mm - space.through_mm,
    penetration_mm,
    exit_mm: space.through_mm + space.holding_mm - screw.length_mm,
    along_grain: false,
    edge_mm: space.edge_mm,
    end_mm: held.end_mm,
    spacing_mm: held.spacing_mm,
    thinnest_mm: brace.kind === 'steel-angle' ? space.holding_mm : Math.min(space.through_mm, space.holding_mm),
    ...screwHoles(screw, G, brace.kind === 'steel-angle' ? 'steel' : role, plan, shelf, null),
    lateral_N: screwLateral_N(screw, {
      G_side: brace.kind === 'steel-angle' ? null : (timber?.stock.species.specific_gravity ?? G),
      G_main: G,
      side_mm: space.through_mm,
      main_mm: penetration_mm,
    }),
    count: 8 * held.per_bar,
    rows: [
      {
        piece: timber ? 'each-brace-end' : 'each-bar-at-each-corner',
        places_mm: timber ? [BRACE_END_MM] : placesOf(held),
      },
    ],
    way: timber
      ? { into: 'brace-ends', toe_mm: BRACE_END_MM }
      : brace.kind === 'ply-gusset'
        ? { into: 'gussets', leg_mm: brace.leg_mm + w_mm / 2 }
        : { into: 'angles' },
  };
});
