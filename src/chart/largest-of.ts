import type { UnitSystem } from '../base/names.js';
import type { Bench } from '../bench.js';
import type { Plan } from '../plan/plan.js';
import type { Wish } from '../suggest/judge.js';
import { chartPlan, type ChartBuild, type Shape } from './chart-plan.js';
import type { Fare, Faring } from '../suggest/fare.js';
import { largest } from './largest.js';

/** Sizes looked at: from `least` to `most` in whole steps, mm of width. */
export interface Sizes {
  readonly least_mm: number;
  readonly most_mm: number;
  readonly step_mm: number;
}

/** What is looked for. */
export interface Sought {
  readonly build: ChartBuild;
  readonly shape: Shape;
  readonly bench: Bench;
  readonly units: UnitSystem;
  readonly sizes: Sizes;
  readonly faring: (plan: Plan) => Faring;
  /** Where to begin: the figures of an entry that is much alike. */
  readonly like: BothSizes;
}

/** Both figures of an entry. */
export interface BothSizes {
  readonly clear_mm: number | null;
  readonly no_stop_mm: number | null;
}

/**
 * The largest widths that are clear and that are without a stop, to a whole step; each size is solved once for both.
 */
export async function largestOf({ build, shape, bench, units, sizes, faring, like }: Sought): Promise<BothSizes> {
  const { least_mm, most_mm, step_mm } = sizes;
  const [first, last] = [Math.ceil(least_mm / step_mm), Math.floor(most_mm / step_mm)];
  const solved = new Map<number, Faring>();
  const faringOf = (steps: number): Faring => {
    const before = solved.get(steps);
    if (before !== undefined) return before;
    const plan = chartPlan(build, shape, steps * step_mm, bench.shelf, units);
    const fares = plan === null ? refused : faring(plan);
    solved.set(steps, fares);
    for (const oldest of solved.keys()) if (solved.size > mostSolved) solved.delete(oldest);
    return fares;
  };
  const told = { clear: new Map<number, Fare>(), 'no-stop': new Map<number, Fare>() } as const;
  const at =
    (wish: Wish) =>
    async (steps: number): Promise<Fare> => {
      const fare = told[wish].get(steps) ?? (await faringOf(steps)(wish));
      told[wish].set(steps, fare);
      return fare;
    };
  const guess = (size_mm: number | null): number => Math.round((size_mm ?? usualGuess_mm) / step_mm);
  const clear = await largest({ first, last, below: 2 }, guess(like.clear_mm), at('clear'));
  const noStop = await largest({ first: clear ?? first, last, below: 0 }, guess(like.no_stop_mm), at('no-stop'));
  return { clear_mm: clear === null ? null : clear * step_mm, no_stop_mm: noStop === null ? null : noStop * step_mm };
}

/** A frame that the plan reader objects to. */
const refused: Faring = async () => ({ passes: false, uses: [] });

/** Solved frames hold megabytes each; both figures are asked of the last few sizes. */
const mostSolved = 2;

/** Where the search begins that knows no entry much alike. */
const usualGuess_mm = 1000;
