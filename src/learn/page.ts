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
  type Block,
  type Cell,
} from '../report/tree.js';
import { counted } from '../report/words/verdict.js';
import type { Shelf } from '../shelf/shelf.js';
import { hangsOnAsked, keptBlocks, outlierBlocks } from './kept-blocks.js';
import type { Learned } from './learn.js';
import { numberBlocks, shelfBlocks, type PageFacts } from './number-blocks.js';
import { amount, entryWords, luckWords } from './page-words.js';
import { rankPicture } from './rank-picture.js';
import { toDo } from './to-do.js';

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
