import { once } from '../base/once.js';
import { factSettings, type Bench } from '../bench.js';
import { cutPlan } from '../cutting/cut-plan.js';
import type { CutPlan } from '../cutting/boards/purchase.js';
import { factInput, factsWanted, type Wanted } from '../facts/fact-source.js';
import { specOf } from '../facts/catalogue.js';
import type { FactInput, KnownFrom, MovedBy } from '../facts/declare.js';
import type { Fact, FactPath } from '../facts/fact.js';
import { buildModel } from '../model/build-model.js';
import type { Model, Solution } from '../model/model.js';
import type { Plan } from '../plan/plan.js';
import { judgeFor, type Judge, type Wish } from './judge.js';
import { hungAs } from '../solve/solve-model.js';
import { SolvedFrames } from '../solve/solved-frames.js';

/** Facts that a kind of change moves, as far as they are known from these. */
const movedBy =
  (moved: MovedBy, ...from: readonly KnownFrom[]): Wanted =>
  ({ moved_by, known_from }) =>
    moved_by === moved && (from.length === 0 || from.includes(known_from));

/** The wanted facts that a rule reads. */
const factsRead = (input: FactInput, wanted: Wanted, judge: Judge): Fact[] =>
  factsWanted(input, (spec, path) => judge.reads(path) && wanted(spec, path));

/** Whether a fact of a path is wanted. */
const among =
  (wanted: Wanted) =>
  (path: FactPath): boolean =>
    wanted(specOf(path), path);

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

/**
 * A build whose parts carry their loads: what is left to ask is whether its frame stays flat, how its boards are
 * chosen, how it hangs, how far its crossbars stand back.
 */
export interface SoundBuild {
  /** The rules of stability that stand in the way: what takes longest to find out, and nothing else hangs on it. */
  readonly againstStability: () => Promise<readonly string[]>;
  /** Each takes this build with one group changed and names the rules of that group that stand in the way. */
  readonly againstBoards: Against;
  readonly againstSetback: Against;
  /** The crossbars of the plan it is asked of are set back as they will be: ring, wire and ply screws follow them. */
  readonly againstHanging: Against;
}

type Against = (plan: Plan) => Promise<readonly string[]>;

/**
 * A build whose own parts fail, and the rules that say so: those that were asked before the first failed and with it.
 */
export interface FailedBuild {
  readonly against: readonly string[];
}

/**
 * Judges a build on the facts that neither boards nor hanging nor setback can move, the cheap ones first, and stops at
 * the first that stand in the way; its stability is left for when it is its turn.
 * Nothing is decided here that the full audit would decide otherwise: facts are the audit's own, and those left out can
 * only add findings.
 */
export async function examineBuild(plan: Plan, cut: CutPlan, examiner: Examiner): Promise<SoundBuild | FailedBuild> {
  const { bench, judge, frames } = examiner;
  const model = buildModel(plan, bench.shelf);
  const solution = frames.of(model);
  const input = inputOf(model, solution, cut, bench);
  const facts: Fact[] = [];
  for (const wanted of [movedBy('build', 'cut'), movedBy('build', 'plan', 'shape')]) {
    facts.push(...factsRead(input, wanted, judge));
    const against = await judge.against(facts, among(wanted), plan.units);
    if (against.length > 0) return { against };
  }
  const ofStability = movedBy('build', 'stability');
  const settled = once(() => [...facts, ...factsRead(input, ofStability, judge)]);
  return {
    againstStability: () => judge.against(settled(), among(ofStability), plan.units),
    againstBoards: (chosen) => againstBoards(settled(), solution, cut, examiner)(chosen),
    againstSetback: againstSetback(facts, solution, cut, examiner),
    againstHanging: againstHanging(facts, solution, cut, examiner),
  };
}

/** From what the facts of a build that is cut like this are worked out; its bill is the audit's own. */
const inputOf = (model: Model, solution: Solution, cut: CutPlan, bench: Bench): FactInput =>
  factInput(model, solution, factSettings(model, bench), bench.shelf, { cut, short: [], order_proven: true });

/**
 * Whether nothing stands in the way of a plan: what the full audit would say, found with as little work as possible.
 */
export async function passes(plan: Plan, examiner: Examiner): Promise<boolean> {
  const examined = await examineBuild(plan, cutPlan([plan], examiner.bench.shelf), examiner);
  if ('against' in examined) return false;
  const { againstSetback, againstHanging, againstStability, againstBoards } = examined;
  for (const against of [againstSetback, againstHanging, againstStability, againstBoards])
    if ((await against(plan)).length > 0) return false;
  return true;
}

/** What a setback moves by itself; what hangs, and the screws that give way to it, are asked after it. */
function againstSetback(facts: readonly Fact[], solution: Solution, cut: CutPlan, { bench, judge }: Examiner): Against {
  return againstOne([movedBy('setback')], facts, judge, (plan) =>
    inputOf(buildModel(plan, bench.shelf), solution, cut, bench),
  );
}

/**
 * Asked of a plan whose setbacks are settled, knowing what they moved. The bow with the wire's pull needs a solution of
 * its own, so it is asked for last.
 */
function againstHanging(facts: readonly Fact[], solution: Solution, cut: CutPlan, { bench, judge }: Examiner): Against {
  return async (plan) => {
    const model = buildModel(plan, bench.shelf);
    const input = inputOf(model, hungAs(model, solution), cut, bench);
    const settled = [...facts, ...factsRead(input, movedBy('setback'), judge)];
    return againstOne(
      [movedBy('hanging', 'cut', 'plan', 'shape'), movedBy('hanging', 'wire')],
      settled,
      judge,
      () => input,
    )(plan);
  };
}

/**
 * First what the wood itself says, then warp in closed form; frames are sampled only where neither finds anything and a
 * rule asks for it.
 */
function againstBoards(facts: readonly Fact[], solution: Solution, cut: CutPlan, { bench, judge }: Examiner): Against {
  const sampled = bench.samples < 1 ? [] : [movedBy('boards', 'samples')];
  return againstOne([movedBy('boards', 'plan'), movedBy('boards', 'warp'), ...sampled], facts, judge, (plan) =>
    inputOf(buildModel(plan, bench.shelf), solution, cut, bench),
  );
}

/** Asks a changed plan for one kind of facts after another, as long as nothing stands in the way. */
function againstOne(
  kinds: readonly Wanted[],
  facts: readonly Fact[],
  judge: Judge,
  changed: (plan: Plan) => FactInput,
): Against {
  return async (plan) => {
    const input = changed(plan);
    const known = [...facts];
    for (const wanted of kinds) {
      known.push(...factsRead(input, wanted, judge));
      const against = await judge.against(known, among(wanted), plan.units);
      if (against.length > 0) return against;
    }
    return [];
  };
}
