import { fitsFrom, type Piece, type Problem } from './calendar.js';

/** When each piece can begin at the earliest if its frame were alone, by frame. */
export function heads({ sessions, frames }: Pick<Problem, 'sessions' | 'frames'>): readonly (readonly number[])[] {
  return frames.map((pieces) => {
    let ready = -Infinity;
    return pieces.map(({ minutes, wait_min }) => {
      const start = fitsFrom(sessions, ready, minutes);
      ready = start + minutes + wait_min;
      return start;
    });
  });
}

/**
 * When each piece must have begun at the latest for its frame to be done in the first `count` sessions; -Infinity where
 * it cannot.
 */
export function latestStarts(
  { sessions, frames }: Pick<Problem, 'sessions' | 'frames'>,
  count: number,
): readonly (readonly number[])[] {
  return frames.map((pieces) => {
    const found: number[] = pieces.map(() => -Infinity);
    let due = Infinity;
    for (let k = pieces.length - 1; k >= 0; k--) {
      const { minutes } = pieces[k] as Piece;
      due -= k === pieces.length - 1 ? 0 : (pieces[k] as Piece).wait_min;
      let start = -Infinity;
      for (let s = count - 1; s >= 0 && start === -Infinity; s--) {
        const { start_min, length_min } = sessions[s]!;
        const latest = Math.min(start_min + length_min, due) - minutes;
        if (latest >= start_min) start = latest;
      }
      found[k] = start;
      due = start;
    }
    return found;
  });
}

/** Why a number of sessions is too few. */
export interface TooFew {
  readonly by: 'chain' | 'resource';
  /** Index of the resource; -1 for a chain. */
  readonly resource: number;
}

/**
 * Whether the first `count` sessions are too few whatever one does: a frame alone does not get done in them, or what
 * must be done between two moments
 * takes more than there is of a resource. Null proves nothing. Clamps count with the time in which they are held, which
 * may run on after a session.
 */
export function tooFew(problem: Problem, count: number): TooFew | null {
  const head = heads(problem);
  const latest = latestStarts(problem, count);
  const late = head.some((starts, f) => starts.some((start, k) => start > (latest[f]?.[k] ?? -Infinity)));
  if (late) return { by: 'chain', resource: -1 };
  for (let r = 0; r < problem.capacity.length; r++)
    if (overloaded(problem, r, count, head, latest)) return { by: 'resource', resource: r };
  return null;
}

const few_frames = 8;

interface Demand {
  readonly from: number;
  readonly to: number;
  readonly minutes: number;
  readonly hold: number;
  readonly units: number;
}

function overloaded(
  { sessions, capacity, frames }: Problem,
  resource: number,
  count: number,
  head: readonly (readonly number[])[],
  latest: readonly (readonly number[])[],
): boolean {
  const room = capacity[resource] as readonly number[];
  if (room.slice(0, count).some((units) => units === Infinity)) return false;
  // Moments are taken one by one for a few frames; for many, whole sessions, or there would be too many pairs of them.
  const few = frames.length <= few_frames;
  const opens = (moment: number): number =>
    few ? moment : Math.max(...sessions.map(({ start_min }) => (start_min <= moment ? start_min : -Infinity)));
  const closes = (moment: number): number =>
    few
      ? moment
      : Math.min(
          ...sessions.map(({ start_min, length_min }) =>
            start_min + length_min >= moment ? start_min + length_min : Infinity,
          ),
        );
  const demands = frames.flatMap((pieces, f) =>
    pieces.flatMap((piece, k): Demand[] => {
      const span = piece.spans.find((one) => one.resource === resource);
      return span === undefined
        ? []
        : [
            {
              from: opens(head[f]![k]!),
              to: closes(latest[f]![k]! + piece.minutes),
              minutes: piece.minutes,
              hold: span.length_min - piece.minutes,
              units: span.units,
            },
          ];
    }),
  );
  const distinct = (key: keyof Demand): readonly number[] =>
    [...new Set(demands.map((demand) => demand[key]))].sort((a, b) => a - b);
  const most = Math.max(0, ...demands.map(({ units }) => units));
  if (Math.min(...room.slice(0, count)) >= most * frames.length) return false;
  const lengths = distinct('minutes');
  return distinct('from').some((from) =>
    distinct('to').some((to) =>
      lengths.some((least) => {
        // The long ones by themselves, too: two of 50 minutes do not fit into one session of 90.
        const inside = demands.filter((demand) => demand.from >= from && demand.to <= to && demand.minutes >= least);
        if (inside.length === 0) return false;
        const [minutes, hold, longest, units] = [
          Math.min(...inside.map((one) => one.minutes)),
          Math.min(...inside.map((one) => one.hold)),
          Math.max(...inside.map((one) => one.hold)),
          Math.min(...inside.map((one) => one.units)),
        ];
        let goes = 0;
        let energy = 0;
        for (let s = 0; s < count; s++) {
          const length =
            Math.min(to, sessions[s]!.start_min + sessions[s]!.length_min) - Math.max(from, sessions[s]!.start_min);
          if (length < minutes) continue;
          goes += Math.floor(room[s]! / units) * (Math.floor((length - minutes) / (minutes + hold)) + 1);
          energy += room[s]! * (length + longest);
        }
        return (
          inside.length > goes || inside.reduce((sum, one) => sum + one.units * (one.minutes + one.hold), 0) > energy
        );
      }),
    ),
  );
}
