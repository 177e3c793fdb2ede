import type { Code } from 'mdast';
import { planDefaults } from '../plan/defaults.js';
import { userText } from '../report/clean-text.js';
import type { Report } from '../report/compose.js';
import {
  bullets,
  document,
  heading,
  paragraph,
  picture,
  setApart,
  steps,
  strong,
  table,
  type Block,
  type Cell,
} from '../report/tree.js';
import { counted } from '../report/words/verdict.js';
import type { Shelf } from '../shelf/shelf.js';
import { alarm_level, type Departure } from './departures.js';
import type { LearnedEntry } from './entries.js';
import type { Learned, Outlier } from './learn.js';
import { proposal_worth } from './nig.js';
import {
  amount,
  departureWords,
  entryWords,
  fromWords,
  grossWords,
  kindInWords,
  luckWords,
  nextWords,
  outlierWords,
  topTenthWords,
  type OtherReading,
} from './page-words.js';
import type { KeptPromise } from './promise-ledger.js';
import { rankPicture } from './rank-picture.js';
import { nextSteps } from './settle-next.js';
import { learnedLines, shelfChanges } from './shelf-file.js';
import { toDo } from './to-do.js';

/** What the page is told besides what was learned. */
export interface PageFacts {
  /** The day, as the user gave it. */
  readonly date: string | null;
  /** The shelf file that has learned; null when none was written. */
  readonly written: string | null;
}

const title = 'What your frames say';

/**
 * The page for the studio: was the promise kept, what to look at again, what the numbers become, what would settle
 * them.
 */
export function composeLearnPage(found: Learned, shelf: Shelf, facts: PageFacts): Report & { readonly title: string } {
  const ranks = rankPicture(found.promises.map(({ rank_between }) => rank_between));
  const todo = toDo(found, shelf, facts.written);
  const part = (name: string, blocks: readonly Block[]): readonly Block[] =>
    blocks.length === 0 ? [] : [heading(2, name), ...blocks];
  return {
    title,
    tree: document([
      heading(1, title),
      setApart(...summary(found).map((sentence) => paragraph(strong(sentence)))),
      ...part('What to do now', todo.length === 0 ? [] : [steps(todo)]),
      ...part('Was the promise kept?', keptBlocks(found, ranks === null ? [] : [picture(ranks)])),
      ...part('Readings to look at again', outlierBlocks(found)),
      ...part('What the frames say of your numbers', numberBlocks(found)),
      ...part('For your shelf', shelfBlocks(found, shelf, facts)),
      ...part('What the folder holds', folderBlocks(found)),
      ...part('What this rests on', restBlocks(shelf, facts)),
    ]),
    pictures: ranks === null ? [] : [ranks],
  };
}

function summary(found: Learned): readonly string[] {
  const {
    frames,
    kept: {
      within_nine_in_ten: [k, n],
      chance,
    },
    departures,
    outliers,
    gross,
    entries,
  } = found;
  if (n === 0)
    return [`${counted(frames, 'frame')} with a sheet, and no reading that anything was promised of: nothing changes.`];
  const alarms = departures.filter(({ alarm }) => alarm);
  const hanging = alarms.filter((one) => hangsOnAsked(found, one)).length;
  const firm = alarms.length - hanging;
  const changed = [...entries]
    .filter(({ of, what }) => of === 'spread' || what === 'give' || what === 'pull')
    .sort(
      (a, b) =>
        Math.abs(Math.log(b.posterior.mean / b.prior.mean)) - Math.abs(Math.log(a.posterior.mean / a.prior.mean)),
    )[0];
  return [
    `${counted(frames, 'frame')}, ${counted(n, 'reading')}: ${k} lie where honest promises would hold about ${Math.round(0.9 * n)}, nine in ten (${luckWords(chance)}).`,
    firm === 0
      ? 'Nothing that is sure departs from what was promised by more than luck.'
      : `${counted(firm, 'thing departs', 'things depart')} from what was promised by more than luck.`,
    ...(hanging === 0
      ? []
      : [
          `${counted(hanging, 'thing', 'things')} more ${hanging === 1 ? 'does' : 'do'} so only by the readings to look at again.`,
        ]),
    ...(outliers.length + gross.length === 0
      ? []
      : [`${counted(outliers.length + gross.length, 'reading asks', 'readings ask')} for a second look.`]),
    ...(changed === undefined
      ? []
      : [
          `What moved most: ${entryWords(changed)}, from ${amount(changed.prior.mean, changed)} to ${amount(changed.posterior.mean, changed)}.`,
        ]),
  ];
}

