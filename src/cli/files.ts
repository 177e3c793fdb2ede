import { existsSync, mkdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Problem } from '../base/problem.js';

/** The folder this tool lives in, wherever in it this code runs from. */
export const packageFolder = findPackage(dirname(fileURLToPath(import.meta.url)));

/** Folder with the data that ships with the tool. */
export const rulesFolder = join(packageFolder, 'rules');

function findPackage(folder: string): string {
  if (existsSync(join(folder, 'rules', 'baseline.yaml'))) return folder;
  const above = dirname(folder);
  if (above === folder) throw new Error('the rules that ship with the tool are missing');
  return findPackage(above);
}

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
