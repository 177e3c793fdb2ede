import { dirname, join, resolve } from 'node:path';
import type { Problem, Result } from '../base/problem.js';
import { readSources } from '../base/sources.js';
import { loadRuleset } from '../rules/load-ruleset.js';
import type { Ruleset } from '../rules/ruleset.js';
import { readShelf } from '../shelf/read-shelf.js';
import type { Shelf } from '../shelf/shelf.js';
import { readText, rulesFolder } from './files.js';

/** The shelf the tool ships with. */
export function defaultShelf(): Result<Shelf> {
  return shelfFrom(join(rulesFolder, 'shelf.yaml'));
}

/** The default shelf, with a user's file laid over it when one is named. */
export function loadShelf(file: string | undefined): Result<Shelf> {
  const base = defaultShelf();
  return !base.ok || file === undefined ? base : shelfFrom(file, base.value);
}

function shelfFrom(file: string, base?: Shelf): Result<Shelf> {
  const read = readText(file);
  if ('problem' in read) return failed(read.problem);
  return base === undefined ? readShelf(read.text, file) : readShelf(read.text, file, base);
}

/** A ruleset by file, the baseline when none is named; what it builds on is looked for beside it, then among the shipped rules. */
export function loadRules(file: string | undefined): Result<Ruleset> {
  const entry = file ?? join(rulesFolder, 'baseline.yaml');
  const first = readText(entry);
  if ('problem' in first) return failed(first.problem);
  const beside = dirname(resolve(entry));
  return loadRuleset(
    (name) => {
      if (name === entry) return first.text;
      for (const folder of [beside, rulesFolder]) {
        const read = readText(join(folder, name));
        if ('text' in read) return read.text;
      }
      return null;
    },
    entry,
    { sources: sourceKeys() },
  );
}

/** Keys of the bibliography that ships with the tool. */
function sourceKeys(): ReadonlySet<string> {
  const read = readText(join(rulesFolder, 'sources.yaml'));
  if ('problem' in read) return new Set();
  return new Set(readSources(read.text).map(({ key }) => key));
}

function failed<T>(problem: Problem): Result<T> {
  return { ok: false, problems: [problem] };
}
