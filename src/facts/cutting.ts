import { materials } from '../cost/materials.js';
import type { CutPlan } from '../cutting/purchase.js';
import type { Model } from '../model/model.js';
import type { Fact, FactUnit } from './fact.js';

/** Facts about cutting, buying and cost, for all frames of the plan together. */
export function cuttingFacts(model: Model, cut: CutPlan): Fact[] {
  const about = 'cutting';
  const limit = model.plan.spend_limit;
  const fact = (path: string, value: number | string | null, unit: FactUnit, reason: string | null): Fact =>
    value === null ? { path, about, value, unit, reason: reason ?? 'It could not be computed.' } : { path, about, value, unit };
  const { total_cost, reason } = materials(model, cut);
  return [
    fact('cutting.boards', cut.boards, 'count', cut.reason),
    fact('cutting.cost', cut.cost, 'cost', cut.reason),
    fact('cutting.total_cost', total_cost, 'cost', reason),
    fact('cutting.waste_share', cut.waste_share, 'share', cut.reason),
    fact('cutting.pieces_too_long', cut.too_long.length, 'count', null),
    fact('cutting.spend_set', limit === null ? 'no' : 'yes', 'word', null),
    ...(limit === null ? [] : [fact('cutting.spend_limit_cost', limit, 'cost', null)]),
  ];
}
