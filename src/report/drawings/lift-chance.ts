import { capital } from '../../base/capital.js';
import type { UnitSystem } from '../../base/names.js';
import { formatLength } from '../../base/units-format.js';
import { chanceInWords } from '../../base/chance-words.js';
import { grownDensity, liftFrom, type LiftCurve } from '../../risk/lift-curve.js';
import { ink, sheetWidth, softInk, textSize, weight, paperFill } from './drawing-standard.js';
import { headingSize } from './labels.js';
import { drawing, finishPicture, together, type Drawing, type Picture } from './picture.js';
import { line, outline } from './strokes.js';
import type { Point } from './svg.js';

/**
 * How far a corner of frames built like this lifts: a normal spread at no pull, how it grows with the pull, and the
 * limit it is held against, mm.
 */
export interface LiftChance {
  readonly units: UnitSystem;
  readonly mean_mm: number;
  readonly sd_mm: number;
  /** Absent: it stays as it is. */
  readonly growth?: LiftCurve;
  readonly limit_mm: number;
  /** Nine in ten stay within this, either way; absent: not marked. */
  readonly p90_mm?: number;
  /** Chance of going past the limit, either way. */
  readonly chance: number;
}

const plot = { left: 24, right: sheetWidth - 24, top: 78, base: 204 } as const;
const pieces = 120;

/**
 * The spread of the corner lift as a hill with both limits marked and the part beyond them darkened; null when there is
 * no spread to show.
 */
export function liftChance(lift: LiftChance): Picture | null {
  const { units, mean_mm: mean, sd_mm: sd, limit_mm: limit } = lift;
  if (!(sd > 1e-6) || !(limit > 0) || ![mean, sd, limit].every(Number.isFinite)) return null;
  const { growth = { pull_share: 0, beta_per_mm2: 0 } } = lift;
  const reach = Math.max(1.25 * limit, liftFrom(growth, Math.abs(mean) + 3.2 * sd));
  const x = (mm: number): number => plot.left + ((mm + reach) / (2 * reach)) * (plot.right - plot.left);
  const density = (mm: number): number => grownDensity(growth, { mean, sd }, mm);
  const highest = Math.max(
    ...Array.from({ length: 8 * pieces + 1 }, (_, i) => density(reach * (i / (4 * pieces) - 1))),
    density(mean),
  );
  const y = (mm: number): number => plot.base - ((plot.base - plot.top) * density(mm)) / highest;
  const hill = (from: number, to: number): Point[] =>
    Array.from({ length: pieces + 1 }, (_, i) => from + ((to - from) * i) / pieces).map((mm) => ({
      x: x(mm),
      y: y(mm),
    }));
  const tail = (from: number, to: number): readonly Point[] => [
    { x: x(from), y: plot.base },
    ...hill(from, to),
    { x: x(to), y: plot.base },
  ];
  const said = liftSentence(lift.chance, formatLength(limit, units));
  const content = together(
    drawing({
      marks: [
        outline(tail(-reach, reach), { width: weight.thin, fill: paperFill }),
        ...[tail(-reach, -limit), tail(limit, reach)].map((points) =>
          outline(points, { width: weight.thin, fill: softInk }),
        ),
        line(hill(-reach, reach), { width: weight.edge }),
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
          text: said,
          heavy: true,
          size: headingSize(said),
          spots: [{ x: sheetWidth / 2, y: 18, anchor: 'middle' }],
        },
        {
          text: 'dark: frames past the limit',
          size: textSize.small,
          spots: [{ x: sheetWidth / 2, y: 38, anchor: 'middle' }],
        },
        {
          text: '← top right corner back',
          size: textSize.small,
          spots: [{ x: plot.left, y: plot.base + 48, anchor: 'start' }],
        },
        {
          text: 'top right corner forward →',
          size: textSize.small,
          spots: [{ x: plot.right, y: plot.base + 48, anchor: 'end' }],
        },
      ],
    }),
    ...(lift.p90_mm === undefined || !(lift.p90_mm < reach)
      ? []
      : [nineInTen(x(-lift.p90_mm), x(lift.p90_mm), formatLength(lift.p90_mm, units))]),
    scaleNumbers(reach, units, x),
    mark(x(-limit), 'end', formatLength(limit, units)),
    mark(x(limit), 'start', formatLength(limit, units)),
    drawing({
      marks: [
        line(
          [
            { x: x(0), y: plot.base },
            { x: x(0), y: plot.base + 6 },
          ],
          { width: weight.dimension },
        ),
      ],
      labels: [{ text: 'flat', size: textSize.small, spots: [{ x: x(0), y: plot.base + 31, anchor: 'middle' }] }],
    }),
  );
  const alt = `A hill showing how far one corner lifts over many frames built like this, with the limit of ${formatLength(limit, units)} marked on both sides. ${said}${lift.p90_mm === undefined ? '' : ` Nine in ten stay within ${formatLength(lift.p90_mm, units)}.`}`;
  return finishPicture({ name: 'lift-chance.svg', title: 'Chance of a lifted corner', alt }, plot.base + 64, content);
}

