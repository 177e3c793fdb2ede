import type { Element, ElementContent } from 'hast';
import type { Root } from 'mdast';
import { series } from '../base/series.js';
import type { Block } from './tree.js';

/** A part of the page: its heading, what stands under it, and whether a screen keeps it folded. */
export interface PagePart {
  readonly id: string;
  readonly name: string;
  readonly folded: boolean;
  readonly children: readonly Element[];
}

/** Class of what is shown on the screen only. */
export const screenOnly = 'screen';

/**
 * What fills the first sheet of paper, and which blocks of the report it says in their place: the paper leaves them
 * off.
 */
export interface FirstSheet {
  readonly tree: Root;
  readonly instead: readonly Block[];
}

/** What the first sheet holds: pictures by their names, and the words of blocks that it says instead. */
export interface OnFirstSheet {
  readonly pictures: ReadonlySet<string>;
  readonly said: ReadonlySet<string>;
}

/**
 * Marks what stays on the screen: what is folded there, what the first sheet shows or says already, and a paragraph
 * that a later
 * part says again, unless a list hangs on it. What a verdict rests on stands in the parts that are open: every check
 * that is not clear, every rule switched off or loosened.
 */
export function forPaper(parts: readonly PagePart[], { pictures, said }: OnFirstSheet): readonly PagePart[] {
  const last = lastPlaces(parts.filter(({ folded }) => !folded));
  const shown = new Set(parts.flatMap(({ children }) => children.map(pictureName)));
  const changed = (name: string): string => name.replace(/\.svg$/u, '-changed.svg');
  const paired = (name: string): boolean => shown.has(changed(name)) && !pictures.has(changed(name));
  return parts.map((part) => ({
    ...part,
    children: part.children.map((block, i) => {
      if (part.folded) return off(block);
      if (isPicture(block)) return pictures.has(pictureName(block)) && !paired(pictureName(block)) ? off(block) : block;
      if (block.tagName !== 'h2' && said.has(words(block))) return off(block);
      return block.tagName === 'p' && !leads(part.children[i + 1]) && last.get(words(block)) !== block
        ? off(block)
        : block;
    }),
  }));
}

/** What the paper says of what it leaves off; null when it leaves off no part. */
export function paperNote(parts: readonly PagePart[]): string | null {
  const names = parts.filter(({ folded }) => folded).map(({ name }) => `“${name}”`);
  if (names.length === 0) return null;
  return `Shortened for paper: ${series(names)} ${names.length === 1 ? 'stands' : 'stand'} on the screen only. Every check that is not clear stands here.`;
}

/** True for what is marked to stay on the screen. */
export const isOff = (node: Element): boolean =>
  Array.isArray(node.properties['className']) && node.properties['className'].includes(screenOnly);

const off = (node: Element): Element => ({
  ...node,
  properties: {
    ...node.properties,
    className: [...(Array.isArray(node.properties['className']) ? node.properties['className'] : []), screenOnly],
  },
});

/** True for what the line before it is the head of: that line is printed however often it stands there. */
const leads = (next: Element | undefined): boolean =>
  next !== undefined && ['ul', 'ol', 'table', 'pre'].includes(next.tagName);

/** Where each paragraph stands for the last time: a sentence said in several parts is printed once. */
function lastPlaces(parts: readonly PagePart[]): ReadonlyMap<string, Element> {
  const last = new Map<string, Element>();
  for (const { children } of parts)
    for (const block of children) if (block.tagName === 'p') last.set(words(block), block);
  return last;
}

const only = ({ tagName, children }: Element): Element | null =>
  tagName === 'p' && children.length === 1 && children[0]?.type === 'element' && children[0].tagName === 'img'
    ? children[0]
    : null;

/** A paragraph that holds a picture and nothing else. */
export const isPicture = (block: Element): boolean => only(block) !== null;

/** File name of the picture in such a paragraph; empty in any other block. */
export const pictureName = (block: Element): string => String(only(block)?.properties['src'] ?? '');

/** The text of a node with its white space as one reads it. */
export const words = (node: ElementContent): string => plain(node).replace(/\s+/gu, ' ').trim();
const plain = (node: ElementContent): string =>
  node.type === 'text' ? node.value : node.type === 'element' ? node.children.map(plain).join('') : '';
