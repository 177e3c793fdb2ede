import { mkdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Problem } from '../base/problem.js';

/** Folder with the data that ships with the tool, seen from the bundled command in `dist/`. */
export const rulesFolder = fileURLToPath(new URL('../rules/', import.meta.url));

/** Largest file the tool reads, bytes: people write a few kilobytes. */
const largest_bytes = 2_000_000;

/** Reads a text file, or says as a problem why it cannot. */
export function readText(file: string): { readonly text: string } | { readonly problem: Problem } {
  const problem = (code: string, found: string, allowed: string, hint: string): { readonly problem: Problem } => ({
    problem: { code, severity: 'error', file, path: '', line: 0, column: 0, found, allowed, hint },
  });
  try {
    const stat = statSync(file);
    if (stat.isDirectory()) return problem('file-is-folder', 'a folder', 'a file', 'Name the file inside it.');
    if (stat.size > largest_bytes) return problem('file-too-large', `${stat.size} bytes`, `at most ${largest_bytes} bytes`, 'Check that this is the file you meant.');
    return { text: readFileSync(file, 'utf8') };
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    if (code === 'ENOENT' || code === 'ENOTDIR') return problem('file-missing', 'nothing there', 'a file that exists', 'Check the name and the folder you are in.');
    return problem('file-unreadable', code ?? 'an error', 'a readable file', 'Check the permissions of the file.');
  }
}

/** Writes a set of files into a folder, making it when needed. Names may hold subfolders. */
export function writeFolder(folder: string, files: readonly { readonly name: string; readonly text: string }[]): void {
  for (const { name, text } of files) {
    const file = join(folder, name);
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(file, text);
  }
}
