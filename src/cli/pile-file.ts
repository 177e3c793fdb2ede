import type { Result } from '../base/problem.js';
import { shelfWithPile } from '../pile/on-shelf.js';
import type { Pile } from '../pile/pile.js';
import { readPile } from '../pile/read-pile.js';
import type { Shelf } from '../shelf/shelf.js';
import { readText } from './read-text.js';
import { complain } from './terminal.js';

/** The shelf with the boards in hand on it, as `--pile` names them; unchanged when it names none, null after complaining about a pile that cannot be read. */
export function shelfWithPileFile(file: string | undefined, shelf: Shelf): Shelf | null {
  if (file === undefined) return shelf;
  const pile = loadPile(file, shelf);
  return pile === null ? null : shelfWithPile(shelf, pile);
}

/** The pile of a file, or null after complaining about why it cannot be read. */
export function loadPile(file: string, shelf: Shelf): Pile | null {
  const read = readText(file);
  const result: Result<Pile> = 'problem' in read ? { ok: false, problems: [read.problem] } : readPile(read.text, file, shelf);
  complain(result.ok ? result.warnings : result.problems);
  return result.ok ? result.value : null;
}
