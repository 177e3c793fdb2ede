import type { CutPlan } from '../cutting/boards/purchase.js';
import type { Cutting } from '../cutting/cut-plan.js';
import { orderMore, type Ordered } from '../cutting/order-more.js';
import { numbersOf } from '../cutting/pieces/pool.js';
import { costShares, usedParts } from '../cost/shares.js';
import { supplies, type ClothLine, type Supplies, type SupplyLine } from '../cost/supplies.js';
import { buildModel } from '../model/build-model.js';
import type { Plan } from '../plan/plan.js';
import type { Shelf } from '../shelf/shelf.js';
import { boardsFor, enoughOf, type Boards, type ShortBoard } from '../cutting/enough-boards.js';

/** What several plans take together, bought in one go. */
export interface Pooled {
  readonly plans: readonly Plan[];
  /** What each goes by on wood and cloth where there are several. */
  readonly numbers: readonly number[];
  /** Boards: what to buy and how to cut it. */
  readonly cut: CutPlan;
  /** Boards the cutting takes beyond what the shelf says is there; empty when there are enough. */
  readonly short: readonly ShortBoard[];
  /**
   * Cloth: one roll for each kind, all its cloths laid out on it, named by the numbers of their plans when there are
   * several.
   */
  readonly rolls: readonly ClothLine[];
  /** Everything else, equal things added up, in order of first use. */
  readonly others: readonly SupplyLine[];
  /** All of it as every list reads it. */
  readonly supplies: Supplies;
  /** What each plan pays of the whole, in whole cents; null where the whole is not known. */
  readonly shares: readonly (number | null)[];
  /**
   * Sum of everything; null when the cost of the boards is unknown, or a cloth does not fit its roll: `reason` then
   * says why.
   */
  readonly total_cost: number | null;
  readonly reason: string | null;
}

/** Works out boards for plans on a shelf, such as `cutPlan`. */
export type Cutter<C> = (plans: readonly Plan[], shelf: Shelf, how: Cutting) => C;

/**
 * What all plans take, each as often as its count says, the same on every machine; `how` with `cutMany` for hundreds of
 * them.
 */
export function poolPlans(
  plans: readonly Plan[],
  shelf: Shelf,
  numbers: readonly number[] = numbersOf(plans),
  how: Cutting = {},
): Pooled {
  return addUp(plans, numbers, shelf, boardsFor(plans, shelf, numbers, how));
}

/** The same with boards worked out by another, slower cutter. */
export async function poolPlansWith(
  plans: readonly Plan[],
  shelf: Shelf,
  cutter: Cutter<Promise<CutPlan>>,
  how: Cutting = {},
): Promise<Pooled> {
  const cut = await cutter(plans, shelf, how);
  const ordered = cut.cost === null ? orderMore(cut, plans, shelf, undefined, undefined, how) : null;
  const found = async ({ shelf: stocked, proven, found: known }: Ordered): Promise<Parameters<typeof enoughOf>[1]> => ({
    cut: await cutter(plans, stocked, { ...how, before: { cut, found: known } }),
    proven,
  });
  return addUp(plans, numbersOf(plans), shelf, enoughOf(cut, ordered === null ? null : await found(ordered), shelf));
}

function addUp(plans: readonly Plan[], numbers: readonly number[], shelf: Shelf, found: Boards): Pooled {
  const models = plans.map((plan) => buildModel(plan, shelf));
  const named = models.map((model, i) =>
    models.length === 1 ? model : { ...model, plan: { ...model.plan, name: String(numbers[i]) } },
  );
  const all = supplies(named, found, shelf);
  return {
    plans,
    numbers,
    cut: all.cut,
    short: all.short,
    rolls: all.cloths,
    others: all.lines,
    supplies: all,
    shares: costShares(all.full_cost, usedParts(models, all)),
    total_cost: all.full_cost,
    reason: all.full_cost === null ? all.reason : null,
  };
}
