import type { About } from '../base/names.js';
import type { Fact, FactPath } from './fact.js';

/** The number of a fact; `about` null takes the first of its path. Null when it is absent, unknown or a word. */
export function findFact(facts: readonly Fact[], path: FactPath, about: About | null): number | null {
  const fact = facts.find((f) => f.path === path && (about === null || f.about === about));
  return typeof fact?.value === 'number' ? fact.value : null;
}
