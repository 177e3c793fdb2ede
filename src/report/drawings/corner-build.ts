import type { Element } from 'xast';
import { formatLength } from '../../base/units-format.js';
import { broken, caption, lineStep } from './caption.js';
import { brace, nails, screws } from './corner-fastenings.js';
import type { CornerBuild, CornerOnSheet } from './corner-shape.js';
import { cornerNotes, describeCorner } from './corner-words.js';
import { levelDimension, uprightDimension } from './dimensions.js';
import { darkerFill, ink, textSize, weight, woodFill } from './drawing-standard.js';
import { drawing, finishPicture, together, type Drawing, type Picture } from './picture.js';
import { scaleBar } from './scale-bar.js';
import { circle, line, outline } from './strokes.js';
import type { Point } from './svg.js';

/** The corner to scale: cut, glue line, nails, brace and screws where they go. */
export function cornerBuild(corner: CornerBuild): Picture {
  const widest = Math.max(corner.level_w_mm, corner.upright_w_mm);
  const plies = corner.ply_screws;
  const wanted = Math.max(
    3 * widest,
    (corner.brace?.leg_mm ?? 0) + 1.6 * widest,
    plies === null ? 0 : (plies.level_mm[0] ?? 0) + 0.6 * widest,
  );
  const stub_mm = Math.min(wanted, 14 * widest);
  const scale = 180 / stub_mm;
  const left = 92;
  const top = 62;
  const frame: CornerOnSheet = { scale, stub_mm, at: (x, y) => ({ x: left + x * scale, y: top + y * scale }) };
  const bottom = top + stub_mm * scale;
  const { units } = corner;
  const lines = broken(cornerNotes(corner));
  const content = together(
    bars(corner, frame),
    brace(corner, frame),
    nails(corner, frame),
    screws(corner, frame),
    levelDimension({
      from: left,
      to: left + corner.upright_w_mm * scale,
      y: bottom + 22,
      edge: bottom + 4,
      text: formatLength(corner.upright_w_mm, units),
    }),
    uprightDimension({
      from: top,
      to: top + corner.level_w_mm * scale,
      x: left + stub_mm * scale + 20,
      edge: left + stub_mm * scale + 4,
      text: formatLength(corner.level_w_mm, units),
    }),
    caption(lines, bottom + 46),
    scaleBar({
      x: 12,
      y: bottom + 54 + lineStep * lines.length,
      mm_to_sheet: scale,
      units,
      note: 'Top left corner from the front',
    }),
  );
  return finishPicture(
    { name: 'corner.svg', title: 'How a corner is built', alt: describeCorner(corner) },
    bottom + 68 + lineStep * lines.length,
    content,
  );
}

