import type { UnitSystem } from '../../base/names.js';
import { ink, paperFill, sheetWidth, softInk, textSize, weight } from './drawing-standard.js';
import { textWidth } from './labels.js';
import { drawing, type Drawing } from './picture.js';
import { outline, rectangle } from './strokes.js';

/** Where a scale bar goes and what a millimetre is on the sheet. */
export interface ScaleBar {
  readonly x: number;
  readonly y: number;
  readonly mm_to_sheet: number;
  readonly units: UnitSystem;
  /** Said in front of the scale, such as which side one looks at. */
  readonly note?: string;
}

const metricSteps = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000];
const inchSteps = [1 / 16, 1 / 8, 1 / 4, 1 / 2, 1, 2, 4, 6, 12, 24, 48, 96];
const fraction: Readonly<Record<string, string>> = { '0.0625': '1/16', '0.125': '1/8', '0.25': '1/4', '0.5': '1/2' };

/** Between the strip and its words. */
const beside = 6;

/**
 * Length of the strip and its words: the largest round figure that is not longer than 90 units and leaves its words
 * room on the sheet.
 */
function roundLength({ x, mm_to_sheet, units, note }: ScaleBar): { readonly mm: number; readonly said: string } {
  const steps = units === 'metric' ? metricSteps : inchSteps;
  const inUnit = units === 'metric' ? 1 : 25.4;
  const of = (step: number): { readonly mm: number; readonly said: string } => {
    const text = units === 'metric' ? `${step} mm` : `${fraction[String(step)] ?? step} in`;
    return {
      mm: step * inUnit,
      said: note === undefined ? `to scale: this strip is ${text}` : `strip: ${text}. ${note}.`,
    };
  };
  const fits = ({ mm, said }: ReturnType<typeof of>): boolean =>
    mm * mm_to_sheet <= Math.min(90, sheetWidth - 4 - x - beside - textWidth(said, textSize.small));
  return steps.map(of).filter(fits).at(-1) ?? of(steps[0] ?? 1);
}

/** A bar of known length: true whatever size the picture is shown or printed at. */
export function scaleBar(bar: ScaleBar): Drawing {
  const { x, y, mm_to_sheet } = bar;
  const { mm, said } = roundLength(bar);
  const half = (mm * mm_to_sheet) / 2;
  return drawing({
    marks: [
      outline(rectangle(x, y - 2, half, 4), { width: weight.dimension, fill: ink }),
      outline(rectangle(x + half, y - 2, half, 4), { width: weight.dimension, fill: paperFill, colour: softInk }),
    ],
    labels: [{ text: said, size: textSize.small, spots: [{ x: x + 2 * half + beside, y, anchor: 'start' }] }],
    obstacles: [{ x, y: y - 2, width: 2 * half, height: 4 }],
  });
}
