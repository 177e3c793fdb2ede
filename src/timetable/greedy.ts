import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { latestStarts } from './bounds.js';
import { openBook } from './book.js';
import type { Piece, Problem } from './calendar.js';

/** Starts of all pieces, by frame. */
export type Starts = readonly (readonly number[])[];

/** Tries, and placements that all tries together may take: counted, so that the answer is the same on every machine. */
const most_tries = 60;
const most_placements = 20_000;

/** When the last piece of a schedule ends, and in which session: the aim is the session, then the minute. */
export function endOf({ frames }: Problem, starts: Starts): number {
  return starts.reduce(
    (end, list, f) => list.reduce((last, start, k) => Math.max(last, start + (frames[f]![k] as Piece).minutes), end),
    -Infinity,
  );
}

/**
 * Good schedules by simple rules, with chance thrown in from a fixed seed; the best of the tries. What must begin
 * soonest for all to be done in `count`
 * sessions comes first, or what can begin soonest, or frame by frame. Null where the sessions do not suffice in any.
 * `enough` says when to stop.
 */
export function greedy(problem: Problem, count: number, enough: (end: number) => boolean): Starts | null {
  const { sessions, frames } = problem;
  const due = latestStarts(problem, count);
  const generator = xoroshiro128plus(7);
  const chance = (): number => (generator.next() >>> 0) / 2 ** 32;
  const span = sessions[count - 1]!.start_min - sessions[0]!.start_min;
  const gap = count > 1 ? span / (count - 1) : sessions[0]!.length_min;
  type Rule = (f: number, k: number, start: number) => number;
  const rules: readonly Rule[] = [
    (f, k) => due[f]![k]!,
    (f, k, start) => start + due[f]![k]! * 1e-6,
    (f, k, start) => start + due[f]![k]!,
    (f, k) => f * 1000 + k,
    (f, k) => k * 1000 + f,
  ];
  const drawn = (go: number): Rule => {
    const favour = frames.map(() => chance() * gap);
    const share = [0, 0.5, 1][go % 3]!;
    return (f, k, start) => due[f]![k]! - favour[f]! + share * start + chance() * gap * 0.2;
  };
  const pieces = problem.frames.reduce((n, frame) => n + frame.length, 0);
  let best: Starts | null = null;
  let least = Infinity;
  for (let go = 0; go < rules.length || (go < most_tries && go * pieces < most_placements); go++) {
    const starts = oneTry(problem, rules[go] ?? drawn(go));
    const end = starts === null ? Infinity : endOf(problem, starts);
    if (end < least) [best, least] = [starts, end];
    if (enough(least)) break;
  }
  return best;
}

/**
 * Places one piece after another at the first start that is free; of the frames whose turn it may be, the one with the
 * least value of the rule.
 */
function oneTry(problem: Problem, rule: (f: number, k: number, start: number) => number): Starts | null {
  const book = openBook(problem);
  const starts: number[][] = problem.frames.map(() => []);
  const ready = problem.frames.map(() => -Infinity);
  const next = problem.frames.map((pieces, f) =>
    pieces[0] === undefined ? Infinity : book.earliest(pieces[0], ready[f]!),
  );
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
