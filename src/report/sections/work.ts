import { formatQuantity } from '../../base/units-format.js';
import { paragraph, setApart, steps, strong, type Cell } from '../tree.js';
import { mustStop, notToTheSaw, type Section, type Telling } from '../telling.js';
import { waitInWords } from '../words/waiting.js';
import { allOf } from '../words/plural.js';

/** Part 8: every step this plan has, in order, with the waiting in between. */
export function workSection(told: Telling): Section {
  if (mustStop(told))
    return {
      title: 'Order of work',
      blocks: [setApart(paragraph(strong('Nothing to build yet.'), ` ${notToTheSaw}`))],
      pictures: [],
    };
  const work = told.audit.sheets.work;
  const hours = work.reduce((sum, step) => sum + (step.wait_h ?? 0), 0);
  const items = [
    ...choosing(told),
    ...settling(told),
    ...work.map((step): Cell => {
      const text = step.text;
      return step.wait_h === null || step.wait_h <= 0
        ? text
        : [`${text} `, strong(`Wait ${waitInWords(step.wait_h)}`), ` for ${step.wait_for}.`];
    }),
  ];
  return {
    title: 'Order of work',
    blocks: [
      ...(told.audit.plan.count === 1
        ? []
        : [
            paragraph(
              `Numbers of screws, nails, clamps and staples are for one frame; ${allOf(told.audit.plan.count)} are made in the same way, side by side.`,
            ),
          ]),
      steps(items),
      ...(hours > 0
        ? [
            paragraph(
              `Waiting at the bench in all: about ${waitInWords(hours)}${settling(told).length > 0 ? ', the drying of the boards not counted' : ''}.`,
            ),
          ]
        : []),
    ],
    pictures: [],
  };
}

/** How many boards are sighted for each that is bought, by how they are to be chosen (proposals). */
const sighted = { unsorted: 1, plain: 1.5, picked: 2 } as const;

/** At the shop: how many boards to sight and how many to bring home, the number of the buying list. */
function choosing({ audit }: Telling): readonly Cell[] {
  const bought = audit.supplies.boards.filter(({ on_hand }) => !on_hand);
  const home = bought.reduce((sum, { count }) => sum + count, 0);
  const spare = bought.reduce((sum, { count, role }) => sum + (role === 'spare' ? count : 0), 0);
  if (home === 0) return [];
  const { chosen } = audit.plan.lumber;
  const boards = (n: number): string => `${n} ${n === 1 ? 'board' : 'boards'}`;
  const look = Math.max(home, Math.ceil(sighted[chosen] * home - 1e-9));
  const all = `bring home ${boards(home)}${spare > 0 ? `, ${spare} of them to spare` : ''}, as the buying list says${audit.plan.count === 1 ? '' : ` for ${allOf(audit.plan.count)} frames`}`;
  if (chosen === 'unsorted')
    return [`At the shop: ${all}; leave those that are split, wet to the hand or bent like a bow.`];
  const how =
    chosen === 'picked'
      ? 'sight along all edges and hold two straight sticks across the ends: leave what twists or bows'
      : 'look along each and leave what clearly twists or bows, has a knot through its edge, or feels wet';
  return [`At the shop: take down about ${boards(look)}, ${how}, and ${all}.`];
}

/** Boards that are damper than the room wait first. */
function settling(told: Telling): readonly Cell[] {
  const gap = told.number('lumber.moisture_gap_pct');
  const days = told.number('lumber.wait_days');
  if (gap === null || days === null || gap < 1 || days < 1) return [];
  return [
    [
      'Bring the boards into the room and lay them on sticks, air on all sides. ',
      strong(`Wait about ${formatQuantity(days, 'days', told.units)}`),
      ` for them to lose most of the ${formatQuantity(gap, 'points', told.units)} of moisture they hold too much. ${told.audit.tools?.moisture_meter === false ? 'Without a meter the weight of a board tells when.' : `When you cut, a meter may read ${formatQuantity(told.audit.sheets.promises.moisture.most_pct, 'pct', told.units)} at most.`}`,
    ],
  ];
}
