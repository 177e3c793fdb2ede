import type { Element } from 'hast';
import type { UnitSystem } from '../../base/names.js';
import { formatLength } from '../../base/units-format.js';
import { broken, caption, lineStep } from './caption.js';
import { levelDimension, uprightDimension } from './dimensions.js';
import { darkerFill, ink, textSize, weight, woodFill } from './drawing-standard.js';
import { angleOutline } from './front-parts.js';
import { drawing, finishPicture, together, type Drawing, type Picture } from './picture.js';
import { scaleBar } from './scale-bar.js';
import { circle, line, outline } from './strokes.js';
import type { Point } from './svg.js';

/** One corner as built, seen from the front, in mm: the top left one stands for all. */
export interface CornerBuild {
  readonly units: UnitSystem;
  readonly cut: 'mitre' | 'butt' | 'half-lap' | 'keyed';
  readonly glued: boolean;
  /** Size of the level and of the upright bar in the plane of the cloth. */
  readonly level_w_mm: number;
  readonly upright_w_mm: number;
  /**
   * Nails in one corner, driven from outside (a half-lap: from the back), `place_mm` from the corner along the edge;
   * null = none.
   */
  readonly nails: {
    readonly count: number;
    readonly length_mm: number;
    /** How many and what: `two 25 mm brads`. */
    readonly name: string;
    readonly place_mm: number;
  } | null;
  /**
   * The leg of a timber brace along the middles of the bars, that of a plate from the outer corner; the width of the
   * brace, or of the steel.
   */
  readonly brace: {
    readonly kind: 'timber' | 'ply-gusset' | 'steel-angle';
    readonly leg_mm: number;
    readonly w_mm: number;
  } | null;
  /**
   * Screws of the brace or plate; null = none. `places_mm`: from the outer corner along each bar; for a timber brace
   * from the toe of its slanted end.
   */
  readonly plate_screws: { readonly places_mm: readonly number[]; readonly length_mm: number } | null;
  /**
   * Screws that hold the plies together, from the inner edge or from the back; their places along each bar from the
   * corner.
   */
  readonly ply_screws: {
    readonly level_mm: readonly number[];
    readonly upright_mm: readonly number[];
    readonly length_mm: number;
    readonly from: 'inner-edge' | 'back';
  } | null;
  /** Seams between plies, mm from the outer edge of each bar; empty where none shows from the front. */
  readonly seams_mm: readonly number[];
}

interface Frame {
  readonly at: (x_mm: number, y_mm: number) => Point;
  readonly scale: number;
  readonly stub_mm: number;
}

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
  const frame: Frame = { scale, stub_mm, at: (x, y) => ({ x: left + x * scale, y: top + y * scale }) };
  const bottom = top + stub_mm * scale;
  const { units } = corner;
  const lines = broken(notes(corner));
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
    { name: 'corner.svg', title: 'How a corner is built', alt: describe(corner) },
    bottom + 68 + lineStep * lines.length,
    content,
  );
}

const plates = {
  timber: 'a timber brace',
  'ply-gusset': 'a plywood gusset on the back',
  'steel-angle': 'a flat steel angle on the back',
} as const;

function describe({ units, cut, glued, nails: n, brace: b, ply_screws }: CornerBuild): string {
  const parts = [
    {
      mitre: 'The bars meet in a mitre',
      butt: 'The level bar butts against the upright one',
      'half-lap': 'The bars are half-lapped, the level one in front',
      keyed:
        'The tongue of the level bar sits in the slot of the upright one between mitred shoulders, with two keys from inside',
    }[cut],
    glued ? 'glued over the whole face' : 'without glue',
    ...(n === null ? [] : [`${n.name} from ${cut === 'half-lap' ? 'the back' : 'outside'}`]),
    ...(b === null ? [] : [`${plates[b.kind]}, leg ${formatLength(b.leg_mm, units)}`]),
    ...(ply_screws !== null ? ['screws through the plies'] : []),
  ];
  return `${parts.join('; ')}. Drawn to scale.`;
}

