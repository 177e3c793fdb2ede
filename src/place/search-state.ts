import { aimBound, aimOf } from './aim.js';
import { emptyRange, type Range, type Quick, type Sums } from './ranges.js';
import type { Placing } from './placing.js';
import type { SearchTable } from './search-table.js';

/** Placings whose aims differ by less than one in ten million count as equal: the proof need not tell them apart. */
export const equal_aim = 1e-7;

/**
 * What the steps of a search share: the best placing known, the branches counted, and the least bound of those not
 * followed.
 */
export class SearchState {
  aim: number;
  placing: Placing;
  private open = Infinity;
  private nodes = 0;
  readonly scratch: Range;

  constructor(
    readonly table: SearchTable,
    known: Placing,
    private readonly most_nodes: number,
  ) {
    this.placing = known;
    this.scratch = emptyRange(table.width);
    const sums: Sums = { mean: new Float64Array(table.width), variance: new Float64Array(table.width) };
    for (const option of known) table.add(sums, table.quickOf(option), sums);
    this.aim = aimOf(table.groups, sums.mean, sums.variance);
  }

  /** What nothing can fall below. */
  get bound(): number {
    return Math.max(0, Math.min(this.aim, this.open));
  }

  /** Whether a branch of this bound is to be looked into; counted, or else remembered. */
  follows(bound: number): boolean {
    if (bound >= this.aim - equal_aim || this.nodes >= this.most_nodes) {
      this.open = Math.min(this.open, bound);
      return false;
    }
    this.nodes++;
    return true;
  }

  /** The bound of the range in `scratch`. */
  boundOfScratch(): number {
    return aimBound(this.table.groups, this.scratch.low, this.scratch.high, this.scratch.least, this.scratch.most);
  }

  /** A placing that is complete, its boards in the order of the table. */
  offer({ mean, variance }: Sums, taken: readonly Quick[]): void {
    if (aimBound(this.table.groups, mean, mean, variance, variance) >= this.aim) return;
    const aim = aimOf(this.table.groups, mean, variance);
    if (aim >= this.aim) return;
    this.aim = aim;
    const placing = [...this.placing];
    this.table.order.forEach((i, k) => (placing[i] = (taken[k] as Quick).option));
    this.placing = placing;
  }
}
