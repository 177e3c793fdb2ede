import { formatQuantity } from '../../base/units-format.js';
import { moisturePromise } from '../../bench-sheet/moisture-promise.js';
import { orderOfWork } from '../../mechanics/order-of-work.js';
import { paragraph, steps, strong, type Cell } from '../tree.js';
import type { Section, Telling } from '../telling.js';
import { inOwnUnits } from '../words/own-units.js';
import { waitInWords } from '../words/waiting.js';

/** Part 8: every step this plan has, in order, with the waiting in between. */
export function workSection(told: Telling): Section {
  const work = orderOfWork(told.audit.model);
  const hours = work.reduce((sum, step) => sum + (step.wait_h ?? 0), 0);
  const items = [
    ...settling(told),
    ...work.map((step): Cell => {
      const text = inOwnUnits(step.text, told.units);
      return step.wait_h === null || step.wait_h <= 0 ? text : [`${text} `, strong(`Wait ${waitInWords(step.wait_h)}`), ` for ${step.wait_for}.`];
    }),
  ];
  return {
    title: 'Order of work',
    blocks: [steps(items), ...(hours > 0 ? [paragraph(`Waiting at the bench in all: about ${waitInWords(hours)}${settling(told).length > 0 ? ', the drying of the boards not counted' : ''}.`)] : [])],
    pictures: [],
  };
}

/** Boards that are damper than the room wait first. */
function settling(told: Telling): readonly Cell[] {
  const gap = told.number('lumber.moisture_gap_pct');
  const days = told.number('lumber.wait_days');
  if (gap === null || days === null || gap < 1 || days < 1) return [];
  return [['Bring the boards into the room and lay them on sticks, air on all sides. ', strong(`Wait about ${formatQuantity(days, 'days', told.units)}`), ` for them to lose most of the ${formatQuantity(gap, 'pct', told.units)} of water they hold too much. When you cut, a meter may read ${formatQuantity(moisturePromise(told.audit).most_pct, 'pct', told.units)} at most.`]];
}
