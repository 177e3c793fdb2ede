import { ask } from './boards/asked.js';
import { mitreKerf_mm } from './boards/stock-problem.js';
import { cutPlan, type Cutting } from './cut-plan.js';
import { commonUnits, poolPieces } from './pieces/pool.js';
import { lengthInReach_mm, stocksOf } from './pieces/in-reach.js';
import { orderMore } from './order-more.js';
import type { CutPlan } from './boards/purchase.js';
import type { Plan } from '../plan/plan.js';
import { shelfIn } from '../shelf/in-system.js';
import type { Shelf } from '../shelf/shelf.js';

/** Boards of one length that the plans need beyond what the shelf says is there: what to order. */
export interface ShortBoard {
  readonly stock: string;
  readonly length_mm: number;
  readonly price: number;
  readonly needed: number;
  readonly available: number;
}

/** What a cutting takes beyond the boards the shelf has. */
export function shortBoards(cut: CutPlan, shop: Shelf): readonly ShortBoard[] {
  const shelf = shelfIn(shop, cut.units);
  return cut.stocks.flatMap(({ stock, kinds }) =>
    kinds.flatMap(({ length_mm, price, count }): ShortBoard[] => {
      const have =
        shelf.lumber[stock]?.lengths?.filter((length) => length.length_mm === length_mm && length.price === price) ??
        [];
      const available = have.reduce((sum, length) => sum + (length.available ?? Infinity), 0);
      return count > available ? [{ stock, length_mm, price, needed: count, available }] : [];
    }),
  );
}

/**
 * Boards and their cutting, made as if the order had come where the shop has too few; `short` then says what to order.
 */
export interface Boards {
  readonly cut: CutPlan;
  readonly short: readonly ShortBoard[];
  /** Whether no other order besides the boards that are there costs less; true where nothing is short. */
  readonly order_proven: boolean;
}

/**
 * Of a cutting with the boards there are and one with those of an order laid to them, the one that cuts more; with what
 * it takes beyond the boards there are.
 */
export function enoughOf(
  cut: CutPlan,
  ordered: { readonly cut: CutPlan; readonly proven: boolean } | null,
  shelf: Shelf,
): Boards {
  const more = ordered !== null && ordered.cut.uncut.length < cut.uncut.length ? ordered : { cut, proven: true };
  return { cut: more.cut, short: shortBoards(more.cut, shelf), order_proven: more.proven };
}

/**
 * Whether boards of every stock are known and none of its pieces is longer than all of them: no cutting need be
 * searched to say that.
 */
export function allFit(plans: readonly Plan[], shop: Shelf): boolean {
  const shelf = shelfIn(shop, commonUnits(plans));
  if (plans.every((plan) => surelyFits(plan, shelf))) return true;
  const pool = poolPieces(plans, shelf);
  return pool.stocks.every((key) => ask(plans, shelf, pool, key).problem !== null);
}

/** Whether a new board of every stock of the plan, however knotty, is longer than any piece could be. */
function surelyFits(plan: Plan, shelf: Shelf): boolean {
  const { kerf_mm, end_trim_mm, knot_waste_share } = shelf.cutting;
  const sound_share = 1 - Math.max(...Object.values(knot_waste_share));
  const wanted_mm = lengthInReach_mm(plan, shelf) + mitreKerf_mm(kerf_mm);
  const isSold = (stock: string): boolean =>
    shelf.lumber[stock]?.lengths?.some(
      ({ length_mm, available, hand, as_is }) =>
        available !== 0 &&
        hand === undefined &&
        as_is === undefined &&
        (length_mm - 2 * end_trim_mm) * sound_share > wanted_mm,
    ) === true;
  return stocksOf(plan).every(isSold);
}

/** What to buy for these plans and how to cut it, the same on every machine. */
export function boardsFor(plans: readonly Plan[], shelf: Shelf, numbers?: readonly number[], more?: Cutting): Boards {
  const cut = cutPlan(plans, shelf, undefined, numbers, more);
  const ordered = cut.cost === null ? orderMore(cut, plans, shelf, numbers, undefined, more) : null;
  if (ordered === null) return enoughOf(cut, null, shelf);
  const before = { cut, found: ordered.found };
  const again = cutPlan(plans, ordered.shelf, undefined, numbers, { ...more, before });
  return enoughOf(cut, { cut: again, proven: ordered.proven }, shelf);
}
