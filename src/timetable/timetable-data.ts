import { dayText } from '../base/days.js';
import type { Timetable } from './timetable.js';

/**
 * The timetable as other programs read it: `timetable/1`. Dates are days such as `2027-01-12`; null where the sessions
 * do not suffice.
 */
export function timetableData({ shop, sessions, placed, schedule }: Timetable): object {
  const dateOf = (count: number | null): string | null => {
    const session = count === null ? undefined : shop.sessions[count - 1];
    return session === undefined ? null : dayText(session.day);
  };
  return {
    format: 'timetable/1',
    sessions: sessions.map(({ day }, s) => ({
      date: dayText(day),
      tasks: placed
        .filter(({ session }) => session === s)
        .map(({ job, task }) => ({ plan: job.name, task: task.id, minutes: task.minutes, uses: task.uses })),
    })),
    finish: dateOf(schedule.sessions),
    bound: dateOf(schedule.bound),
    proven: schedule.proven,
  };
}
