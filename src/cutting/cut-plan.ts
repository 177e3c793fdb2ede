import type { Plan } from '../plan/plan.js';
import { shelfIn } from '../shelf/in-system.js';
import type { Lumber, Shelf } from '../shelf/shelf.js';
import { layOut, type PlacedPiece } from './boards/layout.js';
import { cutBoardsExactly, type LoadSolver, type Patience } from './boards/pack-fallback.js';
import { cutBoards } from './boards/pack.js';
import { holdPieces, type Held, type HeldBoard } from './boards/held.js';
import type { BoughtBoard, CutPlan, StockPurchase, UncutStock } from './boards/purchase.js';
import { commonUnits, poolPieces, tagOrder, type Pool, type PooledPiece } from './pieces/pool.js';
import type { CutBoard, CutProblem, CutResult, Cutting as Found } from './boards/problem.js';
import { fromCoins, stockProblem, toCoins, type StockProblem } from './boards/stock-problem.js';
import { tooLong, type LongPiece } from './boards/too-long.js';

export type { CutPlan } from './boards/purchase.js';

/** How long the search may take per stock, by the clock it is given. */
export interface SearchTime {
  readonly timeLimit_ms: number;
  readonly now: () => number;
}

/** What a cutting goes by besides the time it may take. */
export interface Cutting {
  /** The search for each stock: `cutBoards`, or `cutMany` for pools of hundreds of plans. */
  readonly search?: (problem: CutProblem) => CutResult;
  /** What is known from before an order was laid to the shelf. */
  readonly before?: Before;
}

/** A cutting with the boards there are, and how the boards of an order would be cut, by stock. */
export interface Before {
  readonly cut: CutPlan;
  readonly found: ReadonlyMap<string, readonly CutBoard[]>;
}

/**
 * A clock that counts its readings instead of time: the search then stops at the same point on every machine. One
 * reading stands for about a millisecond.
 */
export function workClock(): () => number {
  let readings = 0;
  return () => readings++;
}

/**
 * What to buy and how to cut it for all plans together, each as often as its count says; `numbers` go before the names
 * of their pieces. Pure and the same on every machine unless given a real clock. Throws on a stock that is not on the
 * shelf.
 */
export function cutPlan(
  plans: readonly Plan[],
  shop: Shelf,
  time: SearchTime = { timeLimit_ms: 400, now: workClock() },
  numbers?: readonly number[],
  more?: Cutting,
): CutPlan {
  const shelf = shelfIn(shop, commonUnits(plans));
  return cutPool(plans, shelf, poolPieces(plans, shelf, numbers), time, more);
}

/**
 * The same for some of the plans' pieces, such as those that the boards in hand do not give; the shelf is the one the
 * pool was made from, in the plans' units.
 */
export function cutPool(
  plans: readonly Plan[],
  shelf: Shelf,
  pool: Pool,
  time: SearchTime = { timeLimit_ms: 400, now: workClock() },
  { search = cutBoards, before }: Cutting = {},
): CutPlan {
  const answers = pool.stocks.map((key): Answered => {
    const asked = ask(plans, shelf, pool, key);
    const kept = keptOf(before, key);
    if (kept !== undefined || asked.problem === null) return { ...asked, kept };
    return { ...asked, result: search(toSearch(asked.problem, time, before?.found.get(key))) };
  });
  return finishPlan(plans, shelf, pool, answers);
}

/** A stock that was cut before an order was asked for is cut already: the order adds boards of others alone. */
const keptOf = (before: Before | undefined, key: string): StockPurchase | undefined =>
  before?.cut.stocks.find(({ stock }) => stock === key);

/**
 * Like `cutPlan`, but where the search runs out of time the integer program that is passed in (`loadHighs` of
 * `sightdown/highs`) gets `patience` more for each stock.
 */
export async function cutPlanExactly(
  plans: readonly Plan[],
  shop: Shelf,
  time: SearchTime,
  patience: Patience,
  load: LoadSolver,
  { search, before }: Cutting = {},
): Promise<CutPlan> {
  const shelf = shelfIn(shop, commonUnits(plans));
  const pool = poolPieces(plans, shelf);
  const answers: Answered[] = [];
  for (const key of pool.stocks) {
    const asked = ask(plans, shelf, pool, key);
    const kept = keptOf(before, key);
    if (kept !== undefined || asked.problem === null) answers.push({ ...asked, kept });
    else {
      const problem = toSearch(asked.problem, time, before?.found.get(key));
      answers.push({ ...asked, result: await cutBoardsExactly(problem, patience, load, search) });
    }
  }
  return finishPlan(plans, shelf, pool, answers);
}

/** One stock's question: its pieces, its boards, and the search's problem. */
export interface Asked extends Held {
  readonly key: string;
  readonly lumber: Lumber;
  /** Null when there is nothing to search: no lengths on the shelf, or pieces too long. */
  readonly problem: StockProblem | null;
  readonly long: readonly LongPiece[];
  readonly knot_share: number;
}

interface Answered extends Asked {
  readonly result?: CutResult;
  readonly kept?: StockPurchase | undefined;
}

const toSearch = (
  { kerf, stock, items, setups }: StockProblem,
  time: SearchTime,
  known?: readonly CutBoard[],
): CutProblem => ({ kerf, stock, items, setups, ...time, ...(known === undefined ? {} : { known }) });

/** What one stock of a pool becomes for the search. */
export function ask(plans: readonly Plan[], shelf: Shelf, pool: Pool, key: string): Asked {
  const lumber = shelf.lumber[key] as Lumber;
  const held = holdPieces(
    pool.pieces[key] as readonly PooledPiece[],
    lumber.lengths ?? [],
    plans,
    shelf.cutting.kerf_mm,
  );
  const { pieces, lengths } = held;
  const known = lengths.length > 0 || pieces.length === 0;
  const knot_share = pool.knot_share[key] ?? 0;
  const problem = stockProblem(
    pieces.map(({ piece }) => piece),
    lengths,
    shelf.cutting,
    knot_share,
  );
  const long = !known
    ? []
    : problem.too_long.map(({ index, over_mm }) => ({ ...(pieces[index] as PooledPiece), over_mm }));
  return { ...held, key, lumber, problem: !known || long.length > 0 ? null : problem, long, knot_share };
}

function finishPlan(plans: readonly Plan[], shelf: Shelf, pool: Pool, answers: readonly Answered[]): CutPlan {
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
