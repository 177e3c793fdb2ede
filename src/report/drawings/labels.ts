import type { Element } from 'xast';
import { rememberedBy } from '../../base/remembered.js';
import { cleanText } from '../clean-text.js';
import { ink, paperFill, sheetWidth, textSize, typeface } from './drawing-standard.js';
import { sheetNumber, shape, words } from './svg.js';

/** A rectangle on the sheet, from its top left. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** A place a label may stand: its anchor and the middle of its height. */
export interface Spot {
  readonly x: number;
  readonly y: number;
  readonly anchor: 'start' | 'middle' | 'end';
}

/** A label with the places it may stand, best first. */
export interface Label {
  readonly text: string;
  readonly spots: readonly [Spot, ...Spot[]];
  readonly size?: number;
  readonly heavy?: boolean;
  /** Reads upwards, for upright dimension lines. */
  readonly upright?: boolean;
}

/** A label with its place found. */
export interface PlacedLabel {
  readonly label: Label;
  readonly spot: Spot;
  readonly box: Box;
}

const narrow = /[iljtfr.,:;'|!()[\] I1-]/u;
const wide = /[mwMW@%—…+=×°]/u;

/** Width of a text in sheet units: a careful guess on the large side, since no font is at hand. */
export function textWidth(text: string, size: number): number {
  let ems = 0;
  for (const character of text) ems += emsOf(character);
  return ems * size;
}

const emsOf = rememberedBy(
  (character: string) => character,
  (character) => {
    if (narrow.test(character)) return 0.42;
    if (wide.test(character)) return 0.92;
    if ((character.codePointAt(0) ?? 0) > 0x2e7f) return 1.05;
    return /[A-Z]/u.test(character) ? 0.72 : 0.62;
  },
  1000,
);

/** Size of a heavy line across the sheet: the plain one, or the small one where that would touch its sides. */
export const headingSize = (text: string): number =>
  textWidth(text, textSize.plain) * 1.07 < sheetWidth - 16 ? textSize.plain : textSize.small;

/** The rectangle a label would take at a spot. */
export function labelBox(label: Label, spot: Spot): Box {
  const size = label.size ?? textSize.plain;
  const long = textWidth(cleanText(label.text), size) * (label.heavy === true ? 1.07 : 1);
  const tall = size * 1.15;
  const before = spot.anchor === 'start' ? 0 : spot.anchor === 'middle' ? long / 2 : long;
  return label.upright === true
    ? { x: spot.x - tall / 2, y: spot.y - (long - before), width: tall, height: long }
    : { x: spot.x - before, y: spot.y - tall / 2, width: long, height: tall };
}

/** Area two boxes share. */
export function overlap(a: Box, b: Box): number {
  // Most boxes lie apart, which is seen soonest from one side.
  if (a.x + a.width <= b.x || b.x + b.width <= a.x) return 0;
  const width = Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x);
  const height = Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y);
  return width > 0 && height > 0 ? width * height : 0;
}

const outside = (box: Box, sheet: Box): number => box.width * box.height - overlap(box, sheet);

/**
 * Finds each label the first of its spots that lies on the sheet and touches neither an obstacle nor a label placed
 * before;
 * when there is none, the spot that touches least.
 */
export function placeLabels(labels: readonly Label[], obstacles: readonly Box[], sheet: Box): readonly PlacedLabel[] {
  const taken: Box[] = [...obstacles];
  return labels.map((label) => {
    let best: { spot: Spot; box: Box; cost: number } | null = null;
    for (const spot of label.spots) {
      const box = labelBox(label, spot);
      let covered = 0;
      for (const other of taken) covered += overlap(box, other);
      const cost = covered + 20 * outside(box, sheet);
      if (best === null || cost < best.cost - 1e-9) best = { spot, box, cost };
      if (cost < 1e-9) break;
    }
    const { spot, box } = best ?? { spot: label.spots[0], box: labelBox(label, label.spots[0]) };
    taken.push(box);
    return { label, spot, box };
  });
}

/** All labels in one group, with a white edge so that a line behind one does not strike it through. */
export function drawLabels(placed: readonly PlacedLabel[]): Element {
  const look = {
    'font-family': typeface,
    fill: ink,
    stroke: paperFill,
    'stroke-width': 3,
    'stroke-linejoin': 'round',
    'paint-order': 'stroke',
  };
  return shape('g', look, placed.map(drawLabel));
}

function drawLabel({ label, spot }: PlacedLabel): Element {
  const size = label.size ?? textSize.plain;
  const shift = size * 0.35;
  const attributes = {
    ...(label.upright === true ? { transform: `rotate(-90 ${sheetNumber(spot.x)} ${sheetNumber(spot.y)})` } : {}),
    x: spot.x,
    y: spot.y + shift,
    'text-anchor': spot.anchor,
    'font-size': size,
    ...(label.heavy === true ? { 'font-weight': 700 } : {}),
  };
  return shape('text', attributes, [words(label.text)]);
}
