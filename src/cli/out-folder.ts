import {
  closeSync,
  existsSync,
  mkdirSync,
  openSync,
  readFileSync,
  rmdirSync,
  statSync,
  unlinkSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { CannotWrite, cannot } from './cannot-write.js';
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

/** Folders that this run holds, by their whole paths. */
const held = new Set<string>();

/**
 * Holds a folder for this run, until the function it returns is called; what this run holds already stays held. Two
 * runs into one folder do not mix: the second is told. A lock that a killed run left behind does not count. Throws
 * CannotWrite.
 */
export function lockFolder(folder: string): () => void {
  const whole = resolve(folder);
  if (held.has(whole)) return () => {};
  const lock = join(folder, '.sightdown-writing');
  for (let tries = 0; ; tries++) {
    try {
      const descriptor = openSync(lock, 'wx');
      writeFileSync(descriptor, String(process.pid));
      closeSync(descriptor);
      break;
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw cannot(folder, error);
      if (tries > 0 || isRunning(lock)) {
        throw new CannotWrite(
          `Another run is writing into ${folder}. Wait for it, or choose another folder with --out.`,
        );
      }
      drop(lock);
    }
  }
  held.add(whole);
  return () => {
    held.delete(whole);
    drop(lock);
  };
}

function isRunning(lock: string): boolean {
  try {
    process.kill(Number(readFileSync(lock, 'utf8')), 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}

/**
 * Holds a folder for as long as work takes that writes into it and into folders inside it one after the other; a folder
 * that was made for it and stayed empty goes again. Throws CannotWrite.
 */
export async function whileHolding<T>(folder: string, work: () => Promise<T>): Promise<T> {
  const made = makeFolder(folder);
  const unlock = lockFolder(folder);
  try {
    return await work();
  } finally {
    unlock();
    try {
      made.forEach((one) => rmdirSync(one));
    } catch {
      // It is not empty, which is as it should be.
    }
  }
}

/** Takes a file away, if it is there. Node's own way to do so takes a whole folder along, and its time to load. */
export function drop(file: string): void {
  try {
    unlinkSync(file);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ENOENT') throw error;
  }
}
