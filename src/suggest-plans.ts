import { audit } from './audit.js';
import type { Bench } from './bench.js';
import type { Plan } from './plan/plan.js';
import { searchPlans, type Goals, type Suggestions } from './suggest/suggest.js';

/** Searches the changes a person would make for plans that keep the wish, each answer confirmed by the full audit. */
export const suggest = (plan: Plan, bench: Bench, goals: Goals): Promise<Suggestions> =>
  searchPlans(plan, bench, goals, audit);
