import { boardsFor, type Boards, type ShortBoard } from '../cutting/enough-boards.js';
import { commonUnits } from '../cutting/pieces/pool.js';
import type { CutPlan } from '../cutting/boards/purchase.js';
import { clothRolls, type ClothRoll } from '../cutting/roll/plans.js';
import type { Model } from '../model/model.js';
import type { Shelf } from '../shelf/shelf.js';
import { boardLines, type BoardLine } from './board-lines.js';
import { cents, isInvented, stepsOf } from './packs.js';
import { supplyLines, type SupplyLine } from './supply-lines.js';

export type { BoardLine } from './board-lines.js';
export type { SupplyLine } from './supply-lines.js';

/** A cloth cut off its roll. */
export interface ClothLine extends ClothRoll {
  /** Length to buy, in the steps in which it is sold, mm. */
  readonly bought_mm: number;
  /** Null when a cloth is wider than the roll. */
  readonly bought_cost: number | null;
  readonly invented: boolean;
}

/**
 * Everything some plans take: what to pick up in the shop, and what it costs. Money in the shelf's currency, in whole
 * cents.
 */
export interface Supplies {
  readonly frames: number;
  readonly currency: string;
  readonly cut: CutPlan;
  readonly short: readonly ShortBoard[];
  /** Whether no other order besides the boards that are there costs less. */
  readonly order_proven: boolean;
  readonly boards: readonly BoardLine[];
  readonly cloths: readonly ClothLine[];
  readonly lines: readonly SupplyLine[];
  /** Boards to buy, spare ones with them, those that are missing too; null when some stock cannot be cut. */
  readonly boards_to_buy: number | null;
  /** Cost of those boards. */
  readonly full_boards_cost: number | null;
  /** No choice of the boards that are cut, with the spare ones, costs less than this. */
  readonly boards_bound: number;
  /** Of all boards, spare ones with them; null when some are not known or missing. */
  readonly boards_cost: number | null;
  /** At the till, whole packs; null when something is not known or missing: `reason` says what. */
  readonly total_cost: number | null;
  /** The same as if the boards that are missing were there. */
  readonly full_cost: number | null;
  /** Of that, what these frames use up: boards and cloth whole, packs by the share that is used. */
  readonly used_cost: number | null;
  /** What can be bought and has a price. */
  readonly rest_cost: number;
  readonly reason: string | null;
}

/** What some plans take besides boards: the same however those are cut. */
export type Besides = Pick<Supplies, 'cloths' | 'lines'>;

export const besidesOf = (models: readonly Model[], shelf: Shelf): Besides => ({
  cloths: clothLines(models, shelf),
  lines: supplyLines(models, shelf),
});

/**
 * Every amount that some plans take, worked out once: every page, list and fact reads it here. Models, cutting and what
 * is besides are of the same plans.
 */
export function supplies(
  models: readonly Model[],
  { cut, short, order_proven }: Boards,
  shelf: Shelf,
  { cloths, lines }: Besides = besidesOf(models, shelf),
): Supplies {
  const boards = boardLines(models, cut, short, shelf);
  const reason = reasonOf(cut, short, cloths, lines);
  const full_boards_cost = cut.reason === null ? sum(boards.map(({ cost }) => cost)) : null;
  const boards_cost = short.length === 0 ? full_boards_cost : null;
  const besides = [...cloths.map(({ bought_cost }) => bought_cost ?? 0), ...lines.map(({ cost }) => cost ?? 0)];
  const there = boards.map(({ price, count, missing, on_hand }) => (on_hand ? 0 : cents(price * (count - missing))));
  const used = [
    ...boards.map(({ cost }) => cost),
    ...cloths.map(({ bought_cost }) => bought_cost ?? 0),
    ...lines.map(({ cost, used_share }) => cents((cost ?? 0) * used_share)),
  ];
  const priced = cloths.every(({ bought_cost }) => bought_cost !== null) && lines.every(({ cost }) => cost !== null);
  const rest_cost = sum([...there, ...besides]);
  return {
    frames: models.reduce((n, { plan }) => n + plan.count, 0),
    currency: shelf.currency,
    cut,
    short,
    order_proven,
    boards,
    cloths,
    lines,
    full_boards_cost,
    boards_cost,
    boards_to_buy:
      cut.reason === null ? boards.filter(({ on_hand }) => !on_hand).reduce((n, { count }) => n + count, 0) : null,
    boards_bound: sum([cut.bound, ...boards.filter(({ role }) => role === 'spare').map(({ cost }) => cost)]),
    full_cost: full_boards_cost !== null && priced ? sum([full_boards_cost, ...besides]) : null,
    total_cost: reason === null && boards_cost !== null ? sum([boards_cost, ...besides]) : null,
    used_cost: reason === null && boards_cost !== null ? sum(used) : null,
    rest_cost,
    reason,
  };
}

const sum = (amounts: readonly number[]): number =>
  amounts.reduce((all, amount) => all + Math.round(amount * 100), 0) / 100;

function reasonOf(
  cut: CutPlan,
  short: readonly ShortBoard[],
  cloths: readonly ClothLine[],
  lines: readonly SupplyLine[],
): string | null {
  const missing = short.reduce((n, { needed, available }) => n + needed - available, 0);
  const reasons = [
    ...(cut.reason === null ? [] : [cut.reason]),
    ...(missing === 0 ? [] : [`The shelf lacks ${missing} of the boards.`]),
    ...cloths.flatMap(({ layout }) =>
      layout.too_wide.length === 0 ? [] : [`The roll is too narrow for the cloth of ${layout.too_wide.join(', ')}.`],
    ),
    ...lines.flatMap((line) => (line.cost === null && line.reason !== null ? [line.reason] : [])),
  ];
  return reasons.length === 0 ? null : reasons.join(' ');
}

function clothLines(models: readonly Model[], shelf: Shelf): readonly ClothLine[] {
  return clothRolls(models, shelf).map((roll): ClothLine => {
    const bought_mm = stepsOf(
      roll.layout.length_mm,
      roll.cloth.sold_by_mm,
      commonUnits(models.map(({ plan }) => plan)),
    );
    const wide = roll.layout.too_wide.length > 0;
    return {
      ...roll,
      bought_mm,
      bought_cost: wide ? null : cents((bought_mm / 1000) * roll.cloth.price_per_m),
      invented: isInvented(shelf, `cloths.${roll.cloth.key}`, 'price-per-m'),
    };
  });
}

/** Of the prices of a bill, how many nobody has asked for; boards on hand have none. */
export function inventedOf({
  boards,
  cloths,
  lines,
}: Pick<Supplies, 'boards' | 'cloths' | 'lines'>): 'none' | 'some' | 'all' {
  const priced = [
    ...boards.filter(({ on_hand }) => !on_hand),
    ...cloths.filter(({ bought_cost }) => bought_cost !== null),
    ...lines.filter(({ cost }) => cost !== null),
  ];
  const invented = priced.filter((line) => line.invented).length;
  return invented === 0 ? 'none' : invented < priced.length ? 'some' : 'all';
}

/** The bill of one plan, its boards cut at proven least cost. `shop` is the shelf the model was built from. */
export const suppliesOf = (model: Model, shop: Shelf, boards: Boards = boardsFor([model.plan], shop)): Supplies =>
  supplies([model], boards, shop);
