import type { FactPath, FactSpec } from './fact.js';
import { factGroups } from './groups.js';

/** Every fact a rule may ask for, by subject. */
export const catalogue: readonly FactSpec[] = factGroups.flatMap(({ each, declared }) =>
  [...declared].map(([path, one]): FactSpec => ({ path, each, ...one })),
);

/** The same, by path. */
export const catalogueByPath: ReadonlyMap<string, FactSpec> = new Map(catalogue.map((spec) => [spec.path, spec]));

/** The declaration of a fact. */
export const specOf = (path: FactPath): FactSpec => catalogueByPath.get(path) as FactSpec;

/** Whether a name that somebody wrote is that of a fact. */
export const isFactPath = (name: string): name is FactPath => catalogueByPath.has(name);
