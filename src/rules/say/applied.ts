import { fingerprint } from '../../base/digest.js';
import { remembered } from '../../base/remembered.js';
import { catalogueByPath } from '../../facts/catalogue.js';
import type { FactUnit } from '../../facts/fact.js';
import { nameInWords } from '../../facts/told.js';
import type { Applied, Change, Loosened } from '../../findings/applied.js';
import { limitInWords, ruleInWords } from './in-words.js';
import { limitInInches } from '../in-system.js';
import { byPath, type Naming } from './say.js';
import { thresholdsOf } from '../quantity.js';
import {
  limitsReadByFacts,
  linesOf,
  type Compare,
  type Limit,
  type Line,
  type Rule,
  type Ruleset,
} from '../ruleset.js';

const against = remembered((_: Ruleset) => new Map<Ruleset | null, Applied>());

/**
 * What a ruleset is called and what it relaxes against the baseline (against the lowest file it builds on where none is
 * given); worked out once.
 */
export function appliedOf(ruleset: Ruleset, baseline: Ruleset | null): Applied {
  const of = against(ruleset);
  const applied = of.get(baseline) ?? workOut(ruleset, baseline);
  of.set(baseline, applied);
  return applied;
}

interface Below {
  readonly limits: ReadonlyMap<string, Limit>;
  readonly rules: readonly Rule[];
}

function workOut(ruleset: Ruleset, baseline: Ruleset | null): Applied {
  const [lowest] = ruleset.layers;
  const below: Below = baseline ?? {
    limits: new Map((lowest?.limits ?? []).map((limit) => [limit.name, limit])),
    rules: lowest?.rules ?? [],
  };
  return {
    name: ruleset.name,
    version: ruleset.version,
    date: ruleset.date,
    fingerprint: fingerprint(whatIsApplied(ruleset)),
    switched_off: ruleset.off.map(({ id, reason }) => ({ rule: id, reason })),
    loosened: [...below.limits.values()].flatMap((was) => loosened(was, ruleset)),
    replaced: below.rules.flatMap((was) => replaced(was, below, ruleset)),
  };
}

/** All that decides a verdict, without places and sentences: limits, what the rules ask, what is switched off. */
function whatIsApplied({ limits, rules, off }: Ruleset): string {
  const bare = (key: string, value: unknown): unknown => (key === 'place' ? undefined : value);
  const asked = rules.map(({ id, each, applies, require, otherwise }) => [id, each, applies, require, otherwise]);
  return JSON.stringify(
    [
      [...limits.values()].map(({ name, amounts, inches, of }) => [name, amounts, inches, of]),
      asked,
      off.map(({ id }) => id),
    ],
    bare,
  );
}

/** A limit of the baseline that the ruleset sets differently and no tighter. */
function loosened(was: Limit, ruleset: Ruleset): readonly Loosened[] {
  const is = ruleset.limits.get(was.name);
  if (is === undefined || limitInWords(is) === limitInWords(was)) return [];
  const steps = usesOf(was.name, ruleset).flatMap(({ unit, growsLooser }) => [
    compared(was, is, unit, growsLooser),
    compared(limitInInches(was), limitInInches(is), unit, growsLooser),
  ]);
  if (steps.length === 0 || steps.every((step) => step === 'tighter')) return [];
  const change = saidTwice((named) => ({ was: limitInWords(was, named), is: limitInWords(is, named) }));
  return [{ limit: was.name, ...change, surely: steps.includes('looser') }];
}

interface Use {
  readonly unit: FactUnit;
  /** Whether a larger amount asks less of a frame. */
  readonly growsLooser: boolean;
}

/**
 * Every way in which the rules use a limit. A condition to be asked at all is turned round: what narrows it asks less.
 */
function usesOf(name: string, ruleset: Ruleset): readonly Use[] {
  const use = (line: Line, turned: boolean): readonly Use[] => {
    if (line.against.kind !== 'limit' || line.against.name !== name) return [];
    return [{ unit: catalogueByPath.get(line.fact)!.unit, growsLooser: isUpperBound(line.compare) !== turned }];
  };
  const uses = ruleset.rules.flatMap(({ require, applies, otherwise }): readonly Use[] => {
    const required = linesOf(require);
    const beyond =
      otherwise.kind === 'stop-beyond' ? required.map((line) => ({ ...line, against: otherwise.stop })) : [];
    return [
      ...[...required, ...beyond].flatMap((line) => use(line, false)),
      ...linesOf(applies).flatMap((line) => use(line, true)),
    ];
  });
  return limitsReadByFacts.includes(name) ? [...uses, { unit: 'mm', growsLooser: true }] : uses;
}

const isUpperBound = (compare: Compare): boolean => compare === 'at-most' || compare === 'below';

function compared(was: Limit, is: Limit, unit: FactUnit, growsLooser: boolean): 'tighter' | 'looser' | 'other' {
  const [before, after] = [thresholdsOf(was, unit), thresholdsOf(is, unit)];
  if (before === null || after === null || before.of !== after.of) return 'other';
  const pairs = [
    [before.value, after.value],
    [before.stop, after.stop],
    [before.caution, after.caution],
  ] as const;
  if (pairs.some(([a, b]) => (a === null) !== (b === null))) return 'other';
  return pairs.some(([a, b]) => a !== null && b !== null && (growsLooser ? b > a : b < a)) ? 'looser' : 'tighter';
}

/** A rule of the baseline that the ruleset asks in other words, or does not have at all. */
function replaced(was: Rule, below: Below, ruleset: Ruleset): Applied['replaced'] {
  if (ruleset.off.some(({ id }) => id === was.id)) return [];
  const is = ruleset.rules.find(({ id }) => id === was.id);
  if (is !== undefined && what(is) === what(was)) return [];
  const change = saidTwice((named) => ({
    was: ruleInWords(was, below.limits, named),
    is: is === undefined ? 'not asked' : ruleInWords(is, ruleset.limits, named),
  }));
  return [{ rule: was.id, ...change }];
}

/** A change with facts named by their paths, and as one reads them. */
const saidTwice = (change: (named: Naming) => Omit<Change, 'read'>): Change => ({
  ...change(byPath),
  read: change(nameInWords),
});

/** What a rule asks, whatever it says. */
const what = ({ each, applies, require, otherwise }: Rule): string =>
  JSON.stringify([each, applies, require, otherwise], (key, value: unknown) => (key === 'place' ? undefined : value));
