import { dayInWords } from '../base/days.js';
import { userText } from '../report/clean-text.js';
import type { Picture } from '../report/drawings/picture.js';
import {
  bullets,
  document,
  heading,
  paragraph,
  picture,
  setApart,
  strong,
  table,
  type Block,
  type Cell,
} from '../report/tree.js';
import { moneyBlocks } from './money-blocks.js';
import { timetablePictures } from './picture.js';
import { resources, type Task } from './job.js';
import type { Placed, Timetable } from './timetable.js';
import { count, outcome, proofWords, sentence, sessionTitle, whoOf } from './words.js';

/** A page before it is written. */
export interface TimetablePage {
  readonly tree: ReturnType<typeof document>;
  readonly pictures: readonly Picture[];
}

const day_min = 24 * 60;

/**
 * The page for the wall of the workshop: when all is done, what would help, who does what in each session, what it
 * costs.
 */
export function composeTimetable(one: Timetable): TimetablePage {
  const pictures = timetablePictures(one);
  const part = (title: string, blocks: readonly Block[]): readonly Block[] =>
    blocks.length === 0 ? [] : [heading(2, title), ...blocks];
  return {
    tree: document([
      heading(1, `Timetable: ${userText(one.shop.name, 120)}`),
      setApart(paragraph(strong(outcome(one)), ` ${proofWords(one)}`)),
      ...(one.ready_min === null
        ? []
        : [
            paragraph(
              `All is ready to paint on ${dayInWords(Math.floor(one.ready_min / day_min))}, when the last has dried and rested.`,
            ),
          ]),
      ...part('What would help', helpBlocks(one)),
      ...part('Over time', pictures.map(picture)),
      ...one.sessions.flatMap((session, s) => part(sessionTitle(session, s), sessionBlocks(one, s))),
      ...part('Money', moneyBlocks(one.money, one.shop)),
      ...part('What this rests on', [bullets(basis(one))]),
    ]),
    pictures,
  };
}

function helpBlocks({ helps }: Timetable): readonly Block[] {
  const none = helps.filter(({ saves }) => saves === 0).map(({ more }) => more);
  const some = helps
    .filter(({ saves }) => saves > 0)
    .map(
      ({ more, saves, sessions }) =>
        `With ${more} you save ${saves === 1 ? 'a session' : count(saves, 'session')}: ${sessions} in all.`,
    );
  return helps.length === 0
    ? []
    : [bullets([...some, ...(none.length === 0 ? [] : [`No session is saved by ${none.join(', by ')}.`])])];
}

function sessionBlocks(one: Timetable, s: number): readonly Block[] {
  const here = one.placed.filter(({ session }) => session === s);
  const words = [...new Set(here.map(({ task }) => task.words))];
  const rows = words.map((word): readonly Cell[] => {
    const these = here.filter(({ task }) => task.words === word);
    return [
      sentence(word),
      these
        .map((placed) => `${whoOf(placed.job, one.jobs)} ${placed.from_min}–${placed.from_min + placed.task.minutes}`)
        .join(', '),
      usesWords(these[0]!.task),
    ];
  });
  return [
    ...(here.length === 0
      ? [paragraph('Nothing can be done: everything rests.')]
      : [table([{ head: 'What' }, { head: 'Who, and from which minute to which' }, { head: 'Each takes' }], rows)]),
    ...queueBlocks(one, here, s),
    ...restBlocks(one, s),
  ];
}

/** What a task takes besides hands. */
function usesWords({ uses, hold_min }: Task): string {
  const things = resources
    .filter((name) => name !== 'person' && (uses[name] ?? 0) > 0)
    .map((name) => count(uses[name]!, name));
  return things.length === 0
    ? ''
    : `${things.join(', ')}${hold_min > 0 ? `; the clamps for ${hold_min} minutes after it` : ''}`;
}

