import type { Element } from 'xast';
import { broken, caption, lineStep } from './caption.js';
import { darkerFill, paperFill, weight, woodFill } from './drawing-standard.js';
import { drawing, finishPicture, together, type Drawing, type Picture } from './picture.js';
import { arrow, line, outline } from './strokes.js';
import type { Point } from './svg.js';

/** Side of the square that shows one stage, and the width of a bar in it, in sheet units: a sketch, not to scale. */
const side = 84;
const bar = 26;
const gap = 24;
const left = 28;
const top = 46;
const over = 16;

/** A corner of the cloth folded in three stages, seen from the back: the same for every frame, so it knows no sizes. */
export function foldedCorner(fixed_to: 'back' | 'edge'): Picture {
  const stages = [first, second, third].map((stage, i) => stage({ x: left + i * (side + gap), y: top }));
  const words = broken([
    '1 Draw the tip of the cloth in over the corner; one staple.',
    '2 Fold one side in flat: its pleat lies under it, along the edge.',
    `3 Fold the other side over it, square to the corner; staple on the ${fixed_to === 'back' ? 'back' : 'edge, at the end of the pleat'}.`,
    'From the back, not to scale. Darker: what is folded last.',
  ]);
  const below = top + side + over + 22;
  const content = together(...stages, caption(words, below));
  return finishPicture(
    { name: 'folded-corner.svg', title: 'How a corner of the cloth is folded', alt: describe(fixed_to) },
    below + lineStep * words.length,
    content,
  );
}

const describe = (fixed_to: 'back' | 'edge'): string =>
  `A corner from the back in three stages: the tip of the cloth is drawn in over the corner and held by one staple; one side is folded in flat with its pleat under it; the other side is folded over it, square to the corner, and stapled on the ${fixed_to}.`;

type At = Point;
const p = (o: At, x: number, y: number): Point => ({ x: o.x + x, y: o.y + y });

/** The corner of the frame: two bars that go on to the right and down. */
function frame(o: At): readonly Element[] {
  return [
    outline([p(o, 0, 0), p(o, side, 0), p(o, side, bar), p(o, bar, bar), p(o, bar, side), p(o, 0, side)], {
      fill: woodFill,
      width: weight.thin,
    }),
    line([p(o, 0, 0), p(o, bar, bar)], { width: weight.thin }),
  ];
}

const number = (o: At, n: number): Drawing =>
  drawing({ labels: [{ text: String(n), heavy: true, spots: [{ ...p(o, side / 2, -32), anchor: 'middle' }] }] });
const staple = (o: At, x: number, y: number, slant = 0): Element =>
  line([p(o, x - 4, y + slant), p(o, x + 4, y - slant)], { width: weight.bold });

/** The tip over the corner. */
function first(o: At): Drawing {
  return together(
    number(o, 1),
    drawing({
      marks: [
        ...frame(o),
        line([p(o, -over, side), p(o, -over, over + 6), p(o, over + 6, -over), p(o, side, -over)], {
          width: weight.edge,
        }),
        outline([p(o, -over, over + 6), p(o, over + 6, -over), p(o, over + 6, over + 6)], {
          fill: paperFill,
          width: weight.edge,
        }),
        staple(o, 14, 14, 3),
        ...arrow(p(o, -over, -over), p(o, 7, 7), weight.thin),
      ],
    }),
  );
}

/** The level side folded in, its pleat beneath. */
function second(o: At): Drawing {
  return together(
    number(o, 2),
    drawing({
      marks: [
        ...frame(o),
        line([p(o, -over, side), p(o, -over, 12)], { width: weight.edge }),
        outline([p(o, 0, 0), p(o, side, 0), p(o, side, bar - 6), p(o, bar - 6, bar - 6)], {
          fill: paperFill,
          width: weight.edge,
        }),
        line([p(o, 0, 0), p(o, -over, 12)], { width: weight.edge }),
        line([p(o, 3, 3), p(o, bar - 4, bar - 4)], { width: weight.thin, dashes: 'fold' }),
        staple(o, bar + 14, 10),
        staple(o, bar + 38, 10),
        ...arrow(p(o, side * 0.62, -over), p(o, side * 0.62, 8), weight.thin),
      ],
    }),
  );
}

/** The upright side folded over it. */
function third(o: At): Drawing {
  const flap = [p(o, 0, 0), p(o, bar - 6, bar - 6), p(o, bar - 6, side), p(o, 0, side)];
  return together(
    number(o, 3),
    drawing({
      marks: [
        ...frame(o),
        outline([p(o, 0, 0), p(o, side, 0), p(o, side, bar - 6), p(o, bar - 6, bar - 6)], {
          fill: paperFill,
          width: weight.edge,
        }),
        outline(flap, { fill: darkerFill, width: weight.edge }),
        staple(o, bar + 14, 10),
        staple(o, bar + 38, 10),
        line([p(o, 10, bar + 10), p(o, 10, bar + 18)], { width: weight.bold }),
        line([p(o, 10, bar + 34), p(o, 10, bar + 42)], { width: weight.bold }),
        staple(o, 12, 12, 3),
        ...arrow(p(o, -over, side * 0.62), p(o, 7, side * 0.62), weight.thin),
      ],
    }),
  );
}
