import { readPlanWith } from '../../plan/read-plan.js';
import { loadShelf } from '../load.js';
import { BadOption } from '../quantities.js';
import { pasteText } from './report.js';

/** The plainest plan that lines can be pasted into: bars of four plies, so that any ply may be named. */
const carrier =
  'plan: 1\nname: Carrier\nface: { width: 900 mm, height: 700 mm }\nbars: { stock: strip-19x38, lay: edge, plies: 4 }\n';

/** Lines for a plan, read back by the reader of plans before they are shown. Throws BadOption for what that refuses. */
export function planPaste(where: string, lines: string): string {
  const shelf = loadShelf(undefined);
  if (!shelf.ok) throw new BadOption('The shelf that ships with the tool cannot be read.');
  const back = readPlanWith(`${carrier}${lines}\n`, 'the new lines', shelf.value);
  if (!back.ok)
    throw new BadOption(
      back.problems.map(({ path, found, allowed }) => `${path}: found ${found}; allowed: ${allowed}.`).join('\n'),
    );
  return pasteText(where, lines);
}
