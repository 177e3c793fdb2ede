import { setInText } from '../base/yaml-edit.js';
import { digits } from '../measure/reading.js';
import { pliesOf } from '../plan/plies-of.js';
import type { Plan, PlanBoard } from '../plan/plan.js';

const deg_per_rad = 180 / Math.PI;
/** More than anybody reads at a bench. */
const figures = 5;
/** Places on a board are written to a hundredth of a millimetre. */
const from_figures = 7;

/**
 * The text of a plan file with these boards in place of those it had, comments kept; null when the file is built in a
 * way that cannot be changed.
 */
export function writeBoards(text: string, plan: Plan, boards: readonly PlanBoard[]): string | null {
  return setInText(text, ['boards'], boards.length === 0 ? undefined : boards.map((board) => lineOf(board, plan)));
}

function lineOf(
  { for: member, ply, twist_rad_per_m, bow_per_m, crook_per_m, on }: PlanBoard,
  plan: Plan,
): Readonly<Record<string, string | number>> {
  return {
    for: member,
    ...(pliesOf(plan, member) === 1 ? {} : { ply }),
    ...(on === undefined
      ? {}
      : { board: on.mark, ...(on.from_mm === 0 ? {} : { from: `${digits(on.from_mm, from_figures)} mm` }) }),
    ...(twist_rad_per_m === null ? {} : { twist: `${signed(twist_rad_per_m * deg_per_rad)} deg/m` }),
    ...(bow_per_m === null ? {} : { bow: `${signed(bow_per_m)} /m` }),
    ...(crook_per_m === null ? {} : { crook: `${signed(crook_per_m)} /m` }),
  };
}

const signed = (value: number): string => `${value < 0 ? '-' : ''}${digits(Math.abs(value), figures)}`;
