import { formatLength, formatQuantity } from '../../base/units-format.js';
import { levelDimension } from './dimensions.js';
import { darkerFill, ink, sheetWidth, softInk, textSize, weight, woodFill } from './drawing-standard.js';
import { panel, type HangingPicture } from './hanging-shape.js';
import { liesFlat, onWall } from './hanging-words.js';
import { drawing, together, type Drawing } from './picture.js';
import { circle, hatch, line, outline } from './strokes.js';
import type { Point } from './svg.js';

const side = { wall: 296, top: panel.top, height: panel.height } as const;

/** Side view: the lean is drawn at least large enough to see, and says so. */
export function sideView(h: HangingPicture): Drawing {
  const bottom = side.top + side.height;
  const lean_deg = liesFlat(h.lean_deg ?? 0) ? 0 : (h.lean_deg ?? 0);
  const drawn_deg = lean_deg <= 0 ? 0 : Math.min(14, Math.max(5, lean_deg));
  const angle = (drawn_deg * Math.PI) / 180;
  const thick = Math.min(20, Math.max(7, (h.bar_d_mm * side.height) / h.height_mm));
  const foot: Point = { x: side.wall, y: bottom };
  /** What stands out behind keeps the bars off the wall: drawn wide enough to see. */
  const gap = h.behind === null ? 0 : Math.min(12, Math.max(3.5, (h.behind.out_mm * side.height) / h.height_mm));
  const up = (t: number, out: number): Point => ({
    x: foot.x + Math.sin(angle) * t + Math.cos(angle) * out,
    y: foot.y - Math.cos(angle) * t + Math.sin(angle) * out,
  });
  const tall = side.height - 14;
  const hook: Point = { x: side.wall, y: up(tall * (1 - h.drop_mm / h.height_mm), 0).y - (h.by === 'wire' ? 16 : 0) };
  const topLeft = up(tall, gap);
  const said = lean_deg <= 0 ? onWall(h) : `leans ${formatQuantity(lean_deg, 'deg', h.units)}`;
  return together(
    drawing({
      marks: [
        ...hatch(side.wall - 9, side.top - 18, 9, side.height + 34, 6, true, softInk),
        line([
          { x: side.wall, y: side.top - 18 },
          { x: side.wall, y: bottom + 16 },
        ]),
        outline([up(0, gap), up(tall, gap), up(tall, gap + thick), up(0, gap + thick)], { fill: woodFill }),
        ...(h.behind?.up_mm ?? [])
          .map(([from, to]) => [(from * tall) / h.height_mm, (to * tall) / h.height_mm] as const)
          .map(([from, to]) => outline([up(from, 0), up(to, 0), up(to, gap), up(from, gap)], { fill: darkerFill })),
        line([hook, up(tall * (1 - h.drop_mm / h.height_mm), gap + thick * 0.35)], { width: weight.bold }),
        circle(hook, 2.6, { fill: ink }),
      ],
      labels: [
        {
          text: 'side view',
          heavy: true,
          size: textSize.small,
          spots: [{ x: side.wall - 20, y: 16, anchor: 'start' }],
        },
        {
          text: 'wall',
          size: textSize.small,
          upright: true,
          spots: [{ x: side.wall - 18, y: bottom - 30, anchor: 'middle' }],
        },
        ...(h.lean_deg === null
          ? []
          : [
              {
                text: said,
                size: textSize.small,
                spots: [
                  { x: side.wall - 30, y: bottom + 32, anchor: 'start' as const },
                  { x: sheetWidth - 6, y: bottom + 32, anchor: 'end' as const },
                  { x: sheetWidth - 6, y: bottom + 46, anchor: 'end' as const },
                ] as const,
              },
            ]),
        ...(drawn_deg > lean_deg
          ? [
              {
                text: '(drawn steeper)',
                size: textSize.small,
                spots: [
                  { x: side.wall - 30, y: bottom + 47, anchor: 'start' as const },
                  { x: side.wall - 30, y: bottom + 61, anchor: 'start' as const },
                ] as const,
              },
            ]
          : []),
      ],
    }),
    h.top_standoff_mm === null || lean_deg <= 0
      ? drawing({})
      : levelDimension({
          from: side.wall,
          to: topLeft.x,
          y: topLeft.y - 16,
          edge: topLeft.y,
          text: formatLength(h.top_standoff_mm, h.units),
        }),
  );
}
