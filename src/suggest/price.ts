import { supplies } from '../cost/supplies.js';
import { cutPlan } from '../cutting/cut-plan.js';
import { poolPieces } from '../cutting/pieces/pool.js';
import type { CutPlan } from '../cutting/boards/purchase.js';
import { buildModel } from '../model/build-model.js';
import type { Plan } from '../plan/plan.js';
import { shelfIn } from '../shelf/in-system.js';
import type { Shelf } from '../shelf/shelf.js';

/** What a plan costs and weighs, in whole cents and grams, as compared with others. An unknown cost is infinite. */
export interface Price {
  readonly cents: number;
  readonly grams: number;
}

const unhung = (plan: Plan): Plan => ({ ...plan, hang: { ...plan.hang, by: 'none' } });

/** Cost and weight of a plan cut as given. Rounded to what a person sees, so that a difference nobody can see decides nothing. */
export function priceOf(plan: Plan, cut: CutPlan, shelf: Shelf): Price {
  const model = buildModel(plan, shelf);
  const { total_cost } = supplies([model], { cut, short: [], order_proven: true }, shelf);
  return { cents: total_cost === null ? Infinity : Math.round(total_cost * 100), grams: Math.round(model.weight.total_kg * 1000) };
}

/** Less than any way of hanging this build can cost or weigh, before it is known how its boards are cut. Every part of the price but wood and hanging is exact. */
export function leastPrice(plan: Plan, shelf: Shelf): Price {
  const { cents, grams } = priceOf(unhung(plan), uncut(plan), shelf);
  return { cents: cents + Math.floor(leastWood(plan, shelf) * 100) - 1, grams: grams - 1 };
}

/** The same once the cutting is known. */
export function leastPriceCut(plan: Plan, cut: CutPlan, shelf: Shelf): Price {
  const { cents, grams } = priceOf(unhung(plan), cut, shelf);
  return { cents: cents - 1, grams: grams - 1 };
}

/** Wood costs at least its length at the best price per length: a board holds no more than its own length of pieces, mitres nested. Infinite when a stock has no prices. */
function leastWood(plan: Plan, shelf: Shelf): number {
  const { pieces } = poolPieces([plan], shelf);
  const { lumber } = shelfIn(shelf, plan.units);
  let cost = 0;
  for (const [key, own] of Object.entries(pieces)) {
    const prices = (lumber[key]?.lengths ?? []).map(({ length_mm, price }) => price / length_mm);
    if (prices.length === 0) return Infinity;
    cost += Math.min(...prices) * own.reduce((sum, { piece }) => sum + Math.max(0, (piece.cut_mm + piece.short_mm) / 2), 0);
  }
  return cost;
}

const uncut = (plan: Plan): CutPlan => ({
  lists: [], plan_names: [plan.name], units: plan.units, currency: '', demo_prices: false, kerf_mm: 0, stocks: [], uncut: [], too_long: [], cost: 0, boards: 0, waste_share: 0, proven: true, bound: 0, reason: null,
});

/** How the boards of one plan are cut: the audit's own cutting plan. */
export const cutting = (plan: Plan, shelf: Shelf): CutPlan => cutPlan([plan], shelf);
