import { spokenName } from '../../base/names.js';
import type { Element } from 'xast';
import { formatLength } from '../../base/units-format.js';
import { levelDimension, uprightDimension } from './dimensions.js';
import { dimensionGap, sheetWidth, softInk, textSize, weight } from './drawing-standard.js';
import {
  barsDrawing,
  braceDrawing,
  crossbarCentre,
  crossbarOutline,
  type FrontView,
  type Placing,
} from './front-parts.js';
import { drawing, finishPicture, together, type Drawing, type Picture, type PictureTitle } from './picture.js';
import { scaleBar } from './scale-bar.js';
import { line } from './strokes.js';
import type { Point } from './svg.js';

const margin = { left: 52, right: 46, top: 16, bottom: 64 } as const;
const tallest = 300;

function placingOf(view: FrontView, headed: number): Placing {
  const level = view.crossbars.filter((c) => c.runs === 'level').length;
  const room = sheetWidth - margin.left - margin.right - 14 * Math.min(level, 3);
  const scale = Math.min(room / view.width_mm, tallest / view.height_mm);
  const left = margin.left + (room - view.width_mm * scale) / 2;
  const uprights = Math.min(view.crossbars.length - level, 3);
  const bottom = margin.top + headed + (uprights > 0 ? 16 + dimensionGap.next * uprights : 0) + view.height_mm * scale;
  return { scale, left, bottom, at: (x, y) => ({ x: left + x * scale, y: bottom - y * scale }) };
}

export type { FrontView };

/** What a front view is called, what stands beside its scale, and at its head where two are to be told apart. */
export type FrontTitle = Omit<PictureTitle, 'alt'> & { readonly note: string; readonly head?: string };

const seen: FrontTitle = {
  name: 'front.svg',
  title: 'The frame from the front',
  note: 'Seen from the front, cloth off',
};

/**
 * The frame to scale, seen from the front with the cloth off: bars, corner cuts, crossbars, braces and their
 * dimensions.
 */
export function frontView(view: FrontView, named: Partial<FrontTitle> = {}): Picture {
  const { name, title, note, head } = { ...seen, ...named };
  const placing = placingOf(view, head === undefined ? 0 : 18);
  /** Braces lie between the bars; plates behind them, dashed. */
  const [timber, plates] = [true, false].map((between) =>
    together(
      ...view.braces
        .filter(({ kind }) => (kind === 'timber') === between)
        .map((brace) => braceDrawing(view, brace, placing)),
    ),
  ) as [Drawing, Drawing];
  const legs = view.braces.length > 0 ? dimensionGap.next : 0;
  const below = placing.bottom + dimensionGap.first + legs + 24;
  const content = together(
    drawing({ marks: view.crossbars.map((c) => crossbarOutline(view, c, placing)) }),
    timber,
    barsDrawing(view, placing),
    plates,
    outsideDimensions(view, placing),
    crossbarDimensions(view, placing),
    names(view, placing),
    drawing({
      labels: head === undefined ? [] : [{ text: head, heavy: true, spots: [{ x: 10, y: 14, anchor: 'start' }] }],
    }),
    scaleBar({ x: 12, y: below, mm_to_sheet: placing.scale, units: view.units, note }),
  );
  return finishPicture({ name, title, alt: describe(view) }, placing.bottom + margin.bottom + legs, content);
}

const braceWords = { timber: 'corner braces', 'ply-gusset': 'plywood gussets', 'steel-angle': 'steel angles' } as const;

function describe(view: FrontView): string {
  const { units } = view;
  const crossbars = view.crossbars.map((c) => `${spokenName(c.name)} runs ${c.runs}, ${fractionWords(c)}`);
  const [first] = view.braces;
  const leg = formatLength(first?.leg_mm ?? 0, units);
  const braces =
    first === undefined
      ? 'no corner braces'
      : `${view.braces.length} ${braceWords[first.kind]}, ${first.kind === 'timber' ? `${leg} from the corners` : `legs ${leg} long`}`;
  return `Frame ${formatLength(view.width_mm, units)} wide and ${formatLength(view.height_mm, units)} high, seen from the front, drawn to scale; ${{ mitre: 'mitred', butt: 'butted', 'half-lap': 'half-lapped', keyed: 'keyed' }[view.cut]} corners; ${
    crossbars.length === 0 ? 'no crossbars' : crossbars.join('; ')
  }; ${braces}.`;
}

const fractionWords = (c: FrontView['crossbars'][number]): string =>
  `${Math.round(c.at * 100)} % of the way ${c.runs === 'upright' ? 'from the left' : 'up'}`;

function outsideDimensions({ width_mm: W, height_mm: H, units }: FrontView, { left, bottom, scale }: Placing): Drawing {
  const right = left + W * scale;
  const top = bottom - H * scale;
  return together(
    levelDimension({
      from: left,
      to: right,
      y: bottom + dimensionGap.first,
      edge: bottom,
      text: formatLength(W, units),
    }),
    uprightDimension({
      from: top,
      to: bottom,
      x: left - dimensionGap.first,
      edge: left,
      text: formatLength(H, units),
      alwaysUpright: true,
    }),
  );
}

