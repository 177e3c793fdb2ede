import type { Shelf } from './shelf.js';

/** One of the shelf's editable numbers by name, in the unit its entry states. Throws when the shelf has none: the default shelf has all. */
export function shelfNumber(shelf: Pick<Shelf, 'proposals'>, name: string): number {
  const entry = shelf.proposals[name];
  if (entry === undefined) throw new Error(`the shelf has no number called ${name}`);
  return entry.value;
}
