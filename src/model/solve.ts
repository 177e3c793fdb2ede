import { hangingForces } from '../mechanics/hanging/hanging-forces.js';
import { findStability, solveInfluence, solveStatics } from './analyse-frame.js';
import type { EdgePull } from './frame-shape.js';
import type { Model, Solution } from './model.js';

/** Solves the frame at every pull that is asked of it, its stability, and its answer to natural warp. */
export function solveModel(model: Model): Solution {
  const { shape, shape_stability, shape_give8, working, peak, accidental } = model;
  const hanging_forces = hangingForces(model);
  const stability = findStability(shape_stability, working);
  const peak_factor = factorAt(peak, working, stability.load_factor, () => findStability(shape_stability, peak).load_factor);
  const give8_peak_factor = findStability(shape_give8, peak).load_factor;
  const stable = stability.load_factor === null || stability.load_factor > 1;
  return {
    working: solveStatics(shape, working),
    peak: solveStatics(shape, peak),
    accidental: solveStatics(shape, accidental),
    hung: hanging_forces.length === 0 ? null : solveStatics(shape, working, hanging_forces),
    stability,
    peak_factor,
    give8_peak_factor,
    influence: stable ? solveInfluence(shape, working) : null,
    hanging_forces,
  };
}

/** A pull in proportion to one already solved needs no second solution. */
function factorAt(pull: EdgePull, solved: EdgePull, factor: number | null, solve: () => number | null): number | null {
  const ratio = solved.x > 0 ? pull.x / solved.x : pull.y / solved.y;
  const proportional = Math.abs(pull.x - ratio * solved.x) < 1e-12 && Math.abs(pull.y - ratio * solved.y) < 1e-12;
  return proportional && ratio > 0 ? (factor === null ? null : factor / ratio) : solve();
}
