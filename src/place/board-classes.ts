import type { PileBoard } from '../pile/pile.js';
import type { PlaceProblem } from './problem.js';

/**
 * Boards of which the same was read: how they spread depends on that and on their place alone, so a choice of class for
 * every slot settles the variances,
 * whichever of its boards is taken. Boards still to be bought are the last class.
 */
export class BoardClasses {
  readonly count: number;
  /** Class of each board of the pile. */
  private readonly of: readonly number[];
  /**
   * Pieces that a class holds at most: of the length of the shortest slot; the longest of its boards and all of them
   * together, mm.
   */
  readonly holds: readonly number[];
  private readonly longest_mm: readonly number[];
  private readonly total_mm: readonly number[];
  private readonly boards: readonly number[];

  constructor({ boards, lengths, options }: Pick<PlaceProblem, 'boards' | 'lengths' | 'options'>) {
    const known = new Map<string, number>();
    const usable = boards.map((_, b) => options.some((own) => own.some(({ board }) => board === b)));
    this.of = boards.map((board, b) => {
      const key = usable[b] === true ? whatWasRead(board) : 'of no use';
      const index = known.get(key) ?? known.size;
      known.set(key, index);
      return index;
    });
    this.count = known.size + 1;
    const shortest_mm = Math.min(...lengths.map(({ length_mm }) => length_mm));
    const of = (c: number): readonly PileBoard[] => boards.filter((_, b) => this.of[b] === c);
    const all = Array.from({ length: known.size }, (_, c) => of(c).map((board) => board.length_mm + spare_mm));
    this.boards = all.map((one) => one.length);
    this.longest_mm = all.map((one) => Math.max(...one));
    this.total_mm = all.map((one) => one.reduce((sum, length) => sum + length, 0));
    this.holds = all.map((one) => one.reduce((sum, length) => sum + Math.floor(length / shortest_mm), 0));
  }

  /** The class of a board; −1 is one to be bought. */
  classOf(board: number): number {
    return board < 0 ? this.count - 1 : (this.of[board] as number);
  }

  /**
   * Whether pieces of these lengths could come out of the boards of a class: no more pieces of over half the longest
   * board than boards, and no more wood than there is.
   */
  mayHold(c: number, lengths_mm: readonly number[]): boolean {
    if (c === this.count - 1) return true;
    const half_mm = (this.longest_mm[c] as number) / 2;
    let sum = 0;
    let long = 0;
    for (const length of lengths_mm) {
      sum += length;
      if (length > half_mm) long++;
    }
    return sum <= (this.total_mm[c] as number) && long <= (this.boards[c] as number);
  }
}

/** Slack for lengths that are compared, and for pieces that are cut already and may be a little short, mm. */
export const spare_mm = 1.01;

const whatWasRead = ({ stock, twist_rad_per_m, bow_per_m, crook_per_m }: PileBoard): string =>
  [stock, twist_rad_per_m === null, bow_per_m === null, crook_per_m === null].join();
