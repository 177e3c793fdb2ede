import { factSettings, type Bench } from '../bench.js';
import { supplies, type Supplies } from '../cost/supplies.js';
import { cutPlan } from '../cutting/cut-plan.js';
import type { CutPlan } from '../cutting/purchase.js';
import { choiceFacts } from '../facts/choices.js';
import { clothFacts } from '../facts/cloth.js';
import { cornerFacts } from '../facts/corners.js';
import { cuttingFacts } from '../facts/cutting.js';
import type { Fact } from '../facts/fact.js';
import { fasteningFacts } from '../facts/fastenings.js';
import { frameFacts } from '../facts/frame.js';
import { hangingFacts } from '../facts/hanging.js';
import { lumberFacts } from '../facts/lumber.js';
import { warpFacts } from '../facts/warp.js';
import { glueFacts } from '../facts/glue.js';
import { clothCutOf, rollWidth_mm } from '../mechanics/cloth/cloth-sheet.js';
import { clothCutSize, rollShort_mm } from '../mechanics/cloth/cut-size.js';
import { buildModel } from '../model/build-model.js';
import type { Model, Solution } from '../model/model.js';
import type { Plan } from '../plan/plan.js';
import { groupOf, isSampled } from './fact-groups.js';
import { judgeFor, type Judge, type Wish } from './judge.js';
import { hungAs } from '../solve/solve-model.js';
import { SolvedFrames } from '../solve/solved-frames.js';

const inGroup = (group: ReturnType<typeof groupOf>) => (path: string): boolean => groupOf(path) === group;
const only = (facts: readonly Fact[], kind: (path: string) => boolean): Fact[] => facts.filter(({ path }) => kind(path));

/** What builds are examined with; it remembers solved frames from one build to the next. */
export interface Examiner {
  readonly bench: Bench;
  readonly judge: Judge;
  readonly frames: SolvedFrames;
}

/** An examiner for a bench and wish. */
export function examinerFor(bench: Bench, wish: Wish): Examiner {
  const judge = judgeFor(bench.ruleset, wish);
  return { bench, judge, frames: new SolvedFrames() };
}

/** A build whose own parts hold: what is left to ask is how its boards are chosen, how it hangs, how far its crossbars stand back. */
export interface SoundBuild {
  /** Each takes this build with one group changed and names the rules of that group that stand in the way. */
  readonly againstBoards: Against;
  readonly againstHanging: Against;
  /** The plan it is asked of hangs as it will: ring and wire may meet a crossbar. */
  readonly againstSetback: Against;
}

type Against = (plan: Plan) => Promise<readonly string[]>;

/** A build whose own parts fail, and the rules that say so: those that were asked before the first failed and with it. */
export interface FailedBuild {
  readonly against: readonly string[];
}

/**
 * Judges a build on the facts that neither boards nor hanging nor setback can move, the cheap ones first, and stops at the first that stand in the way.
 * Nothing is decided here that the full audit would decide otherwise: facts are the audit's own, and those left out can only add findings.
 */
export async function examineBuild(plan: Plan, cut: CutPlan, { bench, judge, frames }: Examiner): Promise<SoundBuild | FailedBuild> {
  const model = buildModel(plan, bench.shelf);
  const solution = frames.of(model);
  const build = inGroup('build');
  const sizes = only([...cuttingFacts(model, bill(model, cut, bench)), ...rollFacts(model)], build);
  const tooLarge = await judge.against(sizes, build, plan.units);
  if (tooLarge.length > 0) return { against: tooLarge };
  const first = only([...cuttingFacts(model, bill(model, cut, bench)), ...choiceFacts(model), ...lumberFacts(model), ...glueFacts(model), ...clothFacts(model, solution), ...fasteningFacts(model, solution), ...cornerFacts(model, solution), ...steadyFacts(model, solution)], build);
  let against = await judge.against(first, build, plan.units);
  if (against.length > 0) return { against };
  const second = only(frameFacts(model, solution), isStability);
  const facts = [...first, ...second];
  against = await judge.against(facts, isStability, plan.units);
  if (against.length > 0) return { against };
  return {
    againstBoards: againstBoards(facts, solution, bench, judge),
    againstHanging: againstHanging(facts, solution, cut, bench, judge),
    againstSetback: async (changed) => {
      const setback = inGroup('setback');
      if (!judge.reads(setback)) return [];
      const to = buildModel(changed, bench.shelf);
      return judge.against([...facts, ...hangingFacts(to, unsolved(solution)), ...only(clothFacts(to, solution), setback)], setback, plan.units);
    },
  };
}

