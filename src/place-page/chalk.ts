import { formatLength } from '../base/units-format.js';
import type { UnitSystem } from '../base/names.js';
import type { PileBoard } from '../pile/pile.js';
import { userText } from '../report/clean-text.js';
import { strong, type Cell } from '../report/tree.js';

/** How boards get their chalk, in steps. */
export const chalking: readonly Cell[] = [
  'Boards that bear their chalk from when they were read keep it: the readings hold for those marks. The steps below are for boards without it.',
  'Write the board’s letter on the wide face that the list below names (of a square board, on the one over which its bow was read): that is its marked face.',
  'Put a stroke at one end, as the list says: its marked end. All lengths below are measured from there.',
  'Hold the board with the letter towards you and the marked end on your left. The edge on top is its marked edge.',
];

/** Where the chalk of a board goes, so that its readings hold: from which side was found hollow. */
export function chalkOf(board: PileBoard, units: UnitSystem): Cell {
  const { bow_per_m, crook_per_m, knots, cut } = board;
  if (cut === 'mitre' || cut === 'mitre-on-edge') return [strong(userText(board.mark, 12)), `: cut already; its long side is the marked ${cut === 'mitre' ? 'edge' : 'face'}.`];
  const face = bow_per_m === null || bow_per_m === 0 ? 'letter on any wide face' : `letter on the ${bow_per_m > 0 ? 'hollow' : 'round'} face`;
  const end = crook_per_m === null || crook_per_m === 0 ? (knots.length > 0 ? 'stroke at the end that its bad places were measured from' : 'stroke at either end') : `stroke at the end that is on your left when the ${crook_per_m > 0 ? 'hollow' : 'round'} edge is on top`;
  const fixed = knots.length > 0 ? `; the ${knots.length === 1 ? 'bad place' : 'bad places'} at ${knots.map(({ from_mm, to_mm }) => `${formatLength(from_mm, units)} to ${formatLength(to_mm, units)}`).join(', ')} from the marked end ${knots.length === 1 ? 'stays' : 'stay'} out of every piece` : '';
  return [strong(userText(board.mark, 12)), `: ${face}, ${end}${fixed}.`];
}
