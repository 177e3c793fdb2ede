import { distance } from 'fastest-levenshtein';
import type { Problem } from '../../base/problem.js';
import { checkProblem } from './check-problems.js';
import type { Place } from '../../base/wording.js';
import type { Ruleset } from '../ruleset.js';

interface Named {
  readonly name: string;
  readonly place: Place;
}

/**
 * Rules and limits whose names differ by one letter, or by two letters turned round: one was probably meant to replace
 * the other.
 */
export function nearNames({ rules, limits }: Ruleset): readonly Problem[] {
  const rulesNamed = rules.map(({ id, place }): Named => ({ name: id, place }));
  return [...near(rulesNamed), ...near([...limits.values()])];
}

function near(named: readonly Named[]): readonly Problem[] {
  return named.flatMap((one, i) =>
    named
      .slice(0, i)
      .filter((other) => isHair(one.name, other.name))
      .map((other) => checkProblem('near-name', one.place, { value: one.name, name: other.name }, 'warning')),
  );
}

/** Shorter names differ by a letter on purpose. */
const shortest = 4;

function isHair(a: string, b: string): boolean {
  if (Math.min(a.length, b.length) < shortest || Math.abs(a.length - b.length) > 1 || /\d/u.test(`${a}${b}`))
    return false;
  const steps = distance(a, b);
  return steps === 1 || (steps === 2 && a.length === b.length && [...a].sort().join('') === [...b].sort().join(''));
}
