import { addRange, emptyRange, type Range } from './ranges.js';
import type { HasRoom, Placing } from './placing.js';
import type { PlaceProblem } from './problem.js';
import { BoardSearch } from './search-boards.js';
import { SearchState } from './search-state.js';
import { SearchTable } from './search-table.js';

/** Best placing found, and what no placing can fall below. */
export interface Searched {
  readonly placing: Placing;
  readonly aim: number;
  /** No placing that fills as many slots from the pile has a smaller aim. */
  readonly bound: number;
}

/**
 * Branch and bound in three steps, slots in the order of what hangs on them: of which class each slot's board is, which
 * settles how far all may stray; which board
 * of the class, which settles the lift; which way round, which settles the bows. A branch is given up when not even the
 * best of what is left for each slot
 * by itself could bring it below the best placing known. At most `most_bought` slots stay without a board of the pile.
 * Stops after `most_nodes` branches; the
 * bound is then the least of those not looked into.
 */
export function searchPlacing(
  problem: PlaceProblem,
  known: Placing,
  hasRoom: HasRoom,
  most_bought: number,
  most_nodes: number,
): Searched {
  const state = new SearchState(new SearchTable(problem), known, most_nodes);
  new ClassSearch(state, problem, hasRoom, most_bought).run();
  return { placing: state.placing, aim: state.aim, bound: state.bound };
}

/** The first step: the class of every slot's board. */
class ClassSearch {
  private readonly soFar: readonly Range[];
  private readonly chosen: number[] = [];
  /** What the classes still hold, and the lengths taken from them. */
  private readonly room: number[];
  private readonly lengths_mm: readonly number[][];
  private readonly boards: BoardSearch;

  constructor(
    private readonly state: SearchState,
    private readonly problem: PlaceProblem,
    hasRoom: HasRoom,
    most_bought: number,
  ) {
    const { width, order, classes } = state.table;
    this.soFar = Array.from({ length: order.length + 1 }, () => emptyRange(width));
    this.room = [...classes.holds, most_bought];
    this.lengths_mm = this.room.map(() => []);
    this.boards = new BoardSearch(state, problem, hasRoom);
  }

  run(): void {
    const root = this.boundAt(0);
    if (!(root >= 0)) throw new Error('the bound of a search is not a number');
    if (this.state.follows(root)) this.choose(0);
  }

  /** Chooses the class of one slot after the other, the most promising first. */
  private choose(k: number): void {
    const { table } = this.state;
    if (k === table.order.length) {
      this.boards.run(this.chosen);
      return;
    }
    const children: { readonly c: number; readonly bound: number }[] = [];
    for (let c = table.twin[k] === true ? (this.chosen[k - 1] as number) : 0; c < table.classes.count; c++) {
      if (!this.take(k, c)) continue;
      children.push({ c, bound: this.boundAt(k + 1) });
      this.giveBack(c);
    }
    children.sort((a, b) => a.bound - b.bound);
    for (const { c, bound } of children) {
      if (!this.state.follows(bound)) continue;
      this.take(k, c);
      this.chosen[k] = c;
      this.choose(k + 1);
      this.giveBack(c);
    }
  }

  /** Takes a board of the class for the slot, if there may be one. */
  private take(k: number, c: number): boolean {
    const { table } = this.state;
    const range = table.bounds[k]?.[c];
    const room = this.room[c] as number;
    if (range == null || room <= 0) return false;
    const lengths = this.lengths_mm[c] as number[];
    lengths.push(this.problem.lengths[table.order[k] as number]?.length_mm ?? 0);
    if (!table.classes.mayHold(c, lengths)) {
      lengths.pop();
      return false;
    }
    this.room[c] = room - 1;
    addRange(this.soFar[k] as Range, range, this.soFar[k + 1] as Range);
    return true;
  }

  private giveBack(c: number): void {
    this.room[c] = (this.room[c] as number) + 1;
    (this.lengths_mm[c] as number[]).pop();
  }

  /** What no way to go on from the classes chosen up to this level can fall below. */
  private boundAt(k: number): number {
    const { table, scratch } = this.state;
    addRange(this.soFar[k] as Range, table.rest[k] as Range, scratch);
    table.addScarcity(k, this.room, scratch.least);
    return this.state.boundOfScratch();
  }
}
