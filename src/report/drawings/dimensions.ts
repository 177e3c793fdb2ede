import { ink, textSize, weight } from './drawing-standard.js';
import { textWidth, type Spot } from './labels.js';
import { drawing, type Drawing } from './picture.js';
import { line } from './strokes.js';

const tick = 4;
const reach = 4;
/** From a dimension line to the middle of the figure on it, clear of the ticks at its ends. */
const off = textSize.small * 0.575 + 2;

/** A level dimension: between two upright edges, drawn at height `y`. */
export interface LevelDimension {
  readonly from: number;
  readonly to: number;
  /** Height of the dimension line. */
  readonly y: number;
  /** Height of the edge it speaks of, where the thin lines start. */
  readonly edge: number;
  readonly text: string;
}

/** A level dimension line with slanted ticks and its figure above the line, or beside it where the gap is too small. */
export function levelDimension({ from, to, y, edge, text }: LevelDimension): Drawing {
  const [a, b] = from <= to ? [from, to] : [to, from];
  const away = y > edge ? 1 : -1;
  const fits = textWidth(text, textSize.small) < b - a - 6;
  const above: Spot = { x: (a + b) / 2, y: y - off, anchor: 'middle' };
  const right: Spot = { x: b + 9, y, anchor: 'start' };
  const left: Spot = { x: a - 9, y, anchor: 'end' };
  const below: Spot = { x: (a + b) / 2, y: y + off, anchor: 'middle' };
  const overhang = fits ? 0 : 5;
  return drawing({
    marks: [
      line(
        [
          { x: a, y: edge + away * 3 },
          { x: a, y: y + away * reach },
        ],
        { width: weight.dimension },
      ),
      line(
        [
          { x: b, y: edge + away * 3 },
          { x: b, y: y + away * reach },
        ],
        { width: weight.dimension },
      ),
      line(
        [
          { x: a - overhang, y },
          { x: b + overhang, y },
        ],
        { width: weight.dimension },
      ),
      ...[a, b].map((x) =>
        line(
          [
            { x: x - tick, y: y + tick },
            { x: x + tick, y: y - tick },
          ],
          { width: weight.edge, colour: ink },
        ),
      ),
    ],
    labels: [{ text, size: textSize.small, spots: fits ? [above, below, right, left] : [right, left, above, below] }],
    obstacles: [
      { x: a, y: y - 1, width: b - a, height: 2 },
      ...[a, b].map((x) => ({
        x: x - 0.5,
        y: Math.min(edge + away * 3, y),
        width: 1,
        height: Math.abs(y - edge - away * 3),
      })),
    ],
  });
}

/** An upright dimension: between two level edges, drawn at `x`. */
export interface UprightDimension {
  readonly from: number;
  readonly to: number;
  readonly x: number;
  readonly edge: number;
  readonly text: string;
  /** The figure reads upwards even where it is longer than the dimension: for lines side by side. */
  readonly alwaysUpright?: boolean;
}

/**
 * An upright dimension line; its figure reads upwards, on the left of the line, or level at its end where the gap is
 * too small.
 */
export function uprightDimension({ from, to, x, edge, text, alwaysUpright = false }: UprightDimension): Drawing {
  const [a, b] = from <= to ? [from, to] : [to, from];
  const away = x > edge ? 1 : -1;
  const middle = (a + b) / 2;
  const long = textWidth(text, textSize.small);
  const fits = long < b - a - 6;
  const marks = [
    line(
      [
        { x: edge + away * 3, y: a },
        { x: x + away * reach, y: a },
      ],
      { width: weight.dimension },
    ),
    line(
      [
        { x: edge + away * 3, y: b },
        { x: x + away * reach, y: b },
      ],
      { width: weight.dimension },
    ),
    line(
      [
        { x, y: a - (fits ? 0 : 5) },
        { x, y: b + (fits ? 0 : 5) },
      ],
      { width: weight.dimension },
    ),
    ...[a, b].map((y) =>
      line(
        [
          { x: x - tick, y: y + tick },
          { x: x + tick, y: y - tick },
        ],
        { width: weight.edge, colour: ink },
      ),
    ),
  ];
  const left: Spot = { x: x - off, y: middle, anchor: 'middle' };
  const right: Spot = { x: x + off, y: middle, anchor: 'middle' };
  const obstacles = [
    { x: x - 1, y: a, width: 2, height: b - a },
    ...[a, b].map((y) => ({
      x: Math.min(edge + away * 3, x),
      y: y - 0.5,
      width: Math.abs(x - edge - away * 3),
      height: 1,
    })),
  ];
  if (fits || alwaysUpright) {
    const apart = (dy: number): readonly Spot[] => [left, right].map((spot) => ({ ...spot, y: spot.y + dy }));
    return drawing({
      marks,
      obstacles,
      labels: [
        { text, size: textSize.small, upright: true, spots: [left, right, ...apart(-long / 2), ...apart(long / 2)] },
      ],
    });
  }
  const beside: Spot = away > 0 ? { x: x + 8, y: middle, anchor: 'start' } : { x: x - 8, y: middle, anchor: 'end' };
  const aligned = (y: number): readonly Spot[] => [
    { x: x - away * 8, y, anchor: away > 0 ? 'start' : 'end' },
    { x, y, anchor: 'middle' },
  ];
  return drawing({
    marks,
    obstacles,
    labels: [{ text, size: textSize.small, spots: [beside, ...aligned(a - 13), ...aligned(b + 14)] }],
  });
}
