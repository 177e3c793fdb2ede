import { cutPlan } from './cut-plan.js';
import type { CutPlan } from './purchase.js';
import type { Plan } from '../plan/plan.js';
import { shelfIn } from '../shelf/in-system.js';
import type { Shelf } from '../shelf/shelf.js';

/** Boards of one length that the plans need beyond what the shelf says is there. */
export interface ShortBoard {
  readonly stock: string;
  readonly length_mm: number;
  readonly price: number;
  readonly needed: number;
  readonly available: number;
}

/** The shelf with as many boards for sale as wanted; leftovers on hand stay as many as there are. Null when no stock is limited. */
export function endlessShelf(shelf: Shelf): Shelf | null {
  const limited = Object.values(shelf.lumber).some(({ lengths }) => lengths?.some(({ price, available }) => price > 0 && available !== null) === true);
  if (!limited) return null;
  const lumber = Object.entries(shelf.lumber).map(([key, entry]) => [key, entry.lengths === null ? entry : { ...entry, lengths: entry.lengths.map((length) => (length.price > 0 ? { ...length, available: null } : length)) }] as const);
  return { ...shelf, lumber: Object.fromEntries(lumber) };
}

/** What a cutting takes beyond the boards the shelf has. */
export function shortBoards(cut: CutPlan, shop: Shelf): readonly ShortBoard[] {
  const shelf = shelfIn(shop, cut.units);
  return cut.stocks.flatMap(({ stock, kinds }) => kinds.flatMap(({ length_mm, price, count }): ShortBoard[] => {
    const have = shelf.lumber[stock]?.lengths?.filter((length) => length.length_mm === length_mm && length.price === price) ?? [];
    const available = have.reduce((sum, length) => sum + (length.available ?? Infinity), 0);
    return count > available ? [{ stock, length_mm, price, needed: count, available }] : [];
  }));
}

/** Boards and their cutting, made as if the shop had enough where it has too few; `short` then says what is missing. */
export interface Boards {
  readonly cut: CutPlan;
  readonly short: readonly ShortBoard[];
}

/** Of a cutting with the boards there are and one with as many as wanted, the one that cuts more; with what it takes beyond the boards there are. */
export function enoughOf(cut: CutPlan, endless: CutPlan | null, shelf: Shelf): Boards {
  const chosen = endless !== null && endless.uncut.length < cut.uncut.length ? endless : cut;
  return { cut: chosen, short: shortBoards(chosen, shelf) };
}

/** What to buy for these plans and how to cut it, the same on every machine. */
export function boardsFor(plans: readonly Plan[], shelf: Shelf): Boards {
  const cut = cutPlan(plans, shelf);
  const endless = cut.cost === null ? endlessShelf(shelf) : null;
  return enoughOf(cut, endless === null ? null : cutPlan(plans, endless), shelf);
}
