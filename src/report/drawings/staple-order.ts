import type { Element } from 'xast';
import type { BarName } from '../../base/names.js';
import { broken, caption, lineStep } from './caption.js';
import { paperFill, softInk, textSize, weight, woodFill } from './drawing-standard.js';
import { drawing, finishPicture, together, type Drawing, type Picture } from './picture.js';
import { arrow, circle, line, outline, rectangle } from './strokes.js';
import type { Point } from './svg.js';

/**
 * The frame from the back with its staples in the order of fixing; mm. `at` along the side from its left or bottom end
 * as seen from the front, 0..1.
 */
export interface StapleOrderPicture {
  readonly width_mm: number;
  readonly height_mm: number;
  readonly bar_w_mm: number;
  readonly order: readonly { readonly side: BarName; readonly at: number; readonly round: number }[];
}

/** So many staples bear their number: the middles and the first to each hand, from which the rest follows. */
const numbered = 12;
/** From the edge of the frame to the numbers outside it, and from one number to the next where staples lie closer. */
const out = 20;
const apart = 18;
const panel = { left: 60, top: 44, width: 240, height: 200 } as const;

/** Where the staples go and in which order: the first ones numbered, then outwards, the corners last. To scale. */
export function stapleOrder(picture: StapleOrderPicture): Picture {
  const { width_mm: W, height_mm: H, bar_w_mm: b, order } = picture;
  const scale = Math.min(panel.width / W, panel.height / H);
  const left = panel.left + (panel.width - W * scale) / 2;
  const top = panel.top;
  const w = Math.max(b * scale, 9);
  const [wide, high] = [W * scale, H * scale];
  const shown = Math.min(numbered, order.length);
  const drawn = { left, top, wide, high, w };
  const all = shown === order.length;
  const lines = broken([
    `Seen from the back, to scale: ${order.length} staples.`,
    ...(all
      ? ['Each bears its number.']
      : [`The first ${shown} bear their number; then on in the same way.`, 'Arrows: outwards to each hand.']),
    'Rings: the corners, folded and fixed last.',
  ]);
  const below = top + high + out + 30;
  const content = together(
    drawing({
      marks: [
        outline(rectangle(left, top, wide, high), { fill: woodFill }),
        outline(rectangle(left + w, top + w, wide - 2 * w, high - 2 * w), { fill: paperFill }),
        ...order.map((one) => staple(placeOf(one, left, top, wide, high, w), one.side)),
        ...(all ? [] : outwards(drawn, order.slice(0, shown))),
      ],
      obstacles: [],
    }),
    numbers(order.slice(0, shown), drawn),
    cornersLast(left, top, wide, high),
    caption(lines, below),
  );
  return finishPicture(
    { name: 'staples.svg', title: 'The order of the staples', alt: describe(picture) },
    below + lineStep * lines.length,
    content,
  );
}

function describe({ order }: StapleOrderPicture): string {
  const first = [...new Set(order.map(({ side }) => side))];
  return `The frame from the back with ${order.length} staples in their order: first the middles of ${first.join(', ')}, then outwards to each hand, opposite sides in turn, the corners last.`;
}

/** From the back left and right change places. */
function placeOf(
  { side, at }: { readonly side: BarName; readonly at: number },
  left: number,
  top: number,
  wide: number,
  high: number,
  w: number,
): Point {
  switch (side) {
    case 'top':
      return { x: left + wide * (1 - at), y: top + w / 2 };
    case 'bottom':
      return { x: left + wide * (1 - at), y: top + high - w / 2 };
    case 'left':
      return { x: left + wide - w / 2, y: top + high * (1 - at) };
    case 'right':
      return { x: left + w / 2, y: top + high * (1 - at) };
  }
}

const levelSide = (side: BarName): boolean => side === 'top' || side === 'bottom';

