import type { Model } from '../../model/model.js';
import { shelfNumber } from '../../shelf/shelf-number.js';
import type { Glue } from '../../shelf/shelf.js';
import { clampForce, clampPressure_MPa, clampsFor, type ClampForce } from './clamping.js';
import { glueAmount_ml } from './glue-amount.js';
import { glueLines, plyGlueLines, type GlueLine } from './glue-lines.js';

/**
 * Frames with a longer side from here on wait overnight before they are handled, mm (practice; the length is a
 * proposal).
 */
export const LARGE_FRAME_MM = 1000;
/** Overnight, h. */
const OVERNIGHT_H = 12;

/** What the glue page needs. */
export interface GlueSheet {
  readonly glue: Glue;
  readonly lines: readonly GlueLine[];
  readonly amount_ml: number;
  /** Clamps for the longest ply blank at one go; four for the corners when there are no glued plies. */
  readonly clamps_count: number;
  /** What the clamps hold: the plies of one bar, or the four corners. */
  readonly clamps_on: 'plies' | 'corners';
  readonly pressure_MPa: { readonly low: number; readonly high: number };
  /** What that pressure comes to at each clamp. */
  readonly force: ClampForce;
  readonly open_min: number;
  /** Minutes in the clamps; longer on damp wood. */
  readonly clamp_min: number;
  /**
   * Hours from clamping until the frame may be handled: the glue's own for small frames, overnight at least for large
   * ones.
   */
  readonly handle_h: number;
  readonly cure_h: number;
  readonly least_temperature_C: number;
  /** False when the plan's room is colder than the glue bears. */
  readonly warm_enough: boolean;
  /** The wood is damper than glue makers ask for, so the time in the clamps is half as long again. */
  readonly damp: boolean;
}

/**
 * The glue of a plan: the corners' glue, else the shelf's first where only the plies are glued; null when nothing is.
 */
export function glueOf(model: Model): Glue | null {
  const key = model.plan.corners.glue;
  if (key !== null) return model.shelf.glues[key] ?? null;
  return plyGlueLines(model).length > 0 ? (Object.values(model.shelf.glues)[0] ?? null) : null;
}

/** Wood so damp that glue takes half as long again (practice). */
const isDamp = ({ plan }: Model): boolean => plan.lumber.moisture_pct > 12;

/** Glue, clamps and waiting of a plan; null when nothing is glued. Times: the shelf's; by size: practice. */
export function glueSheet(model: Model): GlueSheet | null {
  const glue = glueOf(model);
  const lines = glueLines(model);
  if (glue === null || lines.length === 0) return null;
  const { plan } = model;
  const plies = [...plyGlueLines(model)].sort((a, b) => b.length_mm - a.length_mm);
  const longest = plies[0]?.length_mm ?? 0;
  const clamps_count = longest > 0 ? clampsFor(longest) : 4;
  const pressure_MPa = clampPressure_MPa(model.bars.top.stock.species.specific_gravity);
  // Clamps at the corners press nothing but the corners: a lip and gussets are pressed on by themselves.
  const corner = lines.find(({ what }) => what === 'corners');
  const area_mm2 = plies[0] === undefined ? 4 * corner!.area_mm2 : longest * plies[0].breadth_mm;
  const large = Math.max(plan.face.width_mm, plan.face.height_mm) >= LARGE_FRAME_MM;
  return {
    glue,
    lines,
    amount_ml: glueAmount_ml(lines, glue),
    clamps_count,
    clamps_on: longest > 0 ? 'plies' : 'corners',
    pressure_MPa,
    force: clampForce(area_mm2, clamps_count, pressure_MPa, shelfNumber(model.shelf, 'clamp-force')),
    open_min: glue.open_min,
    clamp_min: glue.clamp_min * (isDamp(model) ? 1.5 : 1),
    handle_h: large ? Math.max(OVERNIGHT_H, glue.handle_h) : glue.handle_h,
    cure_h: glue.cure_h,
    least_temperature_C: glue.least_temperature_C,
    warm_enough: plan.room.temperature_C >= glue.least_temperature_C,
    damp: isDamp(model),
  };
}
