import type { Element, ElementContent } from 'hast';
import type { Picture } from './drawings/picture.js';
import { isPicture, pictureName } from './paper.js';

type Finish = (block: Element, pictures: ReadonlyMap<string, Picture>, under: string) => Element;

const div = (className: string, children: readonly ElementContent[]): Element => ({ type: 'element', tagName: 'div', properties: { className: [className] }, children: [...children] });

/** The card of the bench, for paper only: its pictures in two columns of one height, its blanks beside them, the lists across. */
export function cardOf(blocks: readonly Element[], pictures: ReadonlyMap<string, Picture>, finish: Finish): Element {
  const own = new Map([...pictures].map(([name, picture]) => [name, { ...picture, svg: renamed(picture.svg) }]));
  const columns: { height: number; readonly figures: Element[] }[] = [{ height: 0, figures: [] }, { height: 0, figures: [] }];
  for (const block of blocks.filter(isPicture)) {
    const lower = columns.reduce((best, one) => (one.height < best.height ? one : best));
    lower.figures.push(finish(block, own, ''));
    lower.height += heightOf(pictures.get(pictureName(block)));
  }
  const blanks = blocks.filter(({ tagName }) => tagName === 'ul');
  const drawn = div('drawn', [...columns.map(({ figures }) => div('column', figures)), ...blanks]);
  const first = blocks.findIndex(isPicture);
  const rest = blocks.filter((block) => !isPicture(block) && block.tagName !== 'ul');
  const top = rest.filter((block) => first < 0 || blocks.indexOf(block) < first);
  return div('card', [...top, drawn, ...rest.slice(top.length).map((block) => finish(block, own, 'Bench card'))]);
}

/** Height of a picture over its width. */
function heightOf(picture: Picture | undefined): number {
  const [, width, height] = /viewBox="0 0 ([\d.]+) ([\d.]+)"/u.exec(picture?.svg ?? '') ?? [];
  return Number(height ?? 0) / Number(width ?? 1);
}

/** The picture stands on the page a second time, so its names are other ones. */
const renamed = (svg: string): string => svg
  .replace(/\bid="/gu, 'id="card-')
  .replace(/url\(#/gu, 'url(#card-')
  .replace(/href="#/gu, 'href="#card-')
  .replace(/aria-labelledby="([^"]*)"/gu, (_, ids: string) => `aria-labelledby="${ids.split(' ').map((id) => `card-${id}`).join(' ')}"`);
