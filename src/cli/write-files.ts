import { closeSync, openSync, renameSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve, sep } from 'node:path';
import { cannot, CannotWrite, thereAlready } from './cannot-write.js';
import { mayWrite, saysTheSame, type NewText } from './may-write.js';
import { drop, holdFolder, partEnding } from './one-writer.js';
import { makeFolder } from './out-folder.js';

/** A file of a set that is written together: a name inside the folder, and its text. */
export interface NewFile {
  readonly name: string;
  readonly text: NewText;
}

/**
 * Writes a set of files into a folder, making it when needed; names may hold subfolders. Complete or not at all: all
 * texts are first written beside their places, then moved there, the first file last, so that a full disk or an end in
 * the middle leaves what was there. A page that says the same already stays, with its date. What the tool did not write
 * itself, and links, stay unless `overwrite` is said. Throws CannotWrite.
 */
export function writeFolder(folder: string, files: readonly NewFile[], { overwrite = false } = {}): void {
  makeFolder(folder);
  const places = files.map(({ name, text }) => ({ text, place: placeIn(folder, name) }));
  const release = holdFolder(
    folder,
    files.map(({ name }) => name),
  );
  try {
    const due = overwrite ? places : places.filter(({ text, place }) => mayWrite(place, text));
    const written: { readonly from: string; readonly to: string }[] = [];
    try {
      for (const { text, place } of due) {
        makeFolder(dirname(place));
        const from = place + partEnding();
        written.push({ from, to: place });
        writeText(from, text);
      }
      for (const { from, to } of written.toReversed()) {
        if (!overwrite && saysTheSame(from, to)) drop(from);
        else renameSync(from, to);
      }
    } catch (error) {
      for (const { from } of written) drop(from);
      // What has no code is no word of the file system but a mistake in making the text.
      throw error instanceof Error && !('code' in error) ? error : cannot(folder, error);
    }
  } finally {
    release();
  }
}

function writeText(file: string, text: NewText): void {
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

function placeIn(folder: string, name: string): string {
  const [inside, place] = [resolve(folder) + sep, resolve(folder, name)];
  if (!place.startsWith(inside))
    throw new CannotWrite(`${name} would lie outside ${folder}. Give the plan’s file another name.`);
  return join(folder, name);
}
