import { addRange, fromEachOn, type Range, type Quick, type Sums } from './ranges.js';
import type { SearchState } from './search-state.js';
import type { BoardRange } from './search-table.js';

/** The last step of a search: every slot has its board, and it is chosen how each one is turned. */
export class TurningSearch {
  private readonly sums: readonly Sums[];
  private readonly taken: Quick[] = [];
  private boards: readonly BoardRange[] = [];
  private rest: readonly Range[] = [];

  constructor(private readonly state: SearchState) {
    const { width, order } = state.table;
    this.sums = Array.from({ length: order.length + 1 }, () => ({
      mean: new Float64Array(width),
      variance: new Float64Array(width),
    }));
  }

  run(boards: readonly BoardRange[]): void {
    this.boards = boards;
    this.rest = fromEachOn(boards, this.state.table.width);
    this.turn(0);
  }

  /** Turns one board after the other, the most promising way first. */
  private turn(k: number): void {
    const { table } = this.state;
    const sums = this.sums[k] as Sums;
    const next = this.sums[k + 1] as Sums;
    const ways = this.boards[k]?.ways as readonly Quick[];
    if (k === this.boards.length - 1) {
      for (const way of ways) {
        table.add(sums, way, next);
        this.taken[k] = way;
        this.state.offer(next, this.taken);
      }
      return;
    }
    const children = ways.map((way) => {
      table.add(sums, way, next);
      return { way, bound: ways.length === 1 ? 0 : this.boundAt(k + 1) };
    });
    children.sort((a, b) => a.bound - b.bound);
    for (const { way, bound } of children) {
      if (ways.length > 1 && !this.state.follows(bound)) continue;
      table.add(sums, way, next);
      this.taken[k] = way;
      this.turn(k + 1);
    }
  }

  private boundAt(k: number): number {
    const { mean, variance } = this.sums[k] as Sums;
    addRange({ low: mean, high: mean, least: variance, most: variance }, this.rest[k] as Range, this.state.scratch);
    return this.state.boundOfScratch();
  }
}