function mark(x: number, anchor: 'start' | 'end', limit: string): Drawing {
  const out = anchor === 'end' ? -1 : 1;
  const text = `limit ${limit}`;
  return drawing({
    marks: [
      line(
        [
          { x, y: plot.top - 8 },
          { x, y: plot.base + 6 },
        ],
        { width: weight.edge, dashes: 'hidden', colour: ink },
      ),
    ],
    labels: [
      {
        text,
        size: textSize.small,
        spots: [
          { x: x + out, y: plot.base + 16, anchor },
          { x, y: plot.base + 16, anchor: 'middle' },
        ],
      },
    ],
  });
}

/** Two short marks on the ground line, between which nine in ten frames fall, and a line of words that names them. */
function nineInTen(from: number, to: number, p90: string): Drawing {
  return drawing({
    marks: [from, to].map((x) =>
      line(
        [
          { x, y: plot.base - 9 },
          { x, y: plot.base + 6 },
        ],
        { width: weight.bold, colour: ink },
      ),
    ),
    labels: [
      {
        text: `short marks: nine in ten stay within ${p90}`,
        size: textSize.small,
        spots: [{ x: sheetWidth / 2, y: 54, anchor: 'middle' }],
      },
    ],
  });
}

const steps = {
  metric: [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000],
  inch: [1 / 16, 1 / 8, 1 / 4, 1 / 2, 1, 2, 4, 8, 16, 32].map((inches) => inches * 25.4),
} as const;

/** Round lengths along the ground line, at most three to each hand. */
function scaleNumbers(reach: number, units: UnitSystem, x: (mm: number) => number): Drawing {
  const step = steps[units].find((one) => reach / one < 4) ?? reach;
  const at = Array.from({ length: Math.floor(reach / step) }, (_, i) => (i + 1) * step)
    .filter((mm) => x(mm) < plot.right - 8)
    .flatMap((mm) => [-mm, mm]);
  return drawing({
    marks: at.map((mm) =>
      line(
        [
          { x: x(mm), y: plot.base },
          { x: x(mm), y: plot.base + 6 },
        ],
        { width: weight.dimension, colour: softInk },
      ),
    ),
    labels: at.map((mm) => ({
      text: formatLength(Math.abs(mm), units),
      size: textSize.small,
      spots: [{ x: x(mm), y: plot.base + 31, anchor: 'middle' as const }] as const,
    })),
  });
}

/** `About 1 in 6 lifts a corner by more than 6 mm.` */
export function liftSentence(chance: number, limit: string): string {
  const words = chanceInWords(chance);
  return `${capital(words)} ${/ 1 in /u.test(words) ? 'lifts' : 'lift'} a corner by more than ${limit}.`;
}
