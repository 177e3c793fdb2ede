import type { Element } from 'xast';
import type { BarName, CornerName, UnitSystem } from '../../base/names.js';
import { darkerFill, weight, woodFill } from './drawing-standard.js';
import { drawing, type Drawing } from './picture.js';
import { line, outline } from './strokes.js';
import type { Point } from './svg.js';

/** What the front view needs to know; sizes in mm, places in fractions of the centre-line span as in the plan. */
export interface FrontView {
  readonly units: UnitSystem;
  readonly width_mm: number;
  readonly height_mm: number;
  /** Size of each bar in the plane of the cloth. */
  readonly bar_w_mm: Readonly<Record<BarName, number>>;
  readonly cut: 'mitre' | 'butt' | 'half-lap' | 'keyed';
  /**
   * Glue lines between plies that lie side by side, mm from the outer edge of each bar; empty where none shows from the
   * front.
   */
  readonly seams_mm: readonly number[];
  readonly crossbars: readonly {
    readonly name: string;
    readonly runs: 'upright' | 'level';
    readonly at: number;
    readonly w_mm: number;
  }[];
  /**
   * The leg of a timber brace along the middles of the bars, that of a plate from the outer corner; the width of the
   * brace, or of the steel.
   */
  readonly braces: readonly {
    readonly corner: CornerName;
    readonly kind: 'timber' | 'ply-gusset' | 'steel-angle';
    readonly leg_mm: number;
    readonly w_mm: number;
  }[];
}

/** Millimetres of the frame, from its bottom left corner, to the sheet. */
export interface Placing {
  readonly scale: number;
  readonly left: number;
  readonly bottom: number;
  readonly at: (x_mm: number, y_mm: number) => Point;
}

/**
 * The four bars with their corner cuts; `from_behind` for one who sees their backs, through a placing that is turned
 * over.
 */
export function barsDrawing(view: FrontView, { at }: Placing, from_behind = false): Drawing {
  const { width_mm: W, height_mm: H, bar_w_mm: w } = view;
  const outer = [at(0, 0), at(W, 0), at(W, H), at(0, H)];
  const inner = [at(w.left, w.bottom), at(W - w.right, w.bottom), at(W - w.right, H - w.top), at(w.left, H - w.top)];
  const side = (i: number, j: number): Element =>
    outline([outer[i], outer[j], inner[j], inner[i]] as Point[], {
      width: weight.thin,
      fill: woodFill,
      colour: 'none',
    });
  return drawing({
    marks: [
      side(0, 1),
      side(1, 2),
      side(2, 3),
      side(3, 0),
      ...cornerCuts(view, at, from_behind),
      ...seams(view, at, from_behind),
      outline(outer, { width: weight.edge }),
      outline(inner, { width: weight.edge }),
    ],
    obstacles: boxesOf(view, at),
  });
}

/** Seams run parallel to the edges, and end at the corner as the cut has it. */
function seams(
  { width_mm: W, height_mm: H, bar_w_mm: w, cut, seams_mm }: FrontView,
  at: Placing['at'],
  from_behind: boolean,
): readonly Element[] {
  const thin = { width: weight.dimension, dashes: 'fold' } as const;
  return seams_mm.flatMap((s) => {
    const level = { mitre: s, keyed: s, butt: w.left, 'half-lap': from_behind ? w.left : 0 }[cut];
    const upright = { mitre: s, keyed: s, butt: 0, 'half-lap': from_behind ? 0 : w.top }[cut];
    return [
      line([at(level, s), at(W - level, s)], thin),
      line([at(level, H - s), at(W - level, H - s)], thin),
      line([at(s, upright), at(s, H - upright)], thin),
      line([at(W - s, upright), at(W - s, H - upright)], thin),
    ];
  });
}

/** Bars as boxes, so that labels stay in the opening. */
function boxesOf({ width_mm: W, height_mm: H, bar_w_mm: w }: FrontView, at: Placing['at']): Drawing['obstacles'] {
  const box = (x: number, y: number, wide: number, high: number): Drawing['obstacles'][number] => {
    const a = at(x, y + high);
    const b = at(x + wide, y);
    return { x: a.x, y: a.y, width: b.x - a.x, height: b.y - a.y };
  };
  return [box(0, 0, W, w.bottom), box(0, H - w.top, W, w.top), box(0, 0, w.left, H), box(W - w.right, 0, w.right, H)];
}

/**
 * Mitred, or the mitred shoulders of a keyed corner: one slanted line. Butted: left and right run the full height.
 * Half-lapped: level bars keep their front half and run to the outside, so the upright's inner edge is hidden behind
 * them; from behind it is the other way about.
 */
