import type { Plan } from '../plan/plan.js';
import { shelfIn } from '../shelf/in-system.js';
import type { Shelf } from '../shelf/shelf.js';
import { ask, type Answered } from './boards/asked.js';
import { finishPlan } from './boards/finish-plan.js';
import { cutBoardsExactly, type LoadSolver, type Patience } from './boards/pack-fallback.js';
import { cutBoards } from './boards/pack.js';
import type { CutBoard, CutProblem, CutResult } from './boards/problem.js';
import type { CutPlan, StockPurchase } from './boards/purchase.js';
import type { StockProblem } from './boards/stock-problem.js';
import { commonUnits, poolPieces, type Pool } from './pieces/pool.js';

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

/** A stock's question as the search is put it. */
const toSearch = (
  { kerf, stock, items, setups }: StockProblem,
  time: SearchTime,
  known?: readonly CutBoard[],
): CutProblem => ({ kerf, stock, items, setups, ...time, ...(known === undefined ? {} : { known }) });
