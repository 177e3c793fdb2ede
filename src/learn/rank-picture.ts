import { ink, sheetWidth, softInk, textSize, weight, woodFill } from '../report/drawings/drawing-standard.js';
import { headingSize, type Label } from '../report/drawings/labels.js';
import { drawing, finishPicture, type Picture } from '../report/drawings/picture.js';
import { line, outline, rectangle } from '../report/drawings/strokes.js';
import { luckBand } from './chances.js';

const classes = 10;
const plot = { left: 40, right: sheetWidth - 16, top: 80, base: 236 } as const;

/** How much of a rank that rounding leaves open lies in a class. */
function shareIn([from, to]: readonly [number, number], low: number, high: number): number {
  if (to - from < 1e-9) return (from >= low && from < high) || (from >= 1 && high >= 1) ? 1 : 0;
  return Math.max(0, Math.min(to, high) - Math.max(from, low)) / (to - from);
}

/** Whole numbers beside these shares that add up to all of them: the largest remainders go up. */
function wholes(shares: readonly number[], all: number): readonly number[] {
  const down = shares.map((share) => Math.floor(share + 1e-9));
  const missing = all - down.reduce((sum, count) => sum + count, 0);
  const up = shares
    .map((share, i) => ({ i, rest: share - down[i]! }))
    .sort((a, b) => b.rest - a.rest || a.i - b.i)
    .slice(0, missing);
  return down.map((count, i) => count + (up.some((one) => one.i === i) ? 1 : 0));
}

/**
 * How the readings spread over ten equal parts of what was promised, with the band in which luck keeps all ten in
 * nineteen of twenty folders; null without readings.
 */
export function rankPicture(ranks: readonly (readonly [number, number])[]): Picture | null {
  const n = ranks.length;
  if (n === 0) return null;
  const counts = wholes(
    Array.from({ length: classes }, (_, i) =>
      ranks.reduce((sum, rank) => sum + shareIn(rank, i / classes, (i + 1) / classes), 0),
    ),
    n,
  );
  const [low, high] = luckBand(n, 1 / classes, 1 - 0.05 / classes);
  const most = Math.max(high, ...counts) * 1.08;
  const step = (plot.right - plot.left) / classes;
  const y = (count: number): number => plot.base - ((plot.base - plot.top) * count) / most;
  const outside = counts.filter((count) => count < low || count > high).length;
  const across = (count: number): readonly { x: number; y: number }[] => [
    { x: plot.left, y: y(count) },
    { x: plot.right, y: y(count) },
  ];
  const words =
    outside === 0
      ? 'Every part lies in the band of luck.'
      : `${outside} of the ten parts ${outside === 1 ? 'lies' : 'lie'} outside the band of luck.`;
  const heading = `${n} readings: where each fell in what was promised`;
  const content = drawing({
    marks: [
      ...counts.map((count, i) =>
        outline(rectangle(plot.left + i * step + 3, y(count), step - 6, plot.base - y(count)), {
          width: weight.thin,
          fill: count < low || count > high ? softInk : woodFill,
        }),
      ),
      line(across(low), { width: weight.edge, dashes: 'hidden', colour: ink }),
      line(across(high), { width: weight.edge, dashes: 'hidden', colour: ink }),
      line(
        [
          { x: plot.left, y: plot.base },
          { x: plot.right, y: plot.base },
        ],
        { width: weight.edge },
      ),
    ],
    labels: [
      {
        text: heading,
        size: headingSize(heading),
        heavy: true,
        spots: [{ x: sheetWidth / 2, y: 18, anchor: 'middle' }],
      },
      ...['between the dashed lines:', 'what luck allows an honest promise'].map((text, i) => ({
        text,
        size: textSize.small,
        spots: [{ x: sheetWidth / 2, y: 38 + 15 * i, anchor: 'middle' as const }] as const,
      })),
      ...counts.map((count, i) => ({
        text: String(count),
        size: textSize.small,
        spots: [plot.base - 9, y(count) + 10, y(count) - 9, y(low) - 9].map((at) => ({
          x: plot.left + (i + 0.5) * step,
          y: at,
          anchor: 'middle' as const,
        })) as unknown as Label['spots'],
      })),
      { text: String(low), size: textSize.small, spots: [{ x: plot.left - 6, y: y(low), anchor: 'end' }] },
      { text: String(high), size: textSize.small, spots: [{ x: plot.left - 6, y: y(high), anchor: 'end' }] },
      {
        text: '← smallest promised',
        size: textSize.small,
        spots: [{ x: plot.left, y: plot.base + 16, anchor: 'start' }],
      },
      { text: 'largest →', size: textSize.small, spots: [{ x: plot.right, y: plot.base + 16, anchor: 'end' }] },
    ],
    obstacles: [0, low, high].map((count) => ({
      x: plot.left,
      y: y(count) - 1,
      width: plot.right - plot.left,
      height: 2,
    })),
  });
  const alt = `Ten columns, one for each tenth of what was promised, with how many readings fell there: ${counts.join(', ')}. Luck allows ${low} to ${high} in each. ${words}`;
  return finishPicture(
    { name: 'learn-ranks.svg', title: 'Where the readings fell in what was promised', alt },
    plot.base + 32,
    content,
  );
}
