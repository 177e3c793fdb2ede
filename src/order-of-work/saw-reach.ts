import type { UnitSystem } from '../base/names.js';
import { laidSize } from '../plan/build-up.js';
import type { Model } from '../model/model.js';
import { downToMark, tapeMark_mm } from '../base/tape.js';
import { formatLength } from '../base/units-format.js';
import { shelfNumber } from '../shelf/shelf-number.js';
import type { ToolsAtHand } from './tools-at-hand.js';

/** Whether the saw takes the pieces as they stand in it. */
export interface SawReach {
  /**
   * How high the saw cuts, down to a mark of the tape, and the highest piece that is cut to length as it stands, mm.
   */
  readonly saw_mm: number;
  readonly highest_mm: number;
  readonly reaches: boolean;
}

/**
 * The highest piece stands with its edge down: a ply before gluing where plies are cut loose, the whole bar where it is
 * cut after gluing. Laid flat the wide side is across.
 */
export function sawReach(model: Model, tools: ToolsAtHand = {}): SawReach {
  const { plan, bars, crossbars, braces } = model;
  const saw_mm = downToMark(tools.saw_height_mm ?? shelfNumber(model.shelf, 'saw-height'), tapeMark_mm(plan.units));
  const highest_mm = Math.max(
    bars.top.section.d_mm,
    ...crossbars.map(({ section }) => section.d_mm),
    ...braces.map(({ stock }) => laidSize(stock, plan.corners.brace?.lay ?? 'flat').d_mm),
  );
  return { saw_mm, highest_mm, reaches: highest_mm <= saw_mm + 1e-9 };
}

/** What to do where the saw does not reach, in sentences; empty where it does. */
export function sawAdvice(
  { saw_mm, highest_mm, reaches }: SawReach,
  mitred: boolean,
  units: UnitSystem,
  own = false,
): string {
  if (reaches) return '';
  const said = (mm: number): string => formatLength(mm, units);
  return ` The pieces stand ${said(highest_mm)} high and ${own ? 'the saw here' : 'a common mitre box'} cuts ${said(saw_mm)}: mark them all round with a square, saw from one edge as deep as it goes, turn the piece over and meet the cut from the other edge, then true the end with a plane.${
    mitred
      ? ' Or lay them flat and tilt the blade to 45°, or have the shop cut the mitres.'
      : ' Or lay them flat and cut them so, or have the shop cut them.'
  }`;
}
