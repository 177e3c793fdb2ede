import { remembered } from '../../base/remembered.js';
import type { MemberBuild, Model } from '../../model/model.js';
import { screwLateral_N } from './design-load.js';
import { screwHoles } from './hole-plan.js';
import { LEAST_PENETRATION_DIAMETERS, ndsDistances } from '../../fit/distances.js';
import { pickScrew } from '../../fit/pick-screw.js';
import type { Screw } from '../../shelf/shelf.js';
import type { PlannedFastening } from './planned-fastening.js';
import { screwFields } from './screw-fields.js';

/** Wood a slanting screw passes in the crossbar before it reaches the bar, mm, and its slant (proposal). */
const SLANT_THROUGH_MM = 19;
/** Crossbars of which the shallowest is at least this deep take two screws at each end (proposal). */
const TWO_FROM_MM = 60;

/**
 * The screws that hold the crossbars' ends: through the side bar into the end of the crossbar where a screw on the
 * shelf is long enough for six diameters of penetration and thin enough for the crossbar's edges, else slanting from
 * the crossbar's side into the bar. All crossbars take the same: the most slender decides which, the shortest of those
 * of what wood, the shallowest how many. Null without crossbars, without a screw that fits, and in keyed frames, whose
 * crossbars are tongued and stay dry.
 */
export const planCrossbarScrews = remembered((model: Model): PlannedFastening | null => {
  const { plan, shelf, bars, crossbars } = model;
  const slender = (member: MemberBuild): number => Math.min(member.section.w_mm, member.section.d_mm);
  const [lead] = [...crossbars].sort((p, q) => slender(p) - slender(q) || p.span_mm - q.span_mm);
  if (lead === undefined || plan.corners.cut === 'keyed') return null;
  const shallowest_mm = Math.min(...crossbars.map(({ section }) => section.d_mm));
  const shortest_mm = Math.min(...crossbars.map(({ span_mm }) => span_mm));
  const w_mm = bars.top.section.w_mm;
  const edge_mm = slender(lead) / 2;
  const through = pickScrew(shelf, { through_mm: w_mm, holding_mm: Infinity, edge_mm });
  const slanting = pickScrew(shelf, { through_mm: SLANT_THROUGH_MM, holding_mm: w_mm, edge_mm });
  const keepsEdge = (s: Screw | null): boolean => s !== null && ndsDistances(s.shank_mm, true).edge_mm <= edge_mm;
  const deep = through !== null && through.length_mm - w_mm >= LEAST_PENETRATION_DIAMETERS * through.shank_mm;
  /** Straight where it is deep and clear of the edges, or deep where no slanting screw is clear of them. */
  const straight = deep && (keepsEdge(through) || !keepsEdge(slanting));
  const screw = straight ? through : slanting;
  if (screw === null) return null;
  const each = shallowest_mm < TWO_FROM_MM ? 1 : 2;
  const role = plan.corners.glue === null ? 'load' : 'clamp';
  const through_mm = straight ? w_mm : SLANT_THROUGH_MM;
  const penetration_mm = screw.length_mm - through_mm;
  const G = lead.stock.species.specific_gravity;
  const ends = plan.crossbars.map(
    (crossbar) =>
      Math.min(crossbar.at, 1 - crossbar.at) * (crossbar.runs === 'upright' ? plan.face.width_mm : plan.face.height_mm),
  );
  return {
    name: 'crossbar-screws',
    ...screwFields(screw),
    role,
    G,
    density_kg_per_m3: lead.stock.density_kg_per_m3,
    through_mm,
    reach_mm: penetration_mm,
    penetration_mm,
    exit_mm: straight ? shortest_mm - w_mm - penetration_mm : SLANT_THROUGH_MM + w_mm - screw.length_mm,
    along_grain: straight,
    edge_mm: each > 1 ? Math.min(edge_mm, shallowest_mm / 4) : edge_mm,
    end_mm: Math.min(...ends),
    spacing_mm: each > 1 ? shallowest_mm : shortest_mm,
    thinnest_mm: Math.min(2 * edge_mm, through_mm),
    ...screwHoles(screw, G, role, plan, shelf, null),
    lateral_N: screwLateral_N(screw, {
      G_side: bars.top.stock.species.specific_gravity,
      G_main: G,
      side_mm: through_mm,
      main_mm: penetration_mm,
      end_grain: straight,
    }),
    count: crossbars.length * 2 * each,
    rows: crossbars.map((member, i) => ({ piece: member.name, places_mm: [Math.round(ends[i] ?? 0)] })),
    way: { into: 'crossbar-ends', each, straight },
  };
});
