import type { Model } from '../../model/model.js';
import type { Cloth, Ground } from '../../shelf/shelf.js';

/** The cloth the plan names. Throws when the shelf lacks it: the plan reader refuses such a plan before. */
export function clothOf(model: Model): Cloth {
  const cloth = model.shelf.cloths[model.plan.cloth.use];
  if (cloth === undefined) throw new Error(`cloth ${model.plan.cloth.use} is not on the shelf`);
  return cloth;
}

/** The shelf's first ground, or null when it has none. */
export function groundOf(model: Model): Ground | null {
  return Object.values(model.shelf.grounds)[0] ?? null;
}

/** Wet ground for all coats of one frame, ml: coats × volume of a coat × face; 0 where there is none. */
export function groundVolume_ml(model: Model): number {
  const { plan } = model;
  return (
    (plan.ground.coats * (groundOf(model)?.ml_per_m2_per_coat ?? 0) * plan.face.width_mm * plan.face.height_mm) / 1e6
  );
}

/** Editable numbers this folder leans on, with what is taken when the shelf is silent (each a proposal). */
const fallbacks = {
  /** A firm brush, N. */
  'push-force': 2.5,
  /** Side of the square it presses on, mm. */
  'push-patch': 30,
  /** Spare cloth for the pliers, both ends together, mm. */
  'cloth-grip': 20,
} as const;

/** One of the shelf's editable numbers, or its stated fallback. */
export function clothNumber(model: Model, key: keyof typeof fallbacks): number {
  return model.shelf.proposals[key]?.value ?? fallbacks[key];
}
