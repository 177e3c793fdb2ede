import type { ProposalName } from './proposals.js';
import type { Shelf } from './shelf.js';

/**
 * One of the shelf's editable numbers by name, in the unit `proposalNumbers` says. Throws when a shelf lacks it, which
 * the reader of shelves rules out.
 */
export function shelfNumber(shelf: Pick<Shelf, 'proposals'>, name: ProposalName): number {
  const entry = shelf.proposals[name];
  if (entry === undefined) throw new Error(`the shelf has no number called ${name}`);
  return entry.value;
}