function bars(corner: CornerBuild, { at, stub_mm: s }: CornerOnSheet): Drawing {
  const { level_w_mm: h, upright_w_mm: w, cut, glued } = corner;
  const thin = { fill: woodFill, colour: 'none', width: weight.thin };
  const glue = { width: glued ? weight.bold : weight.thin };
  const joint: Element[] =
    cut === 'mitre'
      ? [line([at(0, 0), at(w, h)], glue)]
      : cut === 'keyed'
        ? keyed(w, h, at)
        : cut === 'butt'
          ? [line([at(w, 0), at(w, h)], glue)]
          : [line([at(0, h), at(w, h)], glue), line([at(w, 0), at(w, h)], { ...glue, dashes: 'hidden' })];
  const where = cut === 'mitre' ? at(w * 0.72, h * 0.72) : at(w, h * 0.78);
  const end = { x: at(w, 0).x + 16, y: at(0, h).y + 22 };
  const named: Drawing = !glued
    ? drawing({})
    : drawing({
        marks: [
          line([where, end], { width: weight.dimension }),
          circle(where, 1.6, { fill: ink, width: weight.dimension }),
        ],
        labels: [{ text: 'glue', size: textSize.small, spots: [{ x: end.x + 3, y: end.y, anchor: 'start' }] }],
      });
  return together(
    drawing({
      marks: [
        outline([at(0, 0), at(s, 0), at(s, h), at(w, h), at(w, s), at(0, s)], thin),
        line([at(0, s), at(0, 0), at(s, 0)]),
        line([at(s, h), at(w, h), at(w, s)]),
        ...joint,
        ...seams(corner, at, s),
        ...breakLines(corner, at, s),
      ],
      obstacles: [box(at(0, 0), at(s, h)), box(at(0, 0), at(w, s))],
      labels: [
        {
          text: 'level bar',
          size: textSize.small,
          spots: [
            { x: at(s, 0).x, y: at(0, 0).y - 11, anchor: 'end' },
            { x: at(s * 0.6, 0).x, y: at(0, 0).y - 11, anchor: 'middle' },
            { x: at(s * 0.4, 0).x, y: at(0, 0).y - 11, anchor: 'middle' },
            { x: at(s, 0).x + 4, y: at(0, 0).y - 11, anchor: 'start' },
          ],
        },
        {
          text: 'upright bar',
          size: textSize.small,
          upright: true,
          spots: [0.2, 0.3, 0.1].map((t) => ({
            x: at(0, 0).x - 11,
            y: at(0, s - (s - h) * t).y,
            anchor: 'middle' as const,
          })) as unknown as Drawing['labels'][number]['spots'],
        },
      ],
    }),
    named,
  );
}

/**
 * The shoulder's mitre, the tongue behind it (dashed) up to the outer edges, and the two keys that stand in the inner
 * corner, one driving each bar out.
 */
function keyed(w: number, h: number, at: CornerOnSheet['at']): Element[] {
  const [wide, deep] = [0.18 * Math.min(w, h), 0.8 * Math.min(w, h)];
  return [
    line([at(0, 0), at(w, h)], { width: weight.thin }),
    line([at(w, h), at(w, 0)], { width: weight.thin, dashes: 'hidden' }),
    line([at(w, h), at(0, h)], { width: weight.thin, dashes: 'hidden' }),
    outline([at(w, h), at(w + deep, h), at(w + deep, h + wide)], { fill: darkerFill }),
    outline([at(w, h), at(w, h + deep), at(w + wide, h + deep)], { fill: darkerFill }),
  ];
}

/**
 * Seams of plies side by side: to the mitre, to the butted face, or, half-lapped, only to the edge of the level bar in
 * front.
 */
function seams(
  { seams_mm, cut, level_w_mm: h, upright_w_mm: w }: CornerBuild,
  at: CornerOnSheet['at'],
  s: number,
): readonly Element[] {
  const thin = { width: weight.dimension, dashes: 'fold' } as const;
  return seams_mm.flatMap((mm) => [
    line([at({ mitre: mm, keyed: mm, butt: w, 'half-lap': 0 }[cut], mm), at(s, mm)], thin),
    line([at(mm, { mitre: mm, keyed: mm, butt: 0, 'half-lap': h }[cut]), at(mm, s)], thin),
  ]);
}

/** Wavy ends: the bars go on. */
function breakLines(
  { level_w_mm: h, upright_w_mm: w }: CornerBuild,
  at: CornerOnSheet['at'],
  s: number,
): readonly Element[] {
  const wave = (n: number): number => (n % 2 === 0 ? -1 : 1);
  const k = Math.max(h, w) * 0.04;
  return [
    line(
      [0, 1, 2, 3, 4].map((n) => at(s + (n % 4 === 0 ? 0 : k * wave(n)), (h * n) / 4)),
      { width: weight.thin },
    ),
    line(
      [0, 1, 2, 3, 4].map((n) => at((w * n) / 4, s + (n % 4 === 0 ? 0 : k * wave(n)))),
      { width: weight.thin },
    ),
  ];
}

const box = (a: Point, b: Point): Drawing['obstacles'][number] => ({
  x: a.x,
  y: a.y,
  width: b.x - a.x,
  height: b.y - a.y,
});
