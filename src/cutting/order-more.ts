import type { Plan } from '../plan/plan.js';
import { shelfIn } from '../shelf/in-system.js';
import type { Lumber, Shelf, StockLength } from '../shelf/shelf.js';
import { ask } from './boards/asked.js';
import { workClock, type Cutting, type SearchTime } from './cut-plan.js';
import { cutBoards } from './boards/pack.js';
import { commonUnits, poolPieces } from './pieces/pool.js';
import type { CutBoard, CutProblem, CutResult, StockKind } from './boards/problem.js';
import type { CutPlan } from './boards/purchase.js';
import type { StockProblem } from './boards/stock-problem.js';

/** A shelf with the boards that have to be ordered laid to those that are there. */
export interface Ordered {
  readonly shelf: Shelf;
  /** Whether no other order would cost less, for every stock that is short. */
  readonly proven: boolean;
  /** How the boards that are there and those of the order would be cut, by stock. */
  readonly found: ReadonlyMap<string, readonly CutBoard[]>;
}

/** Whether the shop has so many of these boards and no more; a leftover on hand is no such board. */
const limited = ({ price, available }: StockLength): boolean => price > 0 && available !== null;

/**
 * What to order where the shop has too few boards: of every length sold, those there are cost the order nothing and all
 * others their price, so the
 * cheapest order uses up what is there first, whatever its length. Null when no stock that could not be cut is limited.
 */
export function orderMore(
  cut: CutPlan,
  plans: readonly Plan[],
  shop: Shelf,
  numbers?: readonly number[],
  time: SearchTime = { timeLimit_ms: 400, now: workClock() },
  { search = cutBoards }: Cutting = {},
): Ordered | null {
  const shelf = shelfIn(shop, commonUnits(plans));
  const pool = poolPieces(plans, shelf, numbers);
  const lumber = { ...shelf.lumber };
  const cuttings = new Map<string, readonly CutBoard[]>();
  let proven = true;
  const wanting = cut.uncut
    .map(({ stock }) => stock)
    .filter((stock) => shelf.lumber[stock]?.lengths?.some(limited) === true);
  for (const key of wanting) {
    const entry = lumber[key] as Lumber;
    const there = entry.lengths ?? [];
    const endless = there.map((length) => (limited(length) ? { ...length, available: null } : length));
    const asked = ask(
      plans,
      { ...shelf, lumber: { ...shelf.lumber, [key]: { ...entry, lengths: endless } } },
      pool,
      key,
    );
    const found =
      asked.problem === null
        ? null
        : cheapestOrder(
            asked.problem,
            asked.lengths.map((length) => there[endless.indexOf(length)] ?? length),
            time,
            search,
          );
    if (found !== null) cuttings.set(key, found.boards);
    const more = (length: StockLength): number | null =>
      found === null ? null : (length.available ?? 0) + (found.more.get(length) ?? 0);
    lumber[key] = {
      ...entry,
      lengths: there.map((length) => (limited(length) ? { ...length, available: more(length) } : length)),
    };
    proven &&= found?.proven === true;
  }
  return wanting.length === 0 ? null : { shelf: { ...shelf, lumber }, proven, found: cuttings };
}

/** A kind of board that is there, or that is ordered; with its place on the shelf. */
interface Choice {
  readonly i: number;
  readonly kind: StockKind;
  readonly ordered: StockLength | null;
}

interface Order {
  readonly more: ReadonlyMap<StockLength, number>;
  readonly boards: readonly CutBoard[];
  readonly proven: boolean;
}

/**
 * How many of each length to order beyond those that are there; null when the time ran out before any way was found.
 */
function cheapestOrder(
  { kerf, stock, items, setups }: StockProblem,
  lengths: readonly StockLength[],
  time: SearchTime,
  search: (problem: CutProblem) => CutResult,
): Order | null {
  const kinds = stock.flatMap((kind, i): readonly Choice[] => {
    const length = lengths[i] as StockLength;
    const there = {
      i,
      kind: { ...kind, price: 0, available: limited(length) ? length.available : (kind.available ?? null) },
      ordered: null,
    };
    return limited(length) ? [there, { i, kind, ordered: length }] : [there];
  });
  const result = search({ kerf, stock: kinds.map(({ kind }) => kind), items, setups, ...time });
  if (!result.ok) return null;
  const more = new Map<StockLength, number>();
  for (const board of result.boards) {
    const ordered = kinds[board.stock]?.ordered ?? null;
    if (ordered !== null) more.set(ordered, (more.get(ordered) ?? 0) + 1);
  }
  const boards = result.boards.map((board) => ({ ...board, stock: (kinds[board.stock] as Choice).i }));
  return { more, boards, proven: result.proven };
}
