import type { Plan } from '../../plan/plan.js';
import type { Shelf } from '../../shelf/shelf.js';
import { commonUnits, tagOrder, type Pool, type PooledPiece } from '../pieces/pool.js';
import type { Answered, Asked } from './asked.js';
import type { Held, HeldBoard } from './held.js';
import { layOut, type PlacedPiece } from './layout.js';
import type { Cutting as Found } from './problem.js';
import type { BoughtBoard, CutPlan, StockPurchase, UncutStock } from './purchase.js';
import { fromCoins, toCoins, type StockProblem } from './stock-problem.js';
import { tooLong } from './too-long.js';

/** The answers for all stocks as one cutting plan: what is bought, how it is cut, what could not be and why. */
export function finishPlan(plans: readonly Plan[], shelf: Shelf, pool: Pool, answers: readonly Answered[]): CutPlan {
  const stocks: StockPurchase[] = [];
  const uncut: UncutStock[] = [];
  for (const one of answers) {
    if (one.kept !== undefined) stocks.push(one.kept);
    else if (one.problem === null && one.long.length === 0)
      uncut.push({ stock: one.key, reason: `The shelf gives no lengths and prices for ${one.key}.` });
    else if (one.long.length > 0)
      uncut.push({
        stock: one.key,
        reason: `${one.long.length === 1 ? 'A piece is' : `${one.long.length} pieces are`} longer than any board of ${one.key}.`,
      });
    else if (one.result?.ok === true) stocks.push(purchase(one, one.problem as StockProblem, one.result, shelf));
    else if (one.result?.ok === false && one.result.reason === 'not-enough')
      uncut.push({ stock: one.key, reason: `There are not enough boards of ${one.key} on the shelf for all pieces.` });
    else uncut.push({ stock: one.key, reason: `No way to cut ${one.key} was found in the time given.` });
  }
  const complete = uncut.length === 0;
  const bought_mm = sum(stocks.flatMap(({ boards }) => boards.map(({ length_mm }) => length_mm)));
  const used_mm = sum(
    stocks.map((stock) => (1 - stock.waste_share) * sum(stock.boards.map(({ length_mm }) => length_mm))),
  );
  return {
    lists: pool.lists,
    plan_names: plans.map(({ name }) => name),
    units: commonUnits(plans),
    currency: shelf.currency,
    demo_prices: shelf.demo_prices,
    kerf_mm: shelf.cutting.kerf_mm,
    stocks,
    uncut,
    too_long: answers.flatMap((one) => tooLong(one.long, plans, shelf, one.key, one.lengths)),
    cost: complete ? sum(stocks.map(({ cost }) => cost)) : null,
    boards: complete ? sum(stocks.map(({ boards }) => boards.filter(({ on_hand }) => !on_hand).length)) : null,
    waste_share: complete && bought_mm > 0 ? 1 - used_mm / bought_mm : null,
    proven: complete && stocks.every(({ proven }) => proven),
    bound: sum(stocks.map(({ bound }) => bound)),
    reason: complete ? null : uncut.map(({ reason }) => reason).join(' '),
  };
}

function purchase(asked: Asked, problem: StockProblem, result: Found, shelf: Shelf): StockPurchase {
  const inGaps = asked.boards.map(() => [] as PlacedPiece[]);
  const cut = result.boards.flatMap(({ stock, pieces }): BoughtBoard[] => {
    const { length_mm, price, mark = null, gap } = asked.lengths[stock] as Held['lengths'][number];
    const on_hand = price === 0;
    const trim_mm = on_hand ? 0 : shelf.cutting.end_trim_mm;
    const { placed, end_mm } = layOut(
      pieces.map((i) => asked.pieces[i] as PooledPiece),
      trim_mm,
      shelf.cutting.kerf_mm,
    );
    if (gap !== undefined) {
      inGaps[gap.board]?.push(
        ...placed.map((one) => ({ ...one, from_mm: one.from_mm + gap.from_mm, to_mm: one.to_mm + gap.from_mm })),
      );
      return [];
    }
    return [
      {
        stock: asked.key,
        length_mm,
        price,
        on_hand,
        mark,
        ready: false,
        trim_mm,
        pieces: placed,
        left_mm: Math.max(0, length_mm - trim_mm - end_mm),
        pick_clear:
          pieces.length === 1 &&
          (problem.items[pieces[0] as number]?.length as number) > (problem.stock[stock]?.length as number),
      },
    ];
  });
  const boards = [...asked.boards.map((held, i) => heldBoard(asked.key, held, inGaps[i] ?? [])), ...cut];
  const order = (board: BoughtBoard): string => tagOrder(board.pieces[0]?.tag ?? '');
  boards.sort((p, q) => q.length_mm - p.length_mm || p.price - q.price || (order(p) < order(q) ? -1 : 1));
  const bought_mm = sum(boards.map(({ length_mm }) => length_mm));
  const used_mm = sum(boards.flatMap(({ pieces }) => pieces).map(({ piece }) => (piece.cut_mm + piece.short_mm) / 2));
  const kinds = [...asked.boards.map(({ length }) => length), ...asked.lengths].flatMap(({ length_mm, price }) => {
    const count = boards.filter((board) => board.length_mm === length_mm && board.price === price).length;
    return count > 0 ? [{ length_mm, price, count, on_hand: price === 0 }] : [];
  });
  return {
    stock: asked.key,
    lumber: asked.lumber,
    boards,
    kinds: kinds.filter(
      (kind, i) => kinds.findIndex((other) => other.length_mm === kind.length_mm && other.price === kind.price) === i,
    ),
    knot_share: asked.knot_share,
    cost: fromCoins(result.cost),
    proven: result.proven,
    ties_proven: result.tiesProven,
    bound: fromCoins(result.bound),
    gap: result.gap,
    waste_share: 1 - used_mm / bought_mm,
  };
}

/** A board in hand with its settled pieces and those that were found for its gaps. */
function heldBoard(stock: string, { length, pieces, gaps }: HeldBoard, found: readonly PlacedPiece[]): BoughtBoard {
  const all = [...pieces, ...found].sort((a, b) => a.from_mm - b.from_mm);
  const free = gaps.map(
    ({ from_mm, to_mm }) =>
      to_mm -
      Math.max(
        from_mm,
        ...found.filter((one) => one.from_mm >= from_mm && one.to_mm <= to_mm + 0.01).map((one) => one.to_mm),
      ),
  );
  return {
    stock,
    length_mm: length.length_mm,
    price: length.price,
    on_hand: true,
    mark: length.mark ?? null,
    ready: length.as_is !== undefined,
    trim_mm: 0,
    pieces: all,
    left_mm: Math.max(0, ...free),
    pick_clear: false,
  };
}

const sum = (numbers: readonly number[]): number => fromCoins(numbers.reduce((total, n) => total + toCoins(n), 0));
