import { readSize } from '../../base/units.js';
import { nearest } from '../../base/schema-problems.js';
import { isPlainKey } from '../../base/schema-parts.js';
import { measuredShelf, type Measured, type MeasuredBy } from '../../shelf/measured-entry.js';
import { readShelf } from '../../shelf/read-shelf.js';
import type { Shelf } from '../../shelf/shelf.js';
import { loadShelf } from '../load.js';
import { BadOption } from '../quantities.js';
import { complain } from '../terminal.js';
import { pasteText } from './report.js';

/** The shelf the options name. Throws BadOption after complaining about one that cannot be read. */
export function shelfOption(file: string | undefined): Shelf {
  const shelf = loadShelf(file);
  complain(shelf.ok ? shelf.warnings : shelf.problems);
  if (!shelf.ok) throw new BadOption('The shelf cannot be read.');
  return shelf.value;
}

/** The two sides of a board. */
interface Sides {
  readonly thickness_mm: number;
  readonly width_mm: number;
}

/** The size that was given, mm; null when none was. Throws BadOption. */
export function sizeIfGiven(size: string | undefined): Sides | null {
  if (size === undefined) return null;
  const read = readSize(size);
  if (read === null)
    throw new BadOption(
      `--size: found \`${size.slice(0, 60)}\`; allowed: two sides and a unit, such as "19 x 38 mm" or "3/4 x 1-1/2 in".`,
    );
  return { thickness_mm: Math.min(read.first_mm, read.second_mm), width_mm: Math.max(read.first_mm, read.second_mm) };
}

/**
 * The size of a kind of board, for telling what is wrong with it in one round with all else: null where nothing names
 * one yet, or the shelf cannot be read. Throws BadOption.
 */
export function sizeIfNamed(of: {
  readonly stock?: string | undefined;
  readonly size?: string | undefined;
  readonly shelf?: string | undefined;
}): Sides | null {
  const shelf = of.stock === undefined ? null : loadShelf(of.shelf);
  return of.stock !== undefined && shelf?.ok === true ? sizeOf(shelf.value, of.stock, of.size) : sizeIfGiven(of.size);
}

/** Actual size of a kind of board: as given, else the shelf's; mm, smaller side first. Throws BadOption. */
export function sizeOf(shelf: Shelf, stock: string, size: string | undefined): Sides {
  const given = sizeIfGiven(size);
  if (given !== null) return given;
  const known = Object.hasOwn(shelf.lumber, stock) ? shelf.lumber[stock] : undefined;
  if (known !== undefined) return known;
  const close = nearest(stock, Object.keys(shelf.lumber));
  throw new BadOption(
    `--stock: \`${stock.slice(0, 60)}\` is not on the shelf${close === undefined ? '' : ` (did you mean ${close}?)`}. For a kind of your own give its --size, such as "19 x 38 mm".`,
  );
}

/**
 * The shelf file to save, read back by the shelf reader before it is shown. Throws BadOption for a key or size the
 * reader refuses.
 */
export function shelfPaste(
  shelf: Shelf,
  stock: string,
  size: string | undefined,
  measured: Measured,
  by: MeasuredBy,
): string {
  if (!isPlainKey(stock))
    throw new BadOption(
      `--stock: found \`${stock.slice(0, 60)}\`; allowed: letters, figures, dots and dashes, at most 60.`,
    );
  sizeOf(shelf, stock, size);
  const text = measuredShelf(shelf, stock, size?.trim() ?? null, measured, by);
  const back = readShelf(text, 'the new entry', shelf);
  if (!back.ok)
    throw new BadOption(
      back.problems.map(({ path, found, allowed }) => `${path}: found ${found}; allowed: ${allowed}.`).join('\n'),
    );
  return pasteText(
    `For your shelf: save this as a file of its own and use it with --shelf, or put the entry under \`lumber:\` of the shelf file you have.${by.date === null ? ' Give --date to note when it was measured.' : ''}`,
    text,
  );
}
