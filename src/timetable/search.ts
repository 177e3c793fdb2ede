import { latestStarts } from './bounds.js';
import { openBook } from './book.js';
import type { Piece, Problem } from './calendar.js';
import type { Starts } from './greedy.js';

/** What the search came to: a schedule, the proof that there is none, or neither within its nodes. */
export type Searched = { readonly found: Starts } | { readonly found: null; readonly none: boolean };

/**
 * A schedule within the first `count` sessions, or the proof that there is none. Complete: pieces are placed in the
 * order of their starts, each as early as
 * what was placed leaves room, which reaches every schedule in which nothing could be moved earlier, and one of those
 * is best. Left out are
 * branches in which a frame can no longer be done in time, something could have been done before what comes next, alike
 * frames have changed places,
 * or more is left to do than there is time of a resource. Counted in `nodes.left`.
 */
export function search(problem: Problem, count: number, nodes: { left: number }): Searched {
  const { frames, kind, capacity } = problem;
  const sessions = problem.sessions.slice(0, count);
  const cut = { sessions, capacity: capacity.map((room) => room.slice(0, count)) };
  const book = openBook(cut);
  const latest = latestStarts(problem, count);
  const starts: number[][] = frames.map(() => []);
  const ready = frames.map(() => -Infinity);
  const before = frames.map((_, f) => kind.lastIndexOf(kind[f]!, f - 1)).map((g, f) => (f === 0 ? -1 : g));
  const todo = packingsOf(problem);
  const roomAfter = (resource: number, least: number, from: number): number =>
    sessions.reduce((sum, { start_min, length_min }, s) => {
      const long = Math.max(0, Math.min(length_min, start_min + length_min - from));
      return sum + capacity[resource]![s]! * (least === 0 ? long : Math.floor(long / least));
    }, 0);
  let left = frames.reduce((n, pieces) => n + pieces.length, 0);

  const visit = (last: number, lastFrame: number): boolean | null => {
    if (left === 0) return true;
    if (--nodes.left < 0) return null;
    for (const { resource, least, left: more } of todo) if (more > roomAfter(resource, least, last)) return false;
    const open: { readonly f: number; readonly start: number; readonly slack: number }[] = [];
    let first = Infinity;
    for (let f = 0; f < frames.length; f++) {
      const k = starts[f]!.length;
      const piece = frames[f]![k];
      if (piece === undefined) continue;
      const start = book.earliest(piece, ready[f]!);
      const due = latest[f]![k]!;
      if (start > due || (start < last && book.earliest(piece, last) > due)) return false;
      first = Math.min(first, start + piece.longest_min);
      const turn = before[f]! < 0 || starts[before[f]!]!.length > k;
      if (turn && (start > last || (start === last && f > lastFrame))) open.push({ f, start, slack: due - start });
    }
    open.sort((a, b) => a.start - b.start || a.slack - b.slack || a.f - b.f);
    for (const { f, start } of open) {
      if (start >= first) break;
      const piece = frames[f]![starts[f]!.length] as Piece;
      const was = ready[f]!;
      move(f, piece, start, 1);
      ready[f] = start + piece.minutes + piece.wait_min;
      const done = visit(start, f);
      if (done === true) return true;
      move(f, piece, start, -1);
      ready[f] = was;
      if (done === null) return null;
    }
    return false;
  };

  const move = (f: number, piece: Piece, start: number, sign: 1 | -1): void => {
    book.take(piece, start, sign);
    for (const one of todo) one.left -= sign * loadOf(piece, one);
    left -= sign;
    if (sign === 1) starts[f]!.push(start);
    else starts[f]!.pop();
  };

  const done = visit(-Infinity, -1);
  return done === true ? { found: starts.map((list) => [...list]) } : { found: null, none: done === false };
}

/**
 * What is left to do of one resource: its minutes in all (`least` 0), or how many pieces of at least so many minutes.
 */
interface Packing {
  readonly resource: number;
  readonly least: number;
  left: number;
}

/** What a piece adds to it, in units of the resource. */
function loadOf({ minutes, spans }: Piece, { resource, least }: Packing): number {
  const units = spans.find((span) => span.resource === resource)?.units ?? 0;
  return least === 0 ? units * minutes : minutes >= least ? units : 0;
}

function packingsOf({ frames, capacity }: Problem): readonly Packing[] {
  return capacity.flatMap((room, resource) => {
    if (room.includes(Infinity)) return [];
    const pieces = frames.flat().filter(({ spans }) => spans.some((span) => span.resource === resource));
    return [0, ...new Set(pieces.map(({ minutes }) => minutes))].map((least): Packing => {
      const packing = { resource, least, left: 0 };
      return { ...packing, left: pieces.reduce((sum, piece) => sum + loadOf(piece, packing), 0) };
    });
  });
}