function cornerCuts(
  { width_mm: W, height_mm: H, bar_w_mm: w, cut }: FrontView,
  at: Placing['at'],
  from_behind: boolean,
): readonly Element[] {
  const corners = [
    { x: 0, y: 0, sx: 1, sy: 1, wx: w.left, wy: w.bottom },
    { x: W, y: 0, sx: -1, sy: 1, wx: w.right, wy: w.bottom },
    { x: W, y: H, sx: -1, sy: -1, wx: w.right, wy: w.top },
    { x: 0, y: H, sx: 1, sy: -1, wx: w.left, wy: w.top },
  ];
  return corners.flatMap(({ x, y, sx, sy, wx, wy }) => {
    const inX = x + sx * wx;
    const inY = y + sy * wy;
    const through = line([at(inX, y), at(inX, inY)], { width: weight.thin });
    if (cut === 'mitre' || cut === 'keyed') return [line([at(x, y), at(inX, inY)], { width: weight.thin })];
    if (cut === 'butt') return [through];
    const [seen, hidden] = [{ width: weight.thin }, { width: weight.thin, dashes: 'hidden' }] as const;
    return [
      line([at(x, inY), at(inX, inY)], from_behind ? hidden : seen),
      line([at(inX, y), at(inX, inY)], from_behind ? seen : hidden),
    ];
  });
}

/** Centre of a crossbar in mm from the left or from the bottom of the frame. */
export function crossbarCentre(
  view: Pick<FrontView, 'width_mm' | 'height_mm' | 'bar_w_mm'>,
  c: { readonly runs: 'upright' | 'level'; readonly at: number },
): number {
  const w = view.bar_w_mm;
  return c.runs === 'upright'
    ? w.left / 2 + c.at * (view.width_mm - w.left / 2 - w.right / 2)
    : w.bottom / 2 + c.at * (view.height_mm - w.bottom / 2 - w.top / 2);
}

/** One crossbar between the bars. */
export function crossbarOutline(view: FrontView, c: FrontView['crossbars'][number], { at }: Placing): Element {
  const { width_mm: W, height_mm: H, bar_w_mm: w } = view;
  const m = crossbarCentre(view, c);
  const h = c.w_mm / 2;
  const points =
    c.runs === 'upright'
      ? [at(m - h, w.bottom), at(m + h, w.bottom), at(m + h, H - w.top), at(m - h, H - w.top)]
      : [at(w.left, m - h), at(W - w.right, m - h), at(W - w.right, m + h), at(w.left, m + h)];
  return outline(points, { fill: darkerFill });
}

/** One corner brace, gusset or angle; the last two lie on the back: dashed, but for one who looks from behind. */
export function braceDrawing(
  view: FrontView,
  brace: FrontView['braces'][number],
  { at }: Placing,
  from_behind = false,
): Drawing {
  const hidden = from_behind ? {} : ({ dashes: 'hidden' } as const);
  const { width_mm: W, height_mm: H, bar_w_mm: w } = view;
  const right = brace.corner.endsWith('right');
  const top = brace.corner.startsWith('top');
  const wx = right ? w.right : w.left;
  const wy = top ? w.top : w.bottom;
  /** From the corner of the centre lines, inwards. */
  const from = (x: number, y: number): Point =>
    at(right ? W - wx / 2 - x : wx / 2 + x, top ? H - wy / 2 - y : wy / 2 + y);
  const L = brace.leg_mm;
  const solid = from_behind ? { fill: darkerFill } : hidden;
  if (brace.kind === 'steel-angle')
    return drawing({
      marks: [
        outline(
          angleOutline(L, brace.w_mm, wx, wy).map(([x, y]) => from(x - wx / 2, y - wy / 2)),
          solid,
        ),
      ],
    });
  if (brace.kind === 'ply-gusset')
    return drawing({
      marks: [outline([from(-wx / 2, -wy / 2), from(L - wx / 2, -wy / 2), from(-wx / 2, L - wy / 2)], solid)],
    });
  const k = brace.w_mm / Math.SQRT2;
  const points = [
    from(wx / 2, L - wx / 2 - k),
    from(wx / 2, L - wx / 2 + k),
    from(L - wy / 2 + k, wy / 2),
    from(L - wy / 2 - k, wy / 2),
  ];
  const [x, y] = [Math.min(...points.map((p) => p.x)), Math.min(...points.map((p) => p.y))];
  const box = { x, y, width: Math.max(...points.map((p) => p.x)) - x, height: Math.max(...points.map((p) => p.y)) - y };
  return drawing({ marks: [outline(points, { fill: darkerFill })], obstacles: [box] });
}

/** A flat angle on the middles of two bars, from the outer corner: along the one, along the other, mm. */
export function angleOutline(
  leg_mm: number,
  wide_mm: number,
  upright_w_mm: number,
  level_w_mm: number,
): readonly (readonly [number, number])[] {
  const [x, y] = [(upright_w_mm - wide_mm) / 2, (level_w_mm - wide_mm) / 2];
  return [
    [x, y],
    [leg_mm, y],
    [leg_mm, y + wide_mm],
    [x + wide_mm, y + wide_mm],
    [x + wide_mm, leg_mm],
    [x, leg_mm],
  ];
}
