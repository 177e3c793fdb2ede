import type { Plan } from '../plan/plan.js';
import type { Shelf } from '../shelf/shelf.js';
import type { Session, Shop } from '../shop/shop.js';
import { openBook } from './book.js';
import { fitsFrom, problemOf, sessionAt, type Problem } from './calendar.js';
import { helpsOf, type Help } from './helps.js';
import { resources, type Job, type Resource, type Task } from './job.js';
import { jobsOf } from './jobs.js';
import { moneyOf, type Money } from './money.js';
import { schedule, type Schedule } from './schedule.js';

/** One task with its place in time. */
export interface Placed {
  readonly job: Job;
  readonly task: Task;
  /** Index of the session, and minutes from its beginning. */
  readonly session: number;
  readonly from_min: number;
  /** Of what it had to wait for a turn, and from which session on; null where it began as soon as it could. */
  readonly waited: { readonly of: Resource | 'its builder'; readonly since: number; readonly minutes: number } | null;
}

/** Who does what when, and what it comes to. */
export interface Timetable {
  readonly shop: Shop;
  readonly jobs: readonly Job[];
  readonly problem: Problem;
  readonly schedule: Schedule;
  /** In order of time; empty where the sessions do not suffice. */
  readonly placed: readonly Placed[];
  /** Sessions up to the last one that is needed, those in which nothing is done with them. */
  readonly sessions: readonly Session[];
  /** When the last ground is dry, minutes since 1970; null without a schedule. */
  readonly ready_min: number | null;
  readonly helps: readonly Help[];
  readonly money: Money;
}

/** The timetable of plans in a workshop. Pure, counted work: the same on every machine. */
export function timetableOf(plans: readonly Plan[], shop: Shop, shelf: Shelf): Timetable {
  const jobs = jobsOf(plans, shop, shelf);
  const problem = problemOf(jobs, shop);
  const found = schedule(problem);
  const placed = placedOf(jobs, problem, found);
  const ready = placed.map(
    ({ task, session, from_min }) => shop.sessions[session]!.start_min + from_min + task.minutes + task.wait_min,
  );
  return {
    shop,
    jobs,
    problem,
    schedule: found,
    placed,
    sessions: shop.sessions.slice(0, found.sessions ?? 0),
    ready_min: ready.length === 0 ? null : Math.max(...ready),
    helps: helpsOf(plans, shop, shelf, found),
    money: moneyOf(plans, shop, shelf),
  };
}

function placedOf(jobs: readonly Job[], problem: Problem, { starts }: Schedule): readonly Placed[] {
  if (starts === null) return [];
  const { sessions, frames } = problem;
  const book = openBook(problem);
  frames.forEach((pieces, f) => pieces.forEach((piece, k) => book.take(piece, starts[f]![k]!, 1)));
  const found = jobs.flatMap((job, f) => {
    let ready = -Infinity;
    return job.tasks.map((task, k): Placed => {
      const piece = frames[f]![k]!;
      const start = starts[f]![k]!;
      const could = fitsFrom(sessions, ready, task.minutes);
      ready = start + task.minutes + task.wait_min;
      const session = sessionAt(sessions, start);
      let waited: Placed['waited'] = null;
      if (start > could) {
        book.take(piece, start, -1);
        // What it takes, one by one: what would have let it wait longest alone is what it waited for.
        const alone = piece.spans
          .map((span) => ({ resource: span.resource, from: book.earliest({ ...piece, spans: [span] }, could) }))
          .sort((a, b) => b.from - a.from)[0];
        book.take(piece, start, 1);
        if (alone !== undefined && alone.from > could)
          waited = {
            of: resources[alone.resource] ?? 'its builder',
            since: sessionAt(sessions, could),
            minutes: start - could,
          };
      }
      return { job, task, session, from_min: start - sessions[session]!.start_min, waited };
    });
  });
  return found.sort(
    (a, b) => a.session - b.session || a.from_min - b.from_min || jobs.indexOf(a.job) - jobs.indexOf(b.job),
  );
}
