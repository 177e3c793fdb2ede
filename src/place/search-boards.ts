import { spare_mm } from './board-classes.js';
import { addRange, emptyRange, fromEachOn, type Range } from './ranges.js';
import type { HasRoom } from './placing.js';
import type { PlaceProblem } from './problem.js';
import type { SearchState } from './search-state.js';
import type { BoardRange } from './search-table.js';
import { TurningSearch } from './search-turning.js';

/**
 * The second step of a search: the classes of all slots chosen, which board of its class each one takes. Lift hangs on
 * that, hardly on how boards are turned.
 */
export class BoardSearch {
  private readonly soFar: readonly Range[];
  private readonly onBoard: number[][];
  private readonly left_mm: number[];
  private readonly taken: BoardRange[] = [];
  private readonly free_low: Float64Array;
  private readonly free_high: Float64Array;
  private readonly turning: TurningSearch;
  private chosen: readonly number[] = [];
  /**
   * Levels of the table in the order they are placed: those for which it does not matter which board of their class
   * they take come last.
   */
  private levels: readonly number[] = [];
  private first_alike = 0;
  /** Ranges of the slots from each level on, in the classes chosen. */
  private within: readonly Range[] = [];

  constructor(
    private readonly state: SearchState,
    private readonly problem: PlaceProblem,
    private readonly hasRoom: HasRoom,
  ) {
    const { width, order } = state.table;
    this.soFar = Array.from({ length: order.length + 1 }, () => emptyRange(width));
    [this.free_low, this.free_high] = [new Float64Array(width), new Float64Array(width)];
    this.onBoard = problem.boards.map(() => []);
    this.left_mm = problem.boards.map(({ length_mm }) => length_mm + spare_mm);
    this.turning = new TurningSearch(state);
  }

  run(chosen: readonly number[]): void {
    const { bounds, width } = this.state.table;
    this.chosen = chosen;
    const all = chosen.map((_, i) => i);
    const differing = all.filter((i) => !this.isAlike(i));
    this.first_alike = differing.length;
    this.levels = [...differing, ...all.filter((i) => this.isAlike(i))];
    this.within = fromEachOn(
      this.levels.map((i) => bounds[i]?.[chosen[i] as number] as Range),
      width,
    );
    this.place(0);
  }

  /**
   * Chooses the board of one slot after the other, the most promising first; whether a way to place all of them was
   * found.
   */
  private place(p: number): boolean {
    const { table } = this.state;
    const k = this.levels[p];
    if (k === undefined) {
      this.turning.run(this.taken);
      return true;
    }
    const before =
      table.twin[k] === true && this.chosen[k] === this.chosen[k - 1] ? (this.taken[k - 1] as BoardRange).board : -1;
    const tried = new Set<string>();
    const children: { readonly one: BoardRange; readonly bound: number }[] = [];
    for (const one of this.boardsFor(k)) {
      if (one.board < before || !this.takes(k, one.board, tried)) continue;
      addRange(this.soFar[p] as Range, one, this.soFar[p + 1] as Range);
      children.push({ one, bound: this.boundAt(p + 1) });
      this.giveBack(k, one.board);
    }
    children.sort((a, b) => a.bound - b.bound);
    let found = false;
    for (const { one, bound } of children) {
      if (!this.state.follows(bound)) continue;
      this.take(k, one.board);
      addRange(this.soFar[p] as Range, one, this.soFar[p + 1] as Range);
      this.taken[k] = one;
      found = this.place(p + 1) || found;
      this.giveBack(k, one.board);
      if (found && p >= this.first_alike) return true;
    }
    return found;
  }

  private isAlike(i: number): boolean {
    return this.state.table.alike[i]?.[this.chosen[i] as number] === true;
  }

  private boardsFor(k: number): readonly BoardRange[] {
    return this.state.table.byBoard[k]?.[this.chosen[k] as number] ?? [];
  }

  /** Puts the piece on the board when it has room and no board just like it was tried here. */
  private takes(k: number, board: number, tried: Set<string>): boolean {
    if (board < 0) return true;
    const held = this.onBoard[board] as number[];
    const alike = `${this.problem.kinds[board]} ${held.join()}`;
    if (tried.has(alike)) return false;
    tried.add(alike);
    this.take(k, board);
    if (this.hasRoom(board, held)) return true;
    this.giveBack(k, board);
    return false;
  }

  private take(k: number, board: number): void {
    this.onBoard[board]?.push(this.state.table.order[k] as number);
    if (board >= 0) this.left_mm[board] = (this.left_mm[board] as number) - this.length_mm(k);
  }

  private giveBack(k: number, board: number): void {
    this.onBoard[board]?.pop();
    if (board >= 0) this.left_mm[board] = (this.left_mm[board] as number) + this.length_mm(k);
  }

  private length_mm(k: number): number {
    return this.problem.lengths[this.state.table.order[k] as number]?.length_mm ?? 0;
  }

  /**
   * What no way to go on can fall below: each slot still to come takes the board that is best for it, among those that
   * could hold its piece by their length.
   */
  private boundAt(p: number): number {
    const { low, high, least, most } = this.state.scratch;
    const soFar = this.soFar[p] as Range;
    const within = this.within[p] as Range;
    low.set(soFar.low);
    high.set(soFar.high);
    for (let j = 0; j < least.length; j++) {
      least[j] = (soFar.least[j] as number) + (within.least[j] as number);
      most[j] = (soFar.most[j] as number) + (within.most[j] as number);
    }
    for (let q = p; q < this.levels.length; q++)
      if (!this.addFree(this.levels[q] as number, low, high)) return Infinity;
    return this.state.boundOfScratch();
  }

  /** Adds the range of the means that boards with room bring to a slot; false when there is none. */
  private addFree(i: number, low: Float64Array, high: Float64Array): boolean {
    const { free_low, free_high } = this;
    const length_mm = this.length_mm(i);
    let any = false;
    for (const { board, low: least, high: most } of this.boardsFor(i)) {
      if (board >= 0 && (this.left_mm[board] as number) < length_mm) continue;
      for (let j = 0; j < low.length; j++) {
        if (!any || (least[j] as number) < (free_low[j] as number)) free_low[j] = least[j] as number;
        if (!any || (most[j] as number) > (free_high[j] as number)) free_high[j] = most[j] as number;
      }
      any = true;
    }
    if (!any) return false;
    for (let j = 0; j < low.length; j++) {
      low[j] = (low[j] as number) + (free_low[j] as number);
      high[j] = (high[j] as number) + (free_high[j] as number);
    }
    return true;
  }
}