function keptBlocks(found: Learned, shown: readonly Block[]): readonly Block[] {
  const { promises, departures, top_tenths, unpromised } = found;
  if (promises.length === 0) return [];
  const alarms = departures.filter(({ alarm }) => alarm);
  return [
    paragraph(
      'Each reading is held against what was known before it was taken: the plan, what was read of its boards, and what was read of the same frame earlier. If the promises are honest, the readings spread evenly over what was promised. A reading that its rounding leaves between two parts is shared between them.',
    ),
    ...shown,
    paragraph(
      'The picture looks at all readings together, the table at the upper end of each kind alone, the list under it at whole groups: each can find what the others do not.',
    ),
    table(
      [{ head: 'Reading' }, { head: 'When' }, { head: 'In the top tenth of what was promised' }],
      top_tenths.map((count): readonly Cell[] => [
        kindInWords(count.kind),
        count.step === 'bare' ? 'bare' : 'cloth on',
        topTenthWords(count),
      ]),
    ),
    ...(alarms.length === 0
      ? [
          paragraph(
            `Looked at by kind of reading, plan, kind of board, step of the work and student: ${counted(departures.length, 'group')}, and none departs by more than luck.`,
          ),
        ]
      : [
          paragraph(
            `Looked at by kind of reading, plan, kind of board, step of the work and student: ${counted(departures.length, 'group')}. Beyond luck:`,
          ),
          bullets(alarms.map((one) => departureWords(one, hangsOnAsked(found, one)))),
        ]),
    paragraph(
      `However many groups are looked at, an honest promise is called broken in at most ${Math.round(alarm_level * 100)} of 100 such folders.`,
    ),
    ...(unpromised.length === 0
      ? []
      : [
          paragraph(
            `${counted(unpromised.length, 'reading')} could not be held against anything: ${[...new Set(unpromised.map(({ why }) => why))].join('; ')} (${userText([...new Set(unpromised.map(({ file }) => file))].join(', '), 300)}).`,
          ),
        ]),
  ];
}

/** Whether a group departs only by the readings that are asked about. */
const hangsOnAsked = ({ departing_without }: Learned, { group, name }: Departure): boolean =>
  departing_without !== null && !departing_without.includes(`${group} ${name}`);

function outlierBlocks({ outliers, gross, promises, folder }: Learned): readonly Block[] {
  const unitsOf = (plan: string) => folder.frames.find((frame) => frame.plan.name === plan)?.plan.units ?? 'metric';
  return [
    ...(outliers.length === 0
      ? []
      : [
          paragraph(
            `Among ${counted(promises.length, 'honest reading')}, one as far out as these turns up in fewer than 1 of 20 folders. Correct a sheet that is wrong; a reading that is right stays as it is, and counts:`,
          ),
          bullets(outliers.map((one) => outlierWords(one, otherOf(one, promises, outliers), unitsOf(one.plan)))),
        ]),
    ...(gross.length === 0
      ? []
      : [
          paragraph('A slip of the decimal point is likelier here than a true reading:'),
          bullets(gross.map(grossWords)),
        ]),
  ];
}

/**
 * The same thing read on the same frame at the other time, bare or with the cloth on, and whether that is asked about
 * too.
 */
function otherOf(one: Outlier, promises: readonly KeptPromise[], outliers: readonly Outlier[]): OtherReading | null {
  const other = promises.find(
    ({ plan, frame, reading, when }) =>
      plan === one.plan && frame === one.frame && reading === one.reading && when !== one.when,
  );
  if (other === undefined) return null;
  return {
    measured: other.measured,
    bare: other.when === 'before-cloth',
    asked: outliers.some(({ file, reading }) => file === other.file && reading === other.reading),
  };
}

