import { barNames, cornerNames, type BarName, type CornerName } from '../base/names.js';
import type { Influence } from '../model/frame-results.js';
import type { Model } from '../model/model.js';

/**
 * Corner lift of the closed frame per radian by which one cut leans, mm, by corner (unsigned). The joint is glued with
 * a kink of that angle about
 * the line of the cut; the frame answers with its own stiffness. By reciprocity the lift is the kink times the moment
 * that a unit lifting force sends
 * through the joint about that line: (torque of one bar + torque of the other)/√2 for a mitre, the torque of the bar
 * that runs through for a square
 * cut (the larger is taken). A bar's torque is its answer to even twist over its length; where crossbars or braces meet
 * a bar it is taken as even along it.
 * Four equal bars, stiff in bending, mitred: a·b/(√2 (a + b)).
 */
export function liftPerTilt_mm_per_rad(
  model: Pick<Model, 'bars' | 'plan'>,
  influence: readonly Influence[],
): Readonly<Record<CornerName, number>> {
  const torque = (bar: BarName): number => {
    const twist = influence.find(({ member, kind }) => member === bar && kind === 'twist');
    if (twist === undefined) throw new Error(`no influence numbers for twist of ${bar}`);
    return Math.abs(twist.corner_lift) / model.bars[bar].span_mm;
  };
  const lift = (corner: CornerName): number => {
    const torques = barNames.filter((bar) => corner.split('-').includes(bar)).map(torque);
    return model.plan.corners.cut === 'mitre'
      ? torques.reduce((sum, one) => sum + one, 0) * Math.SQRT1_2
      : Math.max(...torques);
  };
  return Object.fromEntries(cornerNames.map((corner) => [corner, lift(corner)])) as Record<CornerName, number>;
}
