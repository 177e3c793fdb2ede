import type { JointGive } from '../base/joint-give.js';
import { formatNumber } from '../base/units-format.js';
import type { Assumed } from '../plan/plan.js';
import type { Model } from './model.js';

/**
 * The joint give that was taken where the plan names none: the largest lever on the reserve that nobody has measured.
 */
export function assumedJoints({ plan, shape }: Model): Assumed[] {
  const corners = shape.corner_give['top-left'];
  const taken: Assumed[] =
    plan.corners.give === null
      ? [{ path: 'corners.give', value: `${widths(corners)}, the shelf’s number for corners joined like this` }]
      : [];
  shape.crossbars.forEach(({ give }, i) => {
    if (plan.crossbars[i]?.give === null)
      taken.push({ path: `crossbars[${i}].give`, value: `${widths(give)}, the shelf’s number for its ends` });
  });
  const ends = shape.braces[0]?.give;
  if (ends !== undefined && plan.corners.brace?.give === null) {
    taken.push({ path: 'corners.brace.give', value: `${widths(ends)}, the shelf’s number for its ends` });
  }
  const { brace } = plan.corners;
  if (brace !== null && brace.kind !== 'timber' && shape.corner_plate_Nmm_per_rad['top-left'] === 0)
    taken.push({
      path: 'corners.brace',
      value: 'adds nothing: no screw on the shelf fits under it and stays inside the bar, and no glue holds it',
    });
  return taken;
}

function widths({ plane, out, twist }: JointGive): string {
  if (plane === out && out === twist)
    return plane === 0 ? 'rigid' : `as much as ${formatNumber(plane)} bar-widths of bar`;
  return `as much as ${formatNumber(plane)} bar-widths of bar in the plane, ${formatNumber(out)} out of it, ${formatNumber(twist)} in twist`;
}
