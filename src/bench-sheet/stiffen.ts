import type { Plan } from '../plan/plan.js';

/**
 * What can still be glued to the corners of a frame, in words: never what the plan has there already. Common practice.
 */
export function cornerStiffener({ corners: { brace } }: Pick<Plan, 'corners'>): string {
  if (brace === null) return 'a brace across each corner';
  return brace.kind === 'ply-gusset'
    ? 'a timber brace across each corner, beside the plywood'
    : 'a plywood triangle over the back of each corner';
}

/** A crossbar to be added, in words. */
export function crossbarToAdd({ crossbars }: Pick<Plan, 'crossbars'>): string {
  return crossbars.length === 0 ? 'a crossbar' : 'one more crossbar';
}
