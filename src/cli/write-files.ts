import { closeSync, fstatSync, lstatSync, openSync, readSync, renameSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve, sep } from 'node:path';
import { madeBy } from '../report/made-by.js';
import { CannotWrite, cannot } from './cannot-write.js';
import { drop, lockFolder, makeFolder } from './out-folder.js';
import { kindOf } from './read-text.js';

/** A file of a set that is written together: a name inside the folder, and its text. */
export interface NewFile {
  readonly name: string;
  /** Whole, or in pieces that are made while it is written. */
  readonly text: string | Iterable<string>;
}

/**
 * Writes a set of files into a folder, making it when needed; names may hold subfolders. Complete or not at all: all
 * texts are first written beside their places, then moved there, the first file last, so that a full disk or an end in
 * the middle leaves what was there. What the tool did not write itself, and links, stay unless `overwrite` is said.
 * Throws CannotWrite.
 */
export function writeFolder(folder: string, files: readonly NewFile[], { overwrite = false } = {}): void {
  makeFolder(folder);
  const places = files.map(({ name, text }) => ({ text, place: placeIn(folder, name) }));
  const unlock = lockFolder(folder);
  try {
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
  } finally {
    unlock();
  }
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
