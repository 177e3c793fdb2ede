import { barNames, type BarName } from '../base/names.js';
import { barStress } from '../mechanics/bar-stress.js';
import { fitsDoor, peopleToLift } from '../mechanics/lifting.js';
import type { Propeller } from '../model/frame-results.js';
import type { Model, Solution } from '../model/model.js';
import { folds_reason, settledLift } from '../risk/lift-curve.js';
import { shelfNumber } from '../shelf/shelf-number.js';
import type { Fact } from './fact.js';

/** Bending strength of the weakest common softwood class, C14 of EN 338:2016. */
const weakestBendingStrength_MPa = 14;

/** Error in a mitre that a hand saw in a box makes without care, degrees (`practice`). */
const saw_error_deg = 0.5;

/** Facts about the whole frame, its bars and crossbars: shape under pull, stability, size and weight. */
export function frameFacts(model: Model, solution: Solution): Fact[] {
  return [...sizeFacts(model), ...stabilityFacts(model, solution), ...barNames.flatMap((name) => barFacts(name, model, solution)), ...crossbarFacts(model, solution)];
}

function sizeFacts(model: Model): Fact[] {
  const { width_mm, height_mm } = model.plan.face;
  const diagonal_mm = Math.hypot(width_mm, height_mm);
  const offset_mm = height_mm * Math.tan((saw_error_deg * Math.PI) / 180);
  const depth_mm = model.bars.top.section.d_mm + model.plan.bars.lip_mm;
  const frame = frameFact;
  return [
    frame('frame.width_mm', width_mm, 'mm'),
    frame('frame.height_mm', height_mm, 'mm'),
    frame('frame.shorter_side_mm', Math.min(width_mm, height_mm), 'mm'),
    frame('frame.longer_side_mm', Math.max(width_mm, height_mm), 'mm'),
    frame('frame.crossbars_count', model.crossbars.length, 'count'),
    frame('frame.diagonal_mm', diagonal_mm, 'mm'),
    frame('frame.diagonal_difference_mm', (2 * width_mm * offset_mm) / diagonal_mm, 'mm'),
    frame('frame.weight_kg', model.weight.total_kg, 'kg'),
    frame('frame.lift_people', peopleToLift(model.weight.total_kg, width_mm, height_mm), 'count'),
    frame('frame.fits_door', fitsDoor(width_mm, height_mm, depth_mm, model.plan.door), 'word'),
  ];
}

function stabilityFacts(model: Model, solution: Solution): Fact[] {
  const { load_factor, second_factor, mode } = solution.stability;
  const fifthPercentileShare = shelfNumber(model.shelf, 'stiffness-share');
  const meanPull_N_per_m = (1000 * (model.working.x + model.working.y)) / 2;
  const never = 'No pull of this kind makes the frame unstable, or none could be computed.';
  const orNone = (path: string, value: number | string | null, unit: Fact['unit'], reason = never): Fact => (value === null ? { path, about: 'frame', value, unit, reason } : frameFact(path, value, unit));
  return [
    frameFact('frame.dish_mm', solution.working.dish_mm, 'mm'),
    frameFact('frame.dish_long_term_mm', (1 + model.k_def) * solution.working.dish_mm, 'mm'),
    orNone('frame.load_factor', load_factor, 'ratio'),
    orNone('frame.critical_pull_N_per_m', load_factor === null ? null : load_factor * meanPull_N_per_m, 'N/m'),
    orNone('frame.twist_reserve', solution.peak_factor === null ? null : fifthPercentileShare * solution.peak_factor, 'ratio'),
    orNone('frame.twist_reserve_give8', solution.soft_peak_factor === null ? null : fifthPercentileShare * solution.soft_peak_factor, 'ratio'),
    orNone('frame.long_term_reserve', load_factor === null ? null : (fifthPercentileShare * load_factor) / (1 + model.k_def), 'ratio'),
    ...liftFacts(model, solution),
    orNone('frame.second_factor', load_factor === null || second_factor === null ? null : second_factor / load_factor, 'ratio'),
    orNone('frame.mode', mode, 'word'),
  ];
}

