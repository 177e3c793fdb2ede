import { tooFew, type TooFew } from './bounds.js';
import { sessionAt, type Problem } from './calendar.js';
import { endOf, greedy, type Starts } from './greedy.js';
import { search } from './search.js';

/**
 * Up to so many frames the search goes on until the answer is proven or its nodes are spent; with more it gets a few.
 */
export const frames_proven = 8;
const nodes_few = 40_000;
const nodes_many = 1500;

/** When everything is done. */
export interface Schedule {
  /** Starts by frame; null where the sessions do not suffice. */
  readonly starts: Starts | null;
  /** Sessions it takes; null where those there are do not suffice. */
  readonly sessions: number | null;
  /** Fewer than this many sessions cannot suffice, whatever one does; one more than there are where none suffice. */
  readonly bound: number;
  /**
   * Why one session fewer than the bound is too few; null where that is one session, or where only the search proved
   * it.
   */
  readonly why: TooFew | null;
  readonly proven: boolean;
}

/**
 * The least number of sessions in which all frames get done. Counted work, no clock: the same answer on every machine.
 */
export function schedule(problem: Problem): Schedule {
  const { sessions, frames } = problem;
  let bound = 1;
  let why: TooFew | null = null;
  for (; bound <= sessions.length; bound++) {
    const few = tooFew(problem, bound);
    if (few === null) break;
    why = few;
  }
  if (bound > sessions.length) return { starts: null, sessions: null, bound, why, proven: true };
  const countOf = (end: number): number => (end === Infinity ? Infinity : sessionAt(sessions, end - 1) + 1);
  let best = greedy(problem, bound, (end) => countOf(end) <= bound);
  let least = best === null ? Infinity : countOf(endOf(problem, best));
  const nodes = { left: frames.length <= frames_proven ? nodes_few : nodes_many };
  while (bound < least && bound <= sessions.length) {
    const found = search(problem, bound, nodes);
    if (found.found !== null) {
      best = found.found;
      least = bound;
    } else if (found.none) {
      bound += 1;
      why = null;
    } else break;
  }
  return {
    starts: best,
    sessions: least === Infinity ? null : least,
    bound,
    why,
    proven: bound >= Math.min(least, sessions.length + 1),
  };
}
