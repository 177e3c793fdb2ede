import { lazily } from '../base/lazily.js';
import { glueSheet } from '../mechanics/glue/glue-sheet.js';
import type { Model } from '../model/model.js';
import { declareFacts } from './declare.js';

/** The glue of a frame, and the clamps that hold it; none of either where nothing is glued. */
const glueOf = (model: Model) => lazily({ sheet: () => glueSheet(model) });

/** Glue: how much, and how many clamps. */
export const glueFacts = declareFacts(
  { each: 'frame', of: ({ model }) => [['frame', glueOf(model)]] as const },
  { source: 'practice', moved_by: 'build', known_from: 'plan' },
)({
  'frame.glue_ml': {
    unit: 'ml',
    meaning: 'Glue for all joints and plies of one frame.',
    value: ({ sheet }) => sheet?.amount_ml ?? 0,
  },
  'frame.clamps_count': {
    unit: 'count',
    meaning: 'Clamps for the longest glued blank at one go.',
    value: ({ sheet }) => sheet?.clamps_count ?? 0,
  },
});
