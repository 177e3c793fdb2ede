import type { FactInput } from './declare.js';
import { declareFacts, known, type FactValue } from './declare.js';

/** Money that is unknown for the reason the bill gives. */
const money = ({ bought }: FactInput, cost: number | null): FactValue =>
  known(cost, bought.reason ?? 'It could not be computed.');

/** Cutting, buying and cost, for all frames of the plan together. */
export const cuttingFacts = declareFacts(
  { each: 'cutting', of: (input) => [['cutting', input]] as const },
  { source: 'physics', known_from: 'cut' },
)({
  'cutting.boards': {
    unit: 'count',
    moved_by: 'boards',
    meaning: 'Boards to buy for all frames, those to pick from with them.',
    value: (input) => money(input, input.bought.boards_cost === null ? null : input.bought.boards_to_buy),
  },
  'cutting.cost': {
    unit: 'cost',
    moved_by: 'boards',
    frame_by_frame: 'spending',
    meaning: 'Cost of the boards to buy; of those that are cut, proven least where the report says so.',
    value: (input) => money(input, input.bought.boards_cost),
  },
  'cutting.total_cost': {
    unit: 'cost',
    moved_by: 'hanging',
    frame_by_frame: 'spending',
    meaning:
      'Cost of all materials for all frames as shops sell them, in whole boards, boxes and bottles: boards, cloth, glue, screws, nails, staples, ground, hardware.',
    value: (input) => money(input, input.bought.total_cost),
  },
  'cutting.used_cost': {
    unit: 'cost',
    moved_by: 'hanging',
    frame_by_frame: 'spending',
    meaning:
      'Of the cost of all materials, the part that the frames use up: boards and cloth whole, of boxes and bottles the share that is used.',
    value: (input) => money(input, input.bought.used_cost),
  },
  'cutting.waste_share': {
    unit: 'share',
    moved_by: 'build',
    meaning: 'Share of the bought length that ends as kerf, trim and leftovers.',
    value: (input) => money(input, input.bought.short.length > 0 ? null : input.cut.waste_share),
  },
  'cutting.pieces_too_long': {
    unit: 'count',
    moved_by: 'build',
    meaning: 'Pieces longer than any board on the shelf.',
    value: ({ too_long }) => too_long,
  },
  'cutting.spend_set': {
    unit: 'word',
    moved_by: 'build',
    words: ['yes', 'no'],
    frame_by_frame: 'spending',
    meaning: 'Whether the plan sets a spending limit.',
    value: ({ model: { plan } }) => (plan.spend_limit === null ? 'no' : 'yes'),
  },
  'cutting.spend_limit_cost': {
    unit: 'cost',
    moved_by: 'build',
    frame_by_frame: 'spending',
    meaning: 'The plan’s spending limit.',
    value: ({ model: { plan } }) => plan.spend_limit,
  },
});
