import { barNames, type BarName } from '../../base/names.js';
import { GRAVITY_N_PER_KG } from '../../base/gravity.js';
import type { PointForce } from '../../model/frame-shape.js';
import type { Model } from '../../model/model.js';
import type { Plan } from '../../plan/plan.js';
import { hangingPoints } from '../occupancy/hanging-points.js';
import { ringSpan_mm, wireGeometry } from './wire-geometry.js';
import { wireForces } from './wire-forces.js';

/**
 * Fraction along the left and right bars (centre line, from the bottom) where the rings sit; `drop_mm` is measured from
 * the top edge of the frame.
 */
export function ringPlace({ face }: Pick<Plan, 'face'>, drop_mm: number, bar_w_mm: number): number {
  const at = (face.height_mm - drop_mm - bar_w_mm / 2) / (face.height_mm - bar_w_mm);
  return Math.min(0.98, Math.max(0.02, at));
}

/**
 * Point forces of a frame hanging by its wire: the wire's inward and upward pull at each ring, and the weight shared
 * over the four bars by length as two forces
 * per bar at the quarter points (same largest bending as an even load). They balance, so the supports of the frame
 * solution carry nothing.
 * Empty when the frame does not hang by a wire, or when a wire without slack could not carry it.
 */
export function hangingForces(model: Model): readonly PointForce[] {
  const { plan, bars } = model;
  if (plan.hang.by !== 'wire') return [];
  const weight_N = model.weight.total_kg * GRAVITY_N_PER_KG;
  const bar_w_mm = bars.left.section.w_mm;
  const wire = wireGeometry(ringSpan_mm(plan, bar_w_mm), plan.hang.slack_mm, plan.hang.hooks);
  if (wire === null) return [];
  const { inward_N, lift_N } = wireForces(weight_N, wire.angle_deg, plan.hang.hooks);
  const at = ringPlace(plan, hangingPoints(model).drop_mm, bar_w_mm);
  const length = (name: BarName): number =>
    name === 'top' || name === 'bottom' ? plan.face.width_mm : plan.face.height_mm;
  const around = 2 * (plan.face.width_mm + plan.face.height_mm);
  const forces: PointForce[] = [
    { bar: 'left', at, Fx: inward_N, Fy: lift_N, Fz: 0 },
    { bar: 'right', at, Fx: -inward_N, Fy: lift_N, Fz: 0 },
  ];
  for (const bar of barNames) {
    const Fy = (-weight_N * length(bar)) / around / 2;
    forces.push({ bar, at: 0.25, Fx: 0, Fy, Fz: 0 }, { bar, at: 0.75, Fx: 0, Fy, Fz: 0 });
  }
  return forces;
}
