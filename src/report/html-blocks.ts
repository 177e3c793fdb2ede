import type { Element, ElementContent, Root as HtmlRoot } from 'hast';
import { sanitize, type Schema } from 'hast-util-sanitize';
import type { Root } from 'mdast';
import { toHast } from 'mdast-util-to-hast';
import type { Picture } from './drawings/picture.js';
import { pageTable } from './html-tables.js';
import { isOff, isPicture, pictureName, screenOnly, words } from './paper.js';

/**
 * Only what the report's own builders make: no links but to its own parts and to pages beside it, no scripts, no
 * styles, no addresses but those of its pictures.
 */
const allowed: Schema = {
  tagNames: [
    'h1',
    'h2',
    'h3',
    'p',
    'strong',
    'em',
    'ul',
    'ol',
    'li',
    'table',
    'thead',
    'tbody',
    'tr',
    'th',
    'td',
    'blockquote',
    'img',
    'br',
    'a',
    'pre',
    'code',
  ],
  attributes: {
    h2: [['className', 'folded']],
    a: [['href', /^(?:#[\p{L}\p{N}_-]+|(?!\.)[\w.!~*'()%-]+(?:\/(?!\.)[\w.!~*'()%-]+)*)$/u]],
    img: ['src', 'alt'],
    th: ['align'],
    td: ['align'],
    ol: ['start'],
  },
  strip: ['script', 'style'],
  protocols: {},
};

/** An element of a page. */
export const element = (
  tagName: string,
  properties: Element['properties'],
  children: readonly ElementContent[],
): Element => ({
  type: 'element',
  tagName,
  properties,
  children: [...children],
});
/** The blocks of a tree as HTML, with nothing in them but what is allowed; made part by part. */
export const blocksOf = (root: Root): readonly Element[] =>
  partsOf(root.children).flatMap((children) =>
    (sanitize(toHast({ type: 'root', children }), allowed) as HtmlRoot).children.filter(
      (node): node is Element => node.type === 'element',
    ),
  );

/** What stands before the first second-level heading, and from each of them to the next. */
export function partsOf(blocks: Root['children']): Root['children'][] {
  const parts: Root['children'][] = [[]];
  for (const block of blocks) {
    if (block.type === 'heading' && block.depth === 2) parts.push([]);
    parts.at(-1)?.push(block);
  }
  return parts;
}

/** Marks what is shown on the screen only. */
export const screen = (node: Element): Element => ({
  ...node,
  properties: {
    ...node.properties,
    className: [...(Array.isArray(node.properties['className']) ? node.properties['className'] : []), screenOnly],
  },
});

/** Every block in turn; a table is named after the heading above it. */
export function finishAll(blocks: readonly Element[], pictures: ReadonlyMap<string, Picture>): readonly Element[] {
  let under = '';
  return blocks.map((block) => {
    if (/^h[1-3]$/u.test(block.tagName)) under = words(block);
    const made = finish(block, pictures, under);
    return isOff(block) && !isOff(made) ? screen(made) : made;
  });
}

/**
 * Tables get a frame that scrolls by itself, image paragraphs become figures with the drawing inside: our own code
 * wrote it with every text escaped.
 */
export function finish(block: Element, pictures: ReadonlyMap<string, Picture>, under: string): Element {
  if (block.tagName === 'table') return pageTable(block, under);
  if (!isPicture(block)) return block;
  const found = pictures.get(pictureName(block));
  return element(
    'figure',
    {},
    found === undefined ? [] : [{ type: 'raw', value: found.svg.trim() } as unknown as ElementContent],
  );
}
