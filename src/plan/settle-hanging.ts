import type { Shelf } from '../shelf/shelf.js';
import { builtSize, type BuiltSize } from './build-up.js';
import type { Plan } from './plan.js';

/** The hanging with the face of the bars that the plan does not name settled: the inside, or the back where a wire from the inside would run into an upright crossbar. */
export function settleHanging({ hang, crossbars, bars }: Plan, bar: BuiltSize, shelf: Shelf, notes: Map<string, string>): Plan['hang'] {
  if (hang.by !== 'wire' || !notes.has('hang.from')) return hang;
  const met = crossbars.some(({ runs, stock, lay, plies, setback_mm }) => {
    const lumber = Object.hasOwn(shelf.lumber, stock) ? shelf.lumber[stock] : undefined;
    return runs === 'upright' && lumber !== undefined && setback_mm + builtSize(lumber, lay, plies, bars.stack).d_mm > bar.d_mm / 2;
  });
  notes.set('hang.from', met ? 'the back of the bars, since a wire from the inside would run into the upright crossbar' : 'the inside of the bars');
  return { ...hang, from: met ? 'back' : 'inside' };
}
