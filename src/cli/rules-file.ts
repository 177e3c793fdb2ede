import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Problem } from '../base/problem.js';
import { nearest } from '../base/schema-problems.js';
import { rulesFolder } from './files.js';

/** Rulesets that ship with the tool, by their bare names. */
export const shippedRulesets = (): readonly string[] =>
  readdirSync(rulesFolder)
    .filter((file) => file.endsWith('.yaml') && file !== 'shelf.yaml' && file !== 'sources.yaml')
    .map((file) => file.slice(0, -'.yaml'.length))
    .sort();

/** A ruleset that is not there: says which ones ship with the tool when it was named without an ending. */
export function withShippedNames(named: string, problem: Problem): Problem {
  if (problem.code !== 'file-missing' || !/^[\w-]+$/.test(named)) return problem;
  const shipped = shippedRulesets();
  const near = nearest(named, shipped);
  return {
    ...problem,
    allowed: `a file that exists, or a ruleset that ships with the tool: ${shipped.join(', ')}`,
    hint: near === undefined ? problem.hint : `Did you mean \`${near}\`?`,
  };
}

/**
 * A ruleset as named: a file, or one that ships with the tool by its bare name, such as `baseline` or
 * `class-first-year`.
 */
export function rulesFile(named: string): string {
  if (existsSync(named) || !/^[\w.-]+$/.test(named)) return named;
  const shipped = [named, `${named}.yaml`].map((name) => join(rulesFolder, name)).find((file) => existsSync(file));
  return shipped ?? named;
}
