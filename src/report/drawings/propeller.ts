import type { UnitSystem } from '../../base/names.js';
import { formatLength } from '../../base/units-format.js';
import { sheetWidth, softInk, textSize, weight } from './drawing-standard.js';
import type { Spot } from './labels.js';
import { drawing, finishPicture, together, type Drawing, type Picture } from './picture.js';
import { arrow, line } from './strokes.js';
import type { Point } from './svg.js';

/** A shape of the whole frame: centre lines with how far each point moves, in any unit; only the proportions count. */
export interface FrameMovement {
  readonly units: UnitSystem;
  readonly lines: readonly {
    readonly member: string;
    readonly points: readonly {
      readonly x: number;
      readonly y: number;
      readonly dx: number;
      readonly dy: number;
      readonly dz: number;
    }[];
  }[];
  /** What the shape is called in words, such as `propeller`. */
  readonly words: string;
}

/** Largest movement as a share of the longer side: the exaggeration. */
const shownShare = 0.16;
const slant = { x: 0.42, y: 0.4 } as const;

/** A round figure near a length, so that the scale can be said exactly. */
function roundFigure_mm(mm: number, units: UnitSystem): number {
  return units === 'metric' ? Number(mm.toPrecision(1)) : Math.max(0.5, Math.round((mm / 25.4) * 2) / 2) * 25.4;
}

type Movement = FrameMovement['lines'][number]['points'][number];

/**
 * The shape less the tilt of the whole frame, which is no bending: the plane through the four corners that fits best is
 * taken away.
 */
function withoutTilt(lines: FrameMovement['lines']): FrameMovement['lines'] {
  const points = lines.flatMap((l) => l.points);
  if (points.length === 0) return lines;
  const [x0, x1] = [Math.min(...points.map((p) => p.x)), Math.max(...points.map((p) => p.x))];
  const [y0, y1] = [Math.min(...points.map((p) => p.y)), Math.max(...points.map((p) => p.y))];
  if (!(x1 > x0 && y1 > y0)) return lines;
  const at = (x: number, y: number): number =>
    points.reduce((near, p) => (Math.hypot(p.x - x, p.y - y) < Math.hypot(near.x - x, near.y - y) ? p : near)).dz;
  const [bl, br, tl, tr] = [at(x0, y0), at(x1, y0), at(x0, y1), at(x1, y1)];
  const mean = (bl + br + tl + tr) / 4;
  const along_x = (br + tr - bl - tl) / 2 / (x1 - x0);
  const along_y = (tl + tr - bl - br) / 2 / (y1 - y0);
  const plane = (p: Movement): number => mean + along_x * (p.x - (x0 + x1) / 2) + along_y * (p.y - (y0 + y1) / 2);
  return lines.map(({ member, points: own }) => ({ member, points: own.map((p) => ({ ...p, dz: p.dz - plane(p) })) }));
}

/** A tall frame is laid down on its side, so that the picture stays low. */
function laidDown(lines: FrameMovement['lines']): FrameMovement['lines'] {
  const points = lines.flatMap((l) => l.points);
  const span = (of: (p: Movement) => number): number => Math.max(...points.map(of)) - Math.min(...points.map(of));
  if (points.length === 0 || span((p) => p.y) <= 1.2 * span((p) => p.x)) return lines;
  return lines.map(({ member, points: own }) => ({
    member,
    points: own.map((p) => ({ x: p.y, y: -p.x, dx: p.dy, dy: -p.dx, dz: p.dz })),
  }));
}

interface View {
  readonly flat: (x: number, y: number) => Point;
  readonly moved: (p: Movement) => Point;
  readonly largest_mm: number;
  readonly height: number;
}

/**
 * The frame lying on a table, front up, flat and as it would give way; null when the shape has no points or does not
 * move.
 */
export function propeller(given: FrameMovement): Picture | null {
  const level = withoutTilt(given.lines);
  const shape = { ...given, lines: laidDown(level) };
  const turned = shape.lines !== level;
  const view = viewOf(shape);
  if (view === null) return null;
  const flat = shape.lines.map(({ points }) =>
    line(
      points.map((p) => view.flat(p.x, p.y)),
      { width: weight.thin, dashes: 'hidden', colour: softInk },
    ),
  );
  const moved = shape.lines.map(({ points }) => line(points.map(view.moved), { width: weight.bold }));
  const { units, words } = shape;
  const size = `Exaggerated: the largest movement is drawn as ${formatLength(view.largest_mm, units)}.`;
  const staying = cornersOf(shape, turned).every(({ way }) => way === 'stays');
  const lines = [
    'Lying on a table, front up. Dashed: flat.',
    ...(staying ? [`The corners stay: ${words}.`] : []),
    size,
  ];
  const height = view.height + 16 * (lines.length - 2);
  const caption: Drawing = drawing({
    labels: lines.map((text, i) => ({
      text,
      size: textSize.small,
      spots: [{ x: 12, y: height - 14 - 16 * (lines.length - 1 - i), anchor: 'start' as const }] as const,
    })),
  });
  const alt = `The frame lying on a table as it would give way first: ${words}. ${size} The dashed lines show it flat.`;
  const obstacles = shape.lines.flatMap(({ points }) => along(points.map(view.moved)));
  return finishPicture(
    { name: 'propeller.svg', title: `How the frame gives way: ${words}`, alt },
    height,
    together(
      caption,
      drawing({ marks: [...flat, ...moved], obstacles }),
      ...(staying ? [] : [corners(shape, view, turned)]),
    ),
  );
}