/** A staple across the pull, along the bar. */
function staple({ x, y }: Point, side: BarName): Element {
  const half = 2.4;
  return line(
    levelSide(side)
      ? [
          { x: x - half, y },
          { x: x + half, y },
        ]
      : [
          { x, y: y - half },
          { x, y: y + half },
        ],
    { width: weight.edge },
  );
}

/** The frame on the sheet, and how wide its bars are drawn. */
interface Drawn {
  readonly left: number;
  readonly top: number;
  readonly wide: number;
  readonly high: number;
  readonly w: number;
}

/**
 * Numbers stand outside the frame in a row along each side, never closer than one can read them; a thin line leads from
 * each to its staple.
 */
function numbers(order: StapleOrderPicture['order'], drawn: Drawn): Drawing {
  const { left, top, wide, high, w } = drawn;
  const sides = (['top', 'bottom', 'left', 'right'] as const).map((side) => {
    const own = order
      .map((one, i) => ({ text: String(i + 1), heavy: i < 4, staple: placeOf(one, left, top, wide, high, w), one }))
      .filter(({ one }) => one.side === side);
    const along = (p: Point): number => (levelSide(side) ? p.x : p.y);
    const sorted = own.toSorted((a, b) => along(a.staple) - along(b.staple));
    const centre = sorted.reduce((sum, { staple: p }) => sum + along(p), 0) / Math.max(1, sorted.length);
    const natural = along(sorted.at(-1)?.staple ?? { x: 0, y: 0 }) - along(sorted[0]?.staple ?? { x: 0, y: 0 });
    const gap = Math.max(apart, sorted.length < 2 ? 0 : natural / (sorted.length - 1));
    return sorted.map(({ text, heavy, staple: p }, i) => {
      const at = centre + (i - (sorted.length - 1) / 2) * gap;
      const [name, foot] = {
        top: [
          { x: at, y: top - out },
          { x: at, y: top - out + 8 },
        ],
        bottom: [
          { x: at, y: top + high + out },
          { x: at, y: top + high + out - 8 },
        ],
        left: [
          { x: left + wide + out, y: at },
          { x: left + wide + out - 9, y: at },
        ],
        right: [
          { x: left - out, y: at },
          { x: left - out + 9, y: at },
        ],
      }[side] as [Point, Point];
      return drawing({
        marks: [line([p, foot], { width: weight.dimension, colour: softInk })],
        labels: [{ text, size: textSize.small, heavy, spots: [{ ...name, anchor: 'middle' }] }],
      });
    });
  });
  return together(...sides.flat());
}

/** From beyond the numbers of each side to its hands; none where the side is too short for it. */
function outwards({ left, top, wide, high }: Drawn, bearing: StapleOrderPicture['order']): readonly Element[] {
  const [cx, cy] = [left + wide / 2, top + high / 2];
  const off = 10;
  const pair = (side: BarName, long: number, at: (along: number) => Point): readonly Element[] => {
    const own = bearing.filter((one) => one.side === side).map((one) => Math.abs(one.at - 0.5) * long);
    const from = Math.max(long * 0.1, (own.length * apart) / 2 + 4, ...own.map((reach) => reach + 8));
    const to = long * 0.42;
    return to - from < 12 ? [] : [-1, 1].flatMap((hand) => arrow(at(hand * from), at(hand * to), weight.thin));
  };
  return [
    ...pair('top', wide, (d) => ({ x: cx + d, y: top - off })),
    ...pair('bottom', wide, (d) => ({ x: cx + d, y: top + high + off })),
    ...pair('right', high, (d) => ({ x: left - off, y: cy + d })),
    ...pair('left', high, (d) => ({ x: left + wide + off, y: cy + d })),
  ];
}

function cornersLast(left: number, top: number, wide: number, high: number): Drawing {
  const corners = [
    { x: left, y: top },
    { x: left + wide, y: top },
    { x: left, y: top + high },
    { x: left + wide, y: top + high },
  ];
  return drawing({ marks: corners.map((p) => circle(p, 9, { width: weight.thin, colour: softInk })) });
}
