import { remembered } from '../../base/remembered.js';
import type { Model } from '../../model/model.js';
import { planBraceScrews } from './brace-fastening.js';
import { planCornerNails } from './corner-nails.js';
import { planCrossbarScrews } from './crossbar-screws.js';
import type { PlannedFastening } from './planned-fastening.js';
import { planPlyScrews } from './ply-screws.js';

/** Every fastening this plan really has, in the order they are driven. */
export const plannedFastenings = remembered((model: Model): readonly PlannedFastening[] =>
  [...planPlyScrews(model), planCornerNails(model), planCrossbarScrews(model), planBraceScrews(model)].filter(
    (f) => f !== null,
  ),
);
