import type { FactSpec } from './fact.js';
import { choiceSpecs } from './specs/choices.js';
import { clothSpecs } from './specs/cloth.js';
import { cuttingSpecs } from './specs/cutting.js';
import { frameSpecs } from './specs/frame.js';
import { hangingSpecs } from './specs/hanging.js';
import { jointSpecs } from './specs/joints.js';
import { warpSpecs } from './specs/warp.js';

/** Every fact a rule may ask for, by subject. */
export const catalogue: readonly FactSpec[] = [...frameSpecs, ...warpSpecs, ...jointSpecs, ...clothSpecs, ...hangingSpecs, ...cuttingSpecs, ...choiceSpecs];

/** The same, by path. */
export const catalogueByPath: ReadonlyMap<string, FactSpec> = new Map(catalogue.map((spec) => [spec.path, spec]));
