import { lazily } from '../base/lazily.js';
import { clearances } from '../mechanics/cloth/clearance.js';
import { clothCutOf, padOn, pushTest, rollWidth_mm } from '../mechanics/cloth/cloth-sheet.js';
import { clothCutSize, rollShort_mm } from '../mechanics/cloth/cut-size.js';
import { pushSpan, tapSpan } from '../mechanics/cloth/frame-spans.js';
import { keyLimit } from '../mechanics/cloth/key-limit.js';
import { pushSag_mm } from '../mechanics/cloth/push-test.js';
import { relaxShare } from '../mechanics/cloth/relaxation.js';
import { seasonalSwing } from '../mechanics/cloth/seasonal-pull.js';
import { clothOf } from '../mechanics/cloth/shelf-numbers.js';
import { tapBand } from '../mechanics/cloth/tap-note.js';
import { staplesBySteel } from '../mechanics/occupancy/staple-line.js';
import { declareFacts, type FactInput } from './declare.js';

/**
 * The cloth of a frame: its size before it is stretched, and the note it gives afterwards. The note is that of the bare
 * cloth.
 */
function clothIn({ model, solution }: FactInput) {
  const { plan } = model;
  return lazily(
    {
      size: () => clothCutSize(clothCutOf(model)),
      note: () => tapBand(tapSpan(model), plan.cloth.working, clothOf(model).mass_g_per_m2 / 1000),
    },
    { model, solution, plan },
  );
}

const usually = { source: 'physics', moved_by: 'build', known_from: 'plan', frame_by_frame: 'cloth' } as const;

/** The cloth: its size and roll, its staples, its pull and how to read it, what changes it later. */
export const clothFacts = declareFacts(
  { each: 'cloth', of: (input) => [['cloth', clothIn(input)]] as const },
  usually,
)({
  'cloth.cut_width_mm': {
    unit: 'mm',
    source: 'practice',
    known_from: 'cut',
    meaning: 'Width to cut the cloth: face, depth, wrap, turn and an allowance to grip.',
    value: ({ size }) => size.width_mm,
  },
  'cloth.cut_height_mm': {
    unit: 'mm',
    source: 'practice',
    known_from: 'cut',
    meaning: 'Height to cut the cloth.',
    value: ({ size }) => size.height_mm,
  },
  'cloth.roll_short_mm': {
    unit: 'mm',
    signed: false,
    known_from: 'cut',
    meaning: 'How much the roll is too narrow for the cut cloth; zero or less when it fits.',
    value: ({ model, size }) => rollShort_mm(size.width_mm, size.height_mm, rollWidth_mm(model)),
  },
  'cloth.overlap_mm': {
    unit: 'mm',
    source: 'practice',
    meaning: 'Cloth beyond the line of staples.',
    value: ({ plan }) => plan.cloth.fixing.turn_mm,
  },
  'cloth.staple_spacing_mm': {
    unit: 'mm',
    source: 'practice',
    meaning: 'Distance between staples.',
    value: ({ plan }) => plan.cloth.fixing.every_mm,
  },
  'cloth.staples_on_steel_count': {
    unit: 'count',
    meaning:
      'Staples of the back that would meet the steel of a corner angle, because the wood beside it is too narrow for them.',
    value: ({ model }) => staplesBySteel(model)?.on_steel ?? 0,
  },
  'cloth.staple_load_N': {
    unit: 'N',
    meaning: 'Pull on one staple at peak.',
    value: ({
      plan: {
        cloth: { peak, fixing },
      },
    }) => (Math.max(peak.x_N_per_m, peak.y_N_per_m) * fixing.every_mm) / 1000,
  },
  'cloth.pull_low_N_per_m': {
    unit: 'N/m',
    meaning: 'The smaller working pull of the two directions.',
    value: ({
      plan: {
        cloth: { working },
      },
    }) => Math.min(working.x_N_per_m, working.y_N_per_m),
  },
  'cloth.pull_high_N_per_m': {
    unit: 'N/m',
    meaning: 'The larger working pull of the two directions.',
    value: ({
      plan: {
        cloth: { working },
      },
    }) => Math.max(working.x_N_per_m, working.y_N_per_m),
  },
  'cloth.tap_note_low_Hz': {
    unit: 'Hz',
    source: 'rayleigh',
    meaning: 'Lowest note of the tapped cloth that still means the working pull.',
    value: ({ note }) => note.low_Hz,
  },
  'cloth.tap_note_high_Hz': {
    unit: 'Hz',
    source: 'rayleigh',
    meaning: 'Highest note of the tapped cloth that still means the working pull.',
    value: ({ note }) => note.high_Hz,
  },
  'cloth.push_sag_mm': {
    unit: 'mm',
    meaning: 'How far a 500 g weight on a 50 mm pad sinks in the middle at working pull.',
    value: ({ model, plan }) => pushSag_mm(pushSpan(model), plan.cloth.working, pushTest.weight_g, padOn(model)),
  },
  'cloth.clearance_mm': {
    unit: 'mm',
    signed: false,
    moved_by: 'setback',
    meaning:
      'Room left between the cloth under a firm brush and the crossbar or corner brace behind it (or the wall, when there is no crossbar); negative when they touch.',
    value: ({ model }) => Math.min(...clearances(model).map(({ left_mm }) => left_mm)),
  },
  'cloth.relax_share': {
    unit: 'share',
    known_from: 'shape',
    meaning:
      'Share of the working pull lost in the middle because the bars bow in, once bow and stretch balance; 0 where they bow out.',
    value: ({ model, solution }) => relaxShare(model, solution),
  },
  'cloth.key_travel_mm': {
    unit: 'mm',
    source: 'janas-2022',
    meaning:
      'Most that each corner may be keyed out along one side before the ground may crack (bare cloth: before it passes the peak pull).',
    value: ({ model }) => keyLimit(model).travel_mm,
  },
  'cloth.seasonal_swing_N_per_m': {
    unit: 'N/m',
    source: 'hedley-1988',
    meaning: 'Rough change of pull between the room’s driest and dampest.',
    value: ({ model, plan: { room } }) =>
      seasonalSwing(clothOf(model).stiffness_N_per_m, room.humidity_low, room.humidity_high).value_N_per_m,
  },
  'cloth.fixed_to': {
    unit: 'word',
    words: ['back', 'edge'],
    meaning: 'Where the cloth is fixed.',
    value: ({ plan }) => plan.cloth.fixing.to,
  },
  'cloth.use': {
    unit: 'word',
    meaning: 'The cloth: its key on the shelf.',
    value: ({ plan }) => plan.cloth.use,
  },
  'cloth.ground': {
    unit: 'word',
    words: ['bare', 'grounded'],
    meaning: 'Whether the cloth gets a ground.',
    value: ({ plan }) => (plan.ground.coats > 0 ? 'grounded' : 'bare'),
  },
  'cloth.ground_coats_count': {
    unit: 'count',
    meaning: 'How many coats of ground the cloth gets.',
    value: ({ plan }) => plan.ground.coats,
  },
});
