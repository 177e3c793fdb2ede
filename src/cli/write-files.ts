import {
  closeSync,
  existsSync,
  fstatSync,
  lstatSync,
  mkdirSync,
  openSync,
  readFileSync,
  readSync,
  renameSync,
  statSync,
  unlinkSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join, resolve, sep } from 'node:path';
import { madeBy } from '../report/made-by.js';
import { kindOf } from './read-text.js';

/** A file of a set that is written together: a name inside the folder, and its text. */
export interface NewFile {
  readonly name: string;
  /** Whole, or in pieces that are made while it is written. */
  readonly text: string | Iterable<string>;
}

/**
 * Why nothing was written: a sentence with the path and what to do. The command shows it and ends with an input error.
 */
export class CannotWrite extends Error {}

/**
 * Writes a set of files into a folder, making it when needed; names may hold subfolders. Complete or not at all: all
 * texts
 * are first written beside their places, then moved there, the first file last, so that a full disk or an end in the
 * middle leaves what was there. What the tool did not write itself, and links, stay unless `overwrite` is said.
 * Throws CannotWrite.
 */
export function writeFolder(folder: string, files: readonly NewFile[], { overwrite = false } = {}): void {
  makeFolder(folder);
  const places = files.map(({ name, text }) => ({ text, place: placeIn(folder, name) }));
  withLock(folder, () => {
    const due = overwrite ? places : places.filter(({ text, place }) => mayWrite(place, text));
    const written: { readonly from: string; readonly to: string }[] = [];
    try {
      for (const { text, place } of due) {
        makeFolder(dirname(place));
        const from = `${place}.${process.pid}.part`;
        written.push({ from, to: place });
        writeText(from, text);
      }
      for (const { from, to } of written.toReversed()) renameSync(from, to);
    } catch (error) {
      for (const { from } of written) drop(from);
      // What has no code is no word of the file system but a mistake in making the text.
      throw error instanceof Error && !('code' in error) ? error : cannot(folder, error);
    }
  });
}

function writeText(file: string, text: NewFile['text']): void {
  const descriptor = openSync(file, 'wx');
  try {
    for (const piece of typeof text === 'string' ? [text] : text) writeFileSync(descriptor, piece);
  } finally {
    closeSync(descriptor);
  }
}

/** Writes one file that must be new. Throws CannotWrite. */
export function writeNewFile(file: string, text: string): void {
  makeFolder(dirname(file));
  try {
    writeFileSync(file, text, { flag: 'wx' });
  } catch (error) {
    const there = (error as NodeJS.ErrnoException).code === 'EEXIST';
    if (!there) throw cannot(file, error);
    throw thereAlready(file);
  }
}

/** The refusal to write over a file that somebody may need. */
export function thereAlready(file: string): CannotWrite {
  return new CannotWrite(`${file} is there already and stays as it is. Nothing was written; choose another name.`);
}

/**
 * A folder and those above it, one after the other: where one cannot be made, that is said of it. Throws CannotWrite.
 */
export function makeFolder(folder: string): void {
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
}

function placeIn(folder: string, name: string): string {
  const [inside, place] = [resolve(folder) + sep, resolve(folder, name)];
  if (!place.startsWith(inside))
    throw new CannotWrite(`${name} would lie outside ${folder}. Give the plan’s file another name.`);
  return join(folder, name);
}

/**
 * Refuses to write over what is no page of the tool's own: somebody's notes, a link to elsewhere, a folder. False where
 * the very text is there already: it stays, and so does its date.
 */
function mayWrite(place: string, text: NewFile['text']): boolean {
  const stats = lstatSync(place, { throwIfNoEntry: false });
  if (stats === undefined) return true;
  const refuse = (what: string): never => {
    throw new CannotWrite(
      `${place} is ${what}. Nothing was written. Choose another folder with --out, or say --overwrite.`,
    );
  };
  if (stats.isSymbolicLink()) refuse('a link');
  if (!stats.isFile()) refuse(kindOf(stats));
  const same_long = typeof text === 'string' && stats.size === Buffer.byteLength(text);
  if (same_long && endsOf(place, stats.size) === text) return false;
  if (!isOwn(endsOf(place, telling_bytes), text)) refuse('a file that sightdown did not write');
  return true;
}

/** So much of a file tells whose it is: a page says so in its first lines, or in its last. */
const telling_bytes = 64 * 1024;

/** So many bytes at either end of a file, the whole of one no longer; empty where it cannot be read. */
function endsOf(place: string, bytes: number): string {
  try {
    const descriptor = openSync(place, 'r');
    try {
      const { size } = fstatSync(descriptor);
      const read = (from: number, to: number): string => {
        const buffer = Buffer.alloc(to - from);
        return buffer.toString('utf8', 0, readSync(descriptor, buffer, 0, buffer.length, from));
      };
      const start = Math.min(size, bytes);
      return read(0, start) + read(Math.max(start, size - bytes), size);
    } finally {
      closeSync(descriptor);
    }
  } catch {
    return '';
  }
}

/** A page of ours says so; a picture is named by its parts; lists and schemas begin as the new one does. */
function isOwn(there: string, text: NewFile['text']): boolean {
  if (there.includes(madeBy)) return true;
  if (typeof text !== 'string') return false;
  if (text.startsWith('<svg')) return /^<svg [^>]*role="img" aria-labelledby="[\w-]+-title/.test(there);
  return there.split('\n', 1)[0] === text.split('\n', 1)[0];
}

/** Two runs into one folder do not mix: the second is told. A lock that a killed run left behind does not count. */
function withLock(folder: string, work: () => void): void {
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
  try {
    work();
  } finally {
    drop(lock);
  }
}

/** Takes a file away, if it is there. Node's own way to do so takes a whole folder along, and its time to load. */
function drop(file: string): void {
  try {
    unlinkSync(file);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ENOENT') throw error;
  }
}

function isRunning(lock: string): boolean {
  try {
    process.kill(Number(readFileSync(lock, 'utf8')), 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}

const reasons: Readonly<Record<string, string>> = {
  EACCES: 'you may not write there',
  EPERM: 'you may not write there',
  EROFS: 'it can only be read',
  ENOSPC: 'the disk is full',
  EDQUOT: 'your share of the disk is full',
  ENAMETOOLONG: 'its name is too long',
  ENOENT: 'nothing can be made there',
  EISDIR: 'it is a folder',
  EFBIG: 'a file may not grow as large as that',
};

/** The sentence for a place that cannot be written to. */
export function cannot(path: string, error: unknown): CannotWrite {
  const code = (error as NodeJS.ErrnoException).code ?? 'unknown reason';
  return new CannotWrite(`${path} cannot be written to: ${reasons[code] ?? code}. Choose another folder with --out.`);
}
