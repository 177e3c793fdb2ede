import type { ElementContent, Root as HtmlRoot } from 'hast';
import type { Root } from 'mdast';
import { cleanText } from './clean-text.js';
import type { Picture } from './drawings/picture.js';
import { blocksOf, element, finish, finishAll } from './html-blocks.js';
import { cardOf } from './html-card.js';
import { asText, inParts, oneByOne, section, written, type PageContents } from './html-parts.js';
import { pageStyle, type Sheet } from './html-style.js';
import { madeBy } from './made-by.js';
import { forPaper, paperNote, pictureName, screenOnly, words, type FirstSheet } from './paper.js';

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
