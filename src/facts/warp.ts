import { barNames } from '../base/names.js';
import type { FactSettings, MemberBuild, Model, Solution } from '../model/model.js';
import { assessWarp, past_critical_reason, unstable_reason, type WarpRisk } from '../risk/assess.js';
import { folds_reason } from '../risk/lift-curve.js';
import { sampleWarp } from '../risk/sample.js';
import { boardsOf } from '../risk/spread.js';
import type { Fact, FactUnit } from './fact.js';

export { warpStory, type WarpStory, type WarpTold } from '../risk/story.js';

const deg_per_rad = 180 / Math.PI;
const no_samples = 'No samples were asked for.';
const no_spread = 'The numbers of the shelf give no spread of natural warp that can be worked with.';
const no_limit = (name: string): string => `The ruleset’s limit ${name} is not a length that can be worked out.`;

/**
 * Natural warp: corner lift from the closed form, bow of the bars (a largest value along the bar) from the seeded sample, and the boards
 * as expected or measured. Past the critical pull the bow of bars is unknown; where a bar bows sideways at working pull, all but the boards are, and say why.
 */
export function warpFacts(model: Model, solution: Solution, settings: FactSettings): Fact[] {
  const risk = assessWarp(model, solution, settings);
  return [...(risk === null ? unstableFacts() : riskFacts(model, risk, settings)), ...boardFacts(model)];
}

function riskFacts(model: Model, risk: WarpRisk, settings: FactSettings): Fact[] {
  const { lift, lift_chance, lift_chance_soft, causes, crook, terms, frame } = risk;
  const spread_known = terms.every(({ mean_per_m, sd_per_m }) => Number.isFinite(mean_per_m) && sd_per_m >= 0);
  const folds = lift.p90_mm > Math.min(model.plan.face.width_mm, model.plan.face.height_mm);
  const limits_known = barNames.every((bar) => Number.isFinite(settings.bar_bow_limit_mm[bar]));
  const sample = settings.samples >= 1 && spread_known && !frame.past_critical ? sampleWarp(terms, settings) : null;
  const unsampled = frame.past_critical ? past_critical_reason : spread_known ? no_samples : no_spread;
  const known = (path: string, about: string, value: number | undefined, unit: FactUnit, reason: string): Fact =>
    value !== undefined && Number.isFinite(value) && spread_known ? { path, about, value, unit } : { path, about, value: null, unit, reason };
  return [
    ...([['mean', Math.abs(lift.mean) < rounding_share * lift.sd ? 0 : lift.mean], ['sd', lift.sd], ['p90', lift.p90_mm]] as const).map(([what, mm]) => known(`warp.corner_lift_${what}_mm`, 'frame', folds ? undefined : mm, 'mm', folds ? folds_reason : no_spread)),
    known('warp.corner_lift_chance', 'frame', lift_chance, 'chance', spread_known ? no_limit('corner-lift') : no_spread),
    known('warp.corner_lift_chance_soft', 'frame', lift_chance_soft, 'chance', spread_known ? no_limit('corner-lift') : no_spread),
    known('warp.bar_bow_chance', 'frame', limits_known ? sample?.any_bow_chance.value : undefined, 'chance', limits_known || frame.past_critical ? unsampled : no_limit('bar-bow')),
    ...causes.map((cause): Fact => known('warp.cause_share', cause.name, cause.share, 'share', no_spread)),
    ...barNames.map((bar) => known('bar.natural_bow_p90_mm', bar, sample?.bow[bar].steadied_p90_mm, 'mm', unsampled)),
    ...barNames.map((bar): Fact => known('bar.natural_crook_p90_mm', bar, frame.past_critical ? undefined : crook[bar].p90_mm, 'mm', frame.past_critical ? past_critical_reason : no_spread)),
  ];
}

function unstableFacts(): Fact[] {
  const unknown = (path: string, about: string, unit: FactUnit): Fact => ({ path, about, value: null, unit, reason: unstable_reason });
  return [
    unknown('warp.corner_lift_mean_mm', 'frame', 'mm'),
    unknown('warp.corner_lift_sd_mm', 'frame', 'mm'),
    unknown('warp.corner_lift_p90_mm', 'frame', 'mm'),
    unknown('warp.corner_lift_chance', 'frame', 'chance'),
    unknown('warp.corner_lift_chance_soft', 'frame', 'chance'),
    unknown('warp.bar_bow_chance', 'frame', 'chance'),
    unknown('warp.cause_share', 'frame', 'share'),
    ...barNames.map((bar) => unknown('bar.natural_bow_p90_mm', bar, 'mm')),
    ...barNames.map((bar) => unknown('bar.natural_crook_p90_mm', bar, 'mm')),
  ];
}

/** A mean lift this small beside its spread is the rounding of bars that cancel out: which digits it has depends on the machine. */
const rounding_share = 1e-9;

/** One board is one ply: `top-1` is the first ply of the top bar. */
function boardFacts(model: Model): Fact[] {
  return [...Object.values(model.bars), ...model.crossbars].flatMap((build) =>
    boardsOf(model.plan.boards, build).flatMap((board, i): Fact[] => {
      const about = `${build.name}-${i + 1}`;
      return [
        { path: 'board.twist_deg_per_m', about, value: (board?.twist_rad_per_m ?? expectedTwist(model, build)) * deg_per_rad, unit: 'ratio' },
        { path: 'board.measured', about, value: (board?.twist_rad_per_m ?? null) === null ? 'no' : 'yes', unit: 'word' },
      ];
    }),
  );
}

function expectedTwist(model: Model, build: MemberBuild): number {
  return build.stock.spread[model.plan.lumber.chosen].twist_rad_per_m.mean;
}
