import type { UnitSystem } from '../base/names.js';
import type { Bench } from '../bench.js';
import type { Plan } from '../plan/plan.js';
import { examinerFor, passes } from '../suggest/examine.js';
import type { Wish } from '../suggest/judge.js';
import { chartPlan, type ChartBuild, type Shape } from './chart-plan.js';
import { chartRules } from './subjects.js';

/** Whether a plan keeps a wish under the rules a chart asks. */
export type Passes = (plan: Plan) => Promise<boolean>;

/** The audit's own facts and rules, those that a chart leaves out not asked. */
export function passesFor(bench: Bench, wish: Wish): Passes {
  const examiner = examinerFor({ ...bench, ruleset: chartRules(bench.ruleset) }, wish);
  return (plan) => passes(plan, examiner);
}

/** Sizes looked at: from `least` to `most` in whole steps, mm of width. */
export interface Sizes {
  readonly least_mm: number;
  readonly most_mm: number;
  readonly step_mm: number;
  /** Of the plans that are tried: their limits, stock and defaults. */
  readonly units?: UnitSystem;
}

/**
 * The largest width that passes, to a whole step; null when not even a small frame does, `most_mm` when all do. A few
 * sizes are tried from small to
 * large until one fails after one has passed; between those two the edge is halved down to one step. So the size given
 * passes and the next step up fails;
 * in between the few sizes a frame is taken to fare no better the larger it is.
 */
export async function largest(
  build: ChartBuild,
  shape: Shape,
  bench: Bench,
  keeps: Passes,
  { least_mm, most_mm, step_mm, units = 'metric' }: Sizes,
): Promise<number | null> {
  const known = new Map<number, boolean>();
  const at = async (steps: number): Promise<boolean> => {
    const before = known.get(steps);
    if (before !== undefined) return before;
    const plan = chartPlan(build, shape, steps * step_mm, bench.shelf, units);
    const result = plan !== null && (await keeps(plan));
    known.set(steps, result);
    return result;
  };
  const [first, last] = [Math.ceil(least_mm / step_mm), Math.floor(most_mm / step_mm)];
  let low: number | null = null;
  let high = last + 1;
  for (const steps of firstLook(first, last)) {
    if (await at(steps)) low = steps;
    else if (low !== null) {
      high = steps;
      break;
    }
  }
  return low === null ? null : step_mm * (await halve(low, high, at));
}

/** The last that passes, between one that does and one that does not. */
async function halve(passing: number, failing: number, at: (steps: number) => Promise<boolean>): Promise<number> {
  let [low, high] = [passing, failing];
  while (high - low > 1) {
    const middle: number = (low + high) >> 1;
    if (await at(middle)) low = middle;
    else high = middle;
  }
  return low;
}

/** Sizes that grow by half from one to the next, and the largest. */
function firstLook(first: number, last: number): readonly number[] {
  const sizes: number[] = [];
  for (let steps = first; steps < last; steps = Math.max(steps + 1, Math.round(steps * 1.5))) sizes.push(steps);
  return [...sizes, last];
}
