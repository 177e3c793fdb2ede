import type { Plan } from '../../plan/plan.js';

/** Whether the corners can be opened with keys: only a dry, slotted corner can. */
export const hasKeys = ({ corners }: Pick<Plan, 'corners'>): boolean => corners.cut === 'keyed';
