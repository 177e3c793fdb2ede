import { closeSync, constants, fstatSync, lstatSync, openSync, readSync, statSync, type Stats } from 'node:fs';
import { fileProblem, type Problem } from '../base/problem.js';

/** Largest file the tool reads, bytes: people write a few kilobytes. */
const largest_bytes = 2_000_000;

/** The text of a file, or why it cannot be had. */
export type TextOrProblem = { readonly text: string } | { readonly problem: Problem };

/**
 * Reads a text file in UTF-8, or says as a problem why it cannot: only a regular file (never a pipe or a device, which
 * may not end; `links: false`: no link either), never more than the largest a person writes, and nothing that had to be
 * guessed at.
 */
export function readText(file: string, { links = true } = {}): TextOrProblem {
  const problem = (code: string, found: string, allowed: string, hint: string): TextOrProblem => ({
    problem: fileProblem(file, code, found, allowed, hint),
  });
  const tooLarge = (): TextOrProblem =>
    problem('file-too-large', 'more than 2 MB', 'at most 2 MB', 'Check that this is the file you meant.');
  try {
    if (!links && lstatSync(file).isSymbolicLink()) {
      return problem('file-is-no-file', 'a link', 'a plain file', 'Put the file itself there.');
    }
    const kind = kindOf(statSync(file));
    if (kind === 'folder') return problem('file-is-folder', 'a folder', 'a file', 'Name the file inside it.');
    if (kind !== 'file')
      return problem('file-is-no-file', kind, 'a plain file', 'Save the text as a file and name that.');
    const bytes = readUpTo(file, largest_bytes);
    if (bytes === null) return tooLarge();
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes) };
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    switch (code) {
      case 'ENOENT':
      case 'ENOTDIR':
        return problem(
          'file-missing',
          'no such file',
          'a file that exists',
          'Check the name and the folder you are in.',
        );
      case 'ELOOP':
        return problem('file-missing', 'a link that leads back to itself', 'a file', 'Name the file itself.');
      case 'ERR_ENCODING_INVALID_ENCODED_DATA':
        return problem(
          'not-utf8',
          'signs that are no UTF-8',
          'a text saved as UTF-8',
          'Open it in a text editor and save it as plain text with the encoding UTF-8.',
        );
      default:
        return problem(
          'file-unreadable',
          `a file that cannot be read (${code ?? 'unknown reason'})`,
          'a readable file',
          'Check the permissions of the file.',
        );
    }
  }
}

/** What stands at a path, in words. */
export function kindOf(stats: Stats): 'file' | 'folder' | 'a named pipe' | 'a device' | 'a socket' {
  if (stats.isFile()) return 'file';
  if (stats.isDirectory()) return 'folder';
  if (stats.isFIFO()) return 'a named pipe';
  return stats.isSocket() ? 'a socket' : 'a device';
}

/**
 * The bytes of a regular file, or null when there are more than `most`. The size that the file system tells is not
 * believed.
 */
function readUpTo(file: string, most: number): Buffer | null {
  const descriptor = openSync(file, constants.O_RDONLY | constants.O_NONBLOCK);
  try {
    // What stood there a moment ago may have been exchanged.
    const stats = fstatSync(descriptor);
    if (!stats.isFile()) throw Object.assign(new Error('no file'), { code: 'no plain file' });
    // One byte more than there should be, so that the end is noticed; what there is beyond finds room as it comes.
    let buffer = Buffer.allocUnsafe(Math.min(most, stats.size) + 1);
    for (let total = 0; ;) {
      const got = readSync(descriptor, buffer, total, buffer.length - total, null);
      if (got === 0) return buffer.subarray(0, total);
      total += got;
      if (total > most) return null;
      if (total === buffer.length) buffer = Buffer.concat([buffer], Math.min(most + 1, 2 * total + 65_536));
    }
  } finally {
    closeSync(descriptor);
  }
}
