import type { Supplies } from '../cost/supplies.js';
import type { Model } from '../model/model.js';
import type { Fact, FactUnit } from './fact.js';

/** Facts about cutting, buying and cost, for all frames of the plan together. */
export function cuttingFacts(model: Model, bought: Supplies): Fact[] {
  const about = 'cutting';
  const limit = model.plan.spend_limit;
  const fact = (path: string, value: number | string | null, unit: FactUnit, reason: string | null): Fact =>
    value === null ? { path, about, value, unit, reason: reason ?? 'It could not be computed.' } : { path, about, value, unit };
  const { cut, short, boards_to_buy, boards_cost, total_cost, used_cost, reason } = bought;
  return [
    fact('cutting.boards', boards_cost === null ? null : boards_to_buy, 'count', reason),
    fact('cutting.cost', boards_cost, 'cost', reason),
    fact('cutting.total_cost', total_cost, 'cost', reason),
    fact('cutting.used_cost', used_cost, 'cost', reason),
    fact('cutting.waste_share', short.length > 0 ? null : cut.waste_share, 'share', reason),
    fact('cutting.pieces_too_long', cut.too_long.length, 'count', null),
    fact('cutting.spend_set', limit === null ? 'no' : 'yes', 'word', null),
    ...(limit === null ? [] : [fact('cutting.spend_limit_cost', limit, 'cost', null)]),
  ];
}
