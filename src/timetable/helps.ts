import type { Plan } from '../plan/plan.js';
import type { Shelf } from '../shelf/shelf.js';
import type { Shop } from '../shop/shop.js';
import { problemOf } from './calendar.js';
import { jobsOf } from './jobs.js';
import { schedule, type Schedule } from './schedule.js';

/** One thing more, and what it does: found by making the timetable anew with it. */
export interface Help {
  /** `four more corner clamps` */
  readonly more: string;
  /** Sessions saved; 0 where none is. */
  readonly saves: number;
  readonly sessions: number;
}

/** What one might buy or ask for, each tried in two sizes; only what the workshop counts. */
const asks: readonly {
  readonly words: readonly [string, string];
  readonly with: (shop: Shop, size: 0 | 1) => Shop | null;
}[] = [
  {
    words: ['four more corner clamps', 'eight more corner clamps'],
    with: (shop, size) =>
      shop.corner_clamps === null ? null : { ...shop, corner_clamps: shop.corner_clamps + [4, 8][size]! },
  },
  {
    words: ['ten more bar clamps', 'twenty more bar clamps'],
    with: (shop, size) =>
      shop.bar_clamps === null ? null : { ...shop, bar_clamps: shop.bar_clamps + [10, 20][size]! },
  },
  {
    words: ['one more saw', 'two more saws'],
    with: (shop, size) =>
      shop.saws === null || shop.saws.some(({ kind }) => kind === 'none')
        ? null
        : { ...shop, saws: shop.saws.map((saw, i) => (i === 0 ? { ...saw, count: saw.count + size + 1 } : saw)) },
  },
  {
    words: ['one more flat place', 'two more flat places'],
    with: (shop, size) =>
      shop.flat_places === null || shop.flat_places === 0
        ? null
        : { ...shop, flat_places: shop.flat_places + size + 1 },
  },
  {
    words: ['one more person in each session', 'two more people in each session'],
    with: (shop, size) =>
      shop.sessions.every(({ people }) => people === null)
        ? null
        : {
            ...shop,
            sessions: shop.sessions.map((one) => ({
              ...one,
              people: one.people === null ? null : one.people + size + 1,
            })),
          },
  },
  {
    words: ['sessions half an hour longer', 'sessions an hour longer'],
    with: (shop, size) => ({
      ...shop,
      sessions: shop.sessions.map((one, i) => ({
        ...one,
        length_min: Math.min(
          one.length_min + 30 * (size + 1),
          (shop.sessions[i + 1]?.start_min ?? Infinity) - one.start_min,
        ),
      })),
    }),
  },
];

/**
 * What each would save, the smaller size first where that already does. Nothing is asked where the chain of one frame
 * alone takes as long, but for longer sessions.
 */
export function helpsOf(plans: readonly Plan[], shop: Shop, shelf: Shelf, now: Schedule): readonly Help[] {
  const { sessions } = now;
  if (sessions === null) return [];
  const alone = now.why?.by === 'chain' && sessions === now.bound;
  return asks.flatMap(({ words, with: change }, i): Help[] => {
    if (alone && i < asks.length - 1) return change(shop, 0) === null ? [] : [{ more: words[0], saves: 0, sessions }];
    for (const size of [0, 1] as const) {
      const changed = change(shop, size);
      if (changed === null) return [];
      const then = schedule(problemOf(jobsOf(plans, changed, shelf), changed)).sessions ?? sessions;
      if (then < sessions) return [{ more: words[size], saves: sessions - then, sessions: then }];
    }
    return [{ more: words[1], saves: 0, sessions }];
  });
}
