import type { Root } from 'mdast';
import { userText } from './clean-text.js';
import type { Picture } from './drawings/picture.js';
import { shouldBe } from './sections/bench-sheet.js';
import { pieceColumns, pieceNotes, pieceRows } from './sections/piece-rows.js';
import { fasteningColumns, fasteningRow } from './sections/fastenings.js';
import type { FirstSheet } from './paper.js';
import { stopSheet } from './stop-sheet.js';
import { mustStop, type Telling } from './telling.js';
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
  type Column,
} from './tree.js';
import { auditSentence, badge } from './words/verdict.js';

/** Pictures of the card, as the report has them. */
const onCard: ReadonlySet<string> = new Set(['front.svg', 'section.svg', 'corner.svg', 'cloth.svg', 'hanging.svg']);

/**
 * Most rows of a list, and lines of all lists together, so that the card stays on one sheet, A4 or Letter; what is over
 * stands in the list itself.
 */
const most = { pieces: 9, notes: 3, fastenings: 4, lines: 16 } as const;
/** Letters that a line of the card holds at the least. */
const line_letters = 105;

/**
 * The first sheet: the card of the bench, with verdict, pictures, cut list, drills and blanks; for a plan that must
 * stop, from which nothing is worked, what to change.
 */
export const firstSheet = (told: Telling, pictures: readonly Picture[]): FirstSheet =>
  mustStop(told) ? stopSheet(told, pictures) : { tree: benchCard(told, pictures), instead: [] };

function benchCard(told: Telling, pictures: readonly Picture[]): Root {
  const { audit } = told;
  const notes = notesOf(pieceNotes(told, audit.cut));
  const fastenings = audit.sheets.fastenings.map((line) => fasteningRow(told, line));
  const other = notes.reduce(
    (sum, { length }) => sum + Math.ceil(length / line_letters),
    Math.min(fastenings.length, most.fastenings),
  );
  const frames = audit.plan.count === 1 ? '' : `, ${audit.plan.count} frames`;
  return document([
    heading(2, `Bench card: ${userText(audit.plan.name, 60)}${frames}`),
    setApart(paragraph(strong(badge(audit.verdict, auditSentence(audit))))),
    ...pictures.filter(({ name }) => onCard.has(name)).map(picture),
    bullets(blanks(told)),
    ...listOf(
      pieceColumns(audit.plan.count),
      pieceRows(told, audit.cut),
      Math.max(2, Math.min(most.pieces, most.lines - other)),
    ),
    ...notes.map((note) => paragraph(note)),
    ...listOf(fasteningColumns(audit.plan.count), fastenings, most.fastenings),
  ]);
}

function listOf(columns: readonly Column[], rows: readonly (readonly Cell[])[], limit: number): readonly Block[] {
  if (rows.length === 0) return [];
  const over = rows.length - limit;
  return [
    table(columns, over > 0 ? [...rows.slice(0, limit - 1), [`and ${over + 1} more rows in the full list`]] : rows),
  ];
}

function notesOf(notes: readonly string[]): readonly string[] {
  const over = notes.length - most.notes;
  return over > 0
    ? [
        ...notes.slice(0, most.notes - 1),
        `${over + 1} more notes stand under the full cut list: read them before you cut.`,
      ]
    : notes;
}

function blanks(told: Telling): readonly Cell[] {
  const { moisture, diagonal, lift, lift_stretched, weight } = shouldBe(told);
  const one = (what: string, amount: string): Cell => [strong(what), ` ${amount}`];
  return [
    one('Moisture at the saw:', moisture),
    one('Diagonal, top left to bottom right:', diagonal),
    one('Diagonal, top right to bottom left:', 'the same'),
    one('Fourth corner up:', lift),
    one('The same, cloth on:', lift_stretched),
    one('Weight, finished:', weight),
    one('Built by,', 'on'),
  ];
}
