import type { Plan } from '../plan/plan.js';
import type { Shelf } from '../shelf/shelf.js';
import { mostPlies } from './builds.js';
import { bestCloths, glueOptions, hangOptions, nailOptions, settledMoisture_pct } from './options.js';

/** The space that is searched for this plan, in sentences: what is tried with what, and what stays as it is. */
export function spaceInWords(plan: Plan, shelf: Shelf): readonly string[] {
  const measured = plan.boards.length > 0;
  const stocks = Object.keys(shelf.lumber).length;
  const settled = settledMoisture_pct(plan);
  const hangs = hangOptions(plan).length;
  const [glue, nails, cloths] = [
    glueOptions(plan, shelf).length > 0,
    nailOptions(plan).length > 0,
    bestCloths(plan, shelf).length,
  ];
  return [
    measured
      ? 'Stock and plies stay as planned, because the plan has boards that were measured; lay flat or on edge, stack and bond are tried.'
      : `Bars of each of the ${stocks} stocks on the shelf, flat and on edge, of one to ${mostPlies === 3 ? 'three' : mostPlies} boards side by side or one behind the other, glued or glued and screwed, and as planned.`,
    'Crossbars as planned, none, one, two or three upright or level ones evenly spaced, or crossing (one with one, two with one), each one board of the bars’ stock, flat or on edge.',
    'Corner braces as planned, none, or timber of the bars’ stock with the usual leg.',
    ...(plan.ply_screws === null ? [] : ['Ply screws as planned, or those that fit.']),
    `Boards chosen and paired as planned or with more care${settled === null ? '' : ', and dried to the room before cutting or not'}.`,
    ...(hangs === 0
      ? []
      : [
          `Hung as planned; only where that fails, ${hangs} other ways: two hooks, other slacks of the wire, rings in the other face.`,
        ]),
    'Crossbars set back as planned, new ones as is usual; only where the brush would touch them, further back.',
    'Of all these, the ones that a plan file may say without an error or a new warning.',
    ...(glue ? ['Dry corners as planned, or glued.'] : []),
    ...(nails ? ['Corner nails as planned, those that fit, or none.'] : []),
    ...(cloths > 0
      ? [`The cloth as planned, or the ${cloths === 1 ? 'one' : 'cheapest and the lightest'} from a wider roll.`]
      : []),
    `Size, corner cut${glue ? '' : ', corner glue'}${nails ? '' : ', nails'}${cloths > 0 ? '' : ', cloth'}, pull and room stay as planned.`,
  ];
}
