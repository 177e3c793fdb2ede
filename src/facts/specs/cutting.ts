import type { FactSpec } from '../fact.js';

/** Facts about cutting, buying and cost. */
export const cuttingSpecs: readonly FactSpec[] = [
  { path: 'cutting.boards', each: 'cutting', unit: 'count', meaning: 'Boards to buy for all frames, those to pick from with them.', source: 'physics' },
  { path: 'cutting.cost', each: 'cutting', unit: 'cost', meaning: 'Cost of the boards to buy; of those that are cut, proven least where the report says so.', source: 'physics' },
  { path: 'cutting.total_cost', each: 'cutting', unit: 'cost', meaning: 'Cost of all materials for all frames as shops sell them, in whole boards, boxes and bottles: boards, cloth, glue, screws, nails, staples, ground, hardware.', source: 'physics' },
  { path: 'cutting.used_cost', each: 'cutting', unit: 'cost', meaning: 'Of the cost of all materials, the part that the frames use up: boards and cloth whole, of boxes and bottles the share that is used.', source: 'physics' },
  { path: 'cutting.waste_share', each: 'cutting', unit: 'share', meaning: 'Share of the bought length that ends as kerf, trim and leftovers.', source: 'physics' },
  { path: 'cutting.pieces_too_long', each: 'cutting', unit: 'count', meaning: 'Pieces longer than any board on the shelf.', source: 'physics' },
  { path: 'cutting.spend_set', each: 'cutting', unit: 'word', words: ['yes', 'no'], meaning: 'Whether the plan sets a spending limit.', source: 'physics' },
  { path: 'cutting.spend_limit_cost', each: 'cutting', unit: 'cost', meaning: 'The plan’s spending limit.', source: 'physics' },
];