/** Small boxes along a line, so that labels keep off it. */
function along(points: readonly Point[]): Drawing['obstacles'] {
  return points.slice(1).flatMap((to, i) => {
    const from = points[i] as Point;
    const n = Math.max(1, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / 4));
    return Array.from({ length: n + 1 }, (_, j) => ({
      x: from.x + ((to.x - from.x) * j) / n - 2,
      y: from.y + ((to.y - from.y) * j) / n - 2,
      width: 4,
      height: 4,
    }));
  });
}

function viewOf({ lines, units }: FrameMovement): View | null {
  const points = lines.flatMap((l) => l.points);
  const largest = Math.max(0, ...points.map((p) => Math.hypot(p.dx, p.dy, p.dz)));
  if (points.length === 0 || !(largest > 0)) return null;
  const [x0, x1] = [Math.min(...points.map((p) => p.x)), Math.max(...points.map((p) => p.x))];
  const [y0, y1] = [Math.min(...points.map((p) => p.y)), Math.max(...points.map((p) => p.y))];
  const W = x1 - x0;
  const H = y1 - y0;
  const shown = roundFigure_mm(shownShare * Math.max(W, H), units);
  const scale = Math.min((sheetWidth - 90) / (W + slant.x * H), 240 / (slant.y * H + 2 * shown));
  const left = (sheetWidth - (W + slant.x * H) * scale) / 2;
  const top = 40;
  const base = top + (slant.y * H + shown) * scale;
  const at = (x: number, y: number, z: number): Point => ({
    x: left + (x - x0 + slant.x * (y - y0)) * scale,
    y: base - (slant.y * (y - y0) + z) * scale,
  });
  const times = shown / largest;
  return {
    flat: (x, y) => at(x, y, 0),
    moved: (p) => at(p.x + times * p.dx, p.y + times * p.dy, times * p.dz),
    largest_mm: shown,
    height: base + shown * scale + 66,
  };
}

interface MovedCorner {
  readonly name: string;
  readonly point: Movement;
  readonly way: 'comes forward' | 'goes back' | 'stays';
  /** Where it lies on the sheet: 0 or 1 across and up. */
  readonly i: number;
  readonly j: number;
}

/** The four corners by name and which way each goes. */
function cornersOf({ lines }: FrameMovement, turned: boolean): readonly MovedCorner[] {
  const all = lines.flatMap((l) => l.points);
  const largest = Math.max(...all.map((p) => Math.hypot(p.dx, p.dy, p.dz)));
  const xs = [Math.min(...all.map((p) => p.x)), Math.max(...all.map((p) => p.x))] as const;
  const ys = [Math.min(...all.map((p) => p.y)), Math.max(...all.map((p) => p.y))] as const;
  const parts = turned
    ? ([
        [0, 1, 'bottom left'],
        [0, 0, 'bottom right'],
        [1, 1, 'top left'],
        [1, 0, 'top right'],
      ] as const)
    : ([
        [0, 0, 'bottom left'],
        [1, 0, 'bottom right'],
        [0, 1, 'top left'],
        [1, 1, 'top right'],
      ] as const);
  return parts.map(([i, j, name]) => {
    const point = all.reduce((near, q) =>
      Math.hypot(q.x - xs[i], q.y - ys[j]) < Math.hypot(near.x - xs[i], near.y - ys[j]) ? q : near,
    );
    return {
      name,
      point,
      i,
      j,
      way: !(Math.abs(point.dz) > 0.05 * largest) ? 'stays' : point.dz > 0 ? 'comes forward' : 'goes back',
    };
  });
}

/** At each corner an arrow from flat to moved and which way it goes. */
function corners(shape: FrameMovement, view: View, turned: boolean): Drawing {
  return together(
    ...cornersOf(shape, turned).map(({ name, point: p, way, i, j }) => {
      const from = view.flat(p.x, p.y);
      const to = view.moved(p);
      const out = j === 0 ? 1 : -1;
      const edge = out > 0 ? Math.max(from.y, to.y) : Math.min(from.y, to.y);
      const lead = i === 0 ? 'start' : 'end';
      const sideways = i === 0 ? -24 : 24;
      const spots = [14, 28, 42].flatMap((dy): readonly Spot[] => [
        { x: from.x + sideways, y: edge + out * dy, anchor: lead },
        { x: from.x, y: edge + out * dy, anchor: 'middle' },
        { x: from.x + sideways * 2, y: edge + out * dy, anchor: lead },
        { x: from.x, y: edge + out * dy, anchor: lead },
      ]);
      return drawing({
        marks: way === 'stays' ? [] : arrow(from, to, weight.thin),
        labels: [{ text: `${name} ${way}`, size: textSize.small, spots: spots as [Spot, ...Spot[]] }],
      });
    }),
  );
}
