import type {
  BlockContent,
  Heading,
  Image,
  List,
  Paragraph,
  PhrasingContent,
  Root,
  RootContent,
  Table,
  TableRow,
} from 'mdast';
import { cleanText } from './clean-text.js';
import type { Picture } from './drawings/picture.js';
import { joinTexts } from './join-texts.js';
import { linkedParts } from './linked-parts.js';

/** One piece of a line: plain words, or a node made by one of the builders below. */
export type Inline = string | PhrasingContent;

/** One cell of a table: one piece or several. */
export type Cell = Inline | readonly Inline[];

/**
 * A block of the report. It uses no raw HTML, and no links but those of `pageLink` and those to its own parts, so
 * nothing a person wrote can become either.
 */
export type Block = RootContent;

const inline = (piece: Inline): PhrasingContent =>
  typeof piece === 'string' ? { type: 'text', value: cleanText(piece) } : piece;
const inlines = (pieces: readonly Inline[]): PhrasingContent[] =>
  joinTexts(pieces.filter((piece) => piece !== '').map(inline));

/** Words that carry the weight of a line. */
export const strong = (words: string): PhrasingContent => ({ type: 'strong', children: [inline(words.trim())] });

/** Words that lead to another page of the same folder; the way there is the tool's own, each part of it encoded. */
export const pageLink = (words: string, page: string): PhrasingContent => ({
  type: 'link',
  url: page.split('/').map(encodeURIComponent).join('/'),
  children: [inline(words.trim())] as PhrasingContent[],
});

/** A heading: depth 1 for the title, 2 for a section, 3 inside one. */
export const heading = (depth: 1 | 2 | 3, ...pieces: readonly Inline[]): Heading => ({
  type: 'heading',
  depth,
  children: inlines(pieces),
});

/** The heading of a section that a screen keeps folded until it is asked for. */
export const foldedHeading = (...pieces: readonly Inline[]): Heading => ({
  ...heading(2, ...pieces),
  data: { hProperties: { className: ['folded'] } } as Heading['data'],
});

/** A paragraph. */
export const paragraph = (...pieces: readonly Inline[]): Paragraph => ({
  type: 'paragraph',
  children: inlines(pieces),
});

function listOf(ordered: boolean, items: readonly Cell[]): List {
  return {
    type: 'list',
    ordered,
    spread: false,
    ...(ordered ? { start: 1 } : {}),
    children: items.map((item) => ({ type: 'listItem', spread: false, children: [paragraph(...piecesOf(item))] })),
  };
}

const piecesOf = (cell: Cell): readonly Inline[] =>
  Array.isArray(cell) ? (cell as readonly Inline[]) : [cell as Inline];

/** A list with bullets. */
export const bullets = (items: readonly Cell[]): List => listOf(false, items);

/** A numbered list. */
export const steps = (items: readonly Cell[]): List => listOf(true, items);

/** Column of a table: what stands at its head, and `right` for figures. */
export interface Column {
  readonly head: Inline;
  readonly align?: 'left' | 'right';
}

/** A table; every row is filled up or cut to the number of columns. */
export function table(columns: readonly Column[], rows: readonly (readonly Cell[])[]): Table {
  const row = (cells: readonly Cell[]): TableRow => ({
    type: 'tableRow',
    children: columns.map((_, i) => ({ type: 'tableCell', children: inlines(piecesOf(cells[i] ?? '')) })),
  });
  return {
    type: 'table',
    align: columns.map((column) => column.align ?? null),
    children: [row(columns.map((column) => column.head)), ...rows.map(row)],
  };
}

/** A picture on a line of its own; its address is the file beside the report. */
export function picture(of: Picture): Paragraph {
  const image: Image = { type: 'image', url: of.name, alt: cleanText(of.alt), title: null };
  return { type: 'paragraph', children: [image] };
}

/** Words set apart because somebody could get hurt, or because the verdict hangs on them. */
export const setApart = (...blocks: readonly BlockContent[]): Block => ({ type: 'blockquote', children: [...blocks] });

/** The whole report; the name of one of its parts, in quotes, leads there. */
export const document = (blocks: readonly Block[]): Root => ({ type: 'root', children: linkedParts(blocks) });
