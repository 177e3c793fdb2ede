import type { Model } from '../../model/model.js';

/**
 * Centre of gravity of the finished piece in front of its back, mm: wood at half its depth, cloth, ground and paint at
 * the front (with the lip), hardware at the back.
 */
export function centreOfGravity_mm(model: Pick<Model, 'plan' | 'bars' | 'weight'>): number {
  const { weight } = model;
  const d_mm = model.bars.top.section.d_mm;
  const front = (weight.cloth_kg + weight.ground_kg + weight.paint_kg) * (d_mm + model.plan.bars.lip_mm);
  return (weight.wood_kg * (d_mm / 2) + front) / weight.total_kg;
}
