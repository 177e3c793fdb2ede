import type { Element } from 'hast';
import type { BarName, CornerName, UnitSystem } from '../../base/names.js';
import { formatLength } from '../../base/units-format.js';
import { levelDimension, uprightDimension } from './dimensions.js';
import { darkerFill, dimensionGap, sheetWidth, softInk, textSize, weight, woodFill } from './drawing-standard.js';
import { drawing, finishPicture, together, type Drawing, type Picture } from './picture.js';
import { scaleBar } from './scale-bar.js';
import { line, outline } from './strokes.js';
import type { Point } from './svg.js';

/** What the front view needs to know; sizes in mm, places in fractions of the centre-line span as in the plan. */
export interface FrontView {
  readonly units: UnitSystem;
  readonly width_mm: number;
  readonly height_mm: number;
  /** Size of each bar in the plane of the cloth. */
  readonly bar_w_mm: Readonly<Record<BarName, number>>;
  readonly cut: 'mitre' | 'butt' | 'half-lap';
  readonly crossbars: readonly { readonly name: string; readonly runs: 'upright' | 'level'; readonly at: number; readonly w_mm: number }[];
  readonly braces: readonly { readonly corner: CornerName; readonly kind: 'timber' | 'ply-gusset' | 'steel-angle'; readonly leg_mm: number; readonly w_mm: number }[];
}

/** Millimetres of the frame, from its bottom left corner, to the sheet. */
interface Placing {
  readonly scale: number;
  readonly left: number;
  readonly bottom: number;
  readonly at: (x_mm: number, y_mm: number) => Point;
}

const margin = { left: 52, right: 46, top: 16, bottom: 64 } as const;
const tallest = 300;

function placingOf(view: FrontView): Placing {
  const level = view.crossbars.filter((c) => c.runs === 'level').length;
  const room = sheetWidth - margin.left - margin.right - 14 * Math.min(level, 3);
  const scale = Math.min(room / view.width_mm, tallest / view.height_mm);
  const left = margin.left + (room - view.width_mm * scale) / 2;
  const uprights = Math.min(view.crossbars.length - level, 3);
  const bottom = margin.top + (uprights > 0 ? 16 + 16 * uprights : 0) + view.height_mm * scale;
  return { scale, left, bottom, at: (x, y) => ({ x: left + x * scale, y: bottom - y * scale }) };
}

/** The frame to scale, seen from the front with the cloth off: bars, corner cuts, crossbars, braces and their dimensions. */
export function frontView(view: FrontView): Picture {
  const placing = placingOf(view);
  const corner = (v: FrontView): Drawing => together(...v.braces.map((brace) => braceDrawing(v, brace, placing)));
  const legs = view.braces.length > 0 ? dimensionGap.next : 0;
  const below = placing.bottom + dimensionGap.first + legs + 24;
  const content = together(
    drawing({ marks: view.crossbars.map((c) => crossbarOutline(view, c, placing)) }),
    corner(view),
    barsDrawing(view, placing),
    outsideDimensions(view, placing),
    crossbarDimensions(view, placing),
    names(view, placing),
    scaleBar({ x: 12, y: below, mm_to_sheet: placing.scale, units: view.units, note: 'Seen from the front, cloth off' }),
  );
  return finishPicture({ name: 'front.svg', title: 'The frame from the front', alt: describe(view) }, placing.bottom + margin.bottom + legs, content);
}

function describe(view: FrontView): string {
  const { units } = view;
  const crossbars = view.crossbars.map((c) => `${c.name} runs ${c.runs}, ${fractionWords(c)}`);
  const braces = view.braces.length === 0 ? 'no corner braces' : `${view.braces.length} corner braces, ${formatLength(view.braces[0]?.leg_mm ?? 0, units)} from the corners`;
  return `Frame ${formatLength(view.width_mm, units)} wide and ${formatLength(view.height_mm, units)} high, seen from the front, drawn to scale; ${view.cut} corners; ${
    crossbars.length === 0 ? 'no crossbars' : crossbars.join('; ')}; ${braces}.`;
}

const fractionWords = (c: FrontView['crossbars'][number]): string => `${Math.round(c.at * 100)} % of the way ${c.runs === 'upright' ? 'from the left' : 'up'}`;

