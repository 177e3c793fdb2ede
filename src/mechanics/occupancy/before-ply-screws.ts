import type { Model } from '../../model/model.js';
import { cornerParts } from './corner-parts.js';
import { crossbarEnds } from './crossbar-ends.js';
import { hangingPoints, ringsAt } from './hanging-points.js';
import type { Occupant } from './occupant.js';

/** All that is on the side bars before the screws through their plies are given places: those can be moved, so they give way. */
export function beforePlyScrews(model: Model): readonly Occupant[] {
  const rings = model.plan.hang.by === 'none' ? [] : ringsAt(model, hangingPoints(model).drop_mm);
  return [...cornerParts(model), ...crossbarEnds(model), ...rings];
}
