import type { Code } from 'mdast';
import { planDefaults } from '../plan/defaults.js';
import { userText } from '../report/clean-text.js';
import type { Report } from '../report/compose.js';
import { bullets, document, heading, paragraph, picture, setApart, steps, strong, table, type Block, type Cell } from '../report/tree.js';
import { counted } from '../report/words/verdict.js';
import type { Shelf } from '../shelf/shelf.js';
import { alarm_level } from './departures.js';
import type { LearnedEntry } from './entries.js';
import type { Learned } from './learn.js';
import { proposal_worth } from './nig.js';
import { amount, departureWords, entryWords, fromWords, grossWords, kindInWords, luckWords, nextWords, outlierWords, topTenthWords } from './page-words.js';
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

/** The page for the studio: was the promise kept, what to look at again, what the numbers become, what would settle them. */
export function composeLearnPage(found: Learned, shelf: Shelf, facts: PageFacts): Report & { readonly title: string } {
  const ranks = rankPicture(found.promises.map(({ rank_between }) => rank_between));
  const todo = toDo(found, shelf, facts.written);
  const part = (name: string, blocks: readonly Block[]): readonly Block[] => (blocks.length === 0 ? [] : [heading(2, name), ...blocks]);
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

function summary({ frames, kept: { within_nine_in_ten: [k, n], chance }, departures, outliers, gross, entries }: Learned): readonly string[] {
  if (n === 0) return [`${counted(frames, 'frame')} with a sheet, and no reading that anything was promised of: nothing changes.`];
  const alarms = departures.filter(({ alarm }) => alarm).length;
  const changed = [...entries].filter(({ of, what }) => of === 'spread' || what === 'give' || what === 'pull').sort((a, b) => Math.abs(Math.log(b.posterior.mean / b.prior.mean)) - Math.abs(Math.log(a.posterior.mean / a.prior.mean)))[0];
  return [
    `${counted(frames, 'frame')}, ${counted(n, 'reading')}: ${k} lay within what was promised for nine in ten of them, about ${Math.round(0.9 * n)} should (${luckWords(chance)}).`,
    alarms === 0 ? 'Nothing departs from what was promised by more than luck.' : `${counted(alarms, 'thing departs', 'things depart')} from what was promised by more than luck; see below.`,
    ...(outliers.length + gross.length === 0 ? [] : [`${counted(outliers.length + gross.length, 'reading asks', 'readings ask')} for a second look.`]),
    ...(changed === undefined ? [] : [`What moved most: ${entryWords(changed)}, from ${amount(changed.prior.mean, changed)} to ${amount(changed.posterior.mean, changed)}.`]),
  ];
}

function keptBlocks({ promises, departures, departing_without, top_tenths, unpromised }: Learned, shown: readonly Block[]): readonly Block[] {
  if (promises.length === 0) return [];
  const alarms = departures.filter(({ alarm }) => alarm);
  const luck_without = new Set(departing_without === null ? [] : alarms.map(({ group, name }) => `${group} ${name}`).filter((key) => !departing_without.includes(key)));
  return [
    paragraph('Each reading is held against what was known before it was taken: the plan, what was read of its boards, and what was read of the same frame earlier. If the promises are honest, the readings spread evenly over what was promised.'),
    ...shown,
    table([{ head: 'Reading' }, { head: 'When' }, { head: 'In the top tenth of what was promised' }], top_tenths.map((count): readonly Cell[] => [kindInWords(count.kind), count.step === 'bare' ? 'bare' : 'cloth on', topTenthWords(count)])),
    ...(alarms.length === 0
      ? [paragraph(`Looked at by kind of reading, plan, kind of board, step of the work and student: ${counted(departures.length, 'group')}, and none departs by more than luck.`)]
      : [paragraph(`Looked at by kind of reading, plan, kind of board, step of the work and student: ${counted(departures.length, 'group')}. Beyond luck:`), bullets(alarms.map((one) => departureWords(one, luck_without.has(`${one.group} ${one.name}`))))]),
    paragraph(`However many groups are looked at, an honest promise is called broken in at most ${Math.round(alarm_level * 100)} of 100 such folders.`),
    ...(unpromised.length === 0 ? [] : [paragraph(`${counted(unpromised.length, 'reading')} could not be held against anything: ${[...new Set(unpromised.map(({ why }) => why))].join('; ')} (${userText([...new Set(unpromised.map(({ file }) => file))].join(', '), 300)}).`)]),
  ];
}

function outlierBlocks({ outliers, gross, promises, folder }: Learned): readonly Block[] {
  const unitsOf = (plan: string) => folder.frames.find((frame) => frame.plan.name === plan)?.plan.units ?? 'metric';
  return [
    ...(outliers.length === 0 ? [] : [paragraph(`Among ${counted(promises.length, 'honest reading')}, one as far out as these turns up in fewer than 1 of 20 folders:`), bullets(outliers.map((one) => outlierWords(one, unitsOf(one.plan))))]),
    ...(gross.length === 0 ? [] : [paragraph('A slip of the decimal point is likelier here than a true reading:'), bullets(gross.map(grossWords))]),
  ];
}

function numberBlocks({ entries, without_outliers }: Learned): readonly Block[] {
  if (entries.length === 0) return [];
  const steps = nextSteps(entries).slice(0, 4);
  return [
    table(
      [{ head: 'Number' }, { head: 'Shelf said', align: 'right' }, { head: 'Now', align: 'right' }, { head: 'Nine tenths sure between', align: 'right' }, { head: 'From' }, ...(without_outliers === null ? [] : [{ head: 'Without the readings asked about', align: 'right' as const }])],
      entries.map((entry): readonly Cell[] => [entryWords(entry), amount(entry.shelf, entry), amount(entry.posterior.mean, entry), `${amount(entry.posterior.low, entry)} and ${amount(entry.posterior.high, entry)}`, fromWords(entry), withoutWords(entry, without_outliers)]),
    ),
    paragraph(`What the shelf said counts as much as ${proposal_worth} boards (or frames, or corners) of your own: little data moves it little. ‰/m is the bend of a board: 2 ‰/m is ${'1.4 mm in the middle of 2400 mm'}.`),
    ...(steps.length === 0 ? [] : [heading(3, 'What would settle it fastest'), bullets(steps.map(nextWords))]),
  ];
}

/** What a number would be without the readings that are asked about: the shelf's where nothing else tells of it; a dash where they hardly matter. */
function withoutWords(entry: LearnedEntry, others: readonly LearnedEntry[] | null): string {
  if (others === null) return '–';
  const other = others.find(({ key, what, of, chosen }) => key === entry.key && what === entry.what && of === entry.of && chosen === entry.chosen)?.posterior.mean ?? entry.prior.mean;
  return Math.abs(other - entry.posterior.mean) < entry.posterior.sd / 4 ? '–' : amount(other, entry);
}

function shelfBlocks({ entries }: Learned, shelf: Shelf, { date, written }: PageFacts): readonly Block[] {
  const changes = shelfChanges(entries, shelf);
  const blocks: Block[] = [];
  if (changes.length > 0) {
    const lines: Code = { type: 'code', lang: 'yaml', value: learnedLines(changes, date) };
    blocks.push(paragraph(written === null ? 'Put these over the old numbers on your shelf, or let --write do it:' : `${userText(written, 120)} now says:`), lines, paragraph('Plans audited with that shelf stand on your own numbers, and their reports say so. The next run starts from the old numbers again, so nothing counts twice.'));
  }
  return blocks;
}

function folderBlocks({ folder, frames }: Learned): readonly Block[] {
  const listed: Cell[] = [
    ...folder.questions.map((question) => userText(question, 300)),
    ...folder.sheets_without_plan.map(({ file, why }) => `Sheet without a plan, ${userText(file, 80)}: ${userText(why, 300)}.`),
    ...folder.plans_without_sheets.map(({ file, name }) => `Plan without a sheet: ${userText(file, 80)}, “${userText(name, 80)}”.`),
    ...folder.left.map(({ file, why }) => `${userText(file, 80)}: ${userText(why, 300)}.`),
    ...[...new Set(folder.problems.filter(({ severity }) => severity === 'error').map(({ file }) => file))].map((file) => `${userText(file, 80)} could not be read.`),
  ];
  return [paragraph(`${counted(frames, 'frame')} with at least one sheet.`), ...(listed.length === 0 ? [] : [bullets(listed)])];
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
