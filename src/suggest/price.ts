import { besidesOf, supplies, type Besides } from '../cost/supplies.js';
import { cutPlan } from '../cutting/cut-plan.js';
import { poolPieces } from '../cutting/pieces/pool.js';
import type { CutPlan } from '../cutting/boards/purchase.js';
import { buildModel } from '../model/build-model.js';
import type { Model } from '../model/model.js';
import { builtSize } from '../plan/build-up.js';
import type { Plan } from '../plan/plan.js';
import { shelfIn } from '../shelf/in-system.js';
import type { Lumber, Shelf } from '../shelf/shelf.js';
import { leastHanging } from './least-hanging.js';

/** What a plan costs and weighs, in whole cents and grams, as compared with others. An unknown cost is infinite. */
export interface Price {
  readonly cents: number;
  readonly grams: number;
}

/** A plan with all that it takes but its boards. */
interface Billed {
  readonly model: Model;
  readonly besides: Besides;
}

/** The bill of a plan without what it hangs by, and the least that this takes. */
export interface Unhung extends Billed {
  readonly hanging: Price;
}

/** The bill of a plan before it is known how it hangs. */
export function billUnhung(plan: Plan, shelf: Shelf): Unhung {
  const model = buildModel({ ...plan, hang: { ...plan.hang, by: 'none' } }, shelf);
  return { model, besides: besidesOf([model], shelf), hanging: leastHanging(plan, shelf) };
}

/**
 * Cost and weight of plans that are cut as given and differ only in how their boards are chosen, paired and dried:
 * that changes the boards to buy and what all weighs, and nothing besides.
 */
export function pricesOf(plans: readonly Plan[], cut: CutPlan, shelf: Shelf): readonly Price[] {
  const models = plans.map((plan) => buildModel(plan, shelf));
  const besides = besidesOf(models.slice(0, 1), shelf);
  return models.map((model) => priceBilled({ model, besides }, cut, shelf));
}

/** Rounded to what a person sees, so that a difference nobody can see decides nothing. */
function priceBilled({ model, besides }: Billed, cut: CutPlan, shelf: Shelf): Price {
  const { total_cost } = supplies([model], { cut, short: [], order_proven: true }, shelf, besides);
  return {
    cents: total_cost === null ? Infinity : Math.round(total_cost * 100),
    grams: Math.round(model.weight.total_kg * 1000),
  };
}

/**
 * The bars of a build alone: no crossbars, braces or ply screws, which may share a place on the bars and so would not
 * add up.
 */
const bareFrame = (plan: Plan): Plan => ({
  ...plan,
  crossbars: [],
  corners: { ...plan.corners, brace: null },
  ply_screws: null,
  bars: {
    ...plan.bars,
    bond: plan.bars.bond === 'glue+screws' ? 'glue' : plan.bars.bond === 'screws' ? 'none' : plan.bars.bond,
  },
});

/**
 * Less than any build can cost or weigh, with next to no work: its bare frame, worked out once for all builds of one
 * plan that share it, and the wood inside it by its
 * length. Nothing else inside it (screws, glue) is counted.
 */
export function roughPrices(shelf: Shelf): (plan: Plan) => Price {
  const known = new Map<string, Price>();
  return (plan) => {
    const bare = bareFrame(plan);
    const key = JSON.stringify([bare.bars, bare.corners, bare.cloth, bare.hang]);
    const frame = known.get(key) ?? leastPrice(billUnhung(bare, shelf), shelf);
    known.set(key, frame);
    const inside = woodInside(plan, shelf);
    return { cents: frame.cents + Math.floor(inside.cost * 100), grams: frame.grams + Math.floor(inside.grams) };
  };
}

/**
 * Least cost and weight of the wood of crossbars and timber braces, by the shortest that they can be: from bar to bar.
 */
function woodInside(plan: Plan, shelf: Shelf): { readonly cost: number; readonly grams: number } {
  const { lumber } = shelfIn(shelf, plan.units);
  const {
    face,
    bars,
    corners: { brace },
  } = plan;
  const stock = lumber[bars.stock];
  const w_mm = stock === undefined ? Infinity : builtSize(stock, bars.lay, bars.plies, bars.stack).w_mm;
  const timber =
    brace?.kind === 'timber' ? [{ stock: brace.stock ?? bars.stock, mm: 4 * Math.SQRT2 * (brace.leg_mm - w_mm) }] : [];
  const lengths = [
    ...plan.crossbars.map(({ stock: key, plies, runs }) => ({
      stock: key,
      mm: plies * ((runs === 'upright' ? face.height_mm : face.width_mm) - 2 * w_mm),
    })),
    ...timber,
  ];
  let [cost, grams] = [0, 0];
  for (const { stock: key, mm } of lengths) {
    const own = lumber[key];
    if (own === undefined || mm <= 0) continue;
    cost += mm * bestPrice_per_mm(own);
    grams += mm * own.thickness_mm * own.width_mm * own.density_kg_per_m3 * 1e-6;
  }
  return { cost, grams };
}

/** Of all lengths that are sold, the least price for a length of wood; Infinity where none has a price. */
const bestPrice_per_mm = ({ lengths }: Pick<Lumber, 'lengths'>): number =>
  Math.min(...(lengths ?? []).map(({ length_mm, price }) => price / length_mm));

/**
 * Less than any way of hanging this build can cost or weigh, before it is known how its boards are cut. Every part of
 * the price but wood and hanging is exact.
 */
export function leastPrice(unhung: Unhung, shelf: Shelf): Price {
  const { plan } = unhung.model;
  const { cents, grams } = leastPriceCut(unhung, uncut(plan), shelf);
  return { cents: cents + Math.floor(leastWood(plan, shelf) * 100), grams };
}

/** The same once the cutting is known. */
export function leastPriceCut(unhung: Unhung, cut: CutPlan, shelf: Shelf): Price {
  const { cents, grams } = priceBilled(unhung, cut, shelf);
  const { hanging } = unhung;
  return { cents: cents + hanging.cents - 1, grams: grams + hanging.grams - 1 };
}

/**
 * Wood costs at least its length at the best price per length: a board holds no more than its own length of pieces,
 * mitres nested. Infinite when a stock has no prices.
 */
function leastWood(plan: Plan, shelf: Shelf): number {
  const { pieces } = poolPieces([plan], shelf);
  const { lumber } = shelfIn(shelf, plan.units);
  let cost = 0;
  for (const [key, own] of Object.entries(pieces)) {
    const least = bestPrice_per_mm(lumber[key] ?? { lengths: null });
    if (least === Infinity) return Infinity;
    cost += least * own.reduce((sum, { piece }) => sum + Math.max(0, (piece.cut_mm + piece.short_mm) / 2), 0);
  }
  return cost;
}

const uncut = (plan: Plan): CutPlan => ({
  lists: [],
  plan_names: [plan.name],
  units: plan.units,
  currency: '',
  demo_prices: false,
  kerf_mm: 0,
  stocks: [],
  uncut: [],
  too_long: [],
  cost: 0,
  boards: 0,
  waste_share: 0,
  proven: true,
  bound: 0,
  reason: null,
});

/** How the boards of one plan are cut: the audit's own cutting plan. */
export const cutting = (plan: Plan, shelf: Shelf): CutPlan => cutPlan([plan], shelf);
