import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach } from 'vitest';
import { runWarm } from './warm.js';

/** Folder of the project. */
export const root = fileURLToPath(new URL('../../', import.meta.url));
/** The bundled command, as users run it. */
export const command = join(root, 'dist', 'sightdown.js');

/** What a run of the command left behind. */
export interface Run {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** A folder of its own for one test, removed after it. */
export interface Folder {
  readonly path: string;
  /** Runs the command in the folder, without a terminal, in a process that stays from one run to the next. */
  run(...args: readonly string[]): Run;
  /** Starts the built command anew, as a person does: slower, and what starting, ending and prepared files do is true. */
  start(...args: readonly string[]): Run;
  write(name: string, text: string | Buffer): string;
  /** Names of all files in it, sorted, with `/` between folders. */
  files(): readonly string[];
}

const open: string[] = [];
afterEach(() => {
  for (const path of open.splice(0)) rmSync(path, { recursive: true, force: true });
});

/** A new, empty folder. Throws when the command was not built: `npm test` builds it. */
export function folder(): Folder {
  if (!existsSync(command)) throw new Error('dist/sightdown.js is missing: npm run build');
  const path = mkdtempSync(join(tmpdir(), 'sightdown-test-'));
  open.push(path);
  return {
    path,
    run: (...args) => runIn(path, args),
    start: (...args) => startIn(path, args),
    write: (name, text) => {
      mkdirSync(dirname(join(path, name)), { recursive: true });
      writeFileSync(join(path, name), text);
      return name;
    },
    files: () => readdirSync(path, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile()).map((entry) => join(entry.parentPath, entry.name).slice(path.length + 1)).sort(),
  };
}

/** Runs the command in a folder, without a terminal, in the process that stays. */
export const runIn = (path: string, words: readonly string[]): Run => runWarm({ folder: path, words }, plainEnv);

/** Starts the built command anew in a folder, without a terminal. */
export function startIn(path: string, words: readonly string[]): Run {
  const { status, stdout, stderr } = spawnSync(process.execPath, [command, ...words], { cwd: path, encoding: 'utf8', maxBuffer: 64_000_000, env: plainEnv });
  return { code: status, out: stdout, err: stderr };
}

const plainEnv = { PATH: process.env['PATH'] ?? '' };

/** A stack trace or a bug's message, which no user must see. */
export const looksLikeABug = /^\s+at |node:internal|should not have happened|Error:/m;

/** What was complained of: how far long work has come is told by the clock. */
export const withoutProgress = (err: string): string => err.replace(/^\d+ of .*\n/gmu, '');

/** The smallest plan, with its face and anything more. */
export function plan(name: string, face = '{ width: 500 mm, height: 400 mm }', more = ''): string {
  return `plan: 1\nname: ${name}\nface: ${face}\nbars: { stock: strip-19x38, lay: flat }\nlumber: { chosen: picked, moisture: 9 % }\n${more}`;
}

/** A plan that must not be cut: far too thin for its size, and pulled hard. */
export const stopPlan = 'plan: 1\nname: Far too thin\nface: { width: 1500 mm, height: 1100 mm }\nbars: { stock: strip-19x38, lay: flat }\nlumber: { chosen: unsorted, moisture: 16 % }\ncloth: { pull: { working: 300 N/m, peak: 700 N/m } }\n';
