import { capital } from '../base/capital.js';
import { formatLength, formatSize } from '../base/units-format.js';
import type { CutPlan } from './boards/purchase.js';

/**
 * Rows as CSV text after RFC 4180: CRLF line ends, cells with a comma, semicolon, quote or line break quoted, quotes
 * doubled. A text cell
 * that a spreadsheet would take for a formula (it, or what stands after a semicolon in it, starts with = + - @, a tab
 * or a return) gets an apostrophe in front. Numbers are written as they are.
 */
export function toCsv(rows: readonly (readonly (string | number)[])[]): string {
  return rows.map((row) => `${row.map(cell).join(',')}\r\n`).join('');
}

function cell(value: string | number): string {
  if (typeof value === 'number') return Number.isFinite(value) ? String(value) : '';
  const safe = /(?:^|;)[\s\u0000]*[=+\-@\t\r\uFF1D\uFF0B\uFF0D\uFF20]/.test(value) ? `'${value}` : value;
  return /[",;\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/**
 * Every piece on its board, in cutting order, one row each, then the strips of raised lips; lengths in words and in mm.
 */
export function cutListCsv(cut: CutPlan): string {
  const header = [
    'stock',
    'board',
    'piece',
    'plan',
    'part',
    'ply',
    'size',
    'ends',
    'cut length',
    'cut length mm',
    'short point mm',
    'starts at mm',
    'later cut mm',
    'face up',
    'note',
  ];
  const rows = cut.stocks.flatMap(({ stock, lumber, boards }) =>
    boards.flatMap((board, i) =>
      board.pieces.map(({ piece, tag, plan, from_mm }): (string | number)[] => [
        stock,
        i + 1,
        tag,
        cut.plan_names[plan] ?? '',
        piece.about,
        piece.ply,
        formatSize(lumber.thickness_mm, lumber.width_mm, cut.units),
        piece.ends,
        formatLength(piece.cut_mm, cut.units),
        tidy(piece.cut_mm),
        tidy(piece.short_mm),
        tidy(from_mm),
        piece.later === null ? '' : tidy(piece.later.cut_mm),
        piece.face_up,
        piece.notes.map((note) => `${capital(note)}.`).join(' '),
      ]),
    ),
  );
  const lips = cut.lists.flatMap(({ lips: some, frames }, plan) =>
    some.map(({ label, about, cut_mm }): (string | number)[] => [
      'strip for the lip',
      '',
      label,
      cut.plan_names[plan] ?? '',
      about,
      '',
      '',
      'mitre',
      formatLength(cut_mm, cut.units),
      tidy(cut_mm),
      '',
      '',
      '',
      '',
      frames === 1
        ? 'From the strips of the buying list.'
        : `From the strips of the buying list, one for each of ${frames} frames.`,
    ]),
  );
  return toCsv([header, ...rows, ...lips]);
}

/** A length for a spreadsheet, to a thousandth of a millimetre. */
export const tidy = (length_mm: number): number => Math.round(length_mm * 1000) / 1000;
