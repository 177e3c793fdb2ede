import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { openBook } from './book.js';
import type { Piece, Problem } from './calendar.js';

/** Starts of all pieces, by frame. */
export type Starts = readonly (readonly number[])[];

/** Placements that all tries together may take: counted, so that the answer is the same on every machine. */
const most_placements = 60_000;

/** When the last piece of a schedule ends, and in which session: the aim is the session, then the minute. */
export function endOf({ frames }: Problem, starts: Starts): number {
  return starts.reduce((end, list, f) => list.reduce((last, start, k) => Math.max(last, start + (frames[f]![k] as Piece).minutes), end), -Infinity);
}

/** Good schedules by simple rules, with chance thrown in from a fixed seed; the best of the tries. Null where the sessions do not suffice in any. `enough` says when to stop. */
export function greedy(problem: Problem, enough: (end: number) => boolean): Starts | null {
  const tails = problem.frames.map((pieces) => pieces.map((_, k) => pieces.slice(k).reduce((sum, { minutes, wait_min }) => sum + minutes + wait_min, 0)));
  const generator = xoroshiro128plus(7);
  const chance = (): number => (generator.next() >>> 0) / 2 ** 32;
  const day = 24 * 60;
  const rules: readonly ((f: number, k: number, start: number) => number)[] = [
    (f, k, start) => start - tails[f]![k]! * 1e-6 + f * 1e-9,
    (f, k) => f * 1000 + k,
    (f, k, start) => -tails[f]![k]! + start * 1e-6,
    (f, k) => k * 1000 + f,
  ];
  const pieces = problem.frames.reduce((n, frame) => n + frame.length, 0);
  let best: Starts | null = null;
  let least = Infinity;
  for (let go = 0; go < rules.length || go * pieces * 4 < most_placements; go++) {
    const rule = rules[go] ?? ((f, k, start) => start + chance() * day * (go % 3 === 0 ? 0.02 : 0.5) - (chance() * tails[f]![k]!) * 1e-2);
    const starts = oneTry(problem, rule);
    const end = starts === null ? Infinity : endOf(problem, starts);
    if (end < least) [best, least] = [starts, end];
    if (enough(least)) break;
  }
  return best;
}

/** Places one piece after another at the first start that is free; of the frames whose turn it may be, the one with the least value of the rule. */
function oneTry(problem: Problem, rule: (f: number, k: number, start: number) => number): Starts | null {
  const book = openBook(problem);
  const starts: number[][] = problem.frames.map(() => []);
  const ready = problem.frames.map(() => -Infinity);
  const next = problem.frames.map((pieces, f) => (pieces[0] === undefined ? Infinity : book.earliest(pieces[0], ready[f]!)));
  for (;;) {
    let chosen = -1;
    let least = Infinity;
    problem.frames.forEach((pieces, f) => {
      const k = starts[f]!.length;
      if (k === pieces.length) return;
      const value = rule(f, k, next[f]!);
      if (chosen < 0 || value < least) [chosen, least] = [f, value];
    });
    if (chosen < 0) return starts;
    const piece = problem.frames[chosen]![starts[chosen]!.length] as Piece;
    const start = book.earliest(piece, ready[chosen]!);
    if (start === Infinity) return null;
    if (start > next[chosen]!) {
      // Others took its place since: it stands in line again.
      next[chosen] = start;
      continue;
    }
    book.take(piece, start, 1);
    starts[chosen]!.push(start);
    ready[chosen] = start + piece.minutes + piece.wait_min;
    const after = problem.frames[chosen]![starts[chosen]!.length];
    next[chosen] = after === undefined ? Infinity : book.earliest(after, ready[chosen]!);
    if (next[chosen] === Infinity && after !== undefined) return null;
  }
}