/** The audit's own bill of supplies for a build that is cut like this. */
const bill = (model: Model, cut: CutPlan, { shelf }: Bench): Supplies => supplies([model], { cut, short: [] }, shelf);

/** Whether nothing stands in the way of a plan: what the full audit would say, found with as little work as possible. */
export async function passes(plan: Plan, examiner: Examiner): Promise<boolean> {
  const examined = await examineBuild(plan, cutPlan([plan], examiner.bench.shelf), examiner);
  if ('against' in examined) return false;
  for (const against of [examined.againstHanging, examined.againstSetback, examined.againstBoards]) if ((await against(plan)).length > 0) return false;
  return true;
}

/** The bow with the wire's pull needs a solution of its own, so it is asked for last. */
function againstHanging(facts: readonly Fact[], solution: Solution, cut: CutPlan, bench: Bench, judge: Judge): Against {
  const hanging = inGroup('hanging');
  const isBow = (path: string): boolean => path === 'hanging.inward_bow_mm';
  return async (plan) => {
    if (!judge.reads(hanging)) return [];
    const model = buildModel(plan, bench.shelf);
    const first = only([...cuttingFacts(model, bill(model, cut, bench)), ...steadyFacts(model, solution), ...hangingFacts(model, unsolved(solution))], (path) => hanging(path) && !isBow(path));
    const against = await judge.against([...facts, ...first], hanging, plan.units);
    if (against.length > 0 || !judge.reads(isBow)) return against;
    return judge.against([...facts, ...first, ...only(hangingFacts(model, hungAs(model, solution)), isBow)], isBow, plan.units);
  };
}

/** Whether the cloth fits its roll needs no solution: the same facts as in the audit, asked for early because nothing else helps a plan that fails them. */
function rollFacts(model: Model): Fact[] {
  const { width_mm, height_mm } = clothCutSize(clothCutOf(model));
  const cloth = (path: string, value: number): Fact => ({ path, about: 'cloth', value, unit: 'mm' });
  return [cloth('cloth.cut_width_mm', width_mm), cloth('cloth.cut_height_mm', height_mm), cloth('cloth.roll_short_mm', rollShort_mm(width_mm, height_mm, rollWidth_mm(model)))];
}

/** Facts about stability cost most of the time of an audit, so they are asked for last. */
const isStability = (path: string): boolean => /^frame\.(load_factor|second_factor|critical_pull_N_per_m|twist_reserve|twist_reserve_give8|long_term_reserve|lift_past_critical\w*_mm|mode)$/.test(path);

/** The facts of the frame that stability has no part in. */
const steadyFacts = (model: Model, solution: Solution): Fact[] => only(frameFacts(model, unsolved(solution)), (path) => !isStability(path));

/** The shape under the pulls, with neither stability nor hanging: for facts that read neither. */
function unsolved(solution: Solution): Solution {
  return {
    get working() { return solution.working; },
    get working_x() { return solution.working_x; },
    get peak() { return solution.peak; },
    get accidental() { return solution.accidental; },
    hung: null,
    hanging_forces: [],
    stability: { load_factor: null, second_factor: null, mode: null, mode_words: null, second_mode_words: null, mode_shape: [], propeller: null },
    peak_factor: null,
    peak_propeller: null,
    soft_peak_factor: null,
    influence: null,
    influence_unpulled: [],
  };
}

/** First what the wood itself says, then warp in closed form; frames are sampled only where neither finds anything and a rule asks for it. */
function againstBoards(facts: readonly Fact[], solution: Solution, bench: Bench, judge: Judge): Against {
  const boards = inGroup('boards');
  return async (plan) => {
    if (!judge.reads(boards)) return [];
    const model = buildModel(plan, bench.shelf);
    const settings = factSettings(model, bench);
    const known: Fact[] = [...facts, ...only([...lumberFacts(model), ...fasteningFacts(model, solution)], boards)];
    let against = await judge.against(known, boards, plan.units);
    if (against.length > 0) return against;
    const exact = only(warpFacts(model, solution, { ...settings, samples: 0 }), (path) => boards(path) && !isSampled(path));
    const isNew = new Set(exact.map(({ path }) => path));
    known.push(...exact);
    against = await judge.against(known, (path) => isNew.has(path), plan.units);
    if (against.length > 0 || !judge.reads(isSampled) || settings.samples < 1) return against;
    const sampled = only(warpFacts(model, solution, settings), isSampled);
    return judge.against([...known, ...sampled], isSampled, plan.units);
  };
}
