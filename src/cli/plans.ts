import { readdirSync, statSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import type { Problem } from '../base/problem.js';

/** The plan files that were asked for. */
export interface PlanFiles {
  readonly files: readonly string[];
  /** Folders without plans. */
  readonly problems: readonly Problem[];
  /** True when more than one plan, or a folder, was named: they are then treated as a class. */
  readonly several: boolean;
}

/** Files as named, and every `*.yaml` or `*.yml` of a folder, in the order of their names; folders inside it are left alone. A file named twice counts once. */
export function planFiles(named: readonly string[]): PlanFiles {
  const problems: Problem[] = [];
  let folders = 0;
  const files = named.flatMap((name) => {
    if (!isFolder(name)) return [name];
    folders += 1;
    const inside = readdirSync(name).filter((file) => /\.ya?ml$/i.test(file) && !isFolder(join(name, file))).sort();
    if (inside.length === 0) problems.push({ code: 'folder-without-plans', severity: 'error', file: name, path: '', line: 0, column: 0, found: 'a folder without plans', allowed: 'files that end in .yaml', hint: 'Name the folder the plans are in; folders inside it are not searched.' });
    return inside.map((file) => join(name, file));
  });
  const distinct = [...new Map(files.map((file) => [resolve(file), file])).values()];
  return { files: distinct, problems, several: folders > 0 || distinct.length > 1 };
}

function isFolder(name: string): boolean {
  try {
    return statSync(name, { throwIfNoEntry: false })?.isDirectory() === true;
  } catch {
    // A link that leads back to itself, a folder nobody may look into: reading it tells.
    return false;
  }
}

/** Names of the tool's own in a folder of reports, which no plan's folder may take. */
const ownNames = /^(class|class-pack|chart|cut|place|timetable|learn)(\.\w+)?$/i;

/** Name of the default report folder: the plan's file name without its ending, and never one that means another place. */
export function planName(file: string): string {
  const name = basename(file).replace(/\.ya?ml$/i, '').replace(/^[.\s]+|[.\s]+$/g, '');
  if (name === '') return 'plan';
  return ownNames.test(name) ? `plan-${name}` : name;
}

/** A folder name for each plan, all different: the file's name, where that is taken with its folder's name before it, and a number at last. */
export function pageNames(files: readonly string[]): readonly string[] {
  const plain = files.map(planName);
  const twice = (names: readonly string[], name: string): boolean => names.filter((other) => same(other, name)).length > 1;
  const longer = files.map((file, i) => (twice(plain, plain[i] as string) ? `${basename(dirname(resolve(file))) || 'folder'}-${plain[i]}` : (plain[i] as string)));
  const taken: string[] = [];
  for (const name of longer) {
    let free = name;
    for (let n = 2; taken.some((other) => same(other, free)); n++) free = `${name}-${n}`;
    taken.push(free);
  }
  return taken;
}

/** File systems may not tell `Plan` from `plan`. */
const same = (a: string, b: string): boolean => a.toLowerCase() === b.toLowerCase();
