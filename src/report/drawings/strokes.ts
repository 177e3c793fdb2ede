import type { Element } from 'xast';
import { darkerFill, dash, ink, weight } from './drawing-standard.js';
import { pathOf, shape, type Point } from './svg.js';

/** How a line or an area looks. */
export interface Stroke {
  readonly width?: number;
  readonly colour?: string;
  readonly fill?: string;
  readonly dashes?: keyof typeof dash;
}

const look = (stroke: Stroke): Record<string, string | number> => ({
  fill: stroke.fill ?? 'none',
  ...(stroke.colour === 'none' ? {} : { stroke: stroke.colour ?? ink, 'stroke-width': stroke.width ?? weight.edge }),
  ...(stroke.dashes === undefined ? {} : { 'stroke-dasharray': dash[stroke.dashes] }),
});

/** An open line through points. */
export const line = (points: readonly Point[], stroke: Stroke = {}): Element =>
  shape('path', {
    d: pathOf(points),
    ...look(stroke),
    ...(stroke.dashes === undefined ? { 'stroke-linecap': 'round' } : {}),
  });

/** A closed outline. */
export const outline = (points: readonly Point[], stroke: Stroke = {}): Element =>
  shape('path', { d: pathOf(points, true), ...look(stroke) });

/** A circle: the head of a screw, a nail, a hook. */
export const circle = (centre: Point, radius: number, stroke: Stroke = {}): Element =>
  shape('circle', { cx: centre.x, cy: centre.y, r: radius, ...look(stroke) });

/** The corners of an upright rectangle. */
export const rectangle = (x: number, y: number, width: number, height: number): readonly Point[] => [
  { x, y },
  { x: x + width, y },
  { x: x + width, y: y + height },
  { x, y: y + height },
];

/** A line with a filled head at its end; behind something, dashed and with an empty head. */
export function arrow(from: Point, to: Point, width: number = weight.edge, behind = false): readonly Element[] {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  if (length < 1e-6) return [];
  const head = Math.min(9, length * 0.6);
  const ux = (to.x - from.x) / length;
  const uy = (to.y - from.y) / length;
  const base = { x: to.x - ux * head, y: to.y - uy * head };
  const side = head * 0.38;
  return [
    line([from, base], { width, ...(behind ? { dashes: 'hidden' } : {}) }),
    outline([to, { x: base.x - uy * side, y: base.y + ux * side }, { x: base.x + uy * side, y: base.y - ux * side }], {
      width: weight.thin,
      fill: behind ? 'none' : ink,
    }),
  ];
}

/**
 * Slanted hatching of an upright rectangle as one path, computed line by line so that it needs no pattern with an id.
 * `rising` runs from lower left to upper right. Empty where there is no room for a line.
 */
export function hatch(
  x: number,
  y: number,
  width: number,
  height: number,
  gap: number,
  rising = true,
  colour: string = darkerFill,
): readonly Element[] {
  const lines: string[] = [];
  for (let c = gap; c < width + height; c += gap) {
    const start = { x: Math.min(c, width), y: Math.max(0, c - width) };
    const end = { x: Math.max(0, c - height), y: Math.min(c, height) };
    lines.push(pathOf([start, end].map((p) => ({ x: x + (rising ? p.x : width - p.x), y: y + p.y }))));
  }
  return lines.length === 0 ? [] : [shape('path', { d: lines.join(' '), ...look({ width: weight.thin, colour }) })];
}

/** A screw or nail lying in the plane of the picture: its head as a short bold line across it, `half_head` each way. */
export function lying(head: Point, tip: Point, half_head = 4.5): readonly Element[] {
  const length = Math.max(1e-6, Math.hypot(tip.x - head.x, tip.y - head.y));
  const cross = { x: (-half_head * (tip.y - head.y)) / length, y: (half_head * (tip.x - head.x)) / length };
  return [
    line([head, tip], { width: weight.edge, dashes: 'hidden' }),
    line(
      [
        { x: head.x - cross.x, y: head.y - cross.y },
        { x: head.x + cross.x, y: head.y + cross.y },
      ],
      { width: weight.bold },
    ),
  ];
}
