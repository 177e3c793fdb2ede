import type { Code } from 'mdast';
import { userText } from '../report/clean-text.js';
import { bullets, heading, paragraph, table, type Block, type Cell } from '../report/tree.js';
import type { Shelf } from '../shelf/shelf.js';
import type { LearnedEntry } from './entries.js';
import type { Learned } from './learn.js';
import { proposal_worth } from './nig.js';
import { amount, entryWords, fromWords, nextWords } from './page-words.js';
import { nextSteps } from './settle-next.js';
import { learnedLines, shelfChanges } from './shelf-file.js';

/** What the page is told besides what was learned. */
export interface PageFacts {
  /** The day, as the user gave it. */
  readonly date: string | null;
  /** The shelf file that has learned; null when none was written. */
  readonly written: string | null;
}

/** What the numbers of the shelf become, and what would settle them fastest. */
export function numberBlocks({ entries, without_outliers }: Learned): readonly Block[] {
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

/** The numbers as lines for the shelf file. */
export function shelfBlocks({ entries }: Learned, shelf: Shelf, { date, written }: PageFacts): readonly Block[] {
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
