import type { Result } from '../base/problem.js';
import { readSheet } from '../bench-sheet/read-sheet.js';
import type { Sheet } from '../bench-sheet/sheet.js';
import { readText } from './read-text.js';

/** A filled-in bench sheet from a file, or every problem with its place. */
export function loadMeasured(file: string): Result<Sheet> {
  const read = readText(file);
  return 'problem' in read ? { ok: false, problems: [read.problem] } : readSheet(read.text, file);
}
