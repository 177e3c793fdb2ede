import { barNames } from '../../base/names.js';
import type { Model } from '../../model/model.js';

/** One kind of glued joint: how many faces of what area, and whether they are end grain (which drinks a first coat). */
export interface GlueLine {
  readonly what: 'plies' | 'corners' | 'crossbar-ends' | 'brace-ends' | 'gussets' | 'lip';
  readonly count: number;
  readonly area_mm2: number;
  readonly end_grain: boolean;
}

/** Glue lines between plies: length, breadth and number, for the bars and for crossbars of several plies. */
export function plyGlueLines(model: Model): readonly {
  readonly piece: string;
  readonly length_mm: number;
  readonly breadth_mm: number;
  readonly lines: number;
}[] {
  const { bond } = model.plan.bars;
  if (bond !== 'glue' && bond !== 'glue+screws') return [];
  return [...barNames.map((name) => model.bars[name]), ...model.crossbars]
    .filter((member) => member.plies > 1)
    .map((member) => ({
      piece: member.name,
      length_mm: member.span_mm + (member.name.startsWith('crossbar') ? -1 : 1) * model.bars.top.section.w_mm,
      breadth_mm: member.stack === 'side-by-side' ? member.ply_d_mm : member.ply_w_mm,
      lines: member.plies - 1,
    }));
}

/** Every glued face of one frame. Corners, crossbar ends and brace ends only when the plan glues its corners. */
export function glueLines(model: Model): readonly GlueLine[] {
  const { corners } = model.plan;
  const { w_mm, d_mm } = model.bars.top.section;
  const plies = plyGlueLines(model).map((line): GlueLine => ({
    what: 'plies',
    count: line.lines,
    area_mm2: line.length_mm * line.breadth_mm,
    end_grain: false,
  }));
  if (corners.glue === null) return plies;
  const face: GlueLine =
    corners.cut === 'mitre'
      ? { what: 'corners', count: 4, area_mm2: w_mm * Math.SQRT2 * d_mm, end_grain: true }
      : corners.cut === 'butt'
        ? { what: 'corners', count: 4, area_mm2: w_mm * d_mm, end_grain: true }
        : { what: 'corners', count: 4, area_mm2: w_mm * w_mm, end_grain: false };
  const crossbars = model.crossbars.map((c): GlueLine => ({
    what: 'crossbar-ends',
    count: 2,
    area_mm2: c.section.w_mm * Math.min(c.section.d_mm, d_mm),
    end_grain: true,
  }));
  const braces = model.braces.map((b): GlueLine => ({
    what: 'brace-ends',
    count: 2,
    area_mm2: b.section.w_mm * Math.SQRT2 * Math.min(b.section.d_mm, d_mm),
    end_grain: true,
  }));
  const gussets = corners.brace?.kind === 'ply-gusset' ? [gussetLine(corners.brace.leg_mm + w_mm / 2, w_mm)] : [];
  const {
    face: size,
    bars: { lip_mm },
  } = model.plan;
  const lip: GlueLine[] =
    lip_mm > 0
      ? [{ what: 'lip', count: 2, area_mm2: lip_mm * (size.width_mm + size.height_mm), end_grain: false }]
      : [];
  return [...plies, face, ...crossbars, ...braces, ...gussets, ...lip];
}

/**
 * Where the gussets lie on the bars: each a triangle whose sides from the outer corner are `side` long, less the
 * opening that shows between bars of width `w`, half of it to each bar.
 */
function gussetLine(side_mm: number, w_mm: number): GlueLine {
  const open_mm = Math.max(0, side_mm - 2 * w_mm);
  return { what: 'gussets', count: 8, area_mm2: (side_mm ** 2 - open_mm ** 2) / 4, end_grain: false };
}
