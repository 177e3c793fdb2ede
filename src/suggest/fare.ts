import { factSettings, type Bench } from '../bench.js';
import { factInput, factsWanted } from '../facts/fact-source.js';
import { specOf } from '../facts/catalogue.js';
import type { KnownFrom } from '../facts/declare.js';
import type { Fact, FactPath } from '../facts/fact.js';
import type { Finding, Verdict } from '../findings/finding.js';
import { buildModel } from '../model/build-model.js';
import type { Plan } from '../plan/plan.js';
import { evaluateRules } from '../rules/evaluate.js';
import type { Ruleset } from '../rules/ruleset.js';
import { solveModel } from '../solve/solve-model.js';
import { mayStop, pathsOf, stands, type Wish } from './judge.js';

/** How much of a limit one plan uses, as one rule sees it of one part. */
export interface Use {
  /** Rule and part. */
  readonly of: string;
  readonly actual: number;
  readonly limit: number;
  /** Whether the limit is the most that is allowed; else the least. */
  readonly most: boolean;
  readonly verdict: Verdict;
}

/** How a plan fares under a wish. */
export interface Fare {
  readonly passes: boolean;
  /** Of what stands in the way, or where nothing does, of everything that was asked. */
  readonly uses: readonly Use[];
}

/** Asks how a plan fares; of one plan each wish, its frame solved once. */
export type Faring = (wish: Wish) => Promise<Fare>;

/** From what is known at little cost to what takes longest. */
const order: readonly KnownFrom[] = ['cut', 'plan', 'shape', 'stability', 'warp', 'wire', 'samples'];

/** What can be asked once facts of a kind are known. */
interface Stage {
  readonly reads: (path: FactPath) => boolean;
  readonly ruleset: Ruleset;
}

/**
 * Asks whole plans one after the other by the audit's own facts and rules, the cheap ones first: at the first that
 * stand in the way nothing more is worked out.
 */
export function faringBy(bench: Bench): (plan: Plan) => Faring {
  const stages = {
    clear: stagesOf(bench.ruleset, 'clear'),
    'no-stop': stagesOf(bench.ruleset, 'no-stop'),
  } as const;
  return (plan) => {
    const model = buildModel(plan, bench.shelf);
    const input = factInput(model, solveModel(model), factSettings(model, bench), bench.shelf);
    return async (wish) => {
      const facts: Fact[] = [];
      const uses: Use[] = [];
      for (const { reads, ruleset } of stages[wish]) {
        facts.push(...factsWanted(input, (_, path) => reads(path)));
        if (ruleset.rules.length === 0) continue;
        const { findings } = await evaluateRules(ruleset, facts, { units: plan.units });
        const against = findings.filter(({ verdict }) => stands(verdict, true, wish));
        if (against.length > 0) return { passes: false, uses: against.flatMap(useOf) };
        uses.push(...findings.flatMap(useOf));
      }
      return { passes: true, uses };
    };
  };
}

/** The rules that matter to a wish, each at the stage at which all that it reads is known. */
function stagesOf(asked: Ruleset, wish: Wish): readonly Stage[] {
  const rules = asked.rules
    .filter((rule) => wish === 'clear' || mayStop(rule))
    .map((rule) => ({ rule, paths: pathsOf(rule, asked) }));
  const read = new Set(rules.flatMap(({ paths }) => paths));
  const stageOf = (path: FactPath): number => order.indexOf(specOf(path).known_from);
  return order.map((_, stage) => ({
    reads: (path) => read.has(path) && stageOf(path) === stage,
    ruleset: {
      ...asked,
      rules: rules.filter(({ paths }) => Math.max(...paths.map(stageOf)) === stage).map(({ rule }) => rule),
    },
  }));
}

function useOf({ rule, about, actual, limit, used, verdict }: Finding): readonly Use[] {
  if (typeof actual !== 'number' || typeof limit !== 'number' || used === null) return [];
  const size = Math.abs(actual);
  return size === 0
    ? []
    : [
        {
          of: `${rule} ${about}`,
          actual: size,
          limit,
          most: Math.abs(size / limit - used) <= Math.abs(limit / size - used),
          verdict,
        },
      ];
}
