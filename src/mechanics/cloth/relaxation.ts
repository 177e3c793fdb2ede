import type { Model, Solution } from '../../model/model.js';
import { pullChangeFromBow_N_per_m } from './pull-changes.js';
import { clothOf } from './shelf-numbers.js';

/**
 * Share of the working pull that the middle of the cloth loses because opposite bars bow in, the worse of the two directions, 0..1 (1 = slack).
 * Elastic bow at working pull, whole face length; bars that bow out count as nothing lost.
 */
export function relaxShare(model: Model, solution: Solution): number {
  const { bars } = solution.working;
  const { face, cloth } = model.plan;
  const stiffness = clothOf(model).stiffness_N_per_m;
  const loss_x = -pullChangeFromBow_N_per_m(stiffness, bars.left.inward_bow_mm, bars.right.inward_bow_mm, face.width_mm) / cloth.working.x_N_per_m;
  const loss_y = -pullChangeFromBow_N_per_m(stiffness, bars.top.inward_bow_mm, bars.bottom.inward_bow_mm, face.height_mm) / cloth.working.y_N_per_m;
  return Math.min(Math.max(loss_x, loss_y, 0), 1);
}
