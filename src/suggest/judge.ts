import type { UnitSystem } from '../base/names.js';
import type { Fact, FactPath } from '../facts/fact.js';
import type { Verdict } from '../findings/finding.js';
import { evaluateRules } from '../rules/evaluate.js';
import { linesOf, type Against, type Condition, type Rule, type Ruleset } from '../rules/ruleset.js';

/** What a suggested plan must be: without a stop, or without stop, caution and unknown. */
export type Wish = 'no-stop' | 'clear';

/** Whether a finding stands in the way of a wish. A rule that may stop a plan must not be unknown either. */
export const stands = (verdict: Verdict, mayStop: boolean, wish: Wish): boolean =>
  wish === 'clear' ? verdict !== 'clear' : verdict === 'stop' || (verdict === 'unknown' && mayStop);

interface KnownRule {
  readonly rule: Rule;
  readonly paths: readonly FactPath[];
}

/** Judges facts that are only partly there. */
export interface Judge {
  /** Whether any rule that matters reads this fact: no other needs to be worked out. */
  readonly reads: (path: FactPath) => boolean;
  /**
   * The rules that stand in the way already with these facts, by id. Rules are asked once all the facts they read are
   * there, and only those that read a
   * `fresh` one; facts that come later cannot take a finding back, so what fails here fails in the full audit.
   */
  readonly against: (
    facts: readonly Fact[],
    fresh: (path: FactPath) => boolean,
    units: UnitSystem,
  ) => Promise<readonly string[]>;
}

/** Whether a rule can stop a plan. */
export const mayStop = ({ otherwise }: Rule): boolean => otherwise.kind !== 'always' || otherwise.verdict === 'stop';

/** A judge for one ruleset and wish: for `no-stop` only the rules that can stop a plan matter. */
export function judgeFor(ruleset: Ruleset, wish: Wish): Judge {
  const rules = ruleset.rules
    .filter((rule) => wish === 'clear' || mayStop(rule))
    .map((rule): KnownRule => ({ rule, paths: pathsOf(rule, ruleset) }));
  const read = new Set(rules.flatMap(({ paths }) => paths));
  return {
    reads: (path) => read.has(path),
    against: async (facts, fresh, units) => {
      const there = new Set(facts.map(({ path }) => path));
      const ready = rules.filter(({ paths }) => paths.every((path) => there.has(path)) && paths.some(fresh));
      if (ready.length === 0) return [];
      const { findings } = await evaluateRules({ ...ruleset, rules: ready.map(({ rule }) => rule) }, facts, { units });
      return [...new Set(findings.filter(({ verdict }) => stands(verdict, true, wish)).map(({ rule }) => rule))];
    },
  };
}

/** Every fact that a rule's verdict depends on. */
export function pathsOf({ applies, require, otherwise }: Rule, ruleset: Ruleset): readonly FactPath[] {
  const ofLimit = (against: Against): readonly FactPath[] => {
    const of = against.kind === 'limit' ? (ruleset.limits.get(against.name)?.of ?? null) : null;
    return of === null ? [] : [of];
  };
  const ofCondition = (condition: Condition | null): readonly FactPath[] =>
    linesOf(condition).flatMap((line) => [line.fact, ...ofLimit(line.against)]);
  return [
    ...new Set([
      ...ofCondition(applies),
      ...ofCondition(require),
      ...(otherwise.kind === 'stop-beyond' ? ofLimit(otherwise.stop) : []),
    ]),
  ];
}
