import { HOOKS_APART_SHARE, meetsUpright } from '../fit/wire-depth.js';
import type { Shelf } from '../shelf/shelf.js';
import { builtSize, type BuiltSize } from './build-up.js';
import type { Plan } from './plan.js';

/** The hanging with the face of the bars that the plan does not name settled: the inside, or the back where a wire from the inside would run into an upright crossbar. */
export function settleHanging({ face, hang, crossbars, bars }: Plan, bar: BuiltSize, shelf: Shelf, notes: Map<string, string>): Plan['hang'] {
  if (hang.by !== 'wire' || !notes.has('hang.from')) return hang;
  const span_mm = face.width_mm - 2 * bar.w_mm;
  const wire = { ring_x_mm: bar.w_mm, hook_x_mm: (face.width_mm - (hang.hooks >= 2 ? HOOKS_APART_SHARE * span_mm : 0)) / 2, ring_deep_mm: bar.d_mm / 2 };
  const met = crossbars.some(({ runs, at, stock, lay, plies, setback_mm }) => {
    const lumber = Object.hasOwn(shelf.lumber, stock) ? shelf.lumber[stock] : undefined;
    if (runs !== 'upright' || lumber === undefined) return false;
    const { w_mm, d_mm } = builtSize(lumber, lay, plies, bars.stack);
    return meetsUpright(wire, { middle_mm: at * face.width_mm, w_mm, back_mm: bar.d_mm - setback_mm - d_mm }, face.width_mm);
  });
  notes.set('hang.from', met ? 'the back of the bars, since a wire from the inside would run into the upright crossbar' : 'the inside of the bars');
  return { ...hang, from: met ? 'back' : 'inside' };
}
