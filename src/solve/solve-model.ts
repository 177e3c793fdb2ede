import { once } from '../base/once.js';
import { hangingForces } from '../mechanics/hanging/hanging-forces.js';
import type { Propeller } from '../model/frame-results.js';
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
  const working = once(() => solveStatics(shape, pull));
  /** The shape is linear in the pull: one in proportion to the working pull needs no second solution. */
  const staticsAt = (other: EdgePull) =>
    once(() => {
      const ratio = inProportion(other, pull);
      return ratio === null ? solveStatics(shape, other) : scaleStatics(working(), ratio);
    });
  const stability = once(() => findStability(shape_stability, pull));
  /** At the peak pull: the working pull's own factors where the two are in proportion. */
  const atPeak = once((): { readonly factor: number | null; readonly propeller: Propeller | null } => {
    const ratio = inProportion(peak, pull);
    const { load_factor, propeller } = ratio === null ? findStability(shape_stability, peak) : stability();
    const scale = ratio ?? 1;
    return {
      factor: load_factor === null ? null : load_factor / scale,
      propeller: propeller === null ? null : { ...propeller, factor: propeller.factor / scale },
    };
  });
  const working_x = once(() => solveStatics(shape, { x: pull.x, y: 0 }));
  const peak_statics = staticsAt(peak);
  const accidental = staticsAt(model.accidental);
  const soft = once(() => {
    const ratio = inProportion(peak, pull);
    const factor = softerFactor(shape_soft, shape_stability, ratio === null ? peak : pull);
    return factor === null ? null : factor / (ratio ?? 1);
  });
  const influence = once(() => {
    const { load_factor } = stability();
    return load_factor === null || load_factor > 1 ? solveInfluence(shape, pull) : null;
  });
  const unpulled = once(() => {
    const answer = solveInfluence(shape, { x: 0, y: 0 });
    if (answer === null) throw new Error('a frame without pull is always stable');
    return answer;
  });
  return hungAs(model, {
    get working() {
      return working();
    },
    get working_x() {
      return working_x();
    },
    get peak() {
      return peak_statics();
    },
    get accidental() {
      return accidental();
    },
    get stability() {
      return stability();
    },
    get peak_factor() {
      return atPeak().factor;
    },
    get peak_propeller() {
      return atPeak().propeller;
    },
    get soft_peak_factor() {
      return soft();
    },
    get influence() {
      return influence();
    },
    get influence_unpulled() {
      return unpulled();
    },
  });
}

/** The same frame hung as this model says: only the hanging is worked out anew. */
export function hungAs(model: Model, frame: Omit<Solution, 'hung' | 'hanging_forces'>): Solution {
  const forces = once(() => hangingForces(model));
  const hung = once(() => (forces().length === 0 ? null : solveStatics(model.shape, model.working, forces())));
  return {
    get working() {
      return frame.working;
    },
    get working_x() {
      return frame.working_x;
    },
    get peak() {
      return frame.peak;
    },
    get accidental() {
      return frame.accidental;
    },
    get stability() {
      return frame.stability;
    },
    get peak_factor() {
      return frame.peak_factor;
    },
    get peak_propeller() {
      return frame.peak_propeller;
    },
    get soft_peak_factor() {
      return frame.soft_peak_factor;
    },
    get influence() {
      return frame.influence;
    },
    get influence_unpulled() {
      return frame.influence_unpulled;
    },
    get hung() {
      return hung();
    },
    get hanging_forces() {
      return forces();
    },
  };
}

/** How many times one pull is another, the same both ways; null when they are not in proportion. */
function inProportion(pull: EdgePull, other: EdgePull): number | null {
  const ratio = other.x > 0 ? pull.x / other.x : pull.y / other.y;
  const same = Math.abs(pull.x - ratio * other.x) < 1e-12 && Math.abs(pull.y - ratio * other.y) < 1e-12;
  return same && ratio > 0 ? ratio : null;
}
