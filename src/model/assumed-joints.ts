import { formatNumber } from '../base/units-format.js';
import type { Assumed } from '../plan/plan.js';
import type { Model } from './model.js';

/** The joint give that was taken where the plan names none: the largest lever on the reserve that nobody has measured. */
export function assumedJoints({ plan, shape }: Model): Assumed[] {
  const corners = shape.corner_give['top-left'];
  const taken: Assumed[] = plan.corners.give === null ? [{ path: 'corners.give', value: `${widths(corners)}, the shelf’s number for corners joined like this` }] : [];
  shape.crossbars.forEach(({ give }, i) => {
    if (plan.crossbars[i]?.give === null) taken.push({ path: `crossbars[${i}].give`, value: `${widths(give)}, the shelf’s number for its ends` });
  });
  return taken;
}

const widths = (give: number): string => (give === 0 ? 'rigid' : `as much as ${formatNumber(give)} bar-widths of bar`);
