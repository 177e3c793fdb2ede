import type { Element } from 'xast';
import { formatLength } from '../../base/units-format.js';
import { levelDimension, uprightDimension } from './dimensions.js';
import { darkerFill, ink, paperFill, textSize, weight } from './drawing-standard.js';
import { barsDrawing, braceDrawing, crossbarCentre, crossbarOutline, type Placing } from './front-parts.js';
import { panel, type HangingPicture } from './hanging-shape.js';
import { drawing, together, type Drawing } from './picture.js';
import { arrow, circle, line, outline, rectangle } from './strokes.js';
import type { Point } from './svg.js';

/** The back to scale, with the wire and its forces. */
export function back(h: HangingPicture): Drawing {
  const { units } = h;
  const scale = Math.min(panel.width / h.width_mm, panel.height / h.height_mm);
  const left = panel.left + (panel.width - h.width_mm * scale) / 2;
  const top = panel.top;
  const at = (x: number, y: number): Point => ({ x: left + x * scale, y: top + y * scale });
  const W = h.width_mm;
  const H = h.height_mm;
  const b = h.bar_w_mm;
  const rings = [at((W - h.ring_span_mm) / 2, h.drop_mm), at((W + h.ring_span_mm) / 2, h.drop_mm)] as const;
  const hookXs = h.hooks_apart_mm > 0 ? [(W - h.hooks_apart_mm) / 2, (W + h.hooks_apart_mm) / 2] : [W / 2];
  const cleat = h.by === 'cleat';
  const hooks = cleat
    ? []
    : h.by !== 'wire'
      ? rings
      : h.rise_mm === null
        ? []
        : hookXs.map((x) => at(x, h.drop_mm - (h.rise_mm ?? 0)));
  const bottom = at(0, H).y;
  /** From behind, left and right change places; the front view counts up from the bottom. */
  const fromBehind: Placing = { scale, left, bottom, at: (x, y) => at(W - x, H - y) };
  const weightFrom = { ...at(W / 2, H * 0.5), x: besideCrossbars(h, fromBehind) };
  const down: Point = { x: weightFrom.x, y: Math.min(weightFrom.y + 44, Math.max(bottom - 8, weightFrom.y + 18)) };
  const wire = h.by === 'wire' ? [line([rings[0], ...hooks, rings[1]], { width: weight.bold })] : [];
  return together(
    drawing({
      marks: [
        ...barsDrawing(h.frame, fromBehind, true).marks,
        ...h.frame.crossbars.map((c) => crossbarOutline(h.frame, c, fromBehind)),
        ...h.frame.braces.flatMap((brace) => braceDrawing(h.frame, brace, fromBehind, true).marks),
        ...wire,
        ...h.strips.map((s) =>
          outline(
            rectangle(
              at(W - s.middle_mm - s.long_mm / 2, 0).x,
              at(0, b).y,
              s.long_mm * scale,
              Math.max(4, s.high_mm * scale),
            ),
            { fill: darkerFill },
          ),
        ),
        ...(cleat ? [] : rings).map((p) => circle(p, 3.5, { fill: paperFill })),
        ...hooks.map((p) => circle(p, 2.2, { fill: ink })),
        ...arrow(weightFrom, down),
        ...(h.by === 'wire' && h.inward_pull_N !== null ? inwardArrows(rings) : []),
      ],
      labels: [
        { text: 'back view, to scale', heavy: true, size: textSize.small, spots: [{ x: 12, y: 16, anchor: 'start' }] },
      ],
    }),
    cleat
      ? drawing({})
      : uprightDimension({ from: top, to: rings[0].y, x: left - 18, edge: left, text: formatLength(h.drop_mm, units) }),
    h.hooks_apart_mm > 0 && hooks[0] !== undefined && hooks[1] !== undefined
      ? levelDimension({
          from: hooks[0].x,
          to: hooks[1].x,
          y: top - 14,
          edge: top,
          text: formatLength(h.hooks_apart_mm, units),
        })
      : drawing({}),
    cleat
      ? drawing({})
      : levelDimension({
          from: rings[0].x,
          to: rings[1].x,
          y: bottom + 30,
          edge: bottom,
          text: formatLength(h.ring_span_mm, units),
        }),
  );
}

/** Where the arrow of the weight stands on the sheet: in the middle, or close beside an upright crossbar there. */
function besideCrossbars({ frame, width_mm: W }: HangingPicture, { at, scale }: Placing): number {
  const room = 9;
  const middle = at(W / 2, 0).x;
  const bars = frame.crossbars
    .filter(({ runs }) => runs === 'upright')
    .map((c) => ({ x: at(crossbarCentre(frame, c), 0).x, half: (c.w_mm * scale) / 2 }));
  const hit = bars.find(({ x, half }) => Math.abs(x - middle) < half + room);
  return hit === undefined ? middle : hit.x + hit.half + room;
}

function inwardArrows([a, b]: readonly [Point, Point]): readonly Element[] {
  const long = Math.min(22, 0.3 * (b.x - a.x));
  return [
    ...arrow({ x: a.x + 5, y: a.y + 10 }, { x: a.x + 5 + long, y: a.y + 10 }),
    ...arrow({ x: b.x - 5, y: b.y + 10 }, { x: b.x - 5 - long, y: b.y + 10 }),
  ];
}
