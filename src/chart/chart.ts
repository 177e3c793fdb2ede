import type { UnitSystem } from '../base/names.js';
import type { Bench } from '../bench.js';
import type { Lumber, Shelf } from '../shelf/shelf.js';
import { shapes, type ChartBuild, type Shape } from './chart-plan.js';
import { faringBy } from '../suggest/fare.js';
import { largestOf, type BothSizes, type Sizes } from './largest-of.js';
import { chartRules } from './subjects.js';

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

/** One kind of bar: a row of the chart. */
export interface ChartKind {
  readonly stock: Lumber;
  readonly lay: ChartBuild['lay'];
  readonly plies: 1 | 2;
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
    ? { least_mm: 200, most_mm: 3600, step_mm: 10 }
    : { least_mm: 203.2, most_mm: 3657.6, step_mm: 12.7 };

const shapeNames = Object.keys(shapes) as readonly Shape[];
const frames = ([0, 1, 2] as const).flatMap((crossbars) => [false, true].map((braced) => ({ crossbars, braced })));

/** How many entries each row has. */
export const entriesOfRow = shapeNames.length * frames.length;

/** Every stock, lay and number of plies on a shelf: the rows of its chart. */
export const chartKinds = ({ lumber }: Shelf): readonly ChartKind[] =>
  Object.values(lumber).flatMap((stock) =>
    (stock.thickness_mm === stock.width_mm ? (['flat'] as const) : (['flat', 'edge'] as const)).flatMap((lay) =>
      ([1, 2] as const).map((plies) => ({ stock, lay, plies })),
    ),
  );

/**
 * The largest frames that a ruleset clears, for every stock, lay and number of plies on a shelf. Pure, the same every
 * time; takes a while.
 */
export async function makeChart(bench: Bench, { units, onEntry }: ChartGoals): Promise<Chart> {
  const kinds = chartKinds(bench.shelf);
  let done = 0;
  const step = (): Promise<void> | void => onEntry?.(++done, kinds.length * entriesOfRow);
  const rows: (readonly ChartEntry[])[] = [];
  for (const kind of kinds) rows.push(await chartRow(kind, bench, units, step));
  return chartOf(bench, units, rows);
}

/** A chart whose rows are worked out. */
export const chartOf = (
  { shelf, ruleset }: Bench,
  units: UnitSystem,
  rows: readonly (readonly ChartEntry[])[],
): Chart => ({
  shelf_name: shelf.name,
  ruleset_name: ruleset.name,
  units,
  sizes: chartSizes(units),
  rows: chartKinds(shelf).map((kind, i) => ({ ...kind, entries: rows[i] as readonly ChartEntry[] })),
});

/** One row, the same whatever other rows there are; `onEntry` is told after each entry. */
export async function chartRow(
  { stock, lay, plies }: ChartKind,
  bench: Bench,
  units: UnitSystem,
  onEntry: () => Promise<void> | void = () => {},
): Promise<readonly ChartEntry[]> {
  const [faring, sizes] = [faringBy({ ...bench, ruleset: chartRules(bench.ruleset) }), chartSizes(units)];
  const entries: ChartEntry[] = [];
  for (const shape of shapeNames)
    for (const { crossbars, braced } of frames) {
      const build: ChartBuild = { stock: stock.key, lay, plies, crossbars, braced };
      const like = likeOf(entries);
      entries.push({ build, shape, ...(await largestOf({ build, shape, bench, units, sizes, faring, like })) });
      await onEntry();
    }
  return entries;
}

/**
 * The entry of a row that the next is most like: the other shape of the same build, else the same with fewer crossbars.
 */
const likeOf = (entries: readonly ChartEntry[]): BothSizes =>
  entries.at(-frames.length) ?? entries.at(-2) ?? entries.at(-1) ?? { clear_mm: null, no_stop_mm: null };
