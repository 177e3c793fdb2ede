import { noWarpWords } from '../base/warp-words.js';
import type { Propeller } from '../model/frame-results.js';
import type { Model } from '../model/model.js';
import { settledLift } from '../risk/lift-curve.js';
import { shelfNumber } from '../shelf/shelf-number.js';
import { declareFacts, known, type FactInput, type FactValue } from './declare.js';

const never = 'No pull of this kind makes the frame unstable, or none could be computed.';
const bows_first = 'A bar or crossbar bows sideways first; how far that goes is not followed.';

/** The part of mean stiffness that boards as soft as one in twenty have. */
const softShare = ({ shelf }: Model): number => shelfNumber(shelf, 'stiffness-share');

/** A factor times a share; unknown where no pull brings the frame down. */
const scaled = (factor: number | null, share: number): FactValue =>
  known(factor === null ? null : share * factor, never);

/**
 * How far a frame of straight boards turns past its critical pull when its stiffness is `share` of the mean; 0 where it
 * holds.
 */
function liftPastCritical(model: Model, propeller: Propeller | null, first: number | null, share: number): FactValue {
  // Where a bar bows sideways before the corners leave the plane, that is what it does.
  if (first !== null && share * first < 1 && propeller?.factor !== first) return { unknown: bows_first };
  const lift_mm =
    propeller === null
      ? 0
      : settledLift({ pull_share: 1 / (share * propeller.factor), beta_per_mm2: propeller.beta_per_mm2 });
  const { width_mm, height_mm } = model.plan.face;
  return lift_mm > Math.min(width_mm, height_mm) ? { unknown: noWarpWords.folds } : lift_mm;
}

const atPeak = ({ model, solution: { peak_propeller, peak_factor } }: FactInput, share: number): FactValue =>
  liftPastCritical(model, peak_propeller, peak_factor, share);

const atWorking = ({ model, solution: { stability } }: FactInput, share: number): FactValue =>
  liftPastCritical(model, stability.propeller, stability.load_factor, share);

const usually = { source: 'physics', moved_by: 'build', known_from: 'stability' } as const;

/** The frame under the cloth's pull: its dish, how much more it holds, and what it does past that. */
export const stabilityFacts = declareFacts(
  { each: 'frame', of: (input) => [['frame', input]] as const },
  usually,
)({
  'frame.dish_mm': {
    unit: 'mm',
    signed: true,
    known_from: 'shape',
    meaning:
      'How far the middle of the bars moves out of the plane of the corners because the cloth pulls at the front edge; towards the viewer positive, so usually negative.',
    value: ({ solution }) => solution.working.dish_mm,
  },
  'frame.critical_pull_N_per_m': {
    unit: 'N/m',
    meaning: 'Cloth pull at which the flat frame of mean boards stops being stable.',
    value: ({ model: { working }, solution }) =>
      scaled(solution.stability.load_factor, (1000 * (working.x + working.y)) / 2),
  },
  'frame.twist_reserve': {
    unit: 'ratio',
    meaning:
      'How many times the peak pull could grow before the flat frame turns into a propeller, for boards as soft as one in twenty (0.67 of the mean stiffness).',
    value: ({ model, solution }) => scaled(solution.peak_factor, softShare(model)),
  },
  'frame.twist_reserve_give8': {
    unit: 'ratio',
    meaning:
      'The twist reserve if every joint were softer than taken: each gives twice as much as its own, at least eight extra bar-widths, in every way; corner plates hold half as stiffly.',
    value: ({ model, solution }) => scaled(solution.soft_peak_factor, softShare(model)),
  },
  'frame.long_term_reserve': {
    unit: 'ratio',
    source: 'en1995-1-1',
    meaning:
      'How many times the working pull could grow before the flat frame gives way after years of creep, for boards as soft as one in twenty.',
    value: ({ model, solution }) => scaled(solution.stability.load_factor, softShare(model) / (1 + model.k_def)),
  },
  'frame.lift_past_critical_mm': {
    unit: 'mm',
    meaning:
      'How far one corner of a frame of straight boards, as soft as one in twenty, would stand off the wall at the peak pull because that is more than the flat frame holds; 0 where it holds.',
    value: (input) => atPeak(input, softShare(input.model)),
  },
  'frame.lift_past_critical_average_mm': {
    unit: 'mm',
    meaning: 'The same at the peak pull for boards of average stiffness.',
    value: (input) => atPeak(input, 1),
  },
  'frame.lift_past_critical_working_mm': {
    unit: 'mm',
    meaning: 'The same at the working pull for boards as soft as one in twenty.',
    value: (input) => atWorking(input, softShare(input.model)),
  },
  'frame.lift_past_critical_working_average_mm': {
    unit: 'mm',
    meaning: 'The same at the working pull for boards of average stiffness.',
    value: (input) => atWorking(input, 1),
  },
  'frame.second_factor': {
    unit: 'ratio',
    meaning: 'The next critical pull over the first.',
    value: ({
      solution: {
        stability: { load_factor, second_factor },
      },
    }) => known(load_factor === null || second_factor === null ? null : second_factor / load_factor, never),
  },
  'frame.mode': {
    unit: 'word',
    words: ['propeller', 'sideways'],
    meaning:
      'How the frame would give way first: propeller (a corner leaves the plane) or sideways (a bar or crossbar bows, the corners stay).',
    value: ({ solution }) => solution.stability.mode ?? { unknown: never },
  },
});
