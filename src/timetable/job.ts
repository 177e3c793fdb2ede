import type { Plan } from '../plan/plan.js';
import type { Stage } from './task-table.js';

/** What work takes besides time; each is counted where the workshop says how many there are. */
export const resources = ['person', 'saw', 'flat place', 'corner clamp', 'bar clamp'] as const;
export type Resource = (typeof resources)[number];

/** One go at the bench, in one session, by one person. */
export interface Task {
  /** Step of the order of work, with the coat or the round where there are several: `glue-corners`, `ground-2`. */
  readonly id: string;
  readonly words: string;
  readonly stage: Stage;
  readonly minutes: number;
  /** Of each resource, how many; the person is always one. */
  readonly uses: Readonly<Partial<Record<Resource, number>>>;
  /** How long clamps and flat place stay taken after it, min: as long as the glue asks, no longer. */
  readonly hold_min: number;
  /** From its end until the next task of the frame may begin, min, lessons or not. */
  readonly wait_min: number;
  readonly wait_for: string;
}

/** One frame to build: its tasks follow one another. */
export interface Job {
  readonly plan: Plan;
  /** Plan's name, with the number of the frame where a plan is built several times. */
  readonly name: string;
  /** Who builds it; null where the plan does not say. */
  readonly student: string | null;
  readonly tasks: readonly Task[];
}
