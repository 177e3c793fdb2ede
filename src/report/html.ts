import type { Element, ElementContent, Root as HtmlRoot } from 'hast';
import { sanitize, type Schema } from 'hast-util-sanitize';
import { toHtml } from 'hast-util-to-html';
import type { Root } from 'mdast';
import { toHast } from 'mdast-util-to-hast';
import { cleanText } from './clean-text.js';
import type { Picture } from './drawings/picture.js';
import { pageTable } from './html-tables.js';
import { madeBy } from './made-by.js';
import { anyPaper, pageStyle } from './html-style.js';
import { forPaper, isOff, paperNote, screenOnly, words, type PagePart } from './paper.js';

/** What the page is called, and its language as a BCP 47 tag. */
export interface PageTitle {
  readonly title: string;
  readonly lang: string;
  /** `report` (usual): shortened for two columns of A4. `table`: all of it, one column of any paper. `pack`: the same, each part on a sheet of its own. */
  readonly layout?: 'report' | 'table' | 'pack';
}

/** Only what the report's own builders make: no links but to pages beside it, no scripts, no styles, no addresses but those of its pictures. */
const allowed: Schema = {
  tagNames: ['h1', 'h2', 'h3', 'p', 'strong', 'em', 'ul', 'ol', 'li', 'table', 'thead', 'tbody', 'tr', 'th', 'td', 'blockquote', 'img', 'br', 'a'],
  attributes: { a: [['href', /^(?!\.)[\w.!~*'()%-]+(?:\/(?!\.)[\w.!~*'()%-]+)*$/u]], img: ['src', 'alt'], th: ['align'], td: ['align'], ol: ['start'] },
  strip: ['script', 'style'],
  protocols: {},
};

const element = (tagName: string, properties: Element['properties'], children: readonly ElementContent[]): Element => ({ type: 'element', tagName, properties, children: [...children] });
const text = (value: string): ElementContent => ({ type: 'text', value: cleanText(value) });

/**
 * The report as one printable page: pictures inside, nothing fetched, readable on a phone, two columns on paper.
 * The body is sanitised before the pictures are put in; a picture that is not in the list is left out.
 */
export function writeHtml(root: Root, pictures: readonly Picture[], { title, lang, layout = 'report' }: PageTitle): string {
  const body = sanitize(toHast(root), allowed) as HtmlRoot;
  const blocks = body.children.filter((node): node is Element => node.type === 'element');
  const shown = new Map(pictures.map((p) => [p.name, p]));
  const { head, parts } = inParts(blocks);
  const sections = layout === 'report' ? forPaper(parts) : parts;
  const note = layout === 'report' ? paperNote(sections) : null;
  const contents = element('nav', { ariaLabel: 'Contents' }, [
    element('ul', {}, sections.map(({ id, name }) => element('li', {}, [element('a', { href: `#${id}` }, [text(name)])]))),
  ]);
  const page: HtmlRoot = {
    type: 'root',
    children: [
      { type: 'doctype' },
      element('html', { lang: cleanText(lang) }, [
        element('head', {}, [
          element('meta', { charSet: 'utf-8' }, []),
          element('meta', { name: 'viewport', content: 'width=device-width, initial-scale=1' }, []),
          element('meta', { httpEquiv: ['Content-Security-Policy'], content: "default-src 'none'; style-src 'unsafe-inline'" }, []),
          element('meta', { name: 'generator', content: madeBy }, []),
          element('title', {}, [text(title)]),
          element('style', {}, [{ type: 'text', value: layout === 'report' ? pageStyle : anyPaper(pageStyle) }]),
        ]),
        element('body', layout === 'report' ? {} : { className: layout === 'pack' ? ['one', 'pack'] : ['one'] }, [
          element('header', {}, [...finishAll(head, shown), contents]),
          element('main', {}, sections.map((part) => section(part, shown))),
          element('footer', {}, [
            ...(note === null ? [] : [element('p', { className: ['paper'] }, [text(note)])]),
            element('p', {}, [text(layout === 'report' ? 'Made from the plan, the shelf and the ruleset named above; the same three always give the same page.' : 'Made from the plans, the shelf and the ruleset named above; the same always give the same page.')]),
          ]),
        ]),
      ]),
    ],
  };
  return `${toHtml(page, { allowDangerousHtml: true })}\n`;
}

/** Everything before the first second-level heading is the head; each such heading opens a part. */
function inParts(blocks: readonly Element[]): { readonly head: readonly Element[]; readonly parts: readonly PagePart[] } {
  const head: Element[] = [];
  const parts: { readonly id: string; readonly name: string; readonly children: Element[] }[] = [];
  for (const block of blocks) {
    if (block.tagName === 'h2') {
      const id = `part-${parts.length + 1}`;
      parts.push({ id, name: words(block), children: [{ ...block, properties: { id } }] });
    } else (parts.at(-1)?.children ?? head).push(block);
  }
  return { head, parts };
}

function section({ id, children }: PagePart, pictures: ReadonlyMap<string, Picture>): Element {
  const made = element('section', { ariaLabelledBy: [id] }, finishAll(children, pictures));
  return children.every(isOff) ? screen(made) : made;
}

/** Marks what is shown on the screen only. */
const screen = (node: Element): Element => ({ ...node, properties: { ...node.properties, className: [...(Array.isArray(node.properties['className']) ? node.properties['className'] : []), screenOnly] } });

/** Every block in turn; a table is named after the heading above it. */
function finishAll(blocks: readonly Element[], pictures: ReadonlyMap<string, Picture>): readonly Element[] {
  let under = '';
  return blocks.map((block) => {
    if (/^h[1-3]$/u.test(block.tagName)) under = words(block);
    const made = finish(block, pictures, under);
    return isOff(block) && !isOff(made) ? screen(made) : made;
  });
}

/** Tables get a frame that scrolls by itself, image paragraphs become figures with the drawing inside. */
function finish(block: Element, pictures: ReadonlyMap<string, Picture>, under: string): Element {
  if (block.tagName === 'table') return pageTable(block, under);
  const only = block.children[0];
  if (block.tagName === 'p' && block.children.length === 1 && only?.type === 'element' && only.tagName === 'img') return figure(only, pictures);
  return block;
}

/** The drawing was written by our own code with every text escaped, so it goes in as it is. */
function figure(image: Element, pictures: ReadonlyMap<string, Picture>): Element {
  const found = pictures.get(String(image.properties['src'] ?? ''));
  return element('figure', {}, found === undefined ? [] : [{ type: 'raw', value: found.svg.trim() } as unknown as ElementContent]);
}
