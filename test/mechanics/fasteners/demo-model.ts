import { readFileSync } from 'node:fs';
import { stringify } from 'yaml';
import type { Model, Solution } from '../../../src/model/model.js';
import { buildModel } from '../../../src/model/build-model.js';
import { solveModel } from '../../../src/solve/solve-model.js';
import { readPlanWith } from '../../../src/plan/read-plan.js';
import { readShelf } from '../../../src/shelf/read-shelf.js';
import type { Shelf } from '../../../src/shelf/shelf.js';

let kept: Shelf | null = null;

/** The demonstration shelf, read once. */
export function demoShelf(): Shelf {
  if (kept === null) {
    const read = readShelf(readFileSync(new URL('../../../rules/shelf.yaml', import.meta.url), 'utf8'), 'shelf.yaml');
    if (!read.ok) throw new Error(JSON.stringify(read.problems, null, 1));
    kept = read.value;
  }
  return kept;
}

/** A model on the demonstration shelf (or another) from the words of a plan; `plan: 1` and a name are added. */
export function demoModel(plan: object, shelf: Shelf = demoShelf()): Model {
  const read = readPlanWith(stringify({ plan: 1, name: 'Gullmark Street test piece', ...plan }), 'plan.yaml', shelf);
  if (!read.ok) throw new Error(JSON.stringify(read.problems, null, 1));
  return buildModel(read.value, shelf);
}

/** The same, solved. */
export function demoSolved(plan: object, shelf: Shelf = demoShelf()): { readonly model: Model; readonly solution: Solution } {
  const model = demoModel(plan, shelf);
  return { model, solution: solveModel(model) };
}