function barsDrawing(view: FrontView, { at }: Placing): Drawing {
  const { width_mm: W, height_mm: H, bar_w_mm: w } = view;
  const outer = [at(0, 0), at(W, 0), at(W, H), at(0, H)];
  const inner = [at(w.left, w.bottom), at(W - w.right, w.bottom), at(W - w.right, H - w.top), at(w.left, H - w.top)];
  const side = (i: number, j: number): Element => outline([outer[i], outer[j], inner[j], inner[i]] as Point[], { width: weight.thin, fill: woodFill, colour: 'none' });
  return drawing({
    marks: [
      side(0, 1), side(1, 2), side(2, 3), side(3, 0),
      ...cornerCuts(view, at),
      outline(outer, { width: weight.edge }),
      outline(inner, { width: weight.edge }),
    ],
    obstacles: boxesOf(view, at),
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

/** Mitred: one slanted line. Butted: left and right run the full height. Half-lapped: level bars keep their front half, so the upright's edge is hidden. */
function cornerCuts({ width_mm: W, height_mm: H, bar_w_mm: w, cut }: FrontView, at: Placing['at']): readonly Element[] {
  const corners = [
    { x: 0, y: 0, sx: 1, sy: 1, wx: w.left, wy: w.bottom }, { x: W, y: 0, sx: -1, sy: 1, wx: w.right, wy: w.bottom },
    { x: W, y: H, sx: -1, sy: -1, wx: w.right, wy: w.top }, { x: 0, y: H, sx: 1, sy: -1, wx: w.left, wy: w.top },
  ];
  return corners.flatMap(({ x, y, sx, sy, wx, wy }) => {
    const inX = x + sx * wx;
    const inY = y + sy * wy;
    const through = line([at(inX, y), at(inX, inY)], { width: weight.thin });
    const behind = line([at(x, inY), at(inX, inY)], { width: weight.thin, dashes: 'hidden' });
    if (cut === 'mitre') return [line([at(x, y), at(inX, inY)], { width: weight.thin })];
    return cut === 'butt' ? [through] : [through, behind];
  });
}

/** Centre of a crossbar in mm from the left or from the bottom of the frame. */
export function crossbarCentre(view: Pick<FrontView, 'width_mm' | 'height_mm' | 'bar_w_mm'>, c: { readonly runs: 'upright' | 'level'; readonly at: number }): number {
  const w = view.bar_w_mm;
  return c.runs === 'upright'
    ? w.left / 2 + c.at * (view.width_mm - w.left / 2 - w.right / 2)
    : w.bottom / 2 + c.at * (view.height_mm - w.bottom / 2 - w.top / 2);
}

function crossbarOutline(view: FrontView, c: FrontView['crossbars'][number], { at }: Placing): Element {
  const { width_mm: W, height_mm: H, bar_w_mm: w } = view;
  const m = crossbarCentre(view, c);
  const h = c.w_mm / 2;
  const points = c.runs === 'upright'
    ? [at(m - h, w.bottom), at(m + h, w.bottom), at(m + h, H - w.top), at(m - h, H - w.top)]
    : [at(w.left, m - h), at(W - w.right, m - h), at(W - w.right, m + h), at(w.left, m + h)];
  return outline(points, { fill: darkerFill });
}

function braceDrawing(view: FrontView, brace: FrontView['braces'][number], { at }: Placing): Drawing {
  const { width_mm: W, height_mm: H, bar_w_mm: w } = view;
  const right = brace.corner.endsWith('right');
  const top = brace.corner.startsWith('top');
  const wx = right ? w.right : w.left;
  const wy = top ? w.top : w.bottom;
  /** From the corner of the centre lines, inwards. */
  const from = (x: number, y: number): Point => at(right ? W - wx / 2 - x : wx / 2 + x, top ? H - wy / 2 - y : wy / 2 + y);
  const L = brace.leg_mm;
  if (brace.kind === 'steel-angle') return drawing({ marks: [line([from(L, 0), from(0, 0), from(0, L)], { width: weight.bold, dashes: 'hidden' })] });
  if (brace.kind === 'ply-gusset') return drawing({ marks: [outline([from(-wx / 2, -wy / 2), from(L, -wy / 2), from(-wx / 2, L)], { dashes: 'hidden' })] });
  const k = brace.w_mm / Math.SQRT2;
  return drawing({ marks: [outline([from(wx / 2, L - wx / 2 - k), from(wx / 2, L - wx / 2 + k), from(L - wy / 2 + k, wy / 2), from(L - wy / 2 - k, wy / 2)], { fill: darkerFill })] });
}

function outsideDimensions({ width_mm: W, height_mm: H, units }: FrontView, { left, bottom, scale }: Placing): Drawing {
  const right = left + W * scale;
  const top = bottom - H * scale;
  return together(
    levelDimension({ from: left, to: right, y: bottom + dimensionGap.first, edge: bottom, text: formatLength(W, units) }),
    uprightDimension({ from: top, to: bottom, x: left - dimensionGap.first, edge: left, text: formatLength(H, units) }),
  );
}

function crossbarDimensions(view: FrontView, { left, bottom, scale, at }: Placing): Drawing {
  const { width_mm: W, height_mm: H, units } = view;
  const top = bottom - H * scale;
  const right = left + W * scale;
  const uprights = view.crossbars.filter((c) => c.runs === 'upright').map((c) => crossbarCentre(view, c)).sort((a, b) => a - b);
  const levels = view.crossbars.filter((c) => c.runs === 'level').map((c) => crossbarCentre(view, c)).sort((a, b) => a - b);
  const first = view.braces[0];
  return together(
    ...uprights.slice(0, 3).map((m, i) => levelDimension({ from: left, to: at(m, 0).x, y: top - 16 - 16 * i, edge: top, text: formatLength(m, units) })),
    ...levels.slice(0, 3).map((m, i) => uprightDimension({ from: at(0, m).y, to: bottom, x: right + 16 + 18 * i, edge: right, text: formatLength(m, units), alwaysUpright: true })),
    drawing({ marks: view.crossbars.map((c) => centreLine(view, c, at)) }),
    first === undefined ? drawing({}) : legDimension(view, first.leg_mm, { left, bottom, top, right, at }),
  );
}

function centreLine(view: FrontView, c: FrontView['crossbars'][number], at: Placing['at']): Element {
  const m = crossbarCentre(view, c);
  const points = c.runs === 'upright' ? [at(m, 0), at(m, view.height_mm)] : [at(0, m), at(view.width_mm, m)];
  return line(points, { width: weight.dimension, dashes: 'centre', colour: softInk });
}

/** One leg stands for all: measured along the centre line of the bottom bar from its right-hand corner. */
function legDimension(view: FrontView, leg_mm: number, { bottom, at }: { left: number; bottom: number; top: number; right: number; at: Placing['at'] }): Drawing {
  const corner = view.width_mm - view.bar_w_mm.right / 2;
  const y = bottom + dimensionGap.first + dimensionGap.next;
  return levelDimension({ from: at(corner - leg_mm, 0).x, to: at(corner, 0).x, y, edge: bottom - 4, text: `leg ${formatLength(leg_mm, view.units)}` });
}

/** `C1`, as in the cut list. */
const shortName = (name: string): string => name.replace(/^crossbar-/u, 'C');

function names(view: FrontView, { at, left }: Placing): Drawing {
  const { width_mm: W, height_mm: H, bar_w_mm: w } = view;
  const beside = (p: Point, dx: number, dy: number): Point => ({ x: p.x + dx, y: p.y + dy });
  const middle = 'middle' as const;
  const along = [0.5, 0.3, 0.7, 0.18, 0.82, 0.4, 0.6, 0.24, 0.76, 0.12, 0.88];
  const spots = (place: (t: number) => Point, anchor: Spot['anchor']): readonly [Spot, ...Spot[]] => along.map((t) => ({ ...place(t), anchor })) as unknown as [Spot, ...Spot[]];
  const bothSides = (one: readonly [Spot, ...Spot[]], other: readonly Spot[]): readonly [Spot, ...Spot[]] => [...one, ...other];
  const size = textSize.small;
  const outside = (y_mm: number): Spot => ({ x: left - dimensionGap.first - 6, y: at(0, y_mm).y, anchor: 'end' });
  return drawing({
    labels: [
      { text: 'top', size, spots: [...spots((t) => beside(at(W * t, H - w.top), 0, 9), middle), outside(H - w.top / 2)] },
      { text: 'bottom', size, spots: [...spots((t) => beside(at(W * t, w.bottom), 0, -9), middle), outside(w.bottom / 2)] },
      { text: 'left', size, upright: true, spots: spots((t) => beside(at(w.left, H * t), 9, 0), middle) },
      { text: 'right', size, upright: true, spots: spots((t) => beside(at(W - w.right, H * t), -9, 0), middle) },
      ...view.crossbars.map((c) => {
        const m = crossbarCentre(view, c);
        return c.runs === 'upright'
          ? { text: shortName(c.name), size, spots: bothSides(spots((t) => beside(at(m + c.w_mm / 2, H * t), 5, 0), 'start'), spots((t) => beside(at(m - c.w_mm / 2, H * t), -5, 0), 'end')) }
          : { text: shortName(c.name), size, spots: bothSides(spots((t) => beside(at(W * (0.9 - t * 0.8), m + c.w_mm / 2), 0, -9), middle), spots((t) => beside(at(W * (0.9 - t * 0.8), m - c.w_mm / 2), 0, 9), middle)) };
      }),
    ],
    obstacles: view.crossbars.map((c) => {
      const m = crossbarCentre(view, c);
      const a = c.runs === 'upright' ? at(m - c.w_mm / 2, H) : at(0, m + c.w_mm / 2);
      const b = c.runs === 'upright' ? at(m + c.w_mm / 2, 0) : at(W, m - c.w_mm / 2);
      return { x: a.x, y: a.y, width: b.x - a.x, height: b.y - a.y };
    }),
  });
}

type Spot = Drawing['labels'][number]['spots'][number];
