import { existsSync, mkdirSync, rmdirSync, statSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { CannotWrite, cannot } from './cannot-write.js';
import { holdFolder } from './one-writer.js';
import { kindOf } from './read-text.js';

/**
 * Makes a folder and those above it, one after the other, and returns those that were not there, the innermost first.
 * Where one cannot be made, that is said of it. Throws CannotWrite.
 */
export function makeFolder(folder: string): readonly string[] {
  const missing: string[] = [];
  for (let at = resolve(folder); !existsSync(at); at = dirname(at)) {
    missing.push(at);
    if (missing.length > 200) throw new CannotWrite(`${folder} lies too deep. Choose another folder with --out.`);
  }
  const ground = missing.length === 0 ? resolve(folder) : dirname(missing.at(-1) as string);
  const kind = kindOf(statSync(ground));
  if (kind !== 'folder') {
    const what = kind === 'file' ? 'a file' : kind;
    throw new CannotWrite(`${ground} is ${what}, not a folder. Choose another folder with --out.`);
  }
  for (const one of missing.toReversed()) {
    try {
      mkdirSync(one);
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw cannot(one, error);
    }
  }
  return missing;
}

/**
 * Holds a folder for as long as work takes that writes into it and into folders inside it one after the other; a folder
 * that was made for it and stayed empty goes again. Throws CannotWrite.
 */
export async function whileHolding<T>(folder: string, work: () => Promise<T>): Promise<T> {
  const made = makeFolder(folder);
  const release = holdFolder(folder, []);
  // Where the user breaks off, no other end comes.
  process.once('exit', release);
  try {
    return await work();
  } finally {
    release();
    process.off('exit', release);
    try {
      made.forEach((one) => rmdirSync(one));
    } catch {
      // It is not empty, which is as it should be.
    }
  }
}
