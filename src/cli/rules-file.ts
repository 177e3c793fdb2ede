import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { rulesFolder } from './files.js';

/** A ruleset as named: a file, or one that ships with the tool by its bare name, such as `baseline` or `class-first-year`. */
export function rulesFile(named: string): string {
  if (existsSync(named) || !/^[\w.-]+$/.test(named)) return named;
  const shipped = [named, `${named}.yaml`].map((name) => join(rulesFolder, name)).find((file) => existsSync(file));
  return shipped ?? named;
}