/** Who could go on but for a clamp, a saw, a place. */
function queueBlocks(one: Timetable, here: readonly Placed[], s: number): readonly Block[] {
  const later = one.placed.filter(({ waited, session }) => waited !== null && waited.since <= s && session > s);
  const inside = here.filter(({ waited }) => waited !== null && waited.since === s);
  const lines = [...new Set([...later, ...inside].map(({ waited }) => waited!.of))].flatMap((of): Cell[] => {
    const mine = (list: readonly Placed[]): string =>
      [...new Set(list.filter(({ waited }) => waited!.of === of).map(({ job }) => whoOf(job, one.jobs)))].join(', ');
    const [long, short] = [mine(later), mine(inside)];
    const what = of === 'its builder' ? 'the builder to be free' : of === 'person' ? 'somebody to be free' : `a ${of}`;
    const most = Math.max(0, ...inside.filter(({ waited }) => waited!.of === of).map(({ waited }) => waited!.minutes));
    return [
      ...(long === '' ? [] : [[strong(`Until a later session for ${what}:`), ` ${long}.`] as const]),
      ...(short === '' ? [] : [`Within the session for ${what}, at most ${most} minutes: ${short}.`]),
    ];
  });
  return lines.length === 0 ? [] : [paragraph(strong('Who waits')), bullets(lines)];
}

/** What glue, ground and wood do until the next session. */
function restBlocks(one: Timetable, s: number): readonly Block[] {
  const session = one.sessions[s]!;
  const end = session.start_min + session.length_min;
  const resting = one.jobs.flatMap((job) => {
    const last = one.placed.filter((placed) => placed.job === job && placed.session <= s).at(-1);
    if (last === undefined || last.task.wait_for === '') return [];
    const until = one.shop.sessions[last.session]!.start_min + last.from_min + last.task.minutes + last.task.wait_min;
    return until > end ? [{ job, why: last.task.wait_for }] : [];
  });
  const whys = [...new Set(resting.map(({ why }) => why))];
  return whys.length === 0
    ? []
    : [
        paragraph(strong('What rests after it')),
        bullets(
          whys.map(
            (why): Cell =>
              `For ${why}: ${resting
                .filter((one_) => one_.why === why)
                .map(({ job }) => whoOf(job, one.jobs))
                .join(', ')}.`,
          ),
        ),
      ];
}

function basis({ shop, jobs }: Timetable): readonly Cell[] {
  const left_out = [
    ...(shop.saws === null ? ['saws'] : []),
    ...(shop.flat_places === null ? ['flat places'] : []),
    ...(shop.corner_clamps === null ? ['corner clamps'] : []),
    ...(shop.bar_clamps === null ? ['bar clamps'] : []),
    ...(shop.sessions.every(({ people }) => people === null) ? ['people'] : []),
  ];
  return [
    'The minutes of each step are proposals for one practised person, the same for every frame whatever its size; put your own on the shelf, among the proposals. Beginners take longer.',
    'Waits are those of each plan’s order of work. They run on between sessions and are no lesson time. Clamps come off as soon as the glue has held for as long as it asks, whoever is nearest; nobody keeps one longer.',
    'A frame belongs to one person at a time, and one person with several frames works on one after the other. A step is never left half done at the end of a session.',
    'It ends with the last coat of ground. Painting, closing the back and hanging come after it.',
    ...(shop.at_known
      ? []
      : [
          'The file does not say at which hour sessions begin: 18:00 is taken. It matters only for waits from one day to the next.',
        ]),
    ...(left_out.length === 0
      ? []
      : [`The file does not count ${left_out.join(', ')}: as many as are asked for are taken to be there.`]),
    ...(shop.corner_clamps === 0 && jobs.some(({ tasks }) => tasks.some(({ id }) => id.startsWith('glue-corners')))
      ? ['There are no corner clamps: a cord round the frame, tightened with a stick, holds the corners.']
      : []),
  ];
}
