import type { Element } from 'xast';
import { cleanText } from '../clean-text.js';
import { paperFill, sheetWidth } from './drawing-standard.js';
import { drawLabels, placeLabels, type Box, type Label } from './labels.js';
import { sheetNumber, shape, words, writeSvg } from './svg.js';

/** A finished picture: file name, the SVG itself, and what it shows in words for those who cannot see it. */
export interface Picture {
  readonly name: string;
  readonly svg: string;
  readonly alt: string;
}

/** Part of a drawing: lines, labels still looking for a place, and boxes that labels keep clear of. */
export interface Drawing {
  readonly marks: readonly Element[];
  readonly labels: readonly Label[];
  readonly obstacles: readonly Box[];
}

/** A drawing from any of its parts. */
export const drawing = (part: Partial<Drawing>): Drawing => ({
  marks: part.marks ?? [],
  labels: part.labels ?? [],
  obstacles: part.obstacles ?? [],
});

/** Several parts on one sheet, the later ones on top. */
export const together = (...parts: readonly Drawing[]): Drawing => ({
  marks: parts.flatMap((p) => p.marks),
  labels: parts.flatMap((p) => p.labels),
  obstacles: parts.flatMap((p) => p.obstacles),
});

/** What a picture is called and says. */
export interface PictureTitle {
  /** `front.svg` */
  readonly name: string;
  /** One line naming the picture. */
  readonly title: string;
  /** One or two sentences saying what it shows. */
  readonly alt: string;
}

/** Puts a drawing on a white sheet of the standard width and the given height and writes it. */
export function finishPicture({ name, title, alt }: PictureTitle, height: number, content: Drawing): Picture {
  const sheet: Box = { x: 2, y: 2, width: sheetWidth - 4, height: height - 4 };
  const placed = placeLabels(content.labels, content.obstacles, sheet);
  const id = name.replace(/\.svg$/u, '');
  const svg = shape(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      width: sheetWidth,
      height,
      viewBox: `0 0 ${sheetWidth} ${sheetNumber(height)}`,
      role: 'img',
      'aria-labelledby': `${id}-title ${id}-desc`,
    },
    [
      shape('title', { id: `${id}-title` }, [words(title)]),
      shape('desc', { id: `${id}-desc` }, [words(alt)]),
      shape('rect', { x: 0, y: 0, width: sheetWidth, height, fill: paperFill }),
      shape('g', { 'stroke-linejoin': 'round', 'stroke-linecap': 'butt' }, content.marks),
      drawLabels(placed),
    ],
  );
  return { name, svg: writeSvg(svg), alt: cleanText(alt) };
}
