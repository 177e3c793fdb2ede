import type { Model } from '../../model/model.js';
import { keyTravel_mm } from './pull-changes.js';
import { clothOf, groundOf } from './shelf-numbers.js';

/** How far the corners may be keyed out, and what stops them. */
export interface KeyLimit {
  /** At each end of the shorter side, mm. */
  readonly travel_mm: number;
  /** `ground`: it would crack. `pull`: bare cloth would pass the peak pull. */
  readonly because: 'ground' | 'pull';
}

/**
 * Farthest each corner may be keyed out along one side: the ground's crack strain, or for bare cloth the stretch from
 * working to peak pull, over the
 * shorter side (the longer allows more). The ground is laid on stretched cloth, so only what is added after counts.
 */
export function keyLimit(model: Model): KeyLimit {
  const { face, cloth, ground } = model.plan;
  const shorter_mm = Math.min(face.width_mm, face.height_mm);
  const crack = ground.coats > 0 ? groundOf(model)?.crack_strain : undefined;
  if (crack !== undefined) return { travel_mm: keyTravel_mm(crack, shorter_mm), because: 'ground' };
  const stiffness = clothOf(model).stiffness_N_per_m;
  const spare = Math.min(
    cloth.peak.x_N_per_m - cloth.working.x_N_per_m,
    cloth.peak.y_N_per_m - cloth.working.y_N_per_m,
  );
  return { travel_mm: keyTravel_mm(Math.max(spare, 0) / stiffness, shorter_mm), because: 'pull' };
}
