import type { MemberBuild, Model } from '../model/model.js';
import { boardsOf } from '../risk/spread.js';
import { declareFacts } from './declare.js';

const deg_per_rad = 180 / Math.PI;

/** What a board that nobody has read is taken to twist: the mean of its kind, rad/m. */
const expectedTwist = (model: Model, build: MemberBuild): number =>
  build.stock.spread[model.plan.lumber.chosen].twist_rad_per_m.mean;

/** Every board, as expected or measured; one board is one ply: `top-1` is the first ply of the top bar. */
export const boardFacts = declareFacts(
  {
    each: 'board',
    of: ({ model }) =>
      [...Object.values(model.bars), ...model.crossbars].flatMap((build) =>
        boardsOf(model.plan.boards, build).map(
          (board, i) =>
            [
              `${build.name}-${i + 1}`,
              { read: board?.twist_rad_per_m ?? null, expected: expectedTwist(model, build) },
            ] as const,
        ),
      ),
  },
  { source: 'physics', moved_by: 'boards', known_from: 'plan', frame_by_frame: 'boards' },
)({
  'board.twist_deg_per_m': {
    unit: 'deg/m',
    signed: true,
    meaning: 'Natural twist of the board expected or measured, degrees per metre, right-handed positive.',
    value: ({ read, expected }) => (read ?? expected) * deg_per_rad,
  },
  'board.measured': {
    unit: 'word',
    words: ['yes', 'no'],
    meaning:
      'Whether the twist of this board was read; a board of which only bow or crook was read keeps the twist of its kind.',
    value: ({ read }) => (read === null ? 'no' : 'yes'),
  },
});
