import type { Bench } from '../audit.js';
import { loadRules, loadShelf, loadSources } from './load.js';
import { rulesFile } from './rules-file.js';
import { complain } from './terminal.js';

/** What decides how plans are judged, as the options give it. */
export interface BenchOptions {
  readonly rules?: string;
  readonly shelf?: string;
  readonly seed: number;
  readonly samples: number;
}

/** Shelf and ruleset as the options name them; complains and gives null when they cannot be read. */
export function loadBench(options: BenchOptions): Bench | null {
  const shelf = loadShelf(options.shelf);
  const ruleset = loadRules(options.rules === undefined ? undefined : rulesFile(options.rules));
  complain([shelf, ruleset].flatMap((result) => (result.ok ? result.warnings : result.problems)));
  const baseline = options.rules === undefined ? ruleset : loadRules(undefined);
  return shelf.ok && ruleset.ok
    ? {
        shelf: shelf.value,
        ruleset: ruleset.value,
        ...(baseline.ok ? { baseline: baseline.value } : {}),
        seed: options.seed,
        samples: options.samples,
        sources: loadSources(),
      }
    : null;
}
