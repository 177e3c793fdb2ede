import { aimOf, aimBound, type Group } from './aim.js';
import type { HasRoom, Placing } from './placing.js';
import type { PlaceProblem } from './problem.js';
import { SearchTable, type Quick } from './search-table.js';

/** Best placing found, and what no placing can fall below. */
export interface Searched {
  readonly placing: Placing;
  readonly aim: number;
  /** No placing that fills as many slots from the pile has a smaller aim. */
  readonly bound: number;
}

/** Placings whose aims differ by less than one in ten million count as equal: the proof need not tell them apart. */
export const equal_aim = 1e-7;

/**
 * Branch and bound over which board goes where: slots in the order of what hangs on them, a branch given up when not even the best of what is left for
 * each slot by itself could bring it below the best placing known. `most_bought` slots stay without a board of the pile. Stops after `most_nodes`
 * branches; the bound is then the least of those not looked into.
 */
export function searchPlacing(problem: PlaceProblem, known: Placing, hasRoom: HasRoom, most_bought: number, most_nodes: number): Searched {
  return new Search(problem, known, hasRoom, most_nodes).run(most_bought);
}

/** Sums of the boards placed so far, and the range that those to come can bring them into. */
interface Level {
  readonly mean: Float64Array;
  readonly variance: Float64Array;
}

class Search {
  private readonly table: SearchTable;
  private readonly groups: readonly Group[];
  private readonly levels: readonly Level[];
  private readonly low: Float64Array;
  private readonly high: Float64Array;
  private readonly least: Float64Array;
  private readonly most: Float64Array;
  private readonly onBoard: number[][];
  private readonly taken: Quick[] = [];
  private best: Placing;
  private aim: number;
  /** The least bound of the branches that were not followed. */
  private open = Infinity;
  private nodes = 0;

  constructor(
    private readonly problem: PlaceProblem,
    known: Placing,
    private readonly hasRoom: HasRoom,
    private readonly most_nodes: number,
  ) {
    this.table = new SearchTable(problem);
    this.groups = this.table.groups;
    const { width, order } = this.table;
    const empty = (): Float64Array => new Float64Array(width);
    this.levels = Array.from({ length: order.length + 1 }, () => ({ mean: empty(), variance: empty() }));
    [this.low, this.high, this.least, this.most] = [empty(), empty(), empty(), empty()];
    this.onBoard = problem.boards.map(() => []);
    this.best = known;
    const sums = this.levels[0] as Level;
    for (const option of known) this.table.add(sums, this.table.quickOf(option), sums);
    this.aim = aimOf(this.groups, sums.mean, sums.variance);
    sums.mean.fill(0);
    sums.variance.fill(0);
  }

  run(most_bought: number): Searched {
    const root = this.boundAt(0);
    if (!(root >= 0)) throw new Error('the bound of a search is not a number');
    if (root < this.aim - equal_aim) this.visit(0, most_bought);
    else this.open = root;
    return { placing: this.best, aim: this.aim, bound: Math.max(0, Math.min(this.aim, this.open)) };
  }

  /** What no way to go on from this level can fall below. */
  private boundAt(k: number): number {
    const { mean, variance } = this.levels[k] as Level;
    const { low, high, least, most } = this.table;
    for (let j = 0; j < this.low.length; j++) {
      this.low[j] = (mean[j] as number) + (low[k]?.[j] as number);
      this.high[j] = (mean[j] as number) + (high[k]?.[j] as number);
      this.least[j] = (variance[j] as number) + (least[k]?.[j] as number);
      this.most[j] = (variance[j] as number) + (most[k]?.[j] as number);
    }
    this.table.addScarcity(k, this.onBoard, this.least);
    return aimBound(this.groups, this.low, this.high, this.least, this.most);
  }

  private visit(k: number, bought: number): void {
    const tried = new Set<string>();
    const last = k === this.levels.length - 2;
    for (const quick of this.table.quick[k] as readonly Quick[]) {
      const { board } = quick.option;
      if (board < 0 && bought === 0) continue;
      if (this.table.twin[k] === true && quick.rank < (this.taken[k - 1] as Quick).rank) continue;
      if (!this.takes(k, quick, tried)) continue;
      this.table.add(this.levels[k] as Level, quick, this.levels[k + 1] as Level);
      if (last) this.offer(quick);
      else this.goOn(k, quick, bought - (board < 0 ? 1 : 0));
      if (board >= 0) (this.onBoard[board] as number[]).pop();
    }
  }

  /** Puts the piece on the board when it has room and no board just like it was tried here. */
  private takes(k: number, { option: { board }, way }: Quick, tried: Set<string>): boolean {
    if (board < 0) return true;
    const held = this.onBoard[board] as number[];
    const alike = `${way} ${this.problem.kinds[board]} ${held.join()}`;
    if (tried.has(alike)) return false;
    tried.add(alike);
    held.push(this.table.order[k] as number);
    if (this.hasRoom(board, held)) return true;
    held.pop();
    return false;
  }

  private goOn(k: number, quick: Quick, bought: number): void {
    const bound = this.boundAt(k + 1);
    if (bound >= this.aim - equal_aim || this.nodes >= this.most_nodes) {
      this.open = Math.min(this.open, bound);
      return;
    }
    this.nodes++;
    this.taken[k] = quick;
    this.visit(k + 1, bought);
  }

  private offer(quick: Quick): void {
    const { mean, variance } = this.levels.at(-1) as Level;
    if (aimBound(this.groups, mean, mean, variance, variance) >= this.aim) return;
    const aim = aimOf(this.groups, mean, variance);
    if (aim >= this.aim) return;
    this.aim = aim;
    this.taken[this.levels.length - 2] = quick;
    const placing = [...this.best];
    this.table.order.forEach((i, k) => (placing[i] = (this.taken[k] as Quick).option));
    this.best = placing;
  }
}
