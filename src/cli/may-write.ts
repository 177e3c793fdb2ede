import { closeSync, fstatSync, lstatSync, openSync, readSync, statSync } from 'node:fs';
import { madeBy } from '../report/made-by.js';
import { CannotWrite } from './cannot-write.js';
import { kindOf } from './read-text.js';

/** What a file is to hold: whole, or in pieces that are made while it is written. */
export type NewText = string | Iterable<string>;

/**
 * Refuses to write over what is no page of the tool's own: somebody's notes, a link to elsewhere, a folder. False where
 * the very text is there already: it stays, and so does its date.
 */
export function mayWrite(place: string, text: NewText): boolean {
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
function isOwn(there: string, text: NewText): boolean {
  if (there.includes(madeBy)) return true;
  if (typeof text !== 'string') return false;
  if (text.startsWith('<svg')) return /^<svg [^>]*role="img" aria-labelledby="[\w-]+-title/.test(there);
  return there.split('\n', 1)[0] === text.split('\n', 1)[0];
}

/** Whether a file holds what another does, which may not be there; neither is in memory as a whole. */
export function saysTheSame(file: string, other: string): boolean {
  const size = statSync(file).size;
  if (statSync(other, { throwIfNoEntry: false })?.size !== size) return false;
  const open = [openSync(file, 'r'), openSync(other, 'r')];
  try {
    const [one, two] = open.map(() => Buffer.alloc(Math.min(size, compared_bytes))) as [Buffer, Buffer];
    for (let at = 0; at < size; at += compared_bytes) {
      const [read_one, read_two] = [one, two].map((buffer, i) => readSync(open[i]!, buffer, 0, buffer.length, at));
      if (read_one !== read_two || !one.equals(two)) return false;
    }
    return true;
  } finally {
    open.forEach((descriptor) => closeSync(descriptor));
  }
}

const compared_bytes = 256 * 1024;
