import { formatLength } from '../../base/units-format.js';
import type { Model } from '../../model/model.js';
import { screwLateral_N } from './design-load.js';
import { screwHoles } from './hole-plan.js';
import { pickScrew } from '../../fit/pick-screw.js';
import type { PlannedFastening } from './planned-fastening.js';
import { screwFields } from './screw-fields.js';

/** Wood of a mitred brace end that a screw passes, driven square to the bar this far in from the toe, mm (proposal). */
const BRACE_END_MM = 16;
/** Thickness of a plywood gusset and of a steel angle that the plan does not name, mm (proposals). */
export const GUSSET_MM = 9;
export const ANGLE_MM = 2;
/** Screws in one brace end, in one bar under a gusset, in one leg of an angle (proposals). */
export const BRACE_SCREWS_PER_END = 1;
export const GUSSET_SCREWS_PER_BAR = 3;
export const ANGLE_SCREWS_PER_LEG = 2;

/** How far the gusset's screws stand apart, mm: they share the run among them. */
const apart = (run_mm: number, n: number): number => (n > 1 ? run_mm / (n - 1) : run_mm);

/** The screws of the corner braces, gussets or angles: picked from the shelf to fit; null when there is no brace or no screw fits. */
export function planBraceScrews(model: Model): PlannedFastening | null {
  const { plan, shelf, bars } = model;
  const brace = plan.corners.brace;
  if (!brace) return null;
  const { w_mm, d_mm } = bars.top.section;
  const timber = model.braces[0];
  const G = bars.top.stock.species.specific_gravity;
  const stock = brace.stock === null ? undefined : shelf.lumber[brace.stock];
  /** Along the middle of the bar, from the end of the mitre to the slanted edge of a gusset. */
  const free_mm = Math.max(0, brace.leg_mm - w_mm);
  const kind = timber
    ? { through_mm: BRACE_END_MM, holding_mm: w_mm, edge_mm: Math.min(timber.section.d_mm, d_mm) / 2, per_corner: 2 * BRACE_SCREWS_PER_END, end_mm: brace.leg_mm, spacing_mm: brace.leg_mm }
    : brace.kind === 'ply-gusset'
      ? { through_mm: stock?.thickness_mm ?? GUSSET_MM, holding_mm: d_mm, edge_mm: w_mm / 2, per_corner: 2 * GUSSET_SCREWS_PER_BAR, end_mm: w_mm + free_mm / 6, spacing_mm: apart(free_mm * (2 / 3), GUSSET_SCREWS_PER_BAR) }
      : { through_mm: ANGLE_MM, holding_mm: d_mm, edge_mm: w_mm / 2, per_corner: 2 * ANGLE_SCREWS_PER_LEG, end_mm: brace.leg_mm / 3 + w_mm / 2, spacing_mm: brace.leg_mm / 2 };
  const screw = pickScrew(shelf, kind);
  if (screw === null) return null;
  const role = plan.corners.glue === null || brace.kind === 'steel-angle' ? 'load' : 'clamp';
  const penetration_mm = Math.min(kind.holding_mm, screw.length_mm - kind.through_mm);
  return {
    name: 'brace-screws',
    ...screwFields(screw),
    role,
    G,
    density_kg_per_m3: bars.top.stock.density_kg_per_m3,
    through_mm: kind.through_mm,
    reach_mm: screw.length_mm - kind.through_mm,
    penetration_mm,
    exit_mm: kind.through_mm + kind.holding_mm - screw.length_mm,
    along_grain: false,
    edge_mm: kind.edge_mm,
    end_mm: kind.end_mm,
    spacing_mm: kind.spacing_mm,
    thinnest_mm: brace.kind === 'steel-angle' ? kind.holding_mm : Math.min(kind.through_mm, kind.holding_mm),
    ...screwHoles(screw, G, brace.kind === 'steel-angle' ? 'steel' : role, plan, shelf, null),
    lateral_N: screwLateral_N(screw, { G_side: brace.kind === 'steel-angle' ? null : (timber?.stock.species.specific_gravity ?? G), G_main: G, side_mm: kind.through_mm, main_mm: penetration_mm }),
    count: 4 * kind.per_corner,
    rows: [{ piece: timber ? 'each brace end' : 'each bar at each corner', places_mm: timber ? [BRACE_END_MM] : placesOf(kind) }],
    line: timber ? `one in each end, square to the bar, ${formatLength(BRACE_END_MM, plan.units)} in from the toe of the mitred end` : 'one line along the middle of the bar',
    drive_from: timber ? 'the edge of the brace that looks to the middle of the frame' : 'the back',
    note: timber ? 'The brace sits between the bars, flush with their backs, ends cut at 45 degrees.' : '',
  };
}

/** Places along the bar from the outer corner, for gussets and angles. */
function placesOf(kind: { readonly per_corner: number; readonly end_mm: number; readonly spacing_mm: number }): readonly number[] {
  return Array.from({ length: kind.per_corner / 2 }, (_, i) => Math.round(kind.end_mm + i * kind.spacing_mm));
}
