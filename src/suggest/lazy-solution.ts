import { hangingForces } from '../mechanics/hanging/hanging-forces.js';
import type { EdgePull } from '../model/frame-shape.js';
import type { Model, Solution } from '../model/model.js';
import { findStability, softJointOptions, solveInfluence, solveStatics } from '../solve/analyse-frame.js';
import { scaleStatics } from '../solve/scale-statics.js';

/** Works a value out when it is first asked for, and keeps it. */
function once<T>(work: () => T): () => T {
  let kept: { readonly value: T } | null = null;
  return () => (kept ??= { value: work() }).value;
}

/** The same solution as `solveModel`, each part worked out only when a fact asks for it. Without `give8` that one number is left null: use it only where nothing reads it. */
export function lazySolution(model: Model, wants: { readonly give8: boolean }): Solution {
  const { shape, shape_stability, shape_soft, working: pull, peak, accidental } = model;
  const working = once(() => solveStatics(shape, pull));
  const stability = once(() => findStability(shape_stability, pull));
  const at = (other: EdgePull) => once(() => {
    const ratio = inProportion(other, pull);
    return ratio === null ? solveStatics(shape, other) : scaleStatics(working(), ratio);
  });
  const parts = {
    working,
    peak: at(peak),
    accidental: at(accidental),
    stability,
    peak_factor: once(() => {
      const ratio = inProportion(peak, pull);
      const { load_factor } = ratio === null ? findStability(shape_stability, peak, { factors: 1 }) : stability();
      return load_factor === null ? null : load_factor / (ratio ?? 1);
    }),
    soft_peak_factor: once(() => (wants.give8 ? findStability(shape_soft, peak, softJointOptions).load_factor : null)),
    influence: once(() => {
      const { load_factor } = stability();
      return load_factor === null || load_factor > 1 ? solveInfluence(shape, pull) : null;
    }),
  };
  return hungSolution(model, {
    get working() { return parts.working(); },
    get peak() { return parts.peak(); },
    get accidental() { return parts.accidental(); },
    get stability() { return parts.stability(); },
    get peak_factor() { return parts.peak_factor(); },
    get soft_peak_factor() { return parts.soft_peak_factor(); },
    get influence() { return parts.influence(); },
    hung: null,
    hanging_forces: [],
  });
}

/** Frames kept at most: twins, such as a pair glued with screws and without, come soon after each other. */
const mostKept = 400;

/** Solutions by what is solved: builds whose frames are alike in shape, stiffness and pull share one. */
export class SolvedFrames {
  readonly #kept = new Map<string, Solution>();

  constructor(private readonly wants: { readonly give8: boolean }) {}

  of(model: Model): Solution {
    const { shape, shape_stability, shape_soft, working, peak, accidental } = model;
    const key = JSON.stringify([shape, shape_stability, shape_soft, working, peak, accidental]);
    const known = this.#kept.get(key) ?? lazySolution(model, this.wants);
    this.#kept.delete(key);
    this.#kept.set(key, known);
    for (const oldest of this.#kept.keys()) {
      if (this.#kept.size <= mostKept) break;
      this.#kept.delete(oldest);
    }
    return hungSolution(model, known);
  }
}

/** The solution of the same frame hung as this model says: only the hanging is worked out anew. */
export function hungSolution(model: Model, frame: Solution): Solution {
  const forces = once(() => hangingForces(model));
  const hung = once(() => (forces().length === 0 ? null : solveStatics(model.shape, model.working, forces())));
  return {
    get working() { return frame.working; },
    get peak() { return frame.peak; },
    get accidental() { return frame.accidental; },
    get stability() { return frame.stability; },
    get peak_factor() { return frame.peak_factor; },
    get soft_peak_factor() { return frame.soft_peak_factor; },
    get influence() { return frame.influence; },
    get hung() { return hung(); },
    get hanging_forces() { return forces(); },
  };
}

/** How many times one pull is another, the same both ways; null when they are not in proportion. */
function inProportion(pull: EdgePull, other: EdgePull): number | null {
  const ratio = other.x > 0 ? pull.x / other.x : pull.y / other.y;
  const same = Math.abs(pull.x - ratio * other.x) < 1e-12 && Math.abs(pull.y - ratio * other.y) < 1e-12;
  return same && ratio > 0 ? ratio : null;
}
