import type { Element } from 'xast';
import { isRead } from '../pile/pile.js';
import type { Place } from '../place/result.js';
import { textSize, weight } from '../report/drawings/drawing-standard.js';
import { overlap, textWidth, type Box } from '../report/drawings/labels.js';
import { drawing, type Drawing } from '../report/drawings/picture.js';
import { arrow, outline } from '../report/drawings/strokes.js';
import type { Point } from '../report/drawings/svg.js';
import { markOf } from './chalk.js';
import { chalkBehind, faceWords } from './lie-words.js';

/** A strip to be chalked: from its left or lower end to the other. */
export interface ChalkedStrip {
  readonly slot: Place['slot'];
  readonly place: Place | null;
  readonly from: Point;
  readonly to: Point;
}

/** What is drawn on a strip, and the box it takes. */
interface Chalk {
  readonly drawn: Drawing;
  readonly box: Box;
}

/**
 * Kept free at the end the arrow points to and at the other, between ring and words, and the height of both, in sheet
 * units.
 */
const arrow_end = 36;
const bare_end = 4;
const between = 6;
const high = 20;

/** The chalk of all strips: each with the longest words that fit, clear of those before it. */
export function chalkStrips(strips: readonly ChalkedStrip[]): readonly Drawing[] {
  const taken: Box[] = [];
  return strips.map((strip) => {
    const { drawn, box } = chalkOne(strip, taken);
    taken.push(box);
    return drawn;
  });
}

function chalkOne(strip: ChalkedStrip, taken: readonly Box[]): Chalk {
  const tries = formsOf(strip.place).flatMap((words) => offsetsOf(strip, words).map((off) => ({ words, off })));
  const touches = ({ box }: Chalk): number => taken.reduce((sum, other) => sum + overlap(box, other), 0);
  const all = tries.map(({ words, off }) => draw(strip, words, off));
  return (
    all.find((one) => touches(one) === 0) ??
    all.reduce(
      (best, one) => (touches(one) < touches(best) ? one : best),
      draw(strip, formsOf(strip.place).at(-1) ?? '', 0),
    )
  );
}

/** What may stand beside the ring, the fullest first. */
function formsOf(place: Place | null): readonly string[] {
  if (place === null) return ['buy'];
  const mark = markOf(place.board);
  return isRead(place.board)
    ? [`board ${mark}, face ${faceWords(place)}`, `${mark}, ${faceWords(place)}`, mark]
    : [`board ${mark}, any way round`, `${mark}, any way`, mark];
}

const ringLength = ({ slot }: ChalkedStrip): number => Math.max(18, textWidth(slot.tag, textSize.small) * 1.07 + 8);
const groupLength = (strip: ChalkedStrip, words: string): number =>
  ringLength(strip) + between + textWidth(words, textSize.small);
const hasArrow = ({ place }: ChalkedStrip): boolean => place !== null && isRead(place.board);

/** How far from the middle of its strip, in reading direction, ring and words may stand; none where they do not fit. */
function offsetsOf(strip: ChalkedStrip, words: string): readonly number[] {
  const half = (Math.hypot(strip.to.x - strip.from.x, strip.to.y - strip.from.y) - groupLength(strip, words)) / 2;
  const [first, last] = !hasArrow(strip)
    ? [bare_end, bare_end]
    : strip.place?.lie.end === 'marked-first'
      ? [arrow_end, bare_end]
      : [bare_end, arrow_end];
  const [low, most] = [first - half, half - last];
  if (low > most) return [];
  return [Math.min(most, Math.max(low, 0)), ...[0, 1, 0.25, 0.75].map((share) => low + share * (most - low))];
}

function draw(strip: ChalkedStrip, words: string, off: number): Chalk {
  const { slot, place, from, to } = strip;
  const upright = slot.piece.runs === 'upright';
  const behind = hasArrow(strip) && place !== null && chalkBehind(place);
  const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
  const along = (d: number): Point => (upright ? { x: middle.x, y: middle.y - d } : { x: middle.x + d, y: middle.y });
  const [ring, whole] = [ringLength(strip), groupLength(strip, words)];
  const [centre, name, rest] = [along(off), along(off - (whole - ring) / 2), along(off + (ring + between) / 2)];
  const drawn = drawing({
    marks: [
      outline(capsule(name, ring, upright), { width: weight.edge, ...(behind ? { dashes: 'hidden' as const } : {}) }),
      ...(hasArrow(strip) && place !== null ? pointer(place, from, to) : []),
    ],
    labels: [
      { text: slot.tag, size: textSize.small, heavy: true, upright, spots: [{ ...name, anchor: 'middle' }] },
      { text: words, size: textSize.small, upright, spots: [{ ...rest, anchor: 'middle' }] },
    ],
  });
  const [wide, tall] = upright ? [high, whole] : [whole, high];
  return { drawn, box: { x: centre.x - wide / 2, y: centre.y - tall / 2, width: wide, height: tall } };
}

/** A ring round a name of any length: a circle drawn out along the strip. */
function capsule({ x, y }: Point, long: number, upright: boolean): readonly Point[] {
  const r = 9;
  const points = Array.from({ length: 32 }, (_, i): Point => {
    const angle = (2 * Math.PI * (i + 0.5)) / 32;
    return { x: Math.cos(angle) * r + Math.sign(Math.cos(angle)) * (long / 2 - r), y: Math.sin(angle) * r };
  });
  return points.map((p) => (upright ? { x: x + p.y, y: y - p.x } : { x: x + p.x, y: y + p.y }));
}

/** An arrow near the end that the board's marked end points to. */
function pointer(place: Place, from: Point, to: Point): readonly Element[] {
  const [tip, tail] = place.lie.end === 'marked-first' ? [from, to] : [to, from];
  const length = Math.hypot(tail.x - tip.x, tail.y - tip.y);
  const along = (d: number): Point => ({
    x: tip.x + ((tail.x - tip.x) * d) / length,
    y: tip.y + ((tail.y - tip.y) * d) / length,
  });
  return arrow(along(Math.min(30, length * 0.2)), along(3), weight.edge, chalkBehind(place));
}
