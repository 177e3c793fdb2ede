import type { Result } from '../base/problem.js';
import { checkNamedBoards } from '../pile/check-named.js';
import { shelfWithPile } from '../pile/on-shelf.js';
import type { Pile } from '../pile/pile.js';
import { readPile } from '../pile/read-pile.js';
import type { Shelf } from '../shelf/shelf.js';
import { planFiles } from './plans.js';
import { readText } from './read-text.js';
import { complain } from './terminal.js';

/**
 * The shelf with the boards in hand on it, as `--pile` names them; unchanged when it names none, null after complaining
 * about a pile that cannot be read.
 * Complains of boards that the named plans take from the pile and that it does not have.
 */
export function shelfWithPileFile(file: string | undefined, shelf: Shelf, named: readonly string[]): Shelf | null {
  if (file === undefined) return shelf;
  const pile = loadPile(file, shelf);
  if (pile === null) return null;
  complain(
    planFiles(named).files.flatMap((plan) => {
      const read = readText(plan);
      return 'problem' in read ? [] : checkNamedBoards(read.text, plan, pile);
    }),
  );
  return shelfWithPile(shelf, pile);
}

/** The pile of a file, or null after complaining about why it cannot be read. */
export function loadPile(file: string, shelf: Shelf): Pile | null {
  const read = readText(file);
  const result: Result<Pile> =
    'problem' in read ? { ok: false, problems: [read.problem] } : readPile(read.text, file, shelf);
  complain(result.ok ? result.warnings : result.problems);
  return result.ok ? result.value : null;
}