function numberBlocks({ entries, without_outliers }: Learned): readonly Block[] {
  if (entries.length === 0) return [];
  const steps = nextSteps(entries).slice(0, 4);
  return [
    table(
      [
        { head: 'Number' },
        { head: 'Shelf said', align: 'right' },
        { head: 'Now', align: 'right' },
        { head: 'Nine tenths sure between', align: 'right' },
        { head: 'From' },
        ...(without_outliers === null ? [] : [{ head: 'Without the readings asked about', align: 'right' as const }]),
      ],
      entries.map((entry): readonly Cell[] => [
        entryWords(entry),
        amount(entry.shelf, entry),
        amount(entry.posterior.mean, entry),
        `${amount(entry.posterior.low, entry)} and ${amount(entry.posterior.high, entry)}`,
        fromWords(entry),
        withoutWords(entry, without_outliers),
      ]),
    ),
    paragraph(
      `What the shelf said counts as much as ${proposal_worth} boards (or frames, or corners) of your own: ${proposal_worth} of yours move it half way.${without_outliers === null ? '' : ' A dash: those readings hardly move it.'} ‰/m is the bend of a board: 2 ‰/m is ${'1.4 mm in the middle of 2400 mm'}.`,
    ),
    ...(steps.length === 0 ? [] : [heading(3, 'What would settle it fastest'), bullets(steps.map(nextWords))]),
  ];
}

/**
 * What a number would be without the readings that are asked about: the shelf's where nothing else tells of it; a dash
 * where they hardly matter.
 */
function withoutWords(entry: LearnedEntry, others: readonly LearnedEntry[] | null): string {
  if (others === null) return '–';
  const other =
    others.find(
      ({ key, what, of, chosen }) =>
        key === entry.key && what === entry.what && of === entry.of && chosen === entry.chosen,
    )?.posterior.mean ?? entry.prior.mean;
  return Math.abs(other - entry.posterior.mean) < entry.posterior.sd / 4 ? '–' : amount(other, entry);
}

function shelfBlocks({ entries }: Learned, shelf: Shelf, { date, written }: PageFacts): readonly Block[] {
  const changes = shelfChanges(entries, shelf);
  const blocks: Block[] = [];
  if (changes.length > 0) {
    const lines: Code = { type: 'code', lang: 'yaml', value: learnedLines(changes, date) };
    blocks.push(
      paragraph(
        written === null
          ? 'Put these over the old numbers on your shelf, or let --write do it:'
          : `${userText(written, 120)} now says:`,
      ),
      lines,
      paragraph(
        'Plans audited with that shelf stand on your own numbers, and their reports say so. The next run starts again from the old numbers, which the comments keep, so nothing counts twice. A pull that a plan names goes before the shelf’s.',
      ),
    );
  }
  return blocks;
}

function folderBlocks({ folder, frames }: Learned): readonly Block[] {
  const listed: Cell[] = [
    ...folder.questions.map((question) => userText(question, 300)),
    ...folder.sheets_without_plan.map(
      ({ file, why }) => `Sheet without a plan, ${userText(file, 80)}: ${userText(why, 300)}.`,
    ),
    ...folder.plans_without_sheets.map(
      ({ file, name }) => `Plan without a sheet: ${userText(file, 80)}, “${userText(name, 80)}”.`,
    ),
    ...folder.left.map(({ file, why }) => `${userText(file, 80)}: ${userText(why, 300)}.`),
    ...[...new Set(folder.problems.filter(({ severity }) => severity === 'error').map(({ file }) => file))].map(
      (file) => `${userText(file, 80)} could not be read.`,
    ),
  ];
  return [
    paragraph(`${counted(frames, 'frame')} with at least one sheet.`),
    ...(listed.length === 0 ? [] : [bullets(listed)]),
  ];
}

function restBlocks(shelf: Shelf, { date }: PageFacts): readonly Block[] {
  return [
    bullets([
      `Shelf “${userText(shelf.name, 120)}”, as it stood before it learned from frames${date === null ? '' : `; ${date}`}.`,
      'A frame counts once bare and once with its cloth; later readings of it are kept but not counted.',
      'Boards read one by one give their kind’s mean and spread in closed form; lifts and bows of frames add to that by the solved frame’s own influence numbers. Corners whose cuts lean count as twist here: the number is the one that makes the promise right.',
      'Give comes from how far the cloth draws the bars in, and from test corners; corners of one frame are taken as alike.',
      `Pull is the one reached over the one planned, times ${planDefaults.working_N_per_m} N/m or what the shelf gives for the cloth. Where the audit gives a number and no spread, these stand in (proposals): pull within 1.25 times and weight within 15 % in nine frames of ten, moisture of single boards 1 point, angle of a saw cut 0.2°.`,
      'Every false alarm is guarded against by Holm’s steps; counts are exact binomial.',
    ]),
  ];
}
