import type { Element } from 'xast';
import type { UnitSystem } from '../../base/names.js';
import { formatLength } from '../../base/units-format.js';
import { broken, caption, lineStep } from './caption.js';
import { levelDimension, uprightDimension } from './dimensions.js';
import { ink, sheetWidth, softInk, textSize, weight, woodFill } from './drawing-standard.js';
import { drawing, finishPicture, together, type Drawing, type Picture, type PictureTitle } from './picture.js';
import { scaleBar } from './scale-bar.js';
import { arrow, circle, hatch, line, lying, outline, rectangle } from './strokes.js';
import type { Point } from './svg.js';

/** What the section through a bar needs to know, in mm. */
export interface BarSection {
  readonly units: UnitSystem;
  /** Size of the built-up bar in the plane of the cloth, and at right angles to it. */
  readonly w_mm: number;
  readonly d_mm: number;
  readonly plies: number;
  readonly stack: 'side-by-side' | 'front-to-back';
  readonly bond: 'single' | 'none' | 'screws' | 'glue' | 'glue+screws';
  readonly lip_mm: number;
  readonly fixing: 'back' | 'edge';
  readonly turn_mm: number;
  /** Length of the screw through the plies, when there is one. */
  readonly screw_mm?: number | null;
}

/** What a section is called, and what stands at its head where two are to be told apart. */
export type SectionTitle = Omit<PictureTitle, 'alt'> & { readonly head?: string };

/**
 * A section through the top bar to scale: wall on the left, viewer on the right, plies, what joins them, the line of
 * the cloth and the pull on it.
 */
export function barSection(section: BarSection, named: Partial<SectionTitle> = {}): Picture {
  const { units, w_mm, d_mm, lip_mm } = section;
  const { name, title, head } = { name: 'section.svg', title: 'Section through a bar', ...named };
  const scale = Math.min(140 / (d_mm + lip_mm), 110 / w_mm);
  const d = d_mm * scale;
  const w = w_mm * scale;
  const lip = lip_mm * scale;
  const left = (sheetWidth - d - lip) / 2 - 30;
  const top = 62;
  const right = left + d;
  const bottom = top + w;
  const cloth = right + lip;
  const tail = Math.max(bottom + 42, top + 96);
  const explained = broken(['Lower measure: the cloth pulls so far off the middle.']);
  const foot = tail + 62 + lineStep * explained.length;
  const content = together(
    plies(section, left, top, d, w),
    lip > 0.5
      ? drawing({ marks: [outline(rectangle(right, top, lip, Math.min(8 * scale, w / 4)), { fill: woodFill })] })
      : drawing({}),
    clothLine(section, { left, top, right, bottom, cloth, tail, scale }),
    uprightDimension({
      from: top,
      to: bottom,
      x: left - 60,
      edge: left,
      text: formatLength(w_mm, units),
      alwaysUpright: true,
    }),
    levelDimension({ from: left, to: right, y: tail + 12, edge: bottom, text: formatLength(d_mm, units) }),
    levelDimension({
      from: (left + right) / 2,
      to: cloth,
      y: tail + 34,
      edge: tail + 8,
      text: formatLength(d_mm / 2 + lip_mm, units),
    }),
    drawing({
      marks: [
        line(
          [
            { x: (left + right) / 2, y: top - 8 },
            { x: (left + right) / 2, y: tail - 6 },
          ],
          { width: weight.dimension, dashes: 'centre', colour: softInk },
        ),
      ],
      labels: [
        { text: 'wall side', heavy: true, spots: [{ x: 8, y: 16, anchor: 'start' }] },
        { text: 'viewer’s side', heavy: true, spots: [{ x: sheetWidth - 8, y: 16, anchor: 'end' }] },
        ...(head === undefined
          ? []
          : [{ text: head, heavy: true, spots: [{ x: sheetWidth / 2, y: 16, anchor: 'middle' }] } as const]),
        {
          text: 'outside edge of the frame',
          size: textSize.small,
          spots: [{ x: (left + right) / 2, y: top - 24, anchor: 'middle' }],
        },
        {
          text: 'opening side',
          size: textSize.small,
          spots: [
            { x: left - 16, y: bottom + 36, anchor: 'end' },
            { x: 8, y: bottom + 36, anchor: 'start' },
          ],
        },
      ],
    }),
    caption(explained, tail + 58),
    scaleBar({ x: 12, y: foot, mm_to_sheet: scale, units, note: 'Section through the top bar' }),
  );
  return finishPicture({ name, title, alt: describe(section) }, foot + 16, content);
}

const joins: Readonly<Record<BarSection['bond'], string>> = {
  single: 'one board',
  none: 'boards loose on each other',
  screws: 'boards screwed together',
  glue: 'boards glued together',
  'glue+screws': 'boards glued and screwed together',
};

function describe({ units, w_mm, d_mm, plies: n, stack, bond, lip_mm, fixing }: BarSection): string {
  const boards = n === 1 ? 'one board' : `${n} ${joins[bond]}, ${stack.replaceAll('-', ' ')}`;
  return `Section to scale: the bar measures ${formatLength(w_mm, units)} across, along the cloth, and ${formatLength(d_mm, units)} from wall side to viewer’s side; it is made of ${boards}; ${
    lip_mm > 0 ? `a lip keeps the cloth ${formatLength(lip_mm, units)} off the bar` : 'no lip'
  }; the cloth is fixed to the ${fixing} and pulls at the front, ${formatLength(d_mm / 2 + lip_mm, units)} before the middle of the bar.`;
}

