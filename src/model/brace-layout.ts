import { ndsDistances } from '../fit/distances.js';
import { pickScrew, type ScrewSpace } from '../fit/pick-screw.js';
import { laidSize, type BuiltSize } from '../plan/build-up.js';
import type { Plan, PlanBrace } from '../plan/plan.js';
import type { Screw, Shelf } from '../shelf/shelf.js';

/** Wood of a mitred brace end that a screw passes, driven square to the bar this far in from the toe, mm (proposal). */
export const BRACE_END_MM = 16;
/** Thickness of a plywood gusset and of a steel angle that the plan does not name, mm (proposals). */
export const GUSSET_MM = 9;
export const ANGLE_MM = 2;
/** Screws in one brace end, in one bar under a gusset at most, in one leg of an angle (proposals). */
const BRACE_SCREWS = 1;
const GUSSET_SCREWS = 3;
const ANGLE_SCREWS = 2;

/** The screws of one brace end, or of a plate on one bar: how many, and where, mm from the outer corner. */
export interface ScrewRow {
  readonly per_bar: number;
  readonly end_mm: number;
  readonly spacing_mm: number;
}

/** The screws of one brace end or plate on one bar, and the space each has. */
export interface BraceScrews extends ScrewRow {
  readonly space: ScrewSpace;
  readonly screw: Screw;
}

function screwSpace({ bars }: Plan, brace: PlanBrace, shelf: Shelf, { w_mm, d_mm }: BuiltSize): ScrewSpace {
  const stock =
    brace.kind === 'timber'
      ? shelf.lumber[brace.stock ?? bars.stock]
      : brace.stock === null
        ? undefined
        : shelf.lumber[brace.stock];
  if (brace.kind === 'timber')
    return {
      through_mm: BRACE_END_MM,
      holding_mm: w_mm,
      edge_mm: Math.min(stock === undefined ? d_mm : laidSize(stock, brace.lay).d_mm, d_mm) / 2,
    };
  return {
    through_mm: brace.kind === 'ply-gusset' ? (stock?.thickness_mm ?? GUSSET_MM) : ANGLE_MM,
    holding_mm: d_mm,
    edge_mm: w_mm / 2,
  };
}

/**
 * The row of screws on one bar, never closer than ten diameters to each other or, where the bar is that wide, to its
 * end. Under a gusset they stand on the middle line of the bar between the end
 * of the mitre and the slanted edge, a sixth of that run in from either; null when there is no room for one. An angle's
 * holes are where its maker put them; a leg too short for two takes one.
 */
function screwRow(brace: PlanBrace, w_mm: number, shank_mm: number): ScrewRow | null {
  const least_mm = ndsDistances(shank_mm, true).along_grain_mm;
  if (brace.kind === 'timber') return { per_bar: BRACE_SCREWS, end_mm: brace.leg_mm, spacing_mm: brace.leg_mm };
  if (brace.kind === 'steel-angle') {
    const both = brace.leg_mm / 2 >= least_mm;
    return {
      per_bar: both ? ANGLE_SCREWS : 1,
      end_mm: brace.leg_mm * (both ? 1 / 3 : 5 / 6) + w_mm / 2,
      spacing_mm: both ? brace.leg_mm / 2 : brace.leg_mm,
    };
  }
  const margin_mm = Math.max(ndsDistances(shank_mm, true).edge_mm, (brace.leg_mm - w_mm) / 6);
  const first_mm = Math.max(w_mm + margin_mm, ndsDistances(shank_mm, true).end_mm);
  const run_mm = brace.leg_mm - margin_mm - first_mm;
  if (run_mm < 0) return null;
  const per_bar = Math.min(GUSSET_SCREWS, Math.floor(run_mm / least_mm + 1e-9) + 1);
  return per_bar === 1
    ? { per_bar, end_mm: first_mm + run_mm / 2, spacing_mm: brace.leg_mm }
    : { per_bar, end_mm: first_mm, spacing_mm: run_mm / (per_bar - 1) };
}

/**
 * The screws of the braces, gussets or angles on bars of this size, picked from the shelf; null when there is no brace,
 * no screw fits or none has room.
 */
export function braceScrews(plan: Plan, shelf: Shelf, bar: BuiltSize): BraceScrews | null {
  const { brace } = plan.corners;
  if (brace === null) return null;
  const space = screwSpace(plan, brace, shelf, bar);
  const screw = pickScrew(shelf, space);
  const row = screw === null ? null : screwRow(brace, bar.w_mm, screw.shank_mm);
  return screw === null || row === null ? null : { ...row, space, screw };
}

/** The places of a row along the bar, mm from the outer corner, on whole millimetres. */
export function placesOf(row: ScrewRow): readonly number[] {
  return Array.from({ length: row.per_bar }, (_, i) => Math.round(row.end_mm + i * row.spacing_mm));
}
