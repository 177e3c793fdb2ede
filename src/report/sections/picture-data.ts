import { cornerNames } from '../../base/names.js';
import { CLEAT_LONG_MM } from '../../mechanics/hanging/cleat.js';
import type { HangingSheet } from '../../sheets/sheets.js';
import type { Drawn } from '../audit-view.js';
import type { BarSection } from '../drawings/bar-section.js';
import type { FrontView } from '../drawings/front-view.js';
import type { HangingPicture } from '../drawings/hanging-shape.js';

/** The numbers the front view draws, from the finished audit. */
export function frontViewOf({ plan, model }: Drawn): FrontView {
  const { bars } = model.shape;
  const brace = plan.corners.brace;
  const timber = new Map(model.braces.map((b) => [b.corner, b]));
  return {
    units: plan.units,
    width_mm: plan.face.width_mm,
    height_mm: plan.face.height_mm,
    bar_w_mm: { top: bars.top.w_mm, bottom: bars.bottom.w_mm, left: bars.left.w_mm, right: bars.right.w_mm },
    cut: plan.corners.cut,
    seams_mm: seamsOf(model.bars.top),
    crossbars: model.shape.crossbars.map((c) => ({ name: c.name, runs: c.runs, at: c.at, w_mm: c.section.w_mm })),
    braces:
      brace === null
        ? []
        : cornerNames.map((corner) => ({
            corner,
            kind: brace.kind,
            leg_mm: model.plate?.leg_mm ?? brace.leg_mm,
            w_mm: timber.get(corner)?.section.w_mm ?? model.plate?.wide_mm ?? 0,
          })),
  };
}

/** Where the plies of a bar meet, mm from its outer edge; only plies side by side show it from the front. */
export function seamsOf({ plies, stack, ply_w_mm }: Drawn['model']['bars']['top']): readonly number[] {
  return stack === 'side-by-side' ? Array.from({ length: plies - 1 }, (_, i) => (i + 1) * ply_w_mm) : [];
}

/** The numbers the section through a bar draws: the top bar's. */
export function barSectionOf({ plan, model }: Pick<Drawn, 'plan' | 'model'>): BarSection {
  const bar = model.bars.top;
  return {
    units: plan.units,
    w_mm: bar.section.w_mm,
    d_mm: bar.section.d_mm,
    plies: bar.plies,
    stack: bar.stack,
    bond: bar.plies === 1 ? 'single' : bar.bond,
    lip_mm: plan.bars.lip_mm,
    fixing: plan.cloth.fixing.to,
    turn_mm: plan.cloth.fixing.turn_mm,
  };
}

/** The numbers the picture of the hanging piece draws. */
export function hangingPictureOf(drawn: Drawn, state: HangingSheet): HangingPicture {
  const { plan, model } = drawn;
  const bar = model.bars.left.section;
  return {
    units: plan.units,
    frame: frontViewOf(drawn),
    by: state.by,
    strips: (state.cleat?.middles_mm ?? []).map((middle_mm) => ({
      middle_mm,
      long_mm: CLEAT_LONG_MM,
      high_mm: state.cleat?.high_mm ?? 0,
    })),
    hooks: state.hooks_count,
    width_mm: plan.face.width_mm,
    height_mm: plan.face.height_mm,
    bar_w_mm: bar.w_mm,
    bar_d_mm: bar.d_mm,
    drop_mm: state.points.drop_mm,
    ring_span_mm: state.ring_span_mm,
    rise_mm: state.wire?.rise_mm ?? null,
    hooks_apart_mm: state.wire?.hooks_apart_mm ?? 0,
    wire_angle_deg: state.wire?.angle_deg ?? null,
    wire_tension_N: state.forces?.tension_N ?? null,
    inward_pull_N: state.forces?.inward_N ?? null,
    weight_N: state.weight_N,
    lean_deg: state.lean?.angle_deg ?? null,
    top_standoff_mm: state.lean?.top_standoff_mm ?? null,
    behind: state.stands_out,
  };
}
