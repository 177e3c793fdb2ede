import { dirname, join, resolve } from 'node:path';
import { digest } from '../base/digest.js';
import type { Problem, Result } from '../base/problem.js';
import { readSources, type Source } from '../base/sources.js';
import { loadRuleset } from '../rules/read/load-ruleset.js';
import type { Ruleset } from '../rules/ruleset.js';
import { readShelf } from '../shelf/read-shelf.js';
import type { Shelf } from '../shelf/shelf.js';
import { rulesFolder } from './files.js';
import { readText } from './read-text.js';
import { prepared } from './prepared.js';
import { shippedRulesets, withShippedNames } from './rules-file.js';
import { complain } from './terminal.js';

/** The default shelf, with a user's file laid over it when one is named. */
export function loadShelf(file: string | undefined): Result<Shelf> {
  const base = defaultShelf();
  if (!base.ok || file === undefined) return base;
  const read = readText(file);
  return 'problem' in read ? failed(read.problem) : readShelf(read.text, file, base.value, sourceKeys());
}

/** The shelf the tool ships with. */
export function defaultShelf(): Result<Shelf> {
  const file = join(rulesFolder, 'shelf.yaml');
  const read = readText(file);
  if ('problem' in read) return failed(read.problem);
  const ready = prepared()?.shelf;
  return ready !== undefined && ready.of === digest(read.text)
    ? { ok: true, value: ready.value, warnings: [] }
    : readShelf(read.text, file, undefined, sourceKeys());
}

/**
 * A ruleset by file, the baseline when none is named; what it builds on is looked for beside it, then among the shipped
 * rules.
 */
export function loadRules(file: string | undefined): Result<Ruleset> {
  const entry = file ?? join(rulesFolder, 'baseline.yaml');
  const first = readText(entry);
  if ('problem' in first) return failed(withShippedNames(entry, first.problem));
  return loadRuleset(textsBeside(entry, first.text), entry, {
    sources: sourceKeys(),
    names: shippedRulesets,
    prepared: prepared()?.layers ?? [],
    stacks: prepared()?.stacks ?? [],
  });
}

/** What a ruleset builds on is looked for beside it, then among the shipped rules. */
export function textsBeside(entry: string, text: string): (name: string) => string | null {
  return (name) => {
    if (name === entry) return text;
    for (const folder of [dirname(resolve(entry)), rulesFolder]) {
      const read = readText(join(folder, name), { links: false });
      if ('text' in read) return read.text;
    }
    return null;
  };
}

let list: readonly Source[] | undefined;

/**
 * The bibliography that ships with the tool; where it is missing a word says so, and sources are named by their keys.
 */
export function loadSources(): readonly Source[] {
  if (list !== undefined) return list;
  const read = readText(join(rulesFolder, 'sources.yaml'));
  if ('problem' in read) {
    complain([
      { ...read.problem, severity: 'warning', hint: 'Sources are named by their keys alone. Install the tool anew.' },
    ]);
    return (list = []);
  }
  const ready = prepared()?.sources;
  return (list = ready !== undefined && ready.of === digest(read.text) ? ready.list : readSources(read.text));
}

/** Keys of the bibliography. */
export function sourceKeys(): ReadonlySet<string> {
  return new Set(loadSources().map(({ key }) => key));
}

function failed<T>(problem: Problem): Result<T> {
  return { ok: false, problems: [problem] };
}
