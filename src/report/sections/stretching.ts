import { foldedCorner } from '../drawings/folded-corner.js';
import { stapleOrder } from '../drawings/staple-order.js';
import { bullets, paragraph, picture, type Cell } from '../tree.js';
import type { Sheets } from '../../sheets/sheets.js';
import { mustStop, type Section, type Telling } from '../telling.js';
import { spokenName } from '../../base/names.js';
import { upToTape } from '../../base/tape.js';
import { formatQuantity } from '../../base/units-format.js';

/**
 * Stretching: the order of the staples, the second round, the corners. On a plan that must stop nothing is stretched.
 */
export function stretchingSection(told: Telling): Section {
  if (mustStop(told))
    return { title: 'Stretching', blocks: [paragraph('Not before the plan is changed.')], pictures: [] };
  const { audit, length, units } = told;
  const {
    plan,
    model,
    sheets: { cloth: sheet, steel, staples: aside },
  } = audit;
  const pictures = [
    stapleOrder({
      width_mm: plan.face.width_mm,
      height_mm: plan.face.height_mm,
      bar_w_mm: model.bars.top.section.w_mm,
      order: aside.order,
    }),
    foldedCorner(plan.cloth.fixing.to),
  ];
  const items: Cell[] = [
    `${sheet.staples} staples for a frame: ${sheet.staples_per_side.top} along each of top and bottom, ${sheet.staples_per_side.left} along each of left and right. Before the first one, see that the threads run true to the bars.`,
    'One staple in the middle of each side (two where their number is even), opposite sides in turn. Then a staple to each hand of it, top and bottom, left and right, and so outwards.',
    'Pull each place by the same feel: pliers on the bar’s edge as a lever, until the last wrinkle goes and no farther.',
    sheet.relax_share > 0.005
      ? `Second round: the bars have bowed in and the middle has lost about ${formatQuantity(sheet.relax_share, 'share', units)} of the pull. Draw the middle staples, pull again, set them anew, outwards as before.`
      : 'Second round: draw the middle staples, pull again and set them anew, outwards as before.',
    ...(steel === null
      ? []
      : [
          steel.on_steel > 0
            ? `Within ${length(steel.reach_mm)} of the corners the steel leaves no room for staples: leave them out there.`
            : `Within ${length(steel.reach_mm)} of the corners the staples go beside the steel, in the ${length(steel.strip_mm)} outside it.`,
        ]),
    ...(aside.moved + aside.left === 0 ? [] : [onHeads(told, aside)]),
    'The corners last, one after the other, as the second picture shows; all four turned the same way.',
    `${plan.cloth.fixing.to === 'back' ? 'Turn' : 'Lay'} the ${length(plan.cloth.fixing.turn_mm)} beyond the staples ${plan.cloth.fixing.to === 'back' ? 'under' : 'round onto the back'} and fix it flat, or trim it straight.`,
  ];
  return {
    title: 'Stretching',
    blocks: [...pictures.slice(0, 1).map(picture), bullets(items), ...pictures.slice(1).map(picture)],
    pictures,
  };
}

/** Staples that would meet the heads of screws or nails, and where they go. */
function onHeads({ length, units }: Telling, { moved, most_mm, left, heads }: Sheets['staples']): string {
  const them = (n: number): string => `${n} ${n === 1 ? 'staple' : 'staples'}`;
  const beside =
    moved === 0
      ? ''
      : ` Set ${moved === 1 ? 'it' : 'each'} beside the head, up to ${length(upToTape(most_mm, units))} along the line, as the picture has ${moved === 1 ? 'it' : 'them'}.`;
  return `${them(moved + left)} of the line would meet the heads of the ${heads.map((kind) => `${spokenName(kind)}s`).join(' and ')}.${beside}${left === 0 ? '' : ` For ${them(left)} the heads leave no room: leave ${left === 1 ? 'it' : 'them'} out there.`}`;
}
