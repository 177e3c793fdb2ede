import type { Piece, Problem } from './calendar.js';

/** What is taken of every resource in every minute of every session. */
export interface Book {
  /** The first start at or after `from` at which all a piece takes is free; Infinity where there is none. */
  earliest(piece: Piece, from: number): number;
  /** Takes (1) or gives back (-1) what a piece uses from a start on. */
  take(piece: Piece, start: number, sign: 1 | -1): void;
  /** Most that is taken of a resource at once in a session. */
  most(resource: number, session: number): number;
}

/** An empty book. Only minutes of sessions are kept: between them nobody asks for anything. */
export function openBook({ sessions, capacity }: Pick<Problem, 'sessions' | 'capacity'>): Book {
  const used = capacity.map(() => sessions.map(({ length_min }) => new Int32Array(length_min)));
  const ends = sessions.map(({ start_min, length_min }) => start_min + length_min);

  /** The last minute of a span, in the sessions from `s` on, at which too little is free; -1 where all is. */
  const lastConflict = (piece: Piece, start: number, s: number): number => {
    let last = -1;
    for (const { resource, units, length_min } of piece.spans) {
      const room = capacity[resource] as readonly number[];
      const books = used[resource] as Int32Array[];
      const end = start + length_min;
      for (let i = s; i < sessions.length && sessions[i]!.start_min < end; i++) {
        const free = (room[i] as number) - units;
        if (free === Infinity) continue;
        const book = books[i] as Int32Array;
        const base = sessions[i]!.start_min;
        for (let m = Math.min(end, ends[i] as number) - 1; m >= Math.max(start, base, last + 1); m--) {
          if ((book[m - base] as number) > free) {
            last = m;
            break;
          }
        }
      }
    }
    return last;
  };

  return {
    earliest(piece, from) {
      for (let s = 0; s < sessions.length; s++) {
        let start = Math.max(sessions[s]!.start_min, from);
        while (start + piece.minutes <= (ends[s] as number)) {
          const conflict = lastConflict(piece, start, s);
          if (conflict < 0) return start;
          start = conflict + 1;
        }
      }
      return Infinity;
    },
    take(piece, start, sign) {
      for (const { resource, units, length_min } of piece.spans) {
        const end = start + length_min;
        sessions.forEach(({ start_min }, i) => {
          const book = used[resource]![i] as Int32Array;
          for (let m = Math.max(start, start_min); m < Math.min(end, ends[i] as number); m++)
            book[m - start_min] = (book[m - start_min] as number) + sign * units;
        });
      }
    },
    most: (resource, session) => used[resource]![session]!.reduce((a, b) => Math.max(a, b), 0),
  };
}
