import type { FactSpec } from '../fact.js';

/** Facts about cutting, buying and cost. */
export const cuttingSpecs: readonly FactSpec[] = [
  { path: 'cutting.boards', each: 'cutting', unit: 'count', meaning: 'Boards to buy.', source: 'physics' },
  { path: 'cutting.cost', each: 'cutting', unit: 'cost', meaning: 'Cost of the boards to buy, proven least where the report says so.', source: 'physics' },
  { path: 'cutting.total_cost', each: 'cutting', unit: 'cost', meaning: 'Cost of all materials: boards, cloth, glue, screws, nails, ground, hardware.', source: 'physics' },
  { path: 'cutting.waste_share', each: 'cutting', unit: 'share', meaning: 'Share of the bought length that ends as kerf, trim and leftovers.', source: 'physics' },
  { path: 'cutting.pieces_too_long', each: 'cutting', unit: 'count', meaning: 'Pieces longer than any board on the shelf.', source: 'physics' },
  { path: 'cutting.spend_set', each: 'cutting', unit: 'word', words: ['yes', 'no'], meaning: 'Whether the plan sets a spending limit.', source: 'physics' },
  { path: 'cutting.spend_limit_cost', each: 'cutting', unit: 'cost', meaning: 'The plan’s spending limit.', source: 'physics' },
];
