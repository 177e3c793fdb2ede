import { fieldsOf, lazily } from '../base/lazily.js';
import { once } from '../base/once.js';
import { hangingForces } from '../mechanics/hanging/hanging-forces.js';
import type { Propeller, Statics } from '../model/frame-results.js';
import type { EdgePull } from '../model/frame-shape.js';
import type { Model, Solution } from '../model/model.js';
import { findStability, softerFactor, solveInfluence, solveStatics } from './analyse-frame.js';
import { scaleStatics } from './scale-statics.js';

/**
 * Solves the frame at every pull that is asked of it, its stability, and its answer to natural warp, each part when it
 * is first read. In N, mm and rad; signs as the
 * fields of `Solution` say. Throws RangeError for a frame that is free to move, which a checked plan never is.
 */
export function solveModel(model: Model): Solution {
  const { shape, shape_stability, shape_soft, working: pull, peak } = model;
  const peak_ratio = inProportion(peak, pull);
  /** The shape is linear in the pull: one in proportion to the working pull needs no second solution. */
  const staticsAt = (other: EdgePull): Statics => {
    const ratio = inProportion(other, pull);
    return ratio === null ? solveStatics(shape, other) : scaleStatics(frame.working, ratio);
  };
  /** At the peak pull: the working pull's own factors where the two are in proportion. */
  const atPeak = once((): { readonly factor: number | null; readonly propeller: Propeller | null } => {
    const { load_factor, propeller } = peak_ratio === null ? findStability(shape_stability, peak) : frame.stability;
    const scale = peak_ratio ?? 1;
    return {
      factor: load_factor === null ? null : load_factor / scale,
      propeller: propeller === null ? null : { ...propeller, factor: propeller.factor / scale },
    };
  });
  const frame: FrameSolution = lazily<FrameSolution>({
    working: () => solveStatics(shape, pull),
    working_x: () => solveStatics(shape, { x: pull.x, y: 0 }),
    peak: () => staticsAt(peak),
    accidental: () => staticsAt(model.accidental),
    stability: () => findStability(shape_stability, pull),
    peak_factor: () => atPeak().factor,
    peak_propeller: () => atPeak().propeller,
    soft_peak_factor: () => {
      const factor = softerFactor(shape_soft, shape_stability, peak_ratio === null ? peak : pull);
      return factor === null ? null : factor / (peak_ratio ?? 1);
    },
    influence: () => {
      const { load_factor } = frame.stability;
      return load_factor === null || load_factor > 1 ? solveInfluence(shape, pull) : null;
    },
    influence_unpulled: () => {
      const answer = solveInfluence(shape, { x: 0, y: 0 });
      if (answer === null) throw new Error('a frame without pull is always stable');
      return answer;
    },
  });
  return hungAs(model, frame);
}

/** What is solved of a frame however it hangs. */
type FrameSolution = Omit<Solution, 'hung' | 'hanging_forces'>;

/** The same frame hung as this model says: only the hanging is worked out anew. */
export function hungAs(model: Model, frame: FrameSolution): Solution {
  const forces = once(() => hangingForces(model));
  return lazily<Solution>({
    ...fieldsOf(frame),
    hung: () => (forces().length === 0 ? null : solveStatics(model.shape, model.working, forces())),
    hanging_forces: forces,
  });
}

/** How many times one pull is another, the same both ways; null when they are not in proportion. */
function inProportion(pull: EdgePull, other: EdgePull): number | null {
  const ratio = other.x > 0 ? pull.x / other.x : pull.y / other.y;
  const same = Math.abs(pull.x - ratio * other.x) < 1e-12 && Math.abs(pull.y - ratio * other.y) < 1e-12;
  return same && ratio > 0 ? ratio : null;
}
