import type { Result } from '../base/problem.js';
import type { Pile } from '../pile/pile.js';
import { readPile } from '../pile/read-pile.js';
import type { Shelf } from '../shelf/shelf.js';
import { readText } from './read-text.js';
import { complain } from './terminal.js';

/** The pile of a file, or null after complaining about why it cannot be read. */
export function loadPile(file: string, shelf: Shelf): Pile | null {
  const read = readText(file);
  const result: Result<Pile> = 'problem' in read ? { ok: false, problems: [read.problem] } : readPile(read.text, file, shelf);
  complain(result.ok ? result.warnings : result.problems);
  return result.ok ? result.value : null;
}
