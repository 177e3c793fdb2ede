import type { Model, Solution } from '../model/model.js';
import { hungAs, solveModel } from './solve-model.js';

/** Frames kept at most: twins, such as a pair glued with screws and without, come soon after each other. */
const mostKept = 64;

/** Solutions by what is solved: builds whose frames are alike in shape, stiffness and pull share one. */
export class SolvedFrames {
  readonly #kept = new Map<string, Solution>();

  of(model: Model): Solution {
    const known = this.#kept.get(keyOf(model)) ?? solveModel(model);
    this.keep(model, known);
    return hungAs(model, known);
  }

  /** Keeps a solution of this model that is there already. */
  keep(model: Model, solution: Solution): void {
    const key = keyOf(model);
    this.#kept.delete(key);
    this.#kept.set(key, solution);
    for (const oldest of this.#kept.keys()) {
      if (this.#kept.size <= mostKept) break;
      this.#kept.delete(oldest);
    }
  }
}

/** What is solved, in full. */
const keyOf = ({ shape, shape_stability, shape_soft, working, peak, accidental }: Model): string =>
  JSON.stringify([shape, shape_stability, shape_soft, working, peak, accidental]);
