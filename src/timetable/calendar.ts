import type { Session, Shop } from '../shop/shop.js';
import { resources, type Job, type Resource, type Task } from './job.js';

/** A span of one resource by one task: from its start, `length_min` long. */
export interface Span {
  readonly resource: number;
  readonly units: number;
  readonly length_min: number;
}

/** A task as the search sees it. */
export interface Piece {
  readonly minutes: number;
  readonly wait_min: number;
  readonly spans: readonly Span[];
  /** The longest of its spans. */
  readonly longest_min: number;
}

/**
 * The scheduling problem in numbers: sessions one after the other, frames as chains of pieces, what there is of each
 * resource.
 */
export interface Problem {
  readonly sessions: readonly Session[];
  /**
   * Of each resource in each session; Infinity where it is not counted. The first five are `resources`, then one for
   * each student with several frames.
   */
  readonly capacity: readonly (readonly number[])[];
  readonly frames: readonly (readonly Piece[])[];
  /** Frames of one kind can change places. */
  readonly kind: readonly number[];
}

const held: ReadonlySet<Resource> = new Set(['flat place', 'corner clamp', 'bar clamp']);

/** The problem of frames in a workshop. */
export function problemOf(
  jobs: readonly Job[],
  shop: Pick<Shop, 'sessions' | 'corner_clamps' | 'bar_clamps' | 'saws' | 'flat_places'>,
): Problem {
  const { sessions } = shop;
  const saws =
    shop.saws === null || shop.saws.some(({ kind }) => kind === 'none')
      ? null
      : shop.saws.reduce((n, { count }) => n + count, 0);
  const fixed = {
    saw: saws,
    'flat place': shop.flat_places,
    'corner clamp': shop.corner_clamps,
    'bar clamp': shop.bar_clamps,
  } as const;
  const busy = [
    ...new Set(
      jobs.flatMap(({ student }) =>
        student !== null && jobs.filter((job) => job.student === student).length > 1 ? [student] : [],
      ),
    ),
  ];
  const capacity = [
    ...resources.map((name) => sessions.map(({ people }) => (name === 'person' ? people : fixed[name]) ?? Infinity)),
    ...busy.map(() => sessions.map(() => 1)),
  ];
  const frames = jobs.map((job) =>
    job.tasks.map((task) => pieceOf(task, job.student === null ? -1 : busy.indexOf(job.student))),
  );
  const signatures = jobs.map((job, i) =>
    JSON.stringify([frames[i], job.student === null ? -1 : busy.indexOf(job.student)]),
  );
  return { sessions, capacity, frames, kind: signatures.map((signature) => signatures.indexOf(signature)) };
}

function pieceOf({ minutes, wait_min, hold_min, uses }: Task, student: number): Piece {
  const spans = resources.flatMap((name, resource): Span[] =>
    (uses[name] ?? 0) > 0
      ? [{ resource, units: uses[name] as number, length_min: minutes + (held.has(name) ? hold_min : 0) }]
      : [],
  );
  if (student >= 0) spans.push({ resource: resources.length + student, units: 1, length_min: minutes });
  return { minutes, wait_min, spans, longest_min: Math.max(minutes, ...spans.map(({ length_min }) => length_min)) };
}

/** The first minute at or after `from` at which a session has room for `minutes`; Infinity where none has. */
export function fitsFrom(sessions: readonly Session[], from: number, minutes: number): number {
  for (const { start_min, length_min } of sessions) {
    const start = Math.max(start_min, from);
    if (start + minutes <= start_min + length_min) return start;
  }
  return Infinity;
}

/** Index of the session in which a minute lies; -1 between sessions. */
export const sessionAt = (sessions: readonly Session[], minute: number): number =>
  sessions.findIndex(({ start_min, length_min }) => minute >= start_min && minute < start_min + length_min);
