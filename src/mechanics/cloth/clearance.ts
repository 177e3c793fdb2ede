import type { Model } from '../../model/model.js';
import { pushSpan } from './frame-spans.js';
import { brushSag_mm } from '../../fit/brush-room.js';
import { clothNumber } from './shelf-numbers.js';

/** Room behind the cloth at one place while a firm brush pushes there. */
export interface Clearance {
  /** `crossbar-1` …, `braces`, or `wall` for the middle of a frame without crossbars. */
  readonly behind: string;
  /** Free depth behind the cloth at rest, mm. */
  readonly depth_mm: number;
  /** How far the brush pushes the cloth back there at working pull, mm. */
  readonly sag_mm: number;
  /** What is left, mm; negative when they touch. */
  readonly left_mm: number;
}

/**
 * Clearance over every crossbar, pushed at the middle of its length, or in front of the wall when there is none; and
 * over a corner brace, pushed at its middle.
 * A crossbar lies `setback` behind the front of the bars, a brace flush with their backs, and the lip lifts the cloth
 * by its own height. Push and pad: the shelf's numbers.
 */
export function clearances(model: Model): Clearance[] {
  const { plan } = model;
  const lip_mm = plan.bars.lip_mm;
  const braces = overBraces(model);
  if (plan.crossbars.length === 0)
    return [at(model, 'wall', 0.5, 0.5, model.bars.top.section.d_mm + lip_mm), ...braces];
  const crossbars = plan.crossbars.map((crossbar, i) => {
    const [x, y] = crossbar.runs === 'upright' ? [crossbar.at, 0.5] : [0.5, crossbar.at];
    return at(model, model.crossbars[i]?.name ?? `crossbar-${i + 1}`, x, y, crossbar.setback_mm + lip_mm);
  });
  return [...crossbars, ...braces];
}

/** One corner brace stands for all four: they lie alike, and the pulls are the same at every corner. */
function overBraces(model: Model): Clearance[] {
  const [brace] = model.braces;
  if (brace === undefined) return [];
  const { plan, bars } = model;
  const { w_mm, d_mm } = bars.top.section;
  const middle_mm = (w_mm + brace.leg_mm) / 2;
  return [
    at(
      model,
      'braces',
      middle_mm / plan.face.width_mm,
      middle_mm / plan.face.height_mm,
      d_mm + plan.bars.lip_mm - brace.section.d_mm,
    ),
  ];
}

function at(model: Model, behind: string, x: number, y: number, depth_mm: number): Clearance {
  const cloth = { face: model.plan.face, span: pushSpan(model), pull: model.plan.cloth.working };
  const sag_mm = brushSag_mm(
    cloth,
    { force_N: clothNumber(model, 'push-force'), patch_mm: clothNumber(model, 'push-patch') },
    x,
    y,
  );
  return { behind, depth_mm, sag_mm, left_mm: depth_mm - sag_mm };
}
