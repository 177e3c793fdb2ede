import type { Model } from '../../model/model.js';
import type { Supply } from '../../shelf/shelf.js';
import { LEAST_EXIT_MM } from '../../fit/pick-screw.js';
import { GUSSET_MM } from '../../model/brace-layout.js';

const ofKind = (model: Model, kind: Supply['kind']): readonly Supply[] =>
  Object.values(model.shelf.supplies).filter((supply) => supply.kind === kind);

/**
 * The longest staple whose leg leaves LEAST_EXIT_MM of the wood it is shot into, else the shortest there is; null when
 * the shelf has none. Practice: long legs hold better in folds.
 */
export function pickStaple(model: Model): Supply | null {
  const { d_mm, w_mm } = model.bars.top.section;
  const wood_mm = model.plan.cloth.fixing.to === 'back' ? d_mm : w_mm;
  const staples = [...ofKind(model, 'staple')].sort((a, b) => (a.leg_mm ?? 0) - (b.leg_mm ?? 0));
  return staples.findLast(({ leg_mm }) => (leg_mm ?? Infinity) <= wood_mm - LEAST_EXIT_MM) ?? staples[0] ?? null;
}

/** The steel angle that is bought; null when the plan has none, or the shelf. */
export const pickAngle = (model: Model): Supply | null => model.plate?.angle ?? null;

/**
 * The plywood triangles of the corners: legs from the outer corner, thickness, and the sheets on the shelf of about
 * that thickness. Null when the plan has none.
 */
export interface Gussets {
  readonly leg_mm: number;
  readonly thickness_mm: number;
  readonly sheets: readonly Supply[];
}

/** Thickness within which a sheet is taken for the one that is wanted, mm. */
const sameThickness_mm = 1;

/**
 * The gussets of a plan. The thickness is the plan's stock, else the usual one as the shop of this unit system gives
 * it.
 */
export function gussets(model: Model): Gussets | null {
  const {
    plan: {
      corners: { brace },
    },
    plate,
  } = model;
  if (brace === null || plate?.kind !== 'ply-gusset') return null;
  const stock = brace.stock === null ? undefined : model.shelf.lumber[brace.stock];
  const wanted_mm = stock?.thickness_mm ?? GUSSET_MM;
  const sheets = ofKind(model, 'plywood').filter(
    ({ thickness_mm }) => Math.abs((thickness_mm ?? 0) - wanted_mm) <= sameThickness_mm,
  );
  return { leg_mm: plate.leg_mm, thickness_mm: sheets[0]?.thickness_mm ?? wanted_mm, sheets };
}

/** The strip a raised lip is made of; null when there is no lip, or no strip on the shelf. */
export const pickLip = (model: Model): Supply | null =>
  model.plan.bars.lip_mm > 0 ? (ofKind(model, 'lip')[0] ?? null) : null;

/** The keys that open the corners; null when the shelf has none. */
export const pickKeys = (model: Model): Supply | null => ofKind(model, 'key')[0] ?? null;
