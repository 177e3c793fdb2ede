import type { ShortBoard } from '../cutting/enough-boards.js';
import type { CutPlan, StockPurchase } from '../cutting/boards/purchase.js';
import type { Model } from '../model/model.js';
import type { Shelf } from '../shelf/shelf.js';
import { cents, isInvented } from './packs.js';

/** Boards bought for picking over boards needed (proposal): of four that are sighted one or more stays in the shop. */
export const pickedOverNeeded = 1.3;

/** Boards of one stock, length and price. */
export interface BoardLine {
  readonly stock: string;
  readonly nominal: string | null;
  readonly thickness_mm: number;
  readonly width_mm: number;
  readonly length_mm: number;
  readonly price: number;
  /** `cut`: the cutting needs them. `spare`: to pick from, because the plan picks its boards. */
  readonly role: 'cut' | 'spare';
  readonly count: number;
  readonly on_hand: boolean;
  /** Of the count, how many the shelf lacks. */
  readonly missing: number;
  readonly cost: number;
  readonly invented: boolean;
}

/** The boards to buy: those that are cut, and those to pick from. */
export function boardLines(
  models: readonly Model[],
  cut: CutPlan,
  short: readonly ShortBoard[],
  shelf: Shelf,
): readonly BoardLine[] {
  return cut.stocks.flatMap((bought) => {
    const { stock, lumber } = bought;
    const base = {
      stock,
      nominal: lumber.nominal,
      thickness_mm: lumber.thickness_mm,
      width_mm: lumber.width_mm,
      invented: isInvented(shelf, `lumber.${stock}`, 'price'),
    };
    const cutLines = bought.kinds.map(({ length_mm, price, count, on_hand }): BoardLine => {
      const lacking = short.find((one) => one.stock === stock && one.length_mm === length_mm && one.price === price);
      return {
        ...base,
        length_mm,
        price,
        role: 'cut',
        count,
        on_hand,
        missing: lacking === undefined ? 0 : lacking.needed - lacking.available,
        cost: on_hand ? 0 : cents(price * count),
      };
    });
    return [
      ...cutLines,
      ...spareBoards(models, bought).map((spare): BoardLine => ({
        ...base,
        ...spare,
        role: 'spare',
        on_hand: false,
        missing: 0,
        cost: cents(spare.price * spare.count),
      })),
    ];
  });
}

/**
 * Boards to pick from beyond those that are cut, of the longest length bought, so that any of them serves; none where
 * no plan of this stock picks its boards.
 */
function spareBoards(
  models: readonly Model[],
  { stock, kinds }: StockPurchase,
): readonly { readonly length_mm: number; readonly price: number; readonly count: number }[] {
  const picks = models.some(
    ({ plan }) =>
      plan.lumber.chosen === 'picked' &&
      [plan.bars.stock, ...plan.crossbars.map((one) => one.stock), plan.corners.brace?.stock].includes(stock),
  );
  const bought = kinds.filter(({ on_hand }) => !on_hand);
  const needed = bought.reduce((n, { count }) => n + count, 0);
  const longest = [...bought].sort((a, b) => b.length_mm - a.length_mm || a.price - b.price)[0];
  if (!picks || longest === undefined) return [];
  return [
    { length_mm: longest.length_mm, price: longest.price, count: Math.ceil(pickedOverNeeded * needed - 1e-9) - needed },
  ];
}