/** How far a frame of straight boards turns past its critical pull: soft boards (as one in twenty) and average ones, at the peak pull and at the working pull. */
function liftFacts(model: Model, { stability, peak_factor, peak_propeller }: Solution): Fact[] {
  const soft = shelfNumber(model.shelf, 'stiffness-share');
  const { width_mm, height_mm } = model.plan.face;
  const lift = (path: string, propeller: Propeller | null, first: number | null, share: number): Fact => {
    // Where a bar bows sideways before the corners leave the plane, that is what it does.
    if (first !== null && share * first < 1 && propeller?.factor !== first) return { path, about: 'frame', value: null, unit: 'mm', reason: 'A bar or crossbar bows sideways first; how far that goes is not followed.' };
    const lift_mm = propeller === null ? 0 : settledLift({ pull_share: 1 / (share * propeller.factor), beta_per_mm2: propeller.beta_per_mm2 });
    return lift_mm > Math.min(width_mm, height_mm) ? { path, about: 'frame', value: null, unit: 'mm', reason: folds_reason } : frameFact(path, lift_mm, 'mm');
  };
  return [
    lift('frame.lift_past_critical_mm', peak_propeller, peak_factor, soft),
    lift('frame.lift_past_critical_average_mm', peak_propeller, peak_factor, 1),
    lift('frame.lift_past_critical_working_mm', stability.propeller, stability.load_factor, soft),
    lift('frame.lift_past_critical_working_average_mm', stability.propeller, stability.load_factor, 1),
  ];
}

function barFacts(name: BarName, model: Model, solution: Solution): Fact[] {
  const build = model.bars[name];
  const statics = solution.working.bars[name];
  const bar = (path: string, value: number | string, unit: Fact['unit']): Fact => ({ path, about: name, value, unit });
  return [
    bar('bar.span_mm', build.span_mm, 'mm'),
    bar('bar.unsupported_mm', unsupported_mm(name, model), 'mm'),
    bar('bar.w_mm', build.section.w_mm, 'mm'),
    bar('bar.d_mm', build.section.d_mm, 'mm'),
    bar('bar.plies_count', build.plies, 'count'),
    bar('bar.bond', build.plies === 1 ? 'single' : build.bond, 'word'),
    bar('bar.inward_bow_mm', statics.inward_bow_mm, 'mm'),
    bar('bar.inward_bow_long_term_mm', (1 + model.k_def) * statics.inward_bow_mm, 'mm'),
    bar('bar.dish_mm', statics.dish_mm, 'mm'),
    bar('bar.dish_long_term_mm', (1 + model.k_def) * statics.dish_mm, 'mm'),
    bar('bar.roll_mrad', statics.roll_mrad, 'mrad'),
    bar('bar.roll_long_term_mrad', (1 + model.k_def) * statics.roll_mrad, 'mrad'),
    bar('bar.axial_N', statics.axial_N, 'N'),
    bar('bar.stress_share', bendingStress_MPa(name, model, solution) / weakestBendingStrength_MPa, 'share'),
  ];
}

/** Largest stress of a bar at peak pull, at its weakest section. */
function bendingStress_MPa(name: BarName, model: Model, solution: Solution): number {
  const { bar_MPa, lap_MPa } = barStress(model.bars[name], solution.peak.bars[name].forces, model.plan.corners.cut === 'half-lap');
  return Math.max(bar_MPa, lap_MPa ?? 0);
}

function unsupported_mm(name: BarName, model: Model): number {
  const level = name === 'top' || name === 'bottom';
  const stops = model.shape.crossbars.filter((c) => (c.runs === 'upright') === level).map((c) => c.at);
  const places = [0, ...stops, 1].sort((p, q) => p - q);
  const widest = Math.max(...places.slice(1).map((place, i) => place - (places[i] as number)));
  return widest * model.bars[name].span_mm;
}

function crossbarFacts(model: Model, solution: Solution): Fact[] {
  return model.crossbars.flatMap((build) => {
    const statics = solution.working.crossbars.find((c) => c.name === build.name);
    if (statics === undefined) throw new Error(`no solution for ${build.name}`);
    const crossbar = (path: string, value: number, unit: Fact['unit']): Fact => ({ path, about: build.name, value, unit });
    return [
      crossbar('crossbar.span_mm', statics.span_mm, 'mm'),
      crossbar('crossbar.axial_N', statics.axial_N, 'N'),
      crossbar('crossbar.bow_mm', statics.bow_mm, 'mm'),
    ];
  });
}

function frameFact(path: string, value: number | string, unit: Fact['unit']): Fact {
  return { path, about: 'frame', value, unit };
}
