import type { Element, ElementContent, Root as HtmlRoot } from 'hast';
import { toHtml } from 'hast-util-to-html';
import type { Root, RootContent } from 'mdast';
import { anchors } from './anchors.js';
import type { Picture } from './drawings/picture.js';
import { blocksOf, element, finishAll, partsOf, screen } from './html-blocks.js';
import { keepTogether } from './no-break.js';
import { isOff, words, type PagePart } from './paper.js';

/** What a page is made of; `texts` where its parts are written already. */
export interface PageContents {
  readonly head: readonly Element[];
  readonly parts: readonly PagePart[];
  readonly texts?: readonly ElementContent[];
}

/** The text of a part of the page. */
export const written = (node: HtmlRoot | Element): string => toHtml(unparted(node), { allowDangerousHtml: true });

/** A part of the page as its text: a class has thousands, and as trees they take ten times the room. */
export const asText = (part: Element): ElementContent => ({ type: 'raw', value: written(part) });

/** The parts of a long page, of which nothing is kept but their names and texts: no two are trees at the same time. */
export function oneByOne(root: Root, pictures: ReadonlyMap<string, Picture>): PageContents {
  const [before = [], ...chunks] = partsOf(root.children);
  const named = partsNamed(chunks.map(partName));
  return {
    head: blocksOf({ type: 'root', children: before }),
    parts: named,
    texts: chunks.map((chunk, i) => ({ type: 'raw', value: partText(chunk, (named[i] as PagePart).id, pictures) })),
  };
}

/** The name of a part, which begins with its heading. */
export const partName = (chunk: readonly RootContent[]): string =>
  blocksOf({ type: 'root', children: chunk.slice(0, 1) })
    .map(words)
    .join('');

/** Parts of which only the names are known, each with its address. */
export function partsNamed(names: readonly string[]): readonly PagePart[] {
  const ids = anchors(names);
  return names.map((name, i) => ({ id: ids[i] as string, name, folded: false, children: [] }));
}

/** One part of a page as its text. */
export const partText = (chunk: readonly RootContent[], id: string, pictures: ReadonlyMap<string, Picture>): string => {
  const { parts } = inParts(blocksOf({ type: 'root', children: [...chunk] }), [id]);
  return parts.map((part) => written(section(part, pictures))).join('');
};

/** The style is no text of the page; lines to be copied into a file hold nothing that is not seen. */
const asItStands: ReadonlySet<string> = new Set(['style', 'pre']);

/** Every text of the page with its numbers kept beside their units. */
function unparted<T extends HtmlRoot | HtmlRoot['children'][number]>(node: T): T {
  if (node.type === 'text') return { ...node, value: keepTogether(node.value) };
  if (node.type === 'element' && asItStands.has(node.tagName)) return node;
  return 'children' in node
    ? { ...node, children: (node.children as ElementContent[]).map((child) => unparted(child)) }
    : node;
}

/** Everything before the first second-level heading is the head; each such heading opens a part. */
export function inParts(
  blocks: readonly Element[],
  ids = anchors(blocks.filter(({ tagName }) => tagName === 'h2').map((block) => words(block))),
): {
  readonly head: readonly Element[];
  readonly parts: readonly PagePart[];
} {
  const head: Element[] = [];
  const parts: (PagePart & { readonly children: Element[] })[] = [];
  for (const block of blocks) {
    if (block.tagName === 'h2') {
      const id = ids[parts.length] ?? '';
      const folded = Array.isArray(block.properties['className']) && block.properties['className'].includes('folded');
      parts.push({ id, name: words(block), folded, children: [{ ...block, properties: { id } }] });
    } else (parts.at(-1)?.children ?? head).push(block);
  }
  return { head, parts };
}

/** A part of a page as its section, folded where it is read at a desk. */
export function section({ id, folded, children }: PagePart, pictures: ReadonlyMap<string, Picture>): Element {
  const blocks = finishAll(children, pictures);
  const made = element(
    'section',
    { ariaLabelledBy: [id] },
    folded
      ? [element('details', {}, [element('summary', {}, blocks.slice(0, 1)), ...blocks.slice(1)])]
      : beside(blocks),
  );
  return children.every(isOff) ? screen(made) : made;
}

/** Pictures right before a table stand beside it where there is room. */
function beside(blocks: readonly Element[]): readonly Element[] {
  const made: Element[] = [];
  let figures: Element[] = [];
  for (const block of blocks) {
    if (block.tagName === 'figure') figures.push(block);
    else {
      if (block.tagName === 'div' && figures.length > 0)
        made.push(element('div', { className: ['beside'] }, [...figures, block]));
      else made.push(...figures, block);
      figures = [];
    }
  }
  return [...made, ...figures];
}
