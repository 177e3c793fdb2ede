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
  const known = new Map<number, Faring>();
  const at =
    (wish: Wish) =>
    (steps: number): Promise<Fare> => {
      let fares = known.get(steps);
      if (fares === undefined) {
        const plan = chartPlan(build, shape, steps * step_mm, bench.shelf, units);
        fares = plan === null ? refused : faring(plan);
        known.set(steps, fares);
      }
      return fares(wish);
    };
  const guess = (size_mm: number | null): number => Math.round((size_mm ?? usualGuess_mm) / step_mm);
  const clear = await largest({ first, last }, guess(like.clear_mm), at('clear'));
  const noStop = await largest({ first: clear ?? first, last }, guess(like.no_stop_mm), at('no-stop'));
  return { clear_mm: clear === null ? null : clear * step_mm, no_stop_mm: noStop === null ? null : noStop * step_mm };
}

/** A frame that the plan reader objects to. */
const refused: Faring = async () => ({ passes: false, uses: [] });

/** Where the search begins that knows no entry much alike. */
const usualGuess_mm = 1000;
