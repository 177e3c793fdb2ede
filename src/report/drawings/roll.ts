import type { UnitSystem } from '../../base/names.js';
import { upToTape } from '../../base/tape.js';
import { formatLength } from '../../base/units-format.js';
import { levelDimension, uprightDimension } from './dimensions.js';
import { darkerFill, paperFill, sheetWidth, textSize, weight, woodFill } from './drawing-standard.js';
import type { Label } from './labels.js';
import { drawing, finishPicture, together, type Drawing, type Picture } from './picture.js';
import { scaleBar } from './scale-bar.js';
import { hatch, line, outline, rectangle } from './strokes.js';

/** Cloths laid on a roll, mm: `along` from the cut end of the roll, `across` from one edge of it. */
export interface RollPicture {
  readonly units: UnitSystem;
  readonly roll_width_mm: number;
  readonly length_mm: number;
  readonly cloths: readonly {
    readonly label: string;
    readonly along_mm: number;
    readonly across_mm: number;
    readonly length_mm: number;
    readonly width_mm: number;
  }[];
}

/** The roll from above, to scale, with each cloth where it is cut; hatched: what is left. */
export function rollPicture(roll: RollPicture): Picture {
  const { units, roll_width_mm: R, length_mm: L, cloths } = roll;
  const scale = Math.min((sheetWidth - 126) / L, 150 / R);
  const left = 62;
  const top = 26;
  const content = together(
    drawing({
      marks: [
        outline(rectangle(left, top, L * scale, R * scale), { fill: paperFill, width: weight.thin }),
        ...hatch(left, top, L * scale, R * scale, 12, true, darkerFill),
        ...cloths.map((c) =>
          outline(
            rectangle(left + c.along_mm * scale, top + c.across_mm * scale, c.length_mm * scale, c.width_mm * scale),
            { fill: woodFill },
          ),
        ),
        ...[0, R].map((y) =>
          line(
            [
              { x: left, y: top + y * scale },
              { x: left + L * scale, y: top + y * scale },
            ],
            { width: weight.bold },
          ),
        ),
      ],
      labels: cloths.map((c): Label => {
        const upright = c.length_mm < c.width_mm * 0.7;
        return {
          text: c.label,
          size: textSize.small,
          upright,
          spots: [
            {
              x: left + (c.along_mm + c.length_mm / 2) * scale,
              y: top + (c.across_mm + c.width_mm / 2) * scale,
              anchor: 'middle',
            },
          ],
        };
      }),
    }),
    ...sizeOfOne(roll, top, scale, left),
    ...overBeside(roll, top, scale, left + L * scale),
    levelDimension({
      from: left,
      to: left + L * scale,
      y: top + R * scale + 20,
      edge: top + R * scale,
      text: formatLength(L, units),
    }),
    uprightDimension({
      from: top,
      to: top + R * scale,
      x: left - 20,
      edge: left,
      text: formatLength(R, units),
      alwaysUpright: true,
    }),
    scaleBar({ x: 12, y: top + R * scale + 46, mm_to_sheet: scale, units, note: 'The roll from above' }),
  );
  const list = cloths
    .map(
      (c) =>
        `${c.label}: ${formatLength(c.length_mm, units)} along the roll, ${formatLength(c.width_mm, units)} across`,
    )
    .join('; ');
  const alt = `Roll ${formatLength(R, units)} wide, ${formatLength(upToTape(L, units), units)} of it used, to scale. ${list}. Bold: the woven edges.`;
  return finishPicture({ name: 'roll.svg', title: 'The cloth on the roll', alt }, top + R * scale + 62, content);
}

/** How wide one cloth lies on the roll; its length along the roll is the dimension below. */
function sizeOfOne({ units, cloths }: RollPicture, top: number, scale: number, left: number): readonly Drawing[] {
  const [only] = cloths;
  if (only === undefined || cloths.length > 1 || only.length_mm * scale < 70) return [];
  const from = top + only.across_mm * scale;
  return [
    uprightDimension({
      from,
      to: from + only.width_mm * scale,
      x: left + (only.along_mm + only.length_mm) * scale - 20,
      edge: left + (only.along_mm + only.length_mm) * scale,
      text: formatLength(only.width_mm, units),
    }),
  ];
}

/** What is over of the width beside one cloth, as wide as a strip for straps or a trial corner may be. */
function overBeside(
  { units, roll_width_mm, cloths }: RollPicture,
  top: number,
  scale: number,
  right: number,
): readonly Drawing[] {
  const [only] = cloths;
  if (only === undefined || cloths.length > 1) return [];
  const over_mm = roll_width_mm - only.across_mm - only.width_mm;
  if (over_mm * scale < 12) return [];
  return [
    uprightDimension({
      from: top + (only.across_mm + only.width_mm) * scale,
      to: top + roll_width_mm * scale,
      x: right + 18,
      edge: right,
      text: `${formatLength(over_mm, units)} over`,
      alwaysUpright: true,
    }),
  ];
}
