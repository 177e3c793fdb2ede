import { remembered } from '../../base/remembered.js';
import type { Model } from '../../model/model.js';
import { cornerParts } from './corner-parts.js';
import { crossbarEnds } from './crossbar-ends.js';
import { hangingPoints, hangsOnPoints, ringsAt } from './hanging-points.js';
import type { Occupant } from './occupant.js';

/**
 * All that is on the side bars before the screws through their plies are given places: those can be moved, so they give
 * way.
 */
export const beforePlyScrews = remembered((model: Model): readonly Occupant[] => {
  const rings = !hangsOnPoints(model.plan.hang.by) ? [] : ringsAt(model, hangingPoints(model).drop_mm);
  return [...cornerParts(model), ...crossbarEnds(model), ...rings];
});
