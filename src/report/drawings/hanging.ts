import type { Element } from 'hast';
import type { UnitSystem } from '../../base/names.js';
import { formatLength, formatQuantity } from '../../base/units-format.js';
import { broken, caption, lineStep } from './caption.js';
import { levelDimension, uprightDimension } from './dimensions.js';
import { darkerFill, ink, paperFill, sheetWidth, softInk, textSize, weight, woodFill } from './drawing-standard.js';
import {
  barsDrawing,
  braceDrawing,
  crossbarCentre,
  crossbarOutline,
  type FrontView,
  type Placing,
} from './front-parts.js';
import { drawing, finishPicture, together, type Drawing, type Picture } from './picture.js';
import { arrow, circle, hatch, line, outline, rectangle } from './strokes.js';
import type { Point } from './svg.js';

/** How the piece hangs; mm, N, degrees. What is not known is null and left out of the picture. */
export interface HangingPicture {
  readonly units: UnitSystem;
  /** The frame as the front view draws it: its crossbars and braces show behind wire and rings. */
  readonly frame: FrontView;
  readonly by: 'wire' | 'two-hooks' | 'd-rings' | 'cleat';
  /** Bevelled strips under the top bar, mm; empty unless it hangs by a cleat. */
  readonly strips: readonly { readonly middle_mm: number; readonly long_mm: number; readonly high_mm: number }[];
  readonly hooks: number;
  readonly width_mm: number;
  readonly height_mm: number;
  readonly bar_w_mm: number;
  readonly bar_d_mm: number;
  readonly drop_mm: number;
  /** Level distance between the two rings or hanging points. */
  readonly ring_span_mm: number;
  /** How high the hook stands above the rings; null when the wire cannot carry. */
  readonly rise_mm: number | null;
  readonly hooks_apart_mm: number;
  readonly wire_angle_deg: number | null;
  readonly wire_tension_N: number | null;
  readonly inward_pull_N: number | null;
  readonly weight_N: number;
  readonly lean_deg: number | null;
  readonly top_standoff_mm: number | null;
  /**
   * What stands out behind the bars and holds them off the wall: how far, and where up the height of the frame; null
   * when nothing does.
   */
  readonly behind: { readonly out_mm: number; readonly up_mm: readonly (readonly [number, number])[] } | null;
}

const panel = { left: 94, width: 154, top: 58, height: 150 } as const;
/** Where the forces are told in words. */
const told = panel.top + panel.height + 58;
const side = { wall: 296, top: 58, height: 150 } as const;

/** Two views: the back to scale with the wire and its forces, and the side with the lean drawn larger than it is. */
export function hanging(h: HangingPicture): Picture {
  const lines = broken(forces(h));
  const content = together(back(h), sideView(h), caption(lines, told));
  return finishPicture(
    { name: 'hanging.svg', title: 'How the piece hangs', alt: describe(h) },
    told + lineStep * Math.max(1, lines.length),
    content,
  );
}

/** Less than this cannot be seen. */
export const liesFlat = (lean_deg: number): boolean => lean_deg < 0.05;

/** How a piece that does not lean meets the wall. */
const onWall = ({ behind, units }: HangingPicture): string =>
  behind !== null ? `bars ${formatLength(behind.out_mm, units)} off the wall` : 'lies flat on the wall';

function describe(h: HangingPicture): string {
  const force = (n: number): string => formatQuantity(n, 'N', h.units);
  const wire =
    h.by === 'cleat'
      ? 'It hangs by bevelled strips under the top bar, without a wire'
      : h.by !== 'wire'
        ? `It hangs on two hooks${h.by === 'd-rings' ? ' by strap hangers on the backs' : ''} without a wire, so nothing draws the side bars inward`
        : `It hangs by a wire on ${h.hooks === 1 ? 'one hook' : `${h.hooks} hooks`}${h.wire_angle_deg === null ? '' : `, at ${formatQuantity(h.wire_angle_deg, 'deg', h.units)} to the level`}${
            h.wire_tension_N === null ? '' : `; the wire carries ${force(h.wire_tension_N)}`
          }${h.inward_pull_N === null ? '' : ` and draws each side bar inward with ${force(h.inward_pull_N)}`}`;
  const lean =
    h.lean_deg === null
      ? ''
      : liesFlat(h.lean_deg)
        ? `; ${h.behind !== null ? '' : 'it '}${onWall(h)}`
        : `; the top leans ${formatQuantity(h.lean_deg, 'deg', h.units)} from the wall`;
  return `Back and side view. ${wire}${h.by === 'cleat' ? '' : `; the hanging points are ${formatLength(h.drop_mm, h.units)} below the top edge`}${lean}.`;
}

function back(h: HangingPicture): Drawing {
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

/** The forces in words, below the picture: arrow down, arrows inward, wire. */
function forces(h: HangingPicture): readonly string[] {
  const force = (n: number): string => formatQuantity(n, 'N', h.units);
  return [
    `Arrow down: weight ${force(h.weight_N)}.`,
    ...(h.by === 'cleat' ? ['Dark, at the top: the bevelled strips, flush with the back.'] : []),
    ...(h.by === 'wire' && h.inward_pull_N !== null
      ? [`Arrows inward: ${force(h.inward_pull_N)} on each side bar.`]
      : []),
    ...(h.by === 'wire' && h.wire_tension_N !== null
      ? [
          `In the wire: ${force(h.wire_tension_N)}${h.wire_angle_deg === null ? '' : `, at ${formatQuantity(h.wire_angle_deg, 'deg', h.units)}`}.`,
        ]
      : []),
  ];
}

/** Side view: the lean is drawn at least large enough to see, and says so. */
function sideView(h: HangingPicture): Drawing {
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
