import { dayInWords } from '../base/days.js';
import { userText } from '../report/clean-text.js';
import type { Session } from '../shop/shop.js';
import type { Job } from './job.js';
import type { Timetable } from './timetable.js';

const small = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve'];
/** `one session`, `13 sessions`. */
export const count = (n: number, one: string, many = `${one}s`): string => `${small[n] ?? n} ${n === 1 ? one : many}`;

/** First letter large. */
export const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Who works on a frame, as one calls out in the room: the student, with the frame where one builds several. */
export function whoOf(job: Job, jobs: readonly Job[]): string {
  if (job.student === null) return userText(job.name, 60);
  const several = jobs.filter(({ student }) => student === job.student).length > 1;
  return userText(several ? `${job.student} (${job.name})` : job.student, 60);
}

/** `Session 3: Tuesday, 26 January 2027` */
export const sessionTitle = ({ day }: Session, index: number): string => `Session ${index + 1}: ${dayInWords(day)}`;

/** The last session and the proof, in one or two sentences. */
export function outcome({ schedule, sessions, jobs, problem }: Timetable): string {
  const frames = jobs.length === 1 ? 'The frame is' : `All ${jobs.length} frames are`;
  if (schedule.sessions === null)
    return `${frames.replace(' is', ' does').replace(' are', ' do')} not get done in the ${count(problem.sessions.length, 'session')} there are.`;
  const last = sessions.at(-1)!;
  return `${frames} finished on ${dayInWords(last.day)}, in ${count(schedule.sessions, 'session')}.`;
}

/** What is known of fewer sessions. */
export function proofWords({ schedule, problem }: Timetable): string {
  const { sessions, bound, proven, why } = schedule;
  const reason =
    why === null
      ? ''
      : why.by === 'chain'
        ? ': the work on one frame, with its waits, takes as long even for somebody alone in the room'
        : `: there is not enough time of the ${['people', 'saws', 'flat places', 'corner clamps', 'bar clamps'][why.resource] ?? 'person who builds several frames'} for it`;
  if (sessions === null)
    return proven
      ? `That was proven${reason}. More sessions are needed, or longer ones.`
      : 'None was found. A cleverer order might do it; more sessions surely help.';
  if (proven)
    return sessions === 1
      ? 'It cannot be done in less.'
      : `Fewer sessions do not suffice, whatever the order; that is proven${reason}.`;
  return `This is the best that was found. Whether ${count(problem.sessions.length < bound ? sessions - 1 : bound, 'session')} might do is open; fewer than ${count(bound, 'session')} cannot: that was proven${reason}. The gap is ${count(sessions - bound, 'session')}.`;
}
