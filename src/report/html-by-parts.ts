import type { RootContent } from 'mdast';
import type { ElementContent } from 'hast';
import type { Picture } from './drawings/picture.js';
import { blocksOf } from './html-blocks.js';
import { partName, partsNamed, partText } from './html-parts.js';
import { pageOf, type PageTitle } from './html.js';

/** Stands where the parts come; no text of a page holds it. */
const here = '\0';

/**
 * The page that `writeHtml` makes, in pieces that follow each other: for thousands of parts, of which neither trees nor
 * texts are there at the same time. `parts` is gone through twice: first what stands before the first part, then the
 * blocks of each, which begins with its heading.
 */
export function* htmlByParts(
  parts: () => Iterable<readonly RootContent[]>,
  pictures: readonly Picture[],
  page: PageTitle,
): Generator<string> {
  const shown = new Map(pictures.map((picture) => [picture.name, picture]));
  const [before, ...names] = namesOf(parts());
  const named = partsNamed(names);
  const head = blocksOf({ type: 'root', children: before });
  const place = { type: 'raw', value: here } as unknown as ElementContent;
  const [start = '', end = ''] = pageOf({ head, parts: named, texts: [place] }, shown, page).split(here);
  yield start;
  let i = -1;
  for (const part of parts()) {
    if (i >= 0) yield partText(part, named[i]?.id ?? '', shown);
    i++;
  }
  yield end;
}

/** What stands before the first part, and the names of all. */
function namesOf(parts: Iterable<readonly RootContent[]>): [RootContent[], ...string[]] {
  let before: RootContent[] | null = null;
  const names: string[] = [];
  for (const part of parts) {
    if (before === null) before = [...part];
    else names.push(partName(part));
  }
  return [before ?? [], ...names];
}
