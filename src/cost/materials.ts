import { woodCost, type CutPlan } from '../cutting/purchase.js';
import { clothOf, groundOf } from '../mechanics/cloth/shelf-numbers.js';
import { clothCutOf } from '../mechanics/cloth/cloth-sheet.js';
import { clothCutSize } from '../mechanics/cloth/cut-size.js';
import { plannedFastenings } from '../mechanics/fasteners/planned-fastenings.js';
import { glueSheet } from '../mechanics/glue/glue-sheet.js';
import { hangingState } from '../mechanics/hanging/hanging-state.js';
import type { Model } from '../model/model.js';

/** One thing to buy for all frames of a plan. */
export interface MaterialLine {
  /** `wood`, or a shelf key with its name. */
  readonly what: string;
  readonly quantity: number;
  readonly unit: 'boards' | 'pieces' | 'm' | 'ml';
  /** Null when it cannot be known; `reason` says why. */
  readonly cost: number | null;
  readonly reason?: string;
}

/** Everything a plan takes, all its frames together, at the shelf's prices, and the sum; the sum is null when any line is unknown. */
export interface Materials {
  readonly lines: readonly MaterialLine[];
  readonly total_cost: number | null;
  readonly reason: string | null;
}

/** Spare wire for the knots at both ends, m (`practice`). */
const spareWire_m = 0.3;

/** Materials of one plan from its model and its cutting plan. Screws and nails are counted, glue, ground and cloth measured; tools and paint are not in it. */
export function materials(model: Model, cut: CutPlan): Materials {
  const { count } = model.plan;
  const wood = woodCost(cut);
  const lines: MaterialLine[] = [
    { what: 'wood', quantity: cut.boards ?? 0, unit: 'boards', cost: wood.cost, ...(wood.reason === null ? {} : { reason: wood.reason }) },
    ...cloth(model, count),
    ...fastenings(model, count),
    ...hanging(model, count),
  ];
  const unknown = lines.find((line) => line.cost === null);
  const total_cost = unknown === undefined ? lines.reduce((sum, line) => sum + (line.cost ?? 0), 0) : null;
  return { lines, total_cost, reason: unknown?.reason ?? null };
}

function cloth(model: Model, count: number): MaterialLine[] {
  const stuff = clothOf(model);
  const ground = groundOf(model);
  const size = clothCutSize(clothCutOf(model));
  const length_m = (count * Math.max(size.width_mm, size.height_mm)) / 1000;
  const line: MaterialLine = { what: stuff.name, quantity: length_m, unit: 'm', cost: length_m * stuff.price_per_m };
  if (ground === null || model.plan.ground.coats === 0) return [line];
  const { width_mm, height_mm } = model.plan.face;
  const ml = (count * model.plan.ground.coats * ground.ml_per_m2_per_coat * width_mm * height_mm) / 1e6;
  return [line, { what: ground.name, quantity: ml, unit: 'ml', cost: (ml * ground.price_per_100ml) / 100 }];
}

function fastenings(model: Model, count: number): MaterialLine[] {
  const driven = plannedFastenings(model).map((f): MaterialLine => {
    const price = model.shelf.screws[f.key]?.price ?? model.shelf.nails[f.key]?.price ?? 0;
    return { what: f.label, quantity: count * f.count, unit: 'pieces', cost: count * f.count * price };
  });
  const glue = glueSheet(model);
  if (glue === null) return driven;
  const ml = count * glue.amount_ml;
  return [{ what: glue.glue.name, quantity: ml, unit: 'ml', cost: (ml * glue.glue.price_per_100ml) / 100 }, ...driven];
}

function hanging(model: Model, count: number): MaterialLine[] {
  const state = hangingState(model);
  if (state === null) return [];
  const { ring, wire, hook } = state.picked;
  const wire_m = (state.wire?.wire_mm ?? 0) / 1000 + spareWire_m;
  const piece = (part: { readonly name: string; readonly price: number } | null, each: number): MaterialLine[] =>
    part === null ? [] : [{ what: part.name, quantity: count * each, unit: 'pieces', cost: count * each * part.price }];
  return [
    ...piece(ring, 2),
    ...(wire === null || state.wire === null ? [] : [{ what: wire.name, quantity: count * wire_m, unit: 'm' as const, cost: count * wire_m * wire.price }]),
    ...piece(hook, state.by === 'wire' ? model.plan.hang.hooks : 2),
  ];
}