function plies(
  { plies: n, stack, bond, screw_mm, w_mm, d_mm }: BarSection,
  left: number,
  top: number,
  d: number,
  w: number,
): Drawing {
  const side = stack === 'side-by-side';
  const boards = Array.from({ length: n }, (_, i) =>
    side ? rectangle(left, top + (i * w) / n, d, w / n) : rectangle(left + (i * d) / n, top, d / n, w),
  );
  const glued = bond === 'glue' || bond === 'glue+screws';
  const seams = Array.from({ length: n - 1 }, (_, i): readonly Point[] => {
    const t = (i + 1) / n;
    return side
      ? [
          { x: left, y: top + t * w },
          { x: left + d, y: top + t * w },
        ]
      : [
          { x: left + t * d, y: top },
          { x: left + t * d, y: top + w },
        ];
  });
  const marks: Element[] = boards.flatMap((corners, i) => {
    const [a, , c] = corners as [Point, Point, Point, Point];
    return [
      outline(corners, { fill: woodFill, width: weight.thin }),
      ...hatch(a.x, a.y, c.x - a.x, c.y - a.y, 9, i % 2 === 0),
    ];
  });
  marks.push(
    ...seams.map((seam) => line(seam, { width: glued ? weight.bold : weight.thin })),
    outline(rectangle(left, top, d, w), {}),
  );
  if (bond === 'screws' || bond === 'glue+screws')
    marks.push(
      ...screw(side, left, top, d, w, (screw_mm ?? 0.8 * (side ? w_mm : d_mm)) * (side ? w / w_mm : d / d_mm)),
    );
  const seam = seams[0]?.[0];
  const label = { glue: 'glue line', 'glue+screws': 'glue + screw', screws: 'screw', none: 'loose', single: '' }[bond];
  const at = bond === 'screws' || bond === 'glue+screws' ? screwAt : 0.8;
  const joined =
    seam === undefined || label === ''
      ? drawing({})
      : seamLabel(
          label,
          side ? { x: left + d * at, y: seam.y } : { x: seam.x, y: top + w * at },
          side,
          left,
          top,
          d,
          w,
        );
  return together(drawing({ marks, obstacles: [{ x: left, y: top, width: d, height: w }] }), joined);
}

/** Names the seam from the free side: to the viewer's side of a level seam, below an upright one. */
function seamLabel(text: string, seam: Point, side: boolean, left: number, top: number, d: number, w: number): Drawing {
  const end = side ? { x: left + d + 34, y: seam.y + 12 } : { x: left - 12, y: top + w + 16 };
  return drawing({
    marks: [line([seam, end], { width: weight.dimension }), circle(seam, 1.6, { fill: ink, width: weight.dimension })],
    labels: [
      {
        text,
        size: textSize.small,
        spots: side
          ? [{ x: end.x + 3, y: end.y, anchor: 'start' }]
          : [
              { x: end.x - 3, y: end.y + 4, anchor: 'end' },
              { x: 4, y: end.y + 4, anchor: 'start' },
            ],
      },
    ],
  });
}

/** Where the screw crosses the bar, as a share of its width from the wall side or from the outside edge. */
const screwAt = 0.68;

/**
 * A screw across the seam: side by side from the inner face of the bar, front to back from the wall side; `length` on
 * the sheet.
 */
function screw(side: boolean, left: number, top: number, d: number, w: number, length: number): readonly Element[] {
  const head = side ? { x: left + d * screwAt, y: top + w - 1.5 } : { x: left + 1.5, y: top + w * screwAt };
  const tip = side ? { x: head.x, y: head.y - length } : { x: head.x + length, y: head.y };
  return lying(head, tip, 5);
}

interface Places {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
  readonly cloth: number;
  readonly tail: number;
  readonly scale: number;
}

function clothLine({ fixing, turn_mm }: BarSection, { left, top, right, bottom, cloth, tail, scale }: Places): Drawing {
  const out = 4;
  const over: Point[] = [
    { x: cloth + out, y: tail },
    { x: cloth + out, y: top - out },
  ];
  const down = Math.min(turn_mm * scale, bottom - top);
  const staple: Point =
    fixing === 'back' ? { x: left, y: top + down * 0.55 } : { x: left + (right - left) * 0.45, y: top };
  if (fixing === 'back') over.push({ x: left - out, y: top - out }, { x: left - out, y: top + down });
  else over.push({ x: left + (right - left) * 0.2, y: top - out });
  const pullTop = bottom + 6;
  return drawing({
    marks: [
      line(over, { width: weight.bold }),
      ...arrow({ x: cloth + out + 9, y: pullTop }, { x: cloth + out + 9, y: tail - 2 }, weight.edge),
      circle(fixing === 'back' ? { x: staple.x - out, y: staple.y } : { x: staple.x, y: staple.y - out }, 3.2, {
        fill: ink,
      }),
    ],
    labels: [
      {
        text: 'cloth',
        size: textSize.small,
        spots: [
          { x: cloth + out + 10, y: top + 10, anchor: 'start' },
          { x: cloth + out + 10, y: top - 8, anchor: 'start' },
          { x: cloth + out + 10, y: top - 22, anchor: 'start' },
        ],
      },
      {
        text: 'pull of the cloth',
        size: textSize.small,
        spots: [
          { x: cloth + out + 18, y: (pullTop + tail) / 2, anchor: 'start' },
          { x: cloth - 6, y: (pullTop + tail) / 2, anchor: 'end' },
        ],
      },
      {
        text: 'staple',
        size: textSize.small,
        spots:
          fixing === 'back'
            ? [{ x: left - 11, y: staple.y, anchor: 'end' }]
            : [
                { x: left - 11, y: top - 12, anchor: 'end' },
                { x: left - 11, y: top - 20, anchor: 'end' },
              ],
      },
    ],
    obstacles: [{ x: cloth + out - 1, y: top, width: 3, height: tail - top }],
  });
}
