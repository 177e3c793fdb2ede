import { tapeMark_mm } from '../../base/tape.js';
import type { Plan } from '../../plan/plan.js';
import { shelfIn } from '../../shelf/in-system.js';
import type { Shelf } from '../../shelf/shelf.js';
import { blankTrim_mm } from './blank-trim.js';

/**
 * What no piece of one frame is longer than, mm, told without making the pieces: the longer side of the face with both
 * ends of a blank, or a brace, each rounded up to marks of the tape.
 */
export function lengthInReach_mm(plan: Plan, shop: Shelf): number {
  const { face, corners, units } = plan;
  const trim_mm = blankTrim_mm(shelfIn(shop, units));
  const brace_mm = corners.brace === null ? 0 : Math.SQRT2 * corners.brace.leg_mm;
  return Math.max(face.width_mm, face.height_mm) + brace_mm + 2 * trim_mm + 3 * tapeMark_mm(units);
}

/** The stocks that the pieces of one frame are cut from, some of them named more than once. */
export const stocksOf = ({ bars, crossbars, corners: { brace } }: Plan): readonly string[] => [
  bars.stock,
  ...crossbars.map(({ stock }) => stock),
  ...(brace?.kind === 'timber' && brace.stock !== null ? [brace.stock] : []),
];
