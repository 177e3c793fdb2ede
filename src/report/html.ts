import type { Element, ElementContent, Root as HtmlRoot } from 'hast';
import { sanitize, type Schema } from 'hast-util-sanitize';
import { toHtml } from 'hast-util-to-html';
import type { Root, RootContent } from 'mdast';
import { toHast } from 'mdast-util-to-hast';
import { anchors } from './anchors.js';
import { cleanText } from './clean-text.js';
import type { Picture } from './drawings/picture.js';
import { cardOf } from './html-card.js';
import { pageStyle, type Sheet } from './html-style.js';
import { pageTable } from './html-tables.js';
import { madeBy } from './made-by.js';
import { keepTogether } from './no-break.js';
import {
  forPaper,
  isOff,
  isPicture,
  paperNote,
  pictureName,
  screenOnly,
  words,
  type FirstSheet,
  type PagePart,
} from './paper.js';

/** What the page is called, its language as a BCP 47 tag, and how it is printed. */
export interface PageTitle {
  readonly title: string;
  readonly lang: string;
  /**
   * `report` (usual): shortened on paper. `table`: all of it, across the paper. `pack`: all of it, each part on a sheet
   * of its own.
   */
  readonly layout?: 'report' | 'table' | 'pack';
  /** The paper it is meant for; whatever paper there is when it is not said. */
  readonly sheet?: Sheet;
  /** What fills the first sheet of paper; the screen does not show it. */
  readonly first?: FirstSheet;
}

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

const element = (tagName: string, properties: Element['properties'], children: readonly ElementContent[]): Element => ({
  type: 'element',
  tagName,
  properties,
  children: [...children],
});
const text = (value: string): ElementContent => ({ type: 'text', value: cleanText(value) });

/**
 * The report as one printable page: pictures inside, nothing fetched, readable on a phone, the card of the bench, or
 * why there is none, first on paper.
 * The body is sanitised before the pictures are put in; a picture that is not in the list is left out.
 */
export function writeHtml(root: Root, pictures: readonly Picture[], page: PageTitle): string {
  const shown = new Map(pictures.map((p) => [p.name, p]));
  return pageOf(
    page.layout === undefined || page.layout === 'report' ? inParts(blocksOf(root)) : oneByOne(root, shown),
    shown,
    page,
  );
}

/** What a page is made of; `texts` where its parts are written already. */
export interface PageContents {
  readonly head: readonly Element[];
  readonly parts: readonly PagePart[];
  readonly texts?: readonly ElementContent[];
}

/** A page of its parts. */
export function pageOf(
  { head, parts, texts }: PageContents,
  shown: ReadonlyMap<string, Picture>,
  { title, lang, layout = 'report', sheet, first: sheetOne }: PageTitle,
): string {
  const onCard = sheetOne === undefined ? [] : blocksOf(sheetOne.tree);
  const said = new Set(
    sheetOne === undefined ? [] : blocksOf({ type: 'root', children: [...sheetOne.instead] }).map(words),
  );
  const sections = layout === 'report' ? forPaper(parts, { pictures: new Set(onCard.map(pictureName)), said }) : parts;
  const note = layout === 'report' ? paperNote(sections) : null;
  const contents = element('nav', { ariaLabel: 'Contents' }, [
    element(
      'ul',
      {},
      sections.map(({ id, name }) => element('li', {}, [element('a', { href: `#${id}` }, [text(name)])])),
    ),
  ]);
  const [first, ...rest] = texts ?? sections.map((part) => asText(section(part, shown)));
  const page: HtmlRoot = {
    type: 'root',
    children: [
      { type: 'doctype' },
      element('html', { lang: cleanText(lang) }, [
        element('head', {}, [
          element('meta', { charSet: 'utf-8' }, []),
          element('meta', { name: 'viewport', content: 'width=device-width, initial-scale=1' }, []),
          element(
            'meta',
            { httpEquiv: ['Content-Security-Policy'], content: "default-src 'none'; style-src 'unsafe-inline'" },
            [],
          ),
          element('meta', { name: 'generator', content: madeBy }, []),
          element('title', {}, [text(title)]),
          element('style', {}, [{ type: 'text', value: pageStyle(layout === 'table' ? 'across' : (sheet ?? 'any')) }]),
        ]),
        element('body', layout === 'report' ? {} : { className: [layout] }, [
          ...(onCard.length === 0 ? [] : [cardOf(onCard, shown, finish)]),
          element('header', {}, [
            ...finishAll(head, shown),
            ...(note === null ? [] : [element('p', { className: ['paper'] }, [text(note)])]),
          ]),
          element(
            'main',
            {},
            layout === 'pack'
              ? [contents, ...(first === undefined ? [] : [first, ...rest])]
              : [...(first === undefined ? [] : [first]), contents, ...rest],
          ),
          element('footer', { className: [screenOnly] }, [
            element('p', {}, [
              text(
                layout === 'report'
                  ? 'Made from the plan, the shelf and the ruleset named above; the same three always give the same page.'
                  : 'Made from the plans, the shelf and the ruleset named above; the same always give the same page.',
              ),
            ]),
          ]),
        ]),
      ]),
    ],
  };
  return `${written(page)}\n`;
}

/** The text of a part of the page. */
const written = (node: HtmlRoot | Element): string => toHtml(unparted(node), { allowDangerousHtml: true });

/** A part of the page as its text: a class has thousands, and as trees they take ten times the room. */
const asText = (part: Element): ElementContent => ({ type: 'raw', value: written(part) });

/** The blocks of a tree as HTML, with nothing in them but what is allowed; made part by part. */
export const blocksOf = (root: Root): readonly Element[] =>
  partsOf(root.children).flatMap((children) =>
    (sanitize(toHast({ type: 'root', children }), allowed) as HtmlRoot).children.filter(
      (node): node is Element => node.type === 'element',
    ),
  );

/** The parts of a long page, of which nothing is kept but their names and texts: no two are trees at the same time. */
function oneByOne(root: Root, pictures: ReadonlyMap<string, Picture>): PageContents {
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

/** What stands before the first second-level heading, and from each of them to the next. */
function partsOf(blocks: Root['children']): Root['children'][] {
  const parts: Root['children'][] = [[]];
  for (const block of blocks) {
    if (block.type === 'heading' && block.depth === 2) parts.push([]);
    parts.at(-1)?.push(block);
  }
  return parts;
}

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
function inParts(
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

function section({ id, folded, children }: PagePart, pictures: ReadonlyMap<string, Picture>): Element {
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

/** Marks what is shown on the screen only. */
const screen = (node: Element): Element => ({
  ...node,
  properties: {
    ...node.properties,
    className: [...(Array.isArray(node.properties['className']) ? node.properties['className'] : []), screenOnly],
  },
});

/** Every block in turn; a table is named after the heading above it. */
function finishAll(blocks: readonly Element[], pictures: ReadonlyMap<string, Picture>): readonly Element[] {
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
function finish(block: Element, pictures: ReadonlyMap<string, Picture>, under: string): Element {
  if (block.tagName === 'table') return pageTable(block, under);
  if (!isPicture(block)) return block;
  const found = pictures.get(pictureName(block));
  return element(
    'figure',
    {},
    found === undefined ? [] : [{ type: 'raw', value: found.svg.trim() } as unknown as ElementContent],
  );
}
