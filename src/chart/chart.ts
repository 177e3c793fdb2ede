import type { UnitSystem } from '../base/names.js';
import type { Bench } from '../bench.js';
import type { Lumber } from '../shelf/shelf.js';
import { shapes, type ChartBuild, type Shape } from './chart-plan.js';
import { largest, passesFor, type Sizes } from './largest.js';

/** Largest widths for one build and shape, mm; null when no size in the range will do. */
export interface ChartEntry {
  readonly build: ChartBuild;
  readonly shape: Shape;
  /** Every rule asked is clear up to here. */
  readonly clear_mm: number | null;
  /** No rule asked says stop up to here. */
  readonly no_stop_mm: number | null;
}

/** One wall chart. */
export interface Chart {
  readonly shelf_name: string;
  readonly ruleset_name: string;
  readonly units: UnitSystem;
  readonly sizes: Sizes;
  /** By stock, lay and plies; in each the shapes, crossbars and braces. */
  readonly rows: readonly {
    readonly stock: Lumber;
    readonly lay: ChartBuild['lay'];
    readonly plies: 1 | 2;
    readonly entries: readonly ChartEntry[];
  }[];
}

/** What a chart is made for. */
export interface ChartGoals {
  readonly units: UnitSystem;
  /** Told after each entry, for long work: how many are done, of how many. */
  readonly onEntry?: (done: number, of: number) => Promise<void> | void;
}

/** Resolution and range of a chart. */
export const chartSizes = (units: UnitSystem): Sizes =>
  units === 'metric'
    ? { least_mm: 200, most_mm: 3600, step_mm: 10, units }
    : { least_mm: 203.2, most_mm: 3657.6, step_mm: 12.7, units };

const counts = [0, 1, 2] as const;

/**
 * The largest frames that a ruleset clears, for every stock, lay and number of plies on a shelf. Pure, the same every
 * time; takes a while.
 */
export async function makeChart(bench: Bench, { units, onEntry }: ChartGoals): Promise<Chart> {
  const sizes = chartSizes(units);
  const [clear, noStop] = [passesFor(bench, 'clear'), passesFor(bench, 'no-stop')];
  const kinds = Object.values(bench.shelf.lumber).flatMap((stock) =>
    (stock.thickness_mm === stock.width_mm ? (['flat'] as const) : (['flat', 'edge'] as const)).flatMap((lay) =>
      ([1, 2] as const).map((plies) => ({ stock, lay, plies })),
    ),
  );
  const builds = counts.flatMap((crossbars) => [false, true].map((braced) => ({ crossbars, braced })));
  const of = kinds.length * builds.length * Object.keys(shapes).length;
  let done = 0;
  const rows: Chart['rows'][number][] = [];
  for (const { stock, lay, plies } of kinds) {
    const entries: ChartEntry[] = [];
    for (const shape of Object.keys(shapes) as Shape[])
      for (const { crossbars, braced } of builds) {
        const build: ChartBuild = { stock: stock.key, lay, plies, crossbars, braced };
        const clear_mm = await largest(build, shape, bench, clear, sizes);
        const no_stop_mm = await largest(build, shape, bench, noStop, {
          ...sizes,
          least_mm: clear_mm ?? sizes.least_mm,
        });
        entries.push({ build, shape, clear_mm, no_stop_mm });
        await onEntry?.(++done, of);
      }
    rows.push({ stock, lay, plies, entries });
  }
  return { shelf_name: bench.shelf.name, ruleset_name: bench.ruleset.name, units, sizes, rows };
}
