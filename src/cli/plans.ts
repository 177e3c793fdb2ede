import { readdirSync, statSync, type Stats } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { fileProblem, type Problem } from '../base/problem.js';
import { kindOf, readText } from './read-text.js';

/** A file that was named, or that stands in a folder that was named. */
export interface PlanFile {
  readonly file: string;
  /**
   * Null for a file to read as a plan; else why it is none: `not-read` where it may be meant as one, `beside` where it
   * is something else.
   */
  readonly not: { readonly kind: 'not-read' | 'beside'; readonly why: string } | null;
}

/** The plan files that were asked for. */
export interface PlanFiles {
  /** Everything that was found, in the order of the names. */
  readonly entries: readonly PlanFile[];
  /** Those to read as plans. */
  readonly files: readonly string[];
  /** Folders without plans, and entries of folders that cannot be plans though they may be meant as such. */
  readonly problems: readonly Problem[];
  /** True when more than one plan, or a folder, was named: they are then treated as a class. */
  readonly several: boolean;
}

const wrongEnding = 'a plan in a file whose name does not end in .yaml';
const planEnding = /\.ya?ml$/i;

/**
 * Files as named, and every entry of a folder, in the order of their names; folders inside it are not searched. A file
 * named twice counts once.
 */
export function planFiles(named: readonly string[]): PlanFiles {
  const folders: Problem[] = [];
  const entries = named.flatMap((name): readonly PlanFile[] => {
    if (statOf(name)?.isDirectory() !== true) return [{ file: name, not: null }];
    const inside = entriesOf(name);
    if (inside === null)
      folders.push(
        fileProblem(
          name,
          'folder-unreadable',
          'a folder that cannot be read',
          'a folder you may read',
          'Check its permissions.',
        ),
      );
    else if (inside.every(({ not }) => not !== null))
      folders.push(
        fileProblem(
          name,
          'folder-without-plans',
          'a folder without plans',
          'files that end in .yaml',
          'Name the folder the plans are in; folders inside it are not searched.',
        ),
      );
    return inside ?? [];
  });
  const distinct = [...new Map(entries.map((entry) => [resolve(entry.file), entry])).values()];
  const files = distinct.flatMap(({ file, not }) => (not === null ? [file] : []));
  const unread = distinct.flatMap(({ file, not }) =>
    not?.kind === 'not-read'
      ? [
          fileProblem(
            file,
            not.why === wrongEnding ? 'wrong-ending' : 'not-a-plan-file',
            not.why,
            'a file that ends in .yaml',
            'Save the plan as plain text, with a name that ends in .yaml.',
          ),
        ]
      : [],
  );
  return {
    entries: distinct,
    files,
    problems: [...folders, ...unread],
    several: distinct.length > 1 || distinct.some(({ file }) => !named.includes(file)) || folders.length > 0,
  };
}

/**
 * Every entry of a folder with what it is; null when the folder cannot be read. Hidden files count only where their
 * ending is that of a plan.
 */
function entriesOf(folder: string): readonly PlanFile[] | null {
  let names: readonly string[];
  try {
    names = readdirSync(folder);
  } catch {
    return null;
  }
  return [...names]
    .sort()
    .filter((name) => !name.startsWith('.') || planEnding.test(name))
    .map((name) => ({ file: join(folder, name), not: whyNot(join(folder, name), statOf(join(folder, name))) }));
}

/** Why an entry of a folder is not read as a plan; null when it is. */
function whyNot(file: string, stat: Stats | null): PlanFile['not'] {
  const meant = planEnding.test(file);
  if (stat === null) return { kind: 'not-read', why: 'a link that leads nowhere, or in a circle' };
  if (stat.isDirectory())
    return meant
      ? { kind: 'not-read', why: 'a folder named like a plan' }
      : { kind: 'beside', why: 'A folder; folders inside are not searched.' };
  if (!stat.isFile()) return { kind: 'not-read', why: `${kindOf(stat)}, not a file` };
  if (meant) return null;
  return looksLikePlan(file)
    ? { kind: 'not-read', why: wrongEnding }
    : { kind: 'beside', why: 'Its name does not end in .yaml.' };
}

/** Whether a file begins as plans do, whatever it is called. */
function looksLikePlan(file: string): boolean {
  const read = readText(file);
  return 'text' in read && /^\s*plan\s*:/mu.test(read.text.slice(0, 4000));
}

function statOf(name: string): Stats | null {
  try {
    return statSync(name, { throwIfNoEntry: false }) ?? null;
  } catch {
    return null;
  }
}

/** What a file of the tool's own that is no plan is, from its first key; null when it may be a plan. */
export function otherKind(text: string): string | null {
  const first =
    text
      .slice(0, 20_000)
      .split('\n')
      .find((line) => !/^(?:\uFEFF?\s*$|\uFEFF?#|---)/u.test(line)) ?? '';
  return kinds[/^\uFEFF?([a-z]+)\s*:/u.exec(first)?.[1] ?? ''] ?? null;
}

const kinds: Readonly<Record<string, string>> = {
  sheet: 'A bench sheet.',
  shelf: 'A shelf.',
  ruleset: 'A ruleset.',
  shop: 'A workshop.',
  pile: 'A pile of boards.',
};

/** Names of the tool's own in a folder of reports, which no plan's folder may take. */
const ownNames = /^(class|class-pack|chart|cut|place|timetable|learn)(\.\w+)?$/i;

/**
 * Name of the default report folder: the plan's file name without its ending, and never one that means another place.
 */
export function planName(file: string): string {
  const name = basename(file)
    .replace(planEnding, '')
    .replace(/^[.\s]+|[.\s]+$/g, '');
  if (name === '') return 'plan';
  return ownNames.test(name) ? `plan-${name}` : name;
}

/**
 * A folder name for each plan, all different: the file's name, where that is taken with its folder's name before it,
 * and a number at last.
 */
export function pageNames(files: readonly string[]): readonly string[] {
  const plain = files.map(planName);
  const once = new Set<string>();
  const twice = new Set<string>();
  for (const name of plain.map(folded)) (once.has(name) ? twice : once).add(name);
  const taken = new Set<string>();
  /** The number to try next, of each name that is taken. */
  const next = new Map<string, number>();
  return plain.map((short, i) => {
    const name = twice.has(folded(short)) ? `${basename(dirname(resolve(files[i]!))) || 'folder'}-${short}` : short;
    let free = name;
    let n = next.get(folded(name)) ?? 2;
    while (taken.has(folded(free))) free = `${name}-${n++}`;
    next.set(folded(name), n);
    taken.add(folded(free));
    return free;
  });
}

/** File systems may not tell `Plan` from `plan`. */
const folded = (name: string): string => name.toLowerCase();
