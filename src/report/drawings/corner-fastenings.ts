import type { Element } from 'xast';
import { formatLength } from '../../base/units-format.js';
import type { CornerBuild, CornerOnSheet } from './corner-shape.js';
import { levelDimension, uprightDimension } from './dimensions.js';
import { darkerFill, weight } from './drawing-standard.js';
import { angleOutline } from './front-parts.js';
import { drawing, together, type Drawing } from './picture.js';
import { circle, line, lying, outline } from './strokes.js';
import type { Point } from './svg.js';

/** The brace or plate with its leg. */
export function brace(
  { brace: b, level_w_mm: h, upright_w_mm: w, units }: CornerBuild,
  { at, stub_mm }: CornerOnSheet,
): Drawing {
  if (b === null) return drawing({});
  const L = b.leg_mm;
  const start = b.kind === 'timber' ? w / 2 : 0;
  const leg = levelDimension({
    from: at(start, 0).x,
    to: at(Math.min(start + L, stub_mm), 0).x,
    y: at(0, 0).y - 32,
    edge: at(0, 0).y,
    text: `leg ${formatLength(L, units)}`,
  });
  if (b.kind === 'steel-angle')
    return together(
      drawing({
        marks: [
          outline(
            angleOutline(L, b.w_mm, w, h).map(([x, y]) => at(x, y)),
            { dashes: 'hidden' },
          ),
        ],
      }),
      leg,
    );
  if (b.kind === 'ply-gusset')
    return together(drawing({ marks: [outline([at(0, 0), at(L, 0), at(0, L)], { dashes: 'hidden' })] }), leg);
  const k = b.w_mm / Math.SQRT2;
  const from = (x: number, y: number): Point => at(w / 2 + x, h / 2 + y);
  const corners = [
    from(w / 2, L - w / 2 - k),
    from(w / 2, L - w / 2 + k),
    from(L - h / 2 + k, h / 2),
    from(L - h / 2 - k, h / 2),
  ];
  return together(drawing({ marks: [outline(corners, { fill: darkerFill })] }), leg);
}

/** Nails from outside, or from the back of a half-lap. */
export function nails({ nails: n, cut, level_w_mm: h, upright_w_mm: w }: CornerBuild, { at }: CornerOnSheet): Drawing {
  if (n === null || n.count < 1) return drawing({});
  if (cut === 'half-lap')
    return drawing({
      marks: Array.from({ length: n.count }, (_, i) => (i + 0.5) / n.count).map((t) =>
        circle(at(w * t, h * t), 3, { width: weight.thin }),
      ),
    });
  const p = n.place_mm;
  const both = cut === 'mitre' && n.count > 1;
  return drawing({
    marks: [...lying(at(0, p), at(n.length_mm, p)), ...(both ? lying(at(p, 0), at(p, n.length_mm)) : [])],
  });
}

/** A screw seen end on, behind the wood. */
const endOn = (p: Point): readonly Element[] => [
  circle(p, 4, { width: weight.thin }),
  line(
    [
      { x: p.x - 2.6, y: p.y - 2.6 },
      { x: p.x + 2.6, y: p.y + 2.6 },
    ],
    { width: weight.thin },
  ),
];

/** Screws of the brace or plate, and those through the plies. */
export function screws(corner: CornerBuild, frame: CornerOnSheet): Drawing {
  return together(plateScrews(corner, frame), plyScrews(corner, frame));
}

function plateScrews(
  { level_w_mm: h, upright_w_mm: w, brace: b, plate_screws: screw }: CornerBuild,
  { at }: CornerOnSheet,
): Drawing {
  if (screw === null || b === null) return drawing({});
  if (b.kind !== 'timber')
    return drawing({ marks: screw.places_mm.flatMap((mm) => [...endOn(at(mm, h / 2)), ...endOn(at(w / 2, mm))]) });
  const k = b.w_mm / Math.SQRT2;
  const marks = screw.places_mm.flatMap((mm) => {
    const x = w / 2 + b.leg_mm - h / 2 + k - mm;
    const y = h / 2 + b.leg_mm - w / 2 + k - mm;
    return [
      ...lying(at(x, h + mm), at(x, h + mm - screw.length_mm)),
      ...lying(at(w + mm, y), at(w + mm - screw.length_mm, y)),
    ];
  });
  return drawing({ marks });
}

function plyScrews(
  { level_w_mm: h, upright_w_mm: w, ply_screws: ply, units }: CornerBuild,
  { at, stub_mm }: CornerOnSheet,
): Drawing {
  if (ply === null) return drawing({});
  const shown = (places: readonly number[]): readonly number[] => places.filter((mm) => mm < stub_mm);
  const level = shown(ply.level_mm);
  const upright = shown(ply.upright_mm);
  const marks = [
    ...level.flatMap((mm) =>
      ply.from === 'back' ? endOn(at(mm, h / 2)) : lying(at(mm, h), at(mm, h - ply.length_mm)),
    ),
    ...upright.flatMap((mm) =>
      ply.from === 'back' ? endOn(at(w / 2, mm)) : lying(at(w, mm), at(w - ply.length_mm, mm)),
    ),
  ];
  const first = upright[0];
  if (first === undefined) return drawing({ marks });
  return together(
    drawing({ marks }),
    uprightDimension({
      from: at(0, 0).y,
      to: at(0, first).y,
      x: at(0, 0).x - 34,
      edge: at(0, 0).x,
      text: formatLength(first, units),
    }),
  );
}
