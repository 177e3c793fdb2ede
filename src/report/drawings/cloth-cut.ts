import type { UnitSystem } from '../../base/names.js';
import { formatLength } from '../../base/units-format.js';
import { levelDimension, uprightDimension } from './dimensions.js';
import { softInk, textSize, weight } from './drawing-standard.js';
import { drawing, finishPicture, together, type Drawing, type Picture } from './picture.js';
import { scaleBar } from './scale-bar.js';
import { arrow, line, outline, rectangle } from './strokes.js';

/** The cut cloth and its lines; mm, each fold measured in from the cut edge, the same all round. */
export interface ClothCutPicture {
  readonly units: UnitSystem;
  readonly cut_width_mm: number;
  readonly cut_height_mm: number;
  readonly folds: readonly { readonly name: 'face' | 'back-edge' | 'staples'; readonly in_from_edge_mm: number }[];
  /** Which cut side the long threads run along. */
  readonly along: 'width' | 'height' | 'either';
}

const said = { 'face': 'front edge', 'back-edge': 'turns onto the back', 'staples': 'staples' } as const;

/** The cloth as cut, lying on its face, with the lines where it folds and where the staples go, to scale. */
export function clothCut(cloth: ClothCutPicture): Picture {
  const { units, cut_width_mm: W, cut_height_mm: H } = cloth;
  const scale = Math.min(172 / W, 170 / H);
  const left = 62;
  const top = 20;
  const right = left + W * scale;
  const bottom = top + H * scale;
  const tail = Math.max(bottom, top + 118);
  const content = together(
    drawing({ marks: [outline(rectangle(left, top, W * scale, H * scale), { fill: '#fff' }), ...cloth.folds.flatMap((fold) => foldLine(fold, cloth, left, top, scale))] }),
    threads(cloth, left, top, scale),
    legend(cloth, right, top),
    levelDimension({ from: left, to: right, y: bottom + 20, edge: bottom, text: formatLength(W, units) }),
    uprightDimension({ from: top, to: bottom, x: left - 20, edge: left, text: formatLength(H, units) }),
    scaleBar({ x: 12, y: tail + 48, mm_to_sheet: scale, units, note: 'The cloth on its face, as cut' }),
  );
  return finishPicture({ name: 'cloth.svg', title: 'The cloth as cut, with its folds', alt: describe(cloth) }, tail + 64, content);
}

function describe({ units, cut_width_mm, cut_height_mm, folds, along }: ClothCutPicture): string {
  const lines = folds.map((f) => `${said[f.name]} ${formatLength(f.in_from_edge_mm, units)} in from the cut edge`).join('; ');
  return `Cloth cut ${formatLength(cut_width_mm, units)} wide and ${formatLength(cut_height_mm, units)} high, to scale; ${lines}; ${along === 'either' ? 'the long threads may run either way' : `the long threads run along the ${along}`}.`;
}

const looks = { 'face': { width: weight.edge }, 'back-edge': { width: weight.thin, dashes: 'fold' }, 'staples': { width: weight.edge, dashes: 'hidden', colour: softInk } } as const;

function foldLine(fold: ClothCutPicture['folds'][number], { cut_width_mm: W, cut_height_mm: H }: ClothCutPicture, left: number, top: number, scale: number) {
  const m = fold.in_from_edge_mm * scale;
  if (2 * m >= Math.min(W, H) * scale) return [];
  return [outline(rectangle(left + m, top + m, W * scale - 2 * m, H * scale - 2 * m), looks[fold.name])];
}

/** Each line explained beside the cloth, with how far in it lies. */
function legend({ folds, units }: ClothCutPicture, right: number, top: number): Drawing {
  const x = right + 16;
  const rows = [{ text: 'cut edge,', more: 'measured from here', look: { width: weight.edge } }, ...folds.map((f) => ({ text: `${said[f.name]},`, more: formatLength(f.in_from_edge_mm, units), look: looks[f.name] }))];
  return together(
    ...rows.map((row, i) =>
      drawing({
        marks: [line([{ x, y: top + 6 + 32 * i }, { x: x + 22, y: top + 6 + 32 * i }], row.look)],
        labels: [
          { text: row.text, size: textSize.small, spots: [{ x: x + 27, y: top + 6 + 32 * i, anchor: 'start' }] },
          { text: row.more, size: textSize.small, spots: [{ x: x + 27, y: top + 20 + 32 * i, anchor: 'start' }] },
        ],
      }),
    ),
  );
}

function threads({ cut_width_mm: W, cut_height_mm: H, along }: ClothCutPicture, left: number, top: number, scale: number): Drawing {
  if (along === 'either') return drawing({});
  const cx = left + (W * scale) / 2;
  const cy = top + (H * scale) / 2;
  const reach = along === 'width' ? 34 : 30;
  const ends = along === 'width' ? [{ x: cx - reach, y: cy }, { x: cx + reach, y: cy }] as const : [{ x: cx, y: cy + reach }, { x: cx, y: cy - reach }] as const;
  return drawing({
    marks: [...arrow(ends[0], ends[1], weight.thin), ...arrow(ends[1], ends[0], weight.thin)],
    labels: [along === 'width'
      ? { text: 'long threads', size: textSize.small, spots: [{ x: cx, y: cy - 11, anchor: 'middle' }] }
      : { text: 'long threads', size: textSize.small, upright: true, spots: [{ x: cx - 11, y: cy, anchor: 'middle' }] }],
  });
}
