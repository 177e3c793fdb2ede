import { hangingForces } from '../mechanics/hanging/hanging-forces.js';
import type { EdgePull } from '../model/frame-shape.js';
import type { Model, Solution } from '../model/model.js';
import { findStability, softJointOptions, solveInfluence, solveStatics } from './analyse-frame.js';
import { scaleStatics } from './scale-statics.js';

/**
 * Solves the frame at every pull that is asked of it, its stability, and its answer to natural warp. In N, mm and rad; signs as the fields of `Solution` say.
 * Influence is null when the flat frame gives way below the working pull. Throws RangeError for a frame that is free to move, which a checked plan never is.
 */
export function solveModel(model: Model): Solution {
  const { shape, shape_stability, shape_soft, working, peak, accidental } = model;
  const hanging_forces = hangingForces(model);
  const stability = findStability(shape_stability, working);
  const atWorking = solveStatics(shape, working);
  /** The shape is linear in the pull: one in proportion to the working pull needs no second solution. */
  const staticsAt = (pull: EdgePull) => {
    const ratio = inProportion(pull, working);
    return ratio === null ? solveStatics(shape, pull) : scaleStatics(atWorking, ratio);
  };
  const stable = stability.load_factor === null || stability.load_factor > 1;
  return {
    working: atWorking,
    peak: staticsAt(peak),
    accidental: staticsAt(accidental),
    hung: hanging_forces.length === 0 ? null : solveStatics(shape, working, hanging_forces),
    stability,
    peak_factor: factorAt(peak, model, stability.load_factor),
    soft_peak_factor: findStability(shape_soft, peak, softJointOptions).load_factor,
    influence: stable ? solveInfluence(shape, working) : null,
    hanging_forces,
  };
}

/** Factor on the peak pull: the working pull's own where the two are in proportion. */
function factorAt(peak: EdgePull, { working, shape_stability }: Model, factor: number | null): number | null {
  const ratio = inProportion(peak, working);
  if (ratio === null) return findStability(shape_stability, peak, { factors: 1 }).load_factor;
  return factor === null ? null : factor / ratio;
}

/** How many times one pull is another, the same both ways; null when they are not in proportion. */
function inProportion(pull: EdgePull, other: EdgePull): number | null {
  const ratio = other.x > 0 ? pull.x / other.x : pull.y / other.y;
  const same = Math.abs(pull.x - ratio * other.x) < 1e-12 && Math.abs(pull.y - ratio * other.y) < 1e-12;
  return same && ratio > 0 ? ratio : null;
}
