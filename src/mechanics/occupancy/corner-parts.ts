import { cornerNames, type BarName, type CornerName } from '../../base/names.js';
import { remembered } from '../../base/remembered.js';
import type { Model } from '../../model/model.js';
import { planBraceScrews } from '../fasteners/brace-fastening.js';
import { planCornerNails } from '../fasteners/corner-nails.js';
import { backShaft, KEEP_BODY_MM, shaft, type Occupant, type Span } from './occupant.js';

/**
 * Where a timber brace meets the inner edge of a bar, mm from the outside corner: its centre line at the leg, as wide
 * as its slanted end.
 */
export function braceFoot_mm(leg_mm: number, brace_w_mm: number): Span {
  return [leg_mm - brace_w_mm / Math.SQRT2, leg_mm + brace_w_mm / Math.SQRT2];
}

/** The two bars of a corner, each with a place on it counted from the outside corner. */
function barsAt(
  corner: CornerName,
  model: Model,
): readonly { readonly bar: BarName; readonly at: (mm: number) => number }[] {
  const { width_mm, height_mm } = model.plan.face;
  const [level, upright] = corner.split('-') as [BarName, BarName];
  const from =
    (far: boolean, length_mm: number) =>
    (mm: number): number =>
      far ? length_mm - mm : mm;
  return [
    { bar: level, at: from(upright === 'right', width_mm) },
    { bar: upright, at: from(level === 'top', height_mm) },
  ];
}

const sorted = (a: number, b: number): Span => [Math.min(a, b), Math.max(a, b)];

/** What the corners put on the bars: feet of braces, gussets, angles, their screws, and the nails across the joint. */
export const cornerParts = remembered((model: Model): readonly Occupant[] => {
  const parts: Occupant[] = [];
  for (const corner of cornerNames)
    for (const { bar, at } of barsAt(corner, model))
      parts.push(...brace(model, corner, bar, at), ...plate(model, corner, bar, at), ...nails(model, corner, bar, at));
  return parts;
});

type At = (mm: number) => number;

function brace(model: Model, corner: CornerName, bar: BarName, at: At): readonly Occupant[] {
  const timber = model.braces.find((one) => one.corner === corner);
  if (timber === undefined) return [];
  const { w_mm, d_mm } = timber.section;
  const [from, to] = braceFoot_mm(timber.leg_mm, w_mm);
  const screws = planBraceScrews(model);
  return [
    {
      bar,
      kind: 'brace',
      of: corner,
      along_mm: sorted(at(from), at(to)),
      across_mm: [-w_mm, 0],
      deep_mm: [0, d_mm],
      keep_mm: KEEP_BODY_MM,
    },
    ...(screws === null
      ? []
      : (screws.rows[0]?.places_mm ?? []).map((mm) =>
          shaft(
            { bar, kind: 'brace-screw', of: corner },
            screws.shank_mm,
            at(to - mm),
            [-screws.through_mm, screws.penetration_mm],
            screws.edge_mm,
          ),
        )),
  ];
}

function plate(model: Model, corner: CornerName, bar: BarName, at: At): readonly Occupant[] {
  const { plate: built } = model;
  if (built === null) return [];
  const w_mm = model.bars[bar].section.w_mm;
  const gusset = built.kind === 'ply-gusset';
  const wide = built.wide_mm;
  const screws = planBraceScrews(model);
  return [
    {
      bar,
      kind: gusset ? 'gusset' : 'angle',
      of: corner,
      along_mm: sorted(at(0), at(built.leg_mm)),
      across_mm: [(w_mm - wide) / 2, (w_mm + wide) / 2],
      deep_mm: [-(screws?.through_mm ?? 1), 0],
      keep_mm: KEEP_BODY_MM,
    },
    ...(screws === null
      ? []
      : (screws.rows[0]?.places_mm ?? []).map((mm) =>
          backShaft(
            { bar, kind: gusset ? 'gusset-screw' : 'angle-screw', of: corner },
            screws.shank_mm,
            at(mm),
            w_mm / 2,
            [-screws.through_mm, screws.penetration_mm],
          ),
        )),
  ];
}

/** A nail driven from outside runs across both bars near the corner; from the back, through the lap. */
function nails(model: Model, corner: CornerName, bar: BarName, at: At): readonly Occupant[] {
  const planned = planCornerNails(model);
  if (planned === null) return [];
  const { w_mm, d_mm } = model.bars[bar].section;
  const place = planned.rows[0]?.places_mm[0] ?? w_mm / 2;
  const { shank_mm, length_mm } = planned;
  const nail = { bar, kind: 'corner-nail', of: corner } as const;
  return [
    model.plan.corners.cut === 'half-lap'
      ? backShaft(nail, shank_mm, at(place), w_mm / 2, [0, length_mm])
      : shaft(nail, shank_mm, at(place), [w_mm - length_mm, w_mm], d_mm / 2),
  ];
}
