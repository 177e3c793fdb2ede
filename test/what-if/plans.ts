import { stringify } from 'yaml';
import { buildModel } from '../../src/model/build-model.js';
import type { FactSettings, Model, Solution } from '../../src/model/model.js';
import { solveModel } from '../../src/solve/solve-model.js';
import { readPlanWith } from '../../src/plan/read-plan.js';
import { shippedShelf } from '../plan/shelf-for-tests.js';

const shelf = shippedShelf();

/** An uneven demonstration frame of the Gullmark Street Studio, with whatever is to be different. */
export function builtAndSolved(changes: object = {}): { readonly model: Model; readonly solution: Solution } {
  const plan = { plan: 1, name: 'Gullmark Street trial', face: { width: '900 mm', height: '600 mm' }, bars: { stock: 'strip-19x38', lay: 'edge' }, ...changes };
  const read = readPlanWith(stringify(plan), 'plan.yaml', shelf);
  if (!read.ok) throw new Error(JSON.stringify(read.problems, null, 1));
  const model = buildModel(read.value, shelf);
  return { model, solution: solveModel(model) };
}

export const usualSettings: FactSettings = { corner_lift_limit_mm: 4, bar_bow_limit_mm: { top: 3, bottom: 3, left: 2, right: 2 }, seed: 1, samples: 0 };