/** What the drawing shows, in a line each below it. */
function notes({ cut, nails: n, brace: b, plate_screws, ply_screws, units }: CornerBuild): readonly string[] {
  return [
    ...(cut === 'keyed' ? ['Tongue in slot, dry (dashed); two keys, driven last.'] : []),
    ...(n === null
      ? []
      : [
          `${counted(n.count, 'nail')} from ${cut === 'half-lap' ? 'the back' : 'outside'}, ${formatLength(n.length_mm, units)} long, ${formatLength(n.place_mm, units)} from the corner.`,
        ]),
    ...(b === null
      ? []
      : [
          b.kind === 'timber'
            ? 'Brace between the bars, ends at 45°.'
            : `${b.kind === 'ply-gusset' ? 'Gusset' : 'Steel angle'} on the back (dashed).`,
        ]),
    ...(plate_screws === null || plate_screws.places_mm.length === 0
      ? []
      : [
          b?.kind === 'timber'
            ? `Its screws ${formatLength(plate_screws.places_mm[0] ?? 0, units)} from the pointed toe.`
            : `Its screws ${plate_screws.places_mm.map((mm) => formatLength(mm, units)).join(', ')} from the corner.`,
        ]),
    ...(ply_screws === null
      ? []
      : [
          `Ply screws from the ${ply_screws.from === 'back' ? 'back' : 'inner edge'}, from the corner:`,
          `level bar ${placesSaid(ply_screws.level_mm, units)}; upright bar ${placesSaid(ply_screws.upright_mm, units)}.`,
        ]),
  ];
}

/** The first two places stand for all; the sheet lists them. */
const placesSaid = (mm: readonly number[], units: UnitSystem): string =>
  mm
    .slice(0, 2)
    .map((one) => formatLength(one, units))
    .join(', ');

const counted = (n: number, what: string): string => `${n} ${what}${n === 1 ? '' : 's'}`;

function bars(corner: CornerBuild, { at, stub_mm: s }: Frame): Drawing {
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
function keyed(w: number, h: number, at: Frame['at']): Element[] {
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
  at: Frame['at'],
  s: number,
): readonly Element[] {
  const thin = { width: weight.dimension, dashes: 'fold' } as const;
  return seams_mm.flatMap((mm) => [
    line([at({ mitre: mm, keyed: mm, butt: w, 'half-lap': 0 }[cut], mm), at(s, mm)], thin),
    line([at(mm, { mitre: mm, keyed: mm, butt: 0, 'half-lap': h }[cut]), at(mm, s)], thin),
  ]);
}

/** Wavy ends: the bars go on. */
function breakLines({ level_w_mm: h, upright_w_mm: w }: CornerBuild, at: Frame['at'], s: number): readonly Element[] {
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

function brace({ brace: b, level_w_mm: h, upright_w_mm: w, units }: CornerBuild, { at, stub_mm }: Frame): Drawing {
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

function nails({ nails: n, cut, level_w_mm: h, upright_w_mm: w }: CornerBuild, { at }: Frame): Drawing {
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

/** A screw lying in the plane of the picture: its head as a short bold line across it. */
function lying(head: Point, tip: Point): readonly Element[] {
  const length = Math.max(1e-6, Math.hypot(tip.x - head.x, tip.y - head.y));
  const cross = { x: (-4.5 * (tip.y - head.y)) / length, y: (4.5 * (tip.x - head.x)) / length };
  return [
    line([head, tip], { width: weight.edge, dashes: 'hidden' }),
    line(
      [
        { x: head.x - cross.x, y: head.y - cross.y },
        { x: head.x + cross.x, y: head.y + cross.y },
      ],
      { width: weight.bold },
    ),
  ];
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

function screws(corner: CornerBuild, frame: Frame): Drawing {
  return together(plateScrews(corner, frame), plyScrews(corner, frame));
}

function plateScrews(
  { level_w_mm: h, upright_w_mm: w, brace: b, plate_screws: screw }: CornerBuild,
  { at }: Frame,
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
  { at, stub_mm }: Frame,
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
