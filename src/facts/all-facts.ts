import type { Supplies } from '../cost/supplies.js';
import type { FactSettings, Model, Solution } from '../model/model.js';
import type { Declared, FactGroup, FactInput, FoundFact } from './declare.js';
import type { Fact } from './fact.js';
import { factGroups, type FactPath } from './groups.js';

/** What is wanted of the catalogue. */
export type Wanted = (declared: Declared, path: FactPath) => boolean;

/** The wanted facts that this plan has, by subject; nothing is worked out for the others. */
export function factsWanted(input: FactInput, wanted: Wanted): Fact[] {
  return factGroups.flatMap((group) =>
    (group as FactGroup<FactPath>).values(input, (path, declared) => wanted(declared, path)).map(shown),
  );
}

/** Every fact of the catalogue that this plan has. */
export const allFacts = (model: Model, solution: Solution, bought: Supplies, settings: FactSettings): Fact[] =>
  factsWanted({ model, solution, bought, settings }, () => true);

function shown({ path, about, unit, value }: FoundFact<FactPath>): Fact {
  return typeof value === 'object' && value !== null
    ? { path, about, value: null, unit, reason: value.unknown }
    : { path, about, value, unit };
}
