import type { Model } from '../model/model.js';
import { clothSteps, slackStep } from './cloth-steps.js';
import { frameSteps } from './frame-steps.js';
import { hangSteps } from './hang-step.js';
import type { WorkStep } from './step.js';
import type { ToolsAtHand } from './tools-at-hand.js';
import { woodSteps } from './wood-steps.js';

export type { ToolsAtHand } from './tools-at-hand.js';
export type { WorkStep } from './step.js';

/**
 * Every step from boards to the wall that this plan really has, in order, with waiting times and cautions; `tools` says
 * what the workshop has where the shelf's own numbers do not fit.
 */
export function orderOfWork(model: Model, tools: ToolsAtHand = {}): readonly WorkStep[] {
  return [
    ...woodSteps(model, tools),
    ...frameSteps(model, tools),
    ...clothSteps(model),
    ...hangSteps(model),
    slackStep(model),
  ];
}
