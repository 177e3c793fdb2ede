import { hangingState, type HangingState } from '../mechanics/hanging/hanging-state.js';
import type { Model, Solution } from '../model/model.js';
import type { Fact, FactUnit } from './fact.js';

const ABOUT = 'hanging';

/** A number, or null with the reason it is not known. */
function known(path: string, unit: FactUnit, value: number | null | undefined, reason: string): Fact {
  return value === null || value === undefined || !Number.isFinite(value) ? { path, about: ABOUT, value: null, unit, reason } : { path, about: ABOUT, value, unit };
}

/** The larger inward bow of the two side bars, by magnitude, with the wire's pull. */
function sideBow_mm(solution: Solution): number {
  const { left, right } = (solution.hung ?? solution.working).bars;
  return Math.abs(left.inward_bow_mm) >= Math.abs(right.inward_bow_mm) ? left.inward_bow_mm : right.inward_bow_mm;
}

/** Facts of a piece on a wire only. */
function wireFacts(state: HangingState): Fact[] {
  const slackless = 'The wire has no slack, or there is no room between the rings: a straight wire cannot carry weight.';
  const { wire, forces, picked } = state;
  return [
    known('hanging.wire_tension_N', 'N', forces?.tension_N, slackless),
    known('hanging.wire_angle_deg', 'deg', wire?.angle_deg, slackless),
    known('hanging.inward_pull_N', 'N', forces?.inward_N, slackless),
    known('hanging.wire_factor', 'ratio', forces && picked.wire ? picked.wire.rating_N / forces.tension_N : null, forces ? 'The shelf has no wire.' : slackless),
  ];
}

/** Facts about hanging; none when the plan says the piece does not hang. Two hooks have no wire: then only what they do have is given. */
export function hangingFacts(model: Model, solution: Solution): Fact[] {
  const state = hangingState(model);
  if (state === null) return [];
  const low = 'The hook would sit at the bottom edge of the frame or below it.';
  const why = state.by === 'wire' && state.wire === null ? 'The wire has no slack, or there is no room between the rings.' : low;
  const { picked, hook_N } = state;
  return [
    { path: 'hanging.by', about: ABOUT, value: state.by, unit: 'word' },
    ...(state.by === 'wire' ? wireFacts(state) : [known('hanging.inward_pull_N', 'N', 0, '')]),
    known('hanging.inward_bow_mm', 'mm', state.by === 'wire' && state.wire === null ? null : sideBow_mm(solution), why),
    known('hanging.in_the_way_count', 'count', state.points.meets.length, ''),
    known('hanging.lean_deg', 'deg', state.lean?.angle_deg, low),
    known('hanging.top_standoff_mm', 'mm', state.lean?.top_standoff_mm, low),
    known('hanging.hook_below_top_mm', 'mm', state.hook_below_top_mm, why),
    known('hanging.hook_load_N', 'N', hook_N, why),
    known('hanging.hook_factor', 'ratio', hook_N !== null && picked.hook ? picked.hook.rating_N / hook_N : null, hook_N === null ? why : 'The shelf has no wall hook.'),
    known('hanging.ring_use', 'ratio', state.ring_use, state.ring_load === null ? why : 'The shelf has no ring screw.'),
    known('hanging.ring_exit_mm', 'mm', state.held_by ? state.ring_wood_mm - state.held_by.thread_length_mm : null, state.ring_load === null ? why : 'The shelf has no ring screw.'),
    { path: 'hanging.weight_kg', about: ABOUT, value: model.weight.total_kg, unit: 'kg' },
  ];
}
