import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { sheetWidth, typeface } from '../../src/report/drawings/drawing-standard.js';
import { groups, type Group, type Shown } from './contact-sheet-pictures.js';

const gap = 24;
const perRow = 5;
const captionRoom = 26;
const titleRoom = 56;
const width = gap + perRow * (sheetWidth + gap);

/** On a dark ground, so that one sees at once whether a picture carries its own white. */
const ground = '#262626';
const words = '#f0f0f0';

const escaped = (text: string): string => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;');
const text = (x: number, y: number, size: number, said: string): string => `<text x="${x}" y="${y}" font-size="${size}" fill="${words}">${escaped(said)}</text>`;

const heightOf = ({ picture }: Shown): number => Number(/^<svg[^>]* height="([\d.]+)"/u.exec(picture?.svg ?? '')?.[1] ?? 40);

/** The picture at a place, its ids made its own, since ids of one file must differ. */
function nested({ picture, caption }: Shown, id: string, x: number, y: number): string {
  if (picture === null) return text(x, y + 20, 13, `${caption}: nothing to show`);
  const own = picture.name.replace(/\.svg$/u, '');
  return picture.svg.trim()
    .replaceAll(`"${own}-title`, `"${id}-title`).replaceAll(` ${own}-desc"`, ` ${id}-desc"`).replaceAll(`"${own}-desc`, `"${id}-desc`)
    .replace('<svg ', `<svg x="${x}" y="${y}" `);
}

function groupDrawing({ title, shown }: Group, group: number, top: number): { readonly svg: string; readonly bottom: number } {
  const parts = [text(gap, top + 34, 24, title)];
  let y = top + titleRoom;
  for (let first = 0; first < shown.length; first += perRow) {
    const row = shown.slice(first, first + perRow);
    parts.push(...row.flatMap((one, i) => {
      const x = gap + i * (sheetWidth + gap);
      return [text(x, y + 14, 14, one.caption), nested(one, `p${group}-${first + i}`, x, y + captionRoom - 4)];
    }));
    y += captionRoom + Math.max(...row.map(heightOf)) + gap;
  }
  return { svg: parts.join('\n'), bottom: y };
}

/** Every kind of picture in its variants on one sheet, for people who look at drawings rather than at code. */
export function contactSheet(): string {
  let y = gap / 2;
  const drawn = groups().map((group, i) => {
    const { svg, bottom } = groupDrawing(group, i + 1, y);
    y = bottom;
    return svg;
  });
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${Math.ceil(y)}" viewBox="0 0 ${width} ${Math.ceil(y)}" font-family="${typeface}">`,
    '<title>Every kind of picture in its variants</title>', `<rect width="${width}" height="${Math.ceil(y)}" fill="${ground}"/>`, ...drawn, '</svg>', '',
  ].join('\n');
}

/** Writes the sheet into the folder of examples. */
export function writeContactSheet(root: string): void {
  const folder = join(root, 'reports', 'contact-sheet');
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, 'contact-sheet.svg'), contactSheet());
}
