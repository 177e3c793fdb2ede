import { isRead } from '../pile/pile.js';
import type { PlacedFrame } from '../place/result.js';
import { broken, caption, lineStep } from '../report/drawings/caption.js';
import { sheetWidth, softInk, weight, woodFill, darkerFill } from '../report/drawings/drawing-standard.js';
import { drawing, finishPicture, together, type Picture } from '../report/drawings/picture.js';
import { outline, rectangle } from '../report/drawings/strokes.js';
import type { Point } from '../report/drawings/svg.js';
import { markOf } from './chalk.js';
import { chalkBehind, lieWords, partWords, pliesOf, ringed } from './lie-words.js';
import { chalkStrips, type ChalkedStrip } from './strip-chalk.js';

/** Width of a ply's strip, of the whole drawing, and what is left round it, in sheet units. */
const strip = 30;
const side = 16;
const tallest = 300;
/** The shortest an upright strip is drawn, so that its chalk can be read. */
const shortest = 150;

/** One strip of the drawing: a ply of a bar or crossbar, from its left or lower end. */
interface Strip extends ChalkedStrip {
  readonly shape: readonly Point[];
  readonly fill: string;
}

/**
 * The frame seen from the front with the chalk on every piece: which board, which way its marked face looks, an arrow
 * to its marked end. Drawn wide so that it can be read.
 */
export function framePicture(frame: PlacedFrame, name: string): Picture {
  const strips = stripsOf(frame);
  const bottom = Math.max(...strips.flatMap(({ shape }) => shape.map(({ y }) => y)));
  const behind = strips.some(({ place }) => place !== null && isRead(place.board) && chalkBehind(place));
  const foot = broken([
    'Seen from the front. Not to scale: the bars are drawn wide.',
    'In the ring its name; the arrow points to the marked end.',
    ...(behind ? ['Dashed: chalked on the back, as if seen through the wood.'] : []),
  ]);
  const content = together(
    drawing({ marks: strips.map(({ shape, fill }) => outline(shape, { width: weight.thin, fill, colour: softInk })) }),
    ...chalkStrips(strips),
    caption(foot, bottom + 16),
  );
  return finishPicture(
    { name, title: 'Which board goes where', alt: describe(frame, strips) },
    bottom + 12 + lineStep * foot.length,
    content,
  );
}

function stripsOf({ plan, places, missing }: PlacedFrame): readonly Strip[] {
  const { plies } = plan.bars;
  const all = [
    ...places.map((place) => ({ slot: place.slot, place })),
    ...missing.map((slot) => ({ slot, place: null })),
  ];
  const wide = sheetWidth - 2 * side;
  const high = Math.max(
    2 * plies * strip + shortest,
    Math.min(tallest, (wide * plan.face.height_mm) / plan.face.width_mm),
  );
  const box = { left: side, right: side + wide, top: 14, bottom: 14 + high };
  const inner = {
    left: box.left + plies * strip,
    right: box.right - plies * strip,
    top: box.top + plies * strip,
    bottom: box.bottom - plies * strip,
  };
  const crossStrips = all
    .filter(({ slot }) => slot.piece.part === 'crossbar')
    .map((one) => crossStrip(one, plan, inner));
  const barStrips = all.filter(({ slot }) => slot.piece.part === 'bar').map((one) => barStrip(one, box));
  return [...crossStrips, ...barStrips];
}

interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

function barStrip({ slot, place }: Pick<Strip, 'slot' | 'place'>, box: Box): Strip {
  const a = (slot.piece.ply - 1) * strip;
  const b = a + strip;
  const m = a + strip / 2;
  const [out, into] = [a, b].map(
    (d) =>
      [
        { x: box.left + d, y: box.bottom - d },
        { x: box.right - d, y: box.bottom - d },
        { x: box.right - d, y: box.top + d },
        { x: box.left + d, y: box.top + d },
      ] as const,
  ) as unknown as [readonly [Point, Point, Point, Point], readonly [Point, Point, Point, Point]];
  const of = (i: 0 | 1 | 2 | 3, k: 0 | 1 | 2 | 3): readonly Point[] => [out[i], out[k], into[k], into[i]];
  const level = (y: number): Pick<Strip, 'from' | 'to'> => ({
    from: { x: box.left + b, y },
    to: { x: box.right - b, y },
  });
  const upright = (x: number): Pick<Strip, 'from' | 'to'> => ({
    from: { x, y: box.bottom - b },
    to: { x, y: box.top + b },
  });
  const shared = { slot, place, fill: woodFill };
  switch (slot.piece.about) {
    case 'top':
      return { ...shared, shape: of(3, 2), ...level(box.top + m) };
    case 'bottom':
      return { ...shared, shape: of(0, 1), ...level(box.bottom - m) };
    case 'left':
      return { ...shared, shape: of(0, 3), ...upright(box.left + m) };
    default:
      return { ...shared, shape: of(1, 2), ...upright(box.right - m) };
  }
}

function crossStrip({ slot, place }: Pick<Strip, 'slot' | 'place'>, plan: PlacedFrame['plan'], inner: Box): Strip {
  const crossbar = plan.crossbars[Number(slot.piece.about.replace('crossbar-', '')) - 1];
  const at = crossbar?.at ?? 0.5;
  const shift = (slot.piece.ply - 1 - ((crossbar?.plies ?? 1) - 1) / 2) * strip;
  const shared = { slot, place, fill: darkerFill };
  if (slot.piece.runs === 'upright') {
    const x = inner.left + at * (inner.right - inner.left) + shift;
    return {
      ...shared,
      shape: rectangle(x - strip / 2, inner.top, strip, inner.bottom - inner.top),
      from: { x, y: inner.bottom },
      to: { x, y: inner.top },
    };
  }
  const y = inner.bottom - at * (inner.bottom - inner.top) + shift;
  return {
    ...shared,
    shape: rectangle(inner.left, y - strip / 2, inner.right - inner.left, strip),
    from: { x: inner.left, y },
    to: { x: inner.right, y },
  };
}

function describe(frame: PlacedFrame, strips: readonly Strip[]): string {
  const each = strips.map(({ place, slot }) => {
    const part = `${partWords({ slot, plies: pliesOf(frame, slot) })} ${ringed(slot.tag)}`;
    return place === null ? `${part}: to be bought` : `${part}: board ${markOf(place.board)}, ${lieWords(place)}`;
  });
  return `The frame from the front with the board of every piece. ${each.join('; ')}.`;
}
