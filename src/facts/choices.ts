import { declareFacts } from './declare.js';

const usually = { source: 'physics', moved_by: 'build', known_from: 'plan' } as const;

/** What the plan chose for the whole frame, in its own words and the keys of the shelf. Nothing here is computed. */
export const choiceFacts = declareFacts(
  { each: 'frame', of: ({ model }) => [['frame', model]] as const },
  usually,
)({
  'frame.lay': {
    unit: 'word',
    words: ['flat', 'edge', 'square'],
    meaning: 'How the boards of the bars lie; square boards lie either way.',
    value: ({
      plan,
      bars: {
        top: { stock },
      },
    }) => (stock.thickness_mm === stock.width_mm ? 'square' : plan.bars.lay),
  },
  'frame.plies_count': {
    unit: 'count',
    meaning: 'How many boards make up each bar.',
    value: ({ plan }) => plan.bars.plies,
  },
  'frame.pairing': {
    unit: 'word',
    moved_by: 'boards',
    words: ['single', 'opposed', 'unsorted', 'matched'],
    meaning: 'Whether the bows of the boards of a bar are set against each other.',
    value: ({ plan: { bars } }) => (bars.plies > 1 ? bars.pairing : 'single'),
  },
  'frame.corner_cut': {
    unit: 'word',
    words: ['mitre', 'butt', 'half-lap', 'keyed'],
    meaning: 'How the corners are cut; keyed corners stay dry and are opened with keys.',
    value: ({ plan }) => plan.corners.cut,
  },
  'frame.corner_glue': {
    unit: 'word',
    meaning: 'The glue of the corners: its key on the shelf, or none.',
    value: ({ plan }) => plan.corners.glue ?? 'none',
  },
  'frame.corner_brace': {
    unit: 'word',
    words: ['none', 'timber', 'ply-gusset', 'steel-angle'],
    meaning: 'What stiffens the corners.',
    value: ({ plan }) => plan.corners.brace?.kind ?? 'none',
  },
});
