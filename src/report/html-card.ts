import type { Element, ElementContent } from 'hast';
import type { Picture } from './drawings/picture.js';
import { isPicture, pictureName } from './paper.js';

type Finish = (block: Element, pictures: ReadonlyMap<string, Picture>, under: string) => Element;

const div = (className: string, children: readonly ElementContent[]): Element => ({
  type: 'element',
  tagName: 'div',
  properties: { className: [className] },
  children: [...children],
});

/**
 * The first sheet, for paper only: its pictures in two columns of one height, the blanks after them beside, all else
 * across.
 */
export function cardOf(blocks: readonly Element[], pictures: ReadonlyMap<string, Picture>, finish: Finish): Element {
  const own = new Map([...pictures].map(([name, picture]) => [name, { ...picture, svg: renamed(picture.svg) }]));
  const columns = inTwo(blocks.filter(isPicture), (block) => heightOf(pictures.get(pictureName(block))));
  const first = blocks.findIndex(isPicture);
  const after = blocks.findLastIndex(isPicture) + 1;
  const blanks = blocks.slice(after, after + 1).filter(({ tagName }) => tagName === 'ul');
  const drawn = div('drawn', [
    ...columns.map((column) =>
      div(
        'column',
        column.map((block) => finish(block, own, '')),
      ),
    ),
    ...blanks,
  ]);
  const plain = (some: readonly Element[]): readonly Element[] =>
    some.map((block) => finish(block, own, 'First sheet'));
  return div('card', [
    ...plain(blocks.slice(0, Math.max(first, 0))),
    drawn,
    ...plain(blocks.slice(after + blanks.length)),
  ]);
}

/**
 * Two columns, the higher of them as low as any sharing out makes it; the first one stands in the left, and in each
 * they keep their order.
 */
function inTwo<T>(blocks: readonly T[], height: (block: T) => number): readonly [readonly T[], readonly T[]] {
  const total = blocks.reduce((sum, block) => sum + height(block), 0);
  let best: readonly [readonly T[], readonly T[]] = [blocks, []];
  let lowest = total;
  for (let chosen = 1; chosen < 2 ** blocks.length; chosen += 2) {
    const left = blocks.filter((_, i) => ((chosen >> i) & 1) === 1);
    const tall = left.reduce((sum, block) => sum + height(block), 0);
    if (Math.max(tall, total - tall) >= lowest) continue;
    lowest = Math.max(tall, total - tall);
    best = [left, blocks.filter((block) => !left.includes(block))];
  }
  return best;
}

/** Height of a picture over its width. */
function heightOf(picture: Picture | undefined): number {
  const [, width, height] = /viewBox="0 0 ([\d.]+) ([\d.]+)"/u.exec(picture?.svg ?? '') ?? [];
  return Number(height ?? 0) / Number(width ?? 1);
}

/** The picture stands on the page a second time, so its names are other ones. */
const renamed = (svg: string): string =>
  svg
    .replace(/\bid="/gu, 'id="card-')
    .replace(/url\(#/gu, 'url(#card-')
    .replace(/href="#/gu, 'href="#card-')
    .replace(
      /aria-labelledby="([^"]*)"/gu,
      (_, ids: string) =>
        `aria-labelledby="${ids
          .split(' ')
          .map((id) => `card-${id}`)
          .join(' ')}"`,
    );
