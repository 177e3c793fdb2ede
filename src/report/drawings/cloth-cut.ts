import type { Element } from 'xast';
import type { UnitSystem } from '../../base/names.js';
import { formatLength } from '../../base/units-format.js';
import { levelDimension, uprightDimension } from './dimensions.js';
import { paperFill, softInk, textSize, weight } from './drawing-standard.js';
import { drawing, finishPicture, together, type Drawing, type Picture } from './picture.js';
import { scaleBar } from './scale-bar.js';
import { arrow, line, outline, rectangle } from './strokes.js';
import type { Point } from './svg.js';

/** The cut cloth and its lines; mm, each fold measured in from the cut edge, the same all round. */
export interface ClothCutPicture {
  readonly units: UnitSystem;
  readonly cut_width_mm: number;
  readonly cut_height_mm: number;
  readonly folds: readonly { readonly name: 'face' | 'back-edge' | 'staples'; readonly in_from_edge_mm: number }[];
  /** Which cut side the long threads run along. */
  readonly along: 'width' | 'height' | 'either';
}

const said = { face: 'front edge of the frame', 'back-edge': 'turns onto the back', staples: 'staples' } as const;

/** The cloth as cut, lying on its face, with the lines where it folds and where the staples go, to scale. */
export function clothCut(cloth: ClothCutPicture): Picture {
  const { units, cut_width_mm: W, cut_height_mm: H } = cloth;
  const scale = Math.min(150 / W, 170 / H);
  const left = 62;
  const top = 20;
  const right = left + W * scale;
  const bottom = top + H * scale;
  const tail = Math.max(bottom, top + 32 * cloth.folds.length + (cloth.along === 'either' ? 8 : 40));
  const content = together(
    drawing({
      marks: [
        outline(rectangle(left, top, W * scale, H * scale), { fill: paperFill }),
        ...cloth.folds.flatMap((fold) => foldLine(fold, cloth, left, top, scale)),
      ],
    }),
    threads(cloth, left, top, scale),
    legend(cloth, right, top),
    levelDimension({ from: left, to: right, y: bottom + 20, edge: bottom, text: formatLength(W, units) }),
    uprightDimension({
      from: top,
      to: bottom,
      x: left - 20,
      edge: left,
      text: formatLength(H, units),
      alwaysUpright: true,
    }),
    scaleBar({ x: 12, y: tail + 48, mm_to_sheet: scale, units, note: 'The cloth on its face, as cut' }),
  );
  return finishPicture(
    { name: 'cloth.svg', title: 'The cloth as cut, with its folds', alt: describe(cloth) },
    tail + 64,
    content,
  );
}

function describe({ units, cut_width_mm, cut_height_mm, folds, along }: ClothCutPicture): string {
  const lines = folds
    .map((f) => `${said[f.name]}, ${formatLength(f.in_from_edge_mm, units)} inside the cut edge`)
    .join('; ');
  return `Cloth cut ${formatLength(cut_width_mm, units)} wide and ${formatLength(cut_height_mm, units)} high, to scale; ${lines}; ${along === 'either' ? 'the long threads may run either way' : `the long threads run along the ${along}`}.`;
}

const looks = {
  face: { width: weight.bold },
  'back-edge': { width: weight.thin, dashes: 'fold' },
  staples: { width: weight.edge, dashes: 'hidden', colour: softInk },
} as const;

function foldLine(
  fold: ClothCutPicture['folds'][number],
  { cut_width_mm: W, cut_height_mm: H }: ClothCutPicture,
  left: number,
  top: number,
  scale: number,
) {
  const m = fold.in_from_edge_mm * scale;
  if (2 * m >= Math.min(W, H) * scale) return [];
  return [outline(rectangle(left + m, top + m, W * scale - 2 * m, H * scale - 2 * m), looks[fold.name])];
}

/** Each line explained beside the cloth, with how far in it lies; last the way of the threads. */
function legend({ folds, units, along }: ClothCutPicture, right: number, top: number): Drawing {
  const x = right + 16;
  const y = (i: number): number => top + 6 + 32 * i;
  const rows = [
    {
      text: 'cut edge',
      more: 'measured from here',
      marks: (at: number) => [
        line(
          [
            { x, y: at },
            { x: x + 22, y: at },
          ],
          { width: weight.edge },
        ),
      ],
    },
    ...folds.map((f) => ({
      text: legendWords[f.name],
      more: `${formatLength(f.in_from_edge_mm, units)} inside it`,
      marks: (at: number) => [
        line(
          [
            { x, y: at },
            { x: x + 22, y: at },
          ],
          looks[f.name],
        ),
      ],
    })),
    ...(along === 'either'
      ? []
      : [
          {
            text: 'the long threads',
            more: `run along the ${along}`,
            marks: (at: number) => doubleArrow({ x: x + 11, y: along === 'width' ? at : at + 7 }, along, 11),
          },
        ]),
  ];
  return together(
    ...rows.map((row, i) =>
      drawing({
        marks: row.marks(y(i)),
        labels: [
          { text: row.text, size: textSize.small, spots: [{ x: x + 29, y: y(i), anchor: 'start' }] },
          { text: row.more, size: textSize.small, spots: [{ x: x + 29, y: y(i) + 14, anchor: 'start' }] },
        ],
      }),
    ),
  );
}

const legendWords = { ...said, face: 'front edge' } as const;

const doubleArrow = (centre: Point, along: 'width' | 'height', reach: number): readonly Element[] => {
  const [dx, dy] = along === 'width' ? [reach, 0] : [0, reach];
  const [one, other] = [
    { x: centre.x - dx, y: centre.y - dy },
    { x: centre.x + dx, y: centre.y + dy },
  ];
  return [...arrow(one, other, weight.thin), ...arrow(other, one, weight.thin)];
};

/** The way of the long threads, across the middle of the cloth. */
function threads(
  { cut_width_mm: W, cut_height_mm: H, along, folds }: ClothCutPicture,
  left: number,
  top: number,
  scale: number,
): Drawing {
  if (along === 'either') return drawing({});
  const inside = (along === 'width' ? W : H) - 2 * Math.max(0, ...folds.map((f) => f.in_from_edge_mm));
  return drawing({
    marks: doubleArrow(
      { x: left + (W * scale) / 2, y: top + (H * scale) / 2 },
      along,
      Math.min(34, 0.4 * inside * scale),
    ),
  });
}