function crossbarDimensions(view: FrontView, { left, bottom, scale, at }: Placing): Drawing {
  const { width_mm: W, height_mm: H, units } = view;
  const top = bottom - H * scale;
  const right = left + W * scale;
  const uprights = view.crossbars
    .filter((c) => c.runs === 'upright')
    .map((c) => crossbarCentre(view, c))
    .sort((a, b) => a - b);
  const levels = view.crossbars
    .filter((c) => c.runs === 'level')
    .map((c) => crossbarCentre(view, c))
    .sort((a, b) => a - b);
  const first = view.braces[0];
  return together(
    ...uprights.slice(0, 3).map((m, i) =>
      levelDimension({
        from: left,
        to: at(m, 0).x,
        y: top - 16 - dimensionGap.next * i,
        edge: top,
        text: formatLength(m, units),
      }),
    ),
    ...levels.slice(0, 3).map((m, i) =>
      uprightDimension({
        from: at(0, m).y,
        to: bottom,
        x: right + 16 + dimensionGap.next * i,
        edge: right,
        text: formatLength(m, units),
        alwaysUpright: true,
      }),
    ),
    drawing({ marks: view.crossbars.map((c) => centreLine(view, c, at)) }),
    first === undefined ? drawing({}) : legDimension(view, first, { left, bottom, top, right, at }),
  );
}

function centreLine(view: FrontView, c: FrontView['crossbars'][number], at: Placing['at']): Element {
  const m = crossbarCentre(view, c);
  const points = c.runs === 'upright' ? [at(m, 0), at(m, view.height_mm)] : [at(0, m), at(view.width_mm, m)];
  return line(points, { width: weight.dimension, dashes: 'centre', colour: softInk });
}

/**
 * One leg stands for all: a timber brace's along the centre line of the bottom bar from its right-hand corner, a
 * plate's from the outer corner.
 */
function legDimension(
  view: FrontView,
  { kind, leg_mm }: FrontView['braces'][number],
  { bottom, at }: { left: number; bottom: number; top: number; right: number; at: Placing['at'] },
): Drawing {
  const corner = view.width_mm - (kind === 'timber' ? view.bar_w_mm.right / 2 : 0);
  const y = bottom + dimensionGap.first + dimensionGap.next;
  return levelDimension({
    from: at(corner - leg_mm, 0).x,
    to: at(corner, 0).x,
    y,
    edge: bottom - 4,
    text: `leg ${formatLength(leg_mm, view.units)}`,
  });
}

/** `C1`, as in the cut list. */
const shortName = (name: string): string => name.replace(/^crossbar-/u, 'C');

function names(view: FrontView, { at, left }: Placing): Drawing {
  const { width_mm: W, height_mm: H, bar_w_mm: w } = view;
  const beside = (p: Point, dx: number, dy: number): Point => ({ x: p.x + dx, y: p.y + dy });
  const middle = 'middle' as const;
  const along = [0.5, 0.3, 0.7, 0.18, 0.82, 0.4, 0.6, 0.24, 0.76, 0.12, 0.88];
  const spots = (place: (t: number) => Point, anchor: Spot['anchor']): readonly [Spot, ...Spot[]] =>
    along.map((t) => ({ ...place(t), anchor })) as unknown as [Spot, ...Spot[]];
  const bothSides = (one: readonly [Spot, ...Spot[]], other: readonly Spot[]): readonly [Spot, ...Spot[]] => [
    ...one,
    ...other,
  ];
  const size = textSize.small;
  const outside = (y_mm: number): Spot => ({ x: left - dimensionGap.first - 6, y: at(0, y_mm).y, anchor: 'end' });
  return drawing({
    labels: [
      {
        text: 'top',
        size,
        spots: [...spots((t) => beside(at(W * t, H - w.top), 0, 9), middle), outside(H - w.top / 2)],
      },
      {
        text: 'bottom',
        size,
        spots: [...spots((t) => beside(at(W * t, w.bottom), 0, -9), middle), outside(w.bottom / 2)],
      },
      { text: 'left', size, upright: true, spots: spots((t) => beside(at(w.left, H * t), 9, 0), middle) },
      { text: 'right', size, upright: true, spots: spots((t) => beside(at(W - w.right, H * t), -9, 0), middle) },
      ...view.crossbars.map((c) => {
        const m = crossbarCentre(view, c);
        return c.runs === 'upright'
          ? {
              text: shortName(c.name),
              size,
              spots: bothSides(
                spots((t) => beside(at(m + c.w_mm / 2, H * t), 5, 0), 'start'),
                spots((t) => beside(at(m - c.w_mm / 2, H * t), -5, 0), 'end'),
              ),
            }
          : {
              text: shortName(c.name),
              size,
              spots: bothSides(
                spots((t) => beside(at(W * (0.9 - t * 0.8), m + c.w_mm / 2), 0, -9), middle),
                spots((t) => beside(at(W * (0.9 - t * 0.8), m - c.w_mm / 2), 0, 9), middle),
              ),
            };
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
