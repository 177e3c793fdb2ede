import { hangingState, type HangingState } from '../mechanics/hanging/hanging-state.js';
import type { Model, Solution } from '../model/model.js';
import { declareFacts, known, type FactValue } from './declare.js';

const slackless = 'The wire has no slack, or there is no room between the rings: a straight wire cannot carry weight.';
const no_wire_line = 'The wire has no slack, or there is no room between the rings.';
const low = 'The hook would sit at the bottom edge of the frame or below it.';

/** What is screwed into the wood for a piece to hang by. */
const holders = { wire: 'ring', 'two-hooks': 'ring', 'd-rings': 'strap', cleat: 'strip' } as const;
const names = { ring: 'ring screw', strap: 'strap hanger', strip: 'bevelled strips' } as const;
const none = ({ by }: HangingState): string => `The shelf has no ${names[holders[by]]}.`;

/** How a piece hangs. */
interface Hung {
  readonly model: Model;
  readonly solution: Solution;
  readonly state: HangingState;
  /** Why what follows from the hook is not known, where it is not. */
  readonly why: string;
}

/** None when the plan says the piece does not hang. */
function hung(model: Model, solution: Solution): readonly (readonly ['hanging', Hung])[] {
  const state = hangingState(model);
  if (state === null) return [];
  return [
    ['hanging', { model, solution, state, why: state.by === 'wire' && state.wire === null ? no_wire_line : low }],
  ];
}

/** Only of a piece on a wire; the others have no such thing. */
const onWire = ({ state }: Hung, value: (of: HangingState) => FactValue): FactValue =>
  state.by === 'wire' ? value(state) : null;

/** The larger inward bow of the two side bars, by magnitude, with the wire's pull. */
function sideBow_mm(solution: Solution): number {
  const { left, right } = (solution.hung ?? solution.working).bars;
  return Math.abs(left.inward_bow_mm) >= Math.abs(right.inward_bow_mm) ? left.inward_bow_mm : right.inward_bow_mm;
}

const usually = { source: 'physics', moved_by: 'hanging', known_from: 'plan', frame_by_frame: 'hanging' } as const;

/**
 * How the finished piece hangs; none when the plan says it does not. Two hooks have no wire: then only what they do
 * have is given.
 */
export const hangingFacts = declareFacts(
  { each: 'hanging', of: ({ model, solution }) => hung(model, solution) },
  usually,
)({
  'hanging.by': {
    unit: 'word',
    words: ['wire', 'two-hooks', 'd-rings', 'cleat', 'none'],
    meaning: 'How the piece hangs.',
    value: ({ state }) => state.by,
  },
  'hanging.from': {
    unit: 'word',
    words: ['inside', 'back', 'none'],
    meaning:
      'Where the rings or straps sit: on the inner faces of the side bars or on their backs; none where strips carry it.',
    value: ({ model, state }) => (state.by === 'cleat' ? 'none' : model.plan.hang.from),
  },
  'hanging.held_by': {
    unit: 'word',
    words: ['ring', 'strap', 'strip'],
    told: { ring: 'each ring screw', strap: 'each strap’s screw', strip: 'each screw of the strip on the frame' },
    meaning: 'What is screwed into the wood for it to hang by.',
    value: ({ state }) => holders[state.by],
  },
  'hanging.wire_tension_N': {
    unit: 'N',
    meaning: 'Tension in the wire.',
    value: (one) => onWire(one, ({ forces }) => known(forces?.tension_N, slackless)),
  },
  'hanging.wire_angle_deg': {
    unit: 'deg',
    meaning: 'Angle of the wire to the horizontal under load.',
    value: (one) => onWire(one, ({ wire }) => known(wire?.angle_deg, slackless)),
  },
  'hanging.inward_pull_N': {
    unit: 'N',
    meaning: 'How hard the wire draws each side bar inward.',
    value: (one) => onWire(one, ({ forces }) => known(forces?.inward_N, slackless)) ?? 0,
  },
  'hanging.wire_factor': {
    unit: 'ratio',
    source: 'practice',
    meaning: 'Breaking load of the wire over its tension.',
    value: (one) =>
      onWire(one, ({ forces, picked }) =>
        known(
          forces && picked.wire ? picked.wire.rating_N / forces.tension_N : null,
          forces ? 'The shelf has no wire.' : slackless,
        ),
      ),
  },
  'hanging.inward_bow_mm': {
    unit: 'mm',
    known_from: 'wire',
    meaning: 'Inward bow of the side bars with cloth pull and wire together.',
    value: ({ state, solution, why }) =>
      known(state.by === 'wire' && state.wire === null ? null : sideBow_mm(solution), why),
  },
  'hanging.in_the_way_count': {
    unit: 'count',
    meaning:
      'How many pieces of the frame (braces, crossbars) the wire or the hanging points run against; 0 where they could be moved clear.',
    value: ({ state }) => state.points.meets.length,
  },
  'hanging.lean_deg': {
    unit: 'deg',
    meaning: 'How far the top leans from the wall.',
    value: ({ state }) => known(state.lean?.angle_deg, low),
  },
  'hanging.top_standoff_mm': {
    unit: 'mm',
    meaning: 'Gap between the wall and the top edge.',
    value: ({ state }) => known(state.lean?.top_standoff_mm, low),
  },
  'hanging.hook_below_top_mm': {
    unit: 'mm',
    signed: false,
    meaning: 'How far the hook and the wire stay below the top edge; negative when they show above it.',
    value: ({ state, why }) => known(state.hook_below_top_mm, why),
  },
  'hanging.hook_load_N': {
    unit: 'N',
    meaning: 'Load on one wall hook, the pull away from the wall included.',
    value: ({ state, why }) => known(state.hook_N, why),
  },
  'hanging.hook_factor': {
    unit: 'ratio',
    source: 'practice',
    meaning: 'Rating of one hook over its load.',
    value: ({ state, why }) => {
      const { by, hook_N, picked } = state;
      return known(
        hook_N !== null && picked.hook ? picked.hook.rating_N / hook_N : null,
        hook_N === null ? why : by === 'cleat' ? none(state) : 'The shelf has no wall hook.',
      );
    },
  },
  'hanging.ring_use': {
    unit: 'ratio',
    source: 'nds-2018',
    meaning:
      'Load on a screw that it hangs by, of a ring, a strap or a strip, over its design withdrawal and shear, combined.',
    value: ({ state, why }) => known(state.ring_use, state.ring_load === null ? why : none(state)),
  },
  'hanging.ring_exit_mm': {
    unit: 'mm',
    signed: false,
    meaning: 'Wood left beyond the tip of the screw it hangs by; negative when it comes out.',
    value: ({ state, why }) =>
      known(
        state.held_by ? state.ring_wood_mm - state.held_by.thread_length_mm : null,
        state.ring_load === null ? why : none(state),
      ),
  },
});
