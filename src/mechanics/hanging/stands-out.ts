import type { Model } from '../../model/model.js';
import { gussets as gussetsOf } from '../bench/pick-supply.js';
import { crossbarsLie } from '../occupancy/crossbar-ends.js';

/** What stands out farthest behind the backs of the bars and so meets the wall first. */
export interface StandsOut {
  readonly what: string;
  readonly out_mm: number;
}

/** Less than this nobody sees, mm. */
const LEAST_MM = 0.5;

/** The crossbar or the gussets that stand out farthest behind the bars; null when all is flush or farther in. */
export function standsOut(model: Model): StandsOut | null {
  const gussets = gussetsOf(model);
  const parts: readonly StandsOut[] = [
    ...crossbarsLie(model).map(({ name, deep_mm }) => ({ what: name.replace('-', ' '), out_mm: -deep_mm[0] })),
    ...(gussets === null ? [] : [{ what: 'the gussets', out_mm: gussets.thickness_mm }]),
  ];
  return parts.filter(({ out_mm }) => out_mm > LEAST_MM).reduce<StandsOut | null>((most, part) => (most === null || part.out_mm > most.out_mm ? part : most), null);
}
