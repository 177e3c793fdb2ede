import { costShares, usedParts } from '../cost/shares.js';
import { supplies, type Supplies } from '../cost/supplies.js';
import { boardsFor } from '../cutting/enough-boards.js';
import { buildModel } from '../model/build-model.js';
import type { Plan } from '../plan/plan.js';
import type { Shelf } from '../shelf/shelf.js';
import type { Shop } from '../shop/shop.js';

/** What one frame of a plan costs. */
export interface FrameCost {
  readonly plan: Plan;
  /** Its share of what all buy together; null where a cost is not known. */
  readonly material: number | null;
  /** What a bought one of its size would cost; null without a price to compare with. */
  readonly bought: number | null;
}

/** What the frames cost, tools and all, and from which frame on making pays. Money in the shelf's currency. */
export interface Money {
  readonly currency: string;
  readonly frames: readonly FrameCost[];
  readonly count: number;
  /** Everything that is bought for all frames together. */
  readonly term: Supplies;
  readonly tools: number;
  /** Saved on the average frame before tools; null where not known. */
  readonly saved: number | null;
  /**
   * The number of the frame with which the tools are paid; null where making never pays, or nothing is known: `saved`
   * tells which.
   */
  readonly pays_from: number | null;
}

/**
 * Costs of plans in a workshop. A bought frame's price grows with the sum of width and height, as the length of bar and
 * edge does (proposal).
 */
export function moneyOf(plans: readonly Plan[], shop: Shop, shelf: Shelf): Money {
  const models = plans.map((plan) => buildModel(plan, shelf));
  const term = supplies(models, boardsFor(plans, shelf), shelf);
  const shares = costShares(term.total_cost, usedParts(models, term));
  const { compare_with } = shop;
  const frames = plans.map((plan, i): FrameCost => {
    const share = shares[i] ?? null;
    const { width_mm, height_mm } = plan.face;
    return {
      plan,
      material: share === null ? null : share / plan.count,
      bought:
        compare_with === null
          ? null
          : (compare_with.price * (width_mm + height_mm)) / (compare_with.width_mm + compare_with.height_mm),
    };
  });
  const count = plans.reduce((n, plan) => n + plan.count, 0);
  const tools = shop.tools.reduce((sum, tool) => sum + tool.price * tool.count, 0);
  const sum = frames.reduce<number | null>(
    (all, { plan, material, bought }) =>
      all === null || material === null || bought === null ? null : all + plan.count * (bought - material),
    0,
  );
  const saved = sum === null ? null : sum / count;
  return {
    currency: term.currency,
    frames,
    count,
    term,
    tools,
    saved,
    pays_from: saved === null || saved <= 0 ? null : Math.max(1, Math.ceil(tools / saved - 1e-9)),
  };
}
