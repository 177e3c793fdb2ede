import { solveModel } from '../solve/solve-model.js';
import { buildModel } from '../model/build-model.js';
import type { MemberBuild, Model, Solution } from '../model/model.js';
import { torsionConstant } from '../model/section.js';
import { usualLeg_mm } from '../plan/defaults.js';
import type { Plan, PlanBrace } from '../plan/plan.js';
import { liftFrom } from '../risk/lift-curve.js';
import { warpWeights } from '../risk/ply-warp.js';
import { shelfNumber } from '../shelf/shelf-number.js';
import { curveAt, type MeasuredTwist } from './rescue-twist.js';

/** Something glued to the frame while it is held flat. */
export type GluedCure = 'brace' | 'gusset' | 'crossbar' | 'second-ply';

/** A cure with what it gives, from a full solve of the changed frame with the measured twist in it. */
export interface CureFound {
  /** Lift at the working pull afterwards, mm, signed as before. */
  readonly lift_mm: number;
  /** Reserve against twisting: soft boards, peak pull; null when no pull turns the frame. */
  readonly reserve: number | null;
}

/** The plan with something added to it; null where it has that already, or has no room for it. */
export function planWith(plan: Plan, cure: GluedCure): Plan | null {
  const { bars, corners, crossbars, face } = plan;
  const brace = (kind: PlanBrace['kind']): Plan | null =>
    corners.brace !== null
      ? null
      : {
          ...plan,
          corners: {
            ...corners,
            brace: {
              kind,
              leg_mm: usualLeg_mm(Math.min(face.width_mm, face.height_mm), plan.units),
              stock: kind === 'timber' ? bars.stock : null,
              lay: 'flat',
              give: null,
            },
          },
        };
  switch (cure) {
    case 'brace':
      return brace('timber');
    case 'gusset':
      return brace('ply-gusset');
    case 'crossbar': {
      const runs = face.width_mm >= face.height_mm ? 'upright' : 'level';
      return crossbars.length > 0
        ? null
        : {
            ...plan,
            crossbars: [{ runs, at: 0.5, stock: bars.stock, lay: bars.lay, plies: 1, setback_mm: 0, give: null }],
          };
    }
    case 'second-ply':
      return bars.plies > 1
        ? null
        : { ...plan, bars: { ...bars, plies: 2, stack: 'front-to-back', bond: 'glue', pairing: 'unsorted' } };
  }
}

/**
 * What a cure gives: the boards keep their warp, what is glued on while the frame is held flat is straight, and
 * together they spring to where they balance. Of a bar
 * with a second, straight ply as much of its warp is left as gluing two boards leaves of one.
 */
export function tryCure(model: Model, twist: MeasuredTwist, cure: GluedCure): CureFound | null {
  const plan = planWith(model.plan, cure);
  if (plan === null) return null;
  const changed = buildModel(plan, model.shelf);
  const solution = solveModel(changed);
  const unpulled_mm = unpulledLift(twist, solution, (member, kind) =>
    kept(memberOf(model, member), memberOf(changed, member), kind),
  );
  return { lift_mm: liftFrom(curveAt(solution, 1), unpulled_mm), reserve: reserveOf(changed, solution) };
}

/** Lift at no pull that the members' warp makes in a frame, mm; `share` says how much of a member's warp is left. */
export function unpulledLift(
  { warps }: MeasuredTwist,
  { influence_unpulled }: Pick<Solution, 'influence_unpulled'>,
  share: (member: string, kind: MeasuredTwist['warps'][number]['kind']) => number = () => 1,
): number {
  return warps.reduce((sum, { member, kind, per_m }) => {
    const influence = influence_unpulled.find((one) => one.member === member && one.kind === kind);
    return sum + (influence === undefined ? 0 : influence.corner_lift * 1e-3 * per_m * share(member, kind));
  }, 0);
}

/** Stiffness share × the factor on the peak pull. */
export function reserveOf({ shelf }: Model, { peak_factor }: Pick<Solution, 'peak_factor'>): number | null {
  return peak_factor === null ? null : shelfNumber(shelf, 'stiffness-share') * peak_factor;
}

const memberOf = ({ bars, crossbars }: Model, name: string): MemberBuild =>
  [...Object.values(bars), ...crossbars].find((one) => one.name === name)!;

/** How much of a bar's warp is left in it once straight boards are glued to it. */
function kept(before: MemberBuild, after: MemberBuild, kind: MeasuredTwist['warps'][number]['kind']): number {
  const weight = (build: MemberBuild): number =>
    warpWeights({
      ...build,
      J_ply_mm4: torsionConstant(build.ply_w_mm, build.ply_d_mm),
      J_bar_mm4: build.section.J_mm4,
    }).find((one) => one.kind === kind)!.weight;
  return weight(after) / weight(before);
}
