import type { CornerName } from '../base/names.js';
import { clothOf } from '../mechanics/cloth/shelf-numbers.js';
import type { FrameShape } from '../model/frame-shape.js';
import type { Model, Solution } from '../model/model.js';
import { boardState } from '../risk/assess.js';
import { liftFrom } from '../risk/lift-curve.js';
import { solveLiftCompliance } from '../solve/analyse-frame.js';
import { asMoistAsRead } from './likely-causes.js';
import { tryCure, type CureFound, type GluedCure } from './rescue-cures.js';
import { reopen, type Reopened } from './rescue-reopen.js';
import { curveAt, measuredTwist } from './rescue-twist.js';
import { clothOn, type Sheet } from './sheet.js';

/** Easing the cloth along the diagonal of the raised corners. */
export interface Eased {
  /** Share of the working pull that is let go along that diagonal. */
  readonly share: number;
  /** How far the cloth slips along it, over its whole length, mm. */
  readonly slip_mm: number;
  readonly lift_mm: number;
}

/** What brings a frame that twists flat again, each worked out with the twist that was read in it. */
export interface Rescue {
  /** Signed: top right and bottom left up positive. */
  readonly lift_mm: number;
  readonly raised: CornerName;
  readonly limit_mm: number;
  readonly cloth_on: boolean;
  /** Null when the cloth is not on, or easing it does nothing. */
  readonly easing: Eased | null;
  /** Percentage points the boards still dry; 0 when resting brings nothing. */
  readonly to_dry_pct: number;
  readonly cures: readonly (CureFound & { readonly cure: GluedCure })[];
  readonly reopened: (Reopened & { readonly corner: CornerName }) | null;
  /** True when nothing brings it under the limit with a reserve of at least one. */
  readonly anew: boolean;
}

/** Most of the pull that is let go along one diagonal before the cloth hangs in folds (`proposal`). */
const most_eased = 0.4;
const sure_reserve = 1;

/**
 * The rescue of a frame whose corner stands up by `lift_mm` at a share of the working pull. Throws RangeError where
 * nothing can vary.
 */
export function rescueOf(
  model: Model,
  solution: Solution,
  sheet: Sheet,
  lift_mm: number,
  share: number,
  limit_mm: number,
): Rescue {
  const built = asMoistAsRead(model, sheet);
  const twist = measuredTwist(built, solution, lift_mm, share);
  const cloth_on = clothOn(sheet);
  const raised: CornerName = sheet.lifted ?? (lift_mm > 0 ? 'top-right' : 'top-left');
  const cures = (['brace', 'gusset', 'crossbar', 'second-ply'] as const).flatMap((cure) => {
    const found = tryCure(built, twist, cure);
    return found === null ? [] : [{ cure, ...found }];
  });
  const easing = cloth_on ? ease(model, solution, twist.unpulled_mm, share, limit_mm) : null;
  const opened = reopen(model.shape, twist, raised);
  const flat = (mm: number): boolean => Math.abs(mm) <= limit_mm;
  const holds = ({ lift_mm: mm, reserve }: CureFound): boolean =>
    flat(mm) && (reserve === null || reserve >= sure_reserve);
  const ownReserve = solution.stability.load_factor === null || solution.stability.load_factor > sure_reserve / 0.67;
  return {
    lift_mm,
    raised,
    limit_mm,
    cloth_on,
    easing,
    cures,
    to_dry_pct: boardState(built).drying_pct,
    reopened: opened === null ? null : { ...opened, corner: raised },
    anew: !cures.some(holds) && !(ownReserve && ((easing !== null && flat(easing.lift_mm)) || opened !== null)),
  };
}

/**
 * How far shear of the cloth (N/mm), at the front edge of the bars, e before their centre lines, moves the free corner,
 * mm; null where the frame is free to move. A corner that
 * lifts by y lets two of the bars rise by y from end to end, each carrying its front edge e y along the shear: work 2 S
 * e y, so it lifts as a force of 2 S e there would lift it.
 */
export function liftOfShear_mm(shape: FrameShape, shear_N_per_mm: number): number | null {
  const compliance = solveLiftCompliance(shape, { x: 0, y: 0 });
  return compliance === null
    ? null
    : shear_N_per_mm * (shape.eccentricity_mm.top + shape.eccentricity_mm.left) * compliance;
}

/**
 * Shear that cloth of an even pull (N/mm) has along the sides of the frame once a share of it is let go along one
 * diagonal: half of what is let go × the sine of twice the diagonal's angle.
 */
export const shearOfEasing_N_per_mm = (
  { span_x_mm, span_y_mm }: FrameShape,
  pull_N_per_mm: number,
  eased: number,
): number => (eased * pull_N_per_mm * Math.sin(2 * Math.atan2(span_y_mm, span_x_mm))) / 2;

/**
 * Cloth that pulls less along the raised diagonal, and shears. The mean pull falls too. Just as much as
 * brings the lift to half the limit, at most `most_eased`.
 */
function ease(model: Model, solution: Solution, unpulled_mm: number, share: number, limit_mm: number): Eased | null {
  const { shape, working } = model;
  const per_shear_mm = liftOfShear_mm(shape, 1);
  if (per_shear_mm === null) return null;
  const pull = ((working.x + working.y) / 2) * share;
  const after = (eased: number): number => {
    const shear = shearOfEasing_N_per_mm(shape, pull, eased);
    return liftFrom(
      curveAt(solution, share * (1 - eased / 2)),
      unpulled_mm - Math.sign(unpulled_mm) * shear * per_shear_mm,
    );
  };
  const side = Math.sign(unpulled_mm);
  let eased = 0;
  while (eased < most_eased - 1e-9 && side * after(eased) > limit_mm / 2) eased += 0.05;
  if (eased === 0) return null;
  const strain = (eased * pull * 1000) / clothOf(model).stiffness_N_per_m;
  return { share: eased, slip_mm: strain * Math.hypot(shape.span_x_mm, shape.span_y_mm), lift_mm: after(eased) };
}
