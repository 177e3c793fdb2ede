import { glueFacts } from './glue.js';
import type { FactSettings, Model, Solution } from '../model/model.js';
import type { Supplies } from '../cost/supplies.js';
import { choiceFacts } from './choices.js';
import { clothFacts } from './cloth.js';
import { cornerFacts } from './corners.js';
import { cuttingFacts } from './cutting.js';
import type { Fact } from './fact.js';
import { fasteningFacts } from './fastenings.js';
import { frameFacts } from './frame.js';
import { hangingFacts } from './hanging.js';
import { lumberFacts } from './lumber.js';
import { warpFacts } from './warp.js';

/** Every fact of the catalogue that this plan has, by subject. */
export function allFacts(model: Model, solution: Solution, bought: Supplies, settings: FactSettings): Fact[] {
  return [
    ...frameFacts(model, solution),
    ...warpFacts(model, solution, settings),
    ...lumberFacts(model),
    ...cornerFacts(model, solution),
    ...fasteningFacts(model, solution),
    ...glueFacts(model),
    ...clothFacts(model, solution),
    ...hangingFacts(model, solution),
    ...cuttingFacts(model, bought),
    ...choiceFacts(model),
  ];
}
