import type { BuiltSize } from '../plan/build-up.js';
import type { Plan } from '../plan/plan.js';
import type { Shelf, Supply } from '../shelf/shelf.js';
import { braceScrews, placesOf } from './brace-layout.js';

/**
 * A plate across each corner as it is built: its legs from the outer corner and how wide they are, mm. A gusset covers
 * the whole bar.
 */
export interface Plate {
  readonly kind: 'ply-gusset' | 'steel-angle';
  readonly leg_mm: number;
  readonly wide_mm: number;
  /** The steel angle that is bought; null for a gusset, and where the shelf has none. */
  readonly angle: Supply | null;
}

/** Width of a flat steel angle, share of the bar's, and at most so much, mm (proposals). */
const ANGLE_SHARE = 0.45;
const ANGLE_MOST_MM = 20;
/** Steel that a screw wants beyond its hole, mm (practice). */
const STEEL_BEYOND_MM = 5;

/**
 * The plates of a plan on bars of this size; null where it has none. The plan measures their legs along the middles of
 * the bars; an angle is as long as the one that is bought.
 */
export function platesOf(plan: Plan, shelf: Shelf, bar: BuiltSize): Plate | null {
  const { brace } = plan.corners;
  if (brace === null || brace.kind === 'timber') return null;
  const planned_mm = brace.leg_mm + bar.w_mm / 2;
  if (brace.kind === 'ply-gusset') return { kind: brace.kind, leg_mm: planned_mm, wide_mm: bar.w_mm, angle: null };
  const angle = angleFor(plan, shelf, bar, brace.leg_mm);
  return {
    kind: brace.kind,
    leg_mm: angle?.leg_mm ?? planned_mm,
    wide_mm: Math.min(ANGLE_MOST_MM, ANGLE_SHARE * bar.w_mm),
    angle,
  };
}

/**
 * The smallest steel angle that reaches every screw the plan drives through it (the plan's leg, where no screw fits),
 * else the largest; null when the shelf has none.
 */
function angleFor(plan: Plan, shelf: Shelf, bar: BuiltSize, leg_mm: number): Supply | null {
  const screws = braceScrews(plan, shelf, bar);
  const farthest_mm = screws === null ? undefined : placesOf(screws).at(-1);
  const reach_mm = farthest_mm === undefined ? leg_mm : farthest_mm + STEEL_BEYOND_MM;
  const angles = Object.values(shelf.supplies)
    .filter(({ kind }) => kind === 'angle')
    .sort((a, b) => (a.leg_mm ?? 0) - (b.leg_mm ?? 0));
  return angles.find((angle) => (angle.leg_mm ?? 0) >= reach_mm - 0.5) ?? angles.at(-1) ?? null;
}
