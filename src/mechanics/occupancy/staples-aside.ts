import { barNames, type BarName } from '../../base/names.js';
import type { Model } from '../../model/model.js';
import { clothCutOf } from '../cloth/cloth-sheet.js';
import { stapleOrder, staplesAlong, type Staple } from '../cloth/staples.js';
import { staplesBySteel } from './staple-line.js';
import { beforePlyScrews } from './before-ply-screws.js';
import type { Occupant, OccupantKind } from './occupant.js';
import { plyScrews } from './what-occupies.js';

/** Half the crown of a staple, mm (practice: crowns are about 10 mm wide). */
const HALF_CROWN_MM = 5;
/** A screw's head, and a nail's with its filler, over its shank (practice). */
const HEAD_OVER_SHANK = 2;
/** The line of the staples is held to so much by eye, mm (proposal). */
const LINE_MM = 3;

/** Whose heads may lie in the staples' line. */
const headed: ReadonlySet<OccupantKind> = new Set(['gusset-screw', 'crossbar-screw', 'corner-nail', 'ply-screw']);

/** The staples of a frame, those that would meet a head moved along their line, and which heads those are. */
export interface StaplesAside {
  readonly order: readonly Staple[];
  /** How many were moved, and the farthest of them, mm. */
  readonly moved: number;
  readonly most_mm: number;
  /** How many have heads on both hands nearer than a staple is wide, so that they could not be moved. */
  readonly left: number;
  readonly heads: readonly OccupantKind[];
}

/**
 * Where a head breaks the surface that the cloth is fixed to, near the line of its staples: along the bar, mm; null
 * elsewhere.
 */
function headOn(
  one: Occupant,
  to: 'back' | 'edge',
  w_mm: number,
  depth_mm: number,
): { readonly at_mm: number; readonly clear_mm: number } | null {
  const middle = ([from, to_mm]: readonly [number, number]): number => (from + to_mm) / 2;
  const shank_mm = one.along_mm[1] - one.along_mm[0];
  const head_mm = (HEAD_OVER_SHANK * shank_mm) / 2;
  const off_mm =
    to === 'back' ? Math.abs(middle(one.across_mm) - w_mm / 2) : Math.abs(middle(one.deep_mm) - depth_mm / 2);
  const surfaces =
    to === 'back'
      ? one.deep_mm[0] <= 1e-6 && one.across_mm[1] - one.across_mm[0] <= shank_mm + 1e-6
      : one.across_mm[1] >= w_mm - 1e-6 && one.deep_mm[1] - one.deep_mm[0] <= shank_mm + 1e-6;
  return surfaces && off_mm < head_mm + LINE_MM
    ? { at_mm: middle(one.along_mm), clear_mm: head_mm + HALF_CROWN_MM }
    : null;
}

/**
 * Staples moved off the heads of screws and nails in their line, each to the nearest clear place on it; those of steel
 * angles are not among them, where the whole line runs beside the steel.
 */
export function staplesAside(model: Model): StaplesAside {
  const { plan, bars } = model;
  const { to, every_mm } = plan.cloth.fixing;
  const length = (side: BarName): number =>
    side === 'top' || side === 'bottom' ? plan.face.width_mm : plan.face.height_mm;
  const order = stapleOrder(
    Object.fromEntries(barNames.map((side) => [side, staplesAlong(length(side), every_mm)])) as Record<BarName, number>,
  );
  const heads = [...beforePlyScrews(model), ...plyScrews(model)].flatMap((one) => {
    const on = headed.has(one.kind) ? headOn(one, to, bars[one.bar].section.w_mm, clothCutOf(model).depth_mm) : null;
    return on === null ? [] : [{ ...on, side: one.bar, kind: one.kind }];
  });
  const steel_mm = staplesBySteel(model)?.reach_mm ?? -1;
  const met = new Set<OccupantKind>();
  let [moved, most_mm, left] = [0, 0, 0];
  const placed = order.map((staple): Staple => {
    const mm = staple.at * length(staple.side);
    // Beside the steel of an angle they do not run on the line.
    if (Math.min(mm, length(staple.side) - mm) <= steel_mm) return staple;
    const here = heads.filter(({ side }) => side === staple.side);
    const clear = (mm: number): boolean =>
      mm > 0 &&
      mm < length(staple.side) &&
      here.every(({ at_mm, clear_mm }) => Math.abs(mm - at_mm) >= clear_mm - 1e-9);
    if (clear(mm)) return staple;
    for (const { at_mm, clear_mm, kind } of here) if (Math.abs(mm - at_mm) < clear_mm) met.add(kind);
    const tries = here
      .flatMap(({ at_mm, clear_mm }) => [at_mm - clear_mm, at_mm + clear_mm])
      .filter(clear)
      .sort((p, q) => Math.abs(p - mm) - Math.abs(q - mm));
    const [to_mm] = tries;
    if (to_mm === undefined || Math.abs(to_mm - mm) > every_mm / 2) {
      left += 1;
      return staple;
    }
    moved += 1;
    most_mm = Math.max(most_mm, Math.abs(to_mm - mm));
    return { ...staple, at: to_mm / length(staple.side) };
  });
  return { order: placed, moved, most_mm, left, heads: [...met] };
}
