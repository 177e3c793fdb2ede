import type { Element } from 'hast';
import type { BarName } from '../../base/names.js';
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
/**
 * In an opening narrower than this on the sheet the numbers of opposite sides would meet: there the middles alone bear
 * one.
 */
const numbersNeed = 72;
const panel = { left: 60, top: 34, width: 240, height: 200 } as const;

/** Where the staples go and in which order: the first ones numbered, then outwards, the corners last. To scale. */
export function stapleOrder(picture: StapleOrderPicture): Picture {
  const { width_mm: W, height_mm: H, bar_w_mm: b, order } = picture;
  const scale = Math.min(panel.width / W, panel.height / H);
  const left = panel.left + (panel.width - W * scale) / 2;
  const top = panel.top;
  const w = Math.max(b * scale, 9);
  const [wide, high] = [W * scale, H * scale];
  const shown =
    Math.min(wide, high) - 2 * w < numbersNeed ? Math.min(4, order.length) : Math.min(numbered, order.length);
  const content = together(
    drawing({
      marks: [
        outline(rectangle(left, top, wide, high), { fill: woodFill }),
        outline(rectangle(left + w, top + w, wide - 2 * w, high - 2 * w), { fill: paperFill }),
        ...order.map((one) => staple(placeOf(one, left, top, wide, high, w), one.side)),
        ...outwards(left, top, wide, high, w),
      ],
      obstacles: [],
    }),
    numbers(order.slice(0, shown), left, top, wide, high, w),
    cornersLast(left, top, wide, high),
    drawing({
      labels: [
        `Seen from the back, to scale: ${order.length} staples.`,
        `The first ${shown} bear their number; then on in the same way.`,
        'Arrows: outwards to each hand.',
        'Rings: the corners, folded and fixed last.',
      ].map((text, i) => ({
        text,
        size: textSize.small,
        spots: [{ x: 12, y: top + high + 34 + 15 * i, anchor: 'start' as const }] as const,
      })),
    }),
  );
  return finishPicture(
    { name: 'staples.svg', title: 'The order of the staples', alt: describe(picture) },
    top + high + 34 + 15 * 4,
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

/** Numbers stand inside the opening, those of a side in two rows where they lie close. */
function numbers(
  order: StapleOrderPicture['order'],
  left: number,
  top: number,
  wide: number,
  high: number,
  w: number,
): Drawing {
  return drawing({
    labels: order.map((one, i) => {
      const p = placeOf(one, left, top, wide, high, w);
      const into = (far: number): Point =>
        ({
          top: { x: p.x, y: p.y + far },
          bottom: { x: p.x, y: p.y - far },
          left: { x: p.x - far, y: p.y },
          right: { x: p.x + far, y: p.y },
        })[one.side];
      const spots = [w / 2 + 8, w / 2 + 20, w / 2 + 32, w / 2 + 44].map((far) => ({
        ...into(far),
        anchor: 'middle' as const,
      }));
      return {
        text: String(i + 1),
        size: textSize.small,
        heavy: i < 4,
        spots: spots as unknown as Drawing['labels'][number]['spots'],
      };
    }),
  });
}

function outwards(left: number, top: number, wide: number, high: number, w: number): readonly Element[] {
  const [cx, cy] = [left + wide / 2, top + high / 2];
  const level = (y: number): readonly Element[] => [
    ...arrow({ x: cx - wide * 0.1, y }, { x: cx - wide * 0.36, y }, weight.thin),
    ...arrow({ x: cx + wide * 0.1, y }, { x: cx + wide * 0.36, y }, weight.thin),
  ];
  const upright = (x: number): readonly Element[] => [
    ...arrow({ x, y: cy - high * 0.1 }, { x, y: cy - high * 0.36 }, weight.thin),
    ...arrow({ x, y: cy + high * 0.1 }, { x, y: cy + high * 0.36 }, weight.thin),
  ];
  const off = 10;
  return w < 1
    ? []
    : [...level(top - off), ...level(top + high + off), ...upright(left - off), ...upright(left + wide + off)];
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
