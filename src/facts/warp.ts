import { barNames } from '../base/names.js';
import type { FactSettings, MemberBuild, Model, Solution } from '../model/model.js';
import { assessWarp, unstable_reason, type WarpRisk } from '../risk/assess.js';
import { sampleWarp } from '../risk/sample.js';
import { boardsOf } from '../risk/spread.js';
import type { Fact, FactUnit } from './fact.js';

export { warpStory, type WarpStory, type WarpTold } from '../risk/story.js';

const deg_per_rad = 180 / Math.PI;
const no_samples = 'No samples were asked for.';

/**
 * Natural warp: corner lift from the closed form, bow of the bars (a largest value along the bar) from the seeded sample, and the boards
 * as expected or measured. When the flat frame is unstable at working pull, all but the boards are unknown and say why.
 */
export function warpFacts(model: Model, solution: Solution, settings: FactSettings): Fact[] {
  const risk = assessWarp(model, solution, settings);
  return [...(risk === null ? unstableFacts() : riskFacts(risk, settings)), ...boardFacts(model)];
}

function riskFacts(risk: WarpRisk, settings: FactSettings): Fact[] {
  const { lift, lift_chance, causes, crook } = risk;
  const sample = settings.samples >= 1 ? sampleWarp(risk.terms, settings) : null;
  const sampled = (path: string, about: string, value: number | undefined, unit: FactUnit): Fact =>
    value === undefined ? { path, about, value: null, unit, reason: no_samples } : { path, about, value, unit };
  return [
    { path: 'warp.corner_lift_mean_mm', about: 'frame', value: lift.mean, unit: 'mm' },
    { path: 'warp.corner_lift_sd_mm', about: 'frame', value: lift.sd, unit: 'mm' },
    { path: 'warp.corner_lift_p90_mm', about: 'frame', value: lift.p90_mm, unit: 'mm' },
    { path: 'warp.corner_lift_chance', about: 'frame', value: lift_chance, unit: 'chance' },
    sampled('warp.bar_bow_chance', 'frame', sample?.any_bow_chance.value, 'chance'),
    ...causes.map((cause): Fact => ({ path: 'warp.cause_share', about: cause.name, value: cause.share, unit: 'share' })),
    ...barNames.map((bar) => sampled('bar.natural_bow_p90_mm', bar, sample?.bow[bar].steadied_p90_mm, 'mm')),
    ...barNames.map((bar): Fact => ({ path: 'bar.natural_crook_p90_mm', about: bar, value: crook[bar].p90_mm, unit: 'mm' })),
  ];
}

function unstableFacts(): Fact[] {
  const unknown = (path: string, about: string, unit: FactUnit): Fact => ({ path, about, value: null, unit, reason: unstable_reason });
  return [
    unknown('warp.corner_lift_mean_mm', 'frame', 'mm'),
    unknown('warp.corner_lift_sd_mm', 'frame', 'mm'),
    unknown('warp.corner_lift_p90_mm', 'frame', 'mm'),
    unknown('warp.corner_lift_chance', 'frame', 'chance'),
    unknown('warp.bar_bow_chance', 'frame', 'chance'),
    unknown('warp.cause_share', 'frame', 'share'),
    ...barNames.map((bar) => unknown('bar.natural_bow_p90_mm', bar, 'mm')),
    ...barNames.map((bar) => unknown('bar.natural_crook_p90_mm', bar, 'mm')),
  ];
}

/** One board is one ply: `top-1` is the first ply of the top bar. */
function boardFacts(model: Model): Fact[] {
  return [...Object.values(model.bars), ...model.crossbars].flatMap((build) =>
    boardsOf(model.plan.boards, build).flatMap((board, i): Fact[] => {
      const about = `${build.name}-${i + 1}`;
      return [
        { path: 'board.twist_deg_per_m', about, value: (board?.twist_rad_per_m ?? expectedTwist(model, build)) * deg_per_rad, unit: 'ratio' },
        { path: 'board.measured', about, value: board === null ? 'no' : 'yes', unit: 'word' },
      ];
    }),
  );
}

function expectedTwist(model: Model, build: MemberBuild): number {
  return build.stock.spread[model.plan.lumber.chosen].twist_rad_per_m.mean;
}
