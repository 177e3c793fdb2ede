import type { Fact } from './fact.js';
import type { Model } from '../model/model.js';
import { glueSheet } from '../mechanics/glue/glue-sheet.js';

/** Facts about glue: how much, and how many clamps. Nothing glued: none of either. */
export function glueFacts(model: Model): Fact[] {
  const sheet = glueSheet(model);
  return [
    { path: 'frame.glue_ml', about: 'frame', value: sheet?.amount_ml ?? 0, unit: 'ml' },
    { path: 'frame.clamps_count', about: 'frame', value: sheet?.clamps_count ?? 0, unit: 'count' },
  ];
}
