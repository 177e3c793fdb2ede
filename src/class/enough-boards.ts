import type { CutPlan } from '../cutting/cut-plan.js';
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
export function shortBoards(cut: CutPlan, shelf: Shelf): readonly ShortBoard[] {
  return cut.stocks.flatMap(({ stock, kinds }) => kinds.flatMap(({ length_mm, price, count }): ShortBoard[] => {
    const have = shelf.lumber[stock]?.lengths?.filter((length) => length.length_mm === length_mm && length.price === price) ?? [];
    const available = have.reduce((sum, length) => sum + (length.available ?? Infinity), 0);
    return count > available ? [{ stock, length_mm, price, needed: count, available }] : [];
  }));
}
