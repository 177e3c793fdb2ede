import { barNames } from '../../base/names.js';
import type { Model } from '../../model/model.js';
import { stapleOrder, staplesAlong } from '../cloth/staples.js';
import { cornerParts } from './corner-parts.js';

/** Narrowest strip of wood beside a steel angle that still takes a line of staples, mm (proposal). */
const LEAST_STRIP_MM = 8;

/** Where the staples of the back run beside the steel of corner angles. */
export interface StaplesBySteel {
  /** Bare wood between the steel and the outer edge, mm. */
  readonly strip_mm: number;
  /** How far from the outside corner the steel reaches, mm. */
  readonly reach_mm: number;
  /** Staples of the whole frame that would meet steel although moved into the strip; 0 where it is wide enough. */
  readonly on_steel: number;
}

/**
 * Staples against steel angles on the backs; null when the cloth is fixed to the edge, or no angle lies on the back.
 */
export function staplesBySteel(model: Model): StaplesBySteel | null {
  const { fixing } = model.plan.cloth;
  const angles = fixing.to === 'back' ? cornerParts(model).filter(({ kind }) => kind === 'angle') : [];
  const [first] = angles;
  if (first === undefined) return null;
  const strip_mm = model.bars[first.bar].section.w_mm - first.across_mm[1];
  const reach_mm = first.along_mm[1] - first.along_mm[0];
  const { width_mm, height_mm } = model.plan.face;
  const length = (bar: string): number => (bar === 'top' || bar === 'bottom' ? width_mm : height_mm);
  const perSide = Object.fromEntries(
    barNames.map((bar) => [bar, staplesAlong(length(bar), fixing.every_mm)]),
  ) as Record<(typeof barNames)[number], number>;
  const hit = stapleOrder(perSide).filter(({ side, at }) =>
    angles.some(
      (angle) => angle.bar === side && at * length(side) >= angle.along_mm[0] && at * length(side) <= angle.along_mm[1],
    ),
  ).length;
  return { strip_mm, reach_mm, on_steel: strip_mm >= LEAST_STRIP_MM ? 0 : hit };
}
