import { readdirSync, unlinkSync, writeFileSync } from 'node:fs';
import { join, resolve, sep } from 'node:path';
import { cannot, CannotWrite } from './cannot-write.js';
import { readText } from './read-text.js';

/** What the name of a file ends in until it is whole, in this run or another. */
export const partEnding = (run = process.pid): string => `.${run}.part`;

/** A file of this name stands in a folder while a run holds it, and names the files that it makes meanwhile. */
const markOf = (run: number): string => `.sightdown-writing.${run}`;
const mark = /^\.sightdown-writing\.([1-9]\d{0,9})$/;

/** Two runs that begin in the same moment see each other: the one of lower number tries so often again, ms apart. */
const [mostTries, between_ms] = [4, 25];

/** Folders that this run holds, by their whole paths. */
const held = new Set<string>();

/**
 * Holds a folder for this run, to make files of these names in it, until the function it returns is called; what this
 * run holds already stays held. Two runs into one folder do not mix: each leaves its mark, then looks for those of
 * others, and where another is at work it is told so. What a run that was killed left half made is taken away, only
 * files that its mark names. Throws CannotWrite.
 */
export function holdFolder(folder: string, names: readonly string[]): () => void {
  const whole = resolve(folder);
  const own = join(whole, markOf(process.pid));
  const making = JSON.stringify(names.map((name) => name + partEnding()));
  try {
    if (held.has(whole)) {
      writeFileSync(own, making);
      return () => {};
    }
    for (let tries = 1; ; tries++) {
      for (const run of runsIn(whole)) if (!isRunning(run)) clear(whole, run);
      writeFileSync(own, making, { flag: 'wx' });
      const others = runsIn(whole).filter(isRunning);
      if (others.length === 0) break;
      drop(own);
      if (tries === mostTries || others.some((run) => run < process.pid)) {
        throw new CannotWrite(
          `Another run is writing into ${folder}. Wait for it, or choose another folder with --out.`,
        );
      }
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, between_ms);
    }
  } catch (error) {
    throw error instanceof CannotWrite ? error : cannot(folder, error);
  }
  held.add(whole);
  return () => {
    held.delete(whole);
    drop(own);
  };
}

/** The numbers of the runs that have their mark in a folder. */
const runsIn = (folder: string): readonly number[] =>
  readdirSync(folder).flatMap((name) => {
    const run = mark.exec(name)?.[1];
    return run === undefined ? [] : [Number(run)];
  });

/** Whether another run is at work. One of this very number is over: the number was given again. */
function isRunning(run: number): boolean {
  if (run === process.pid) return false;
  try {
    process.kill(run, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}

/** Takes away what a run that is over left half made, and its mark last. */
function clear(folder: string, run: number): void {
  const left = join(folder, markOf(run));
  const inside = resolve(folder) + sep;
  for (const name of namedIn(left)) {
    const place = resolve(folder, name);
    if (place.startsWith(inside) && place.endsWith(partEnding(run))) drop(place);
  }
  drop(left);
}

/** The names that a mark holds; none where it was not finished either. */
function namedIn(file: string): readonly string[] {
  const read = readText(file, { links: false });
  try {
    const named: unknown = JSON.parse('text' in read ? read.text : '');
    return Array.isArray(named) ? named.filter((name) => typeof name === 'string') : [];
  } catch {
    return [];
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
