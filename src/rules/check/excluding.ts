import type { Problem } from '../../base/problem.js';
import { formatQuantity } from '../../base/units-format.js';
import { catalogueByPath } from '../../facts/catalogue.js';
import { comparesMagnitude } from '../judge/ready-rule.js';
import { thresholdKey } from '../quantity.js';
import { checkProblem } from './check-problems.js';
import type { Line, Rule, Ruleset } from '../ruleset.js';

/** One thing a rule demands of a fact whatever the frame: a bound, or a word. */
interface Demand {
  readonly rule: Rule;
  readonly line: Line;
  /** The bound in the fact's unit or, with `of`, as a share of that fact; a word for a word. */
  readonly value: number | string;
  readonly of: string | null;
}

/**
 * Pairs of rules, each asked of every frame, that no frame can meet together: a least above a most, or two words for
 * one fact.
 */
export function excludingRules(ruleset: Ruleset): readonly Problem[] {
  const byFact = new Map<string, Demand[]>();
  for (const demand of ruleset.rules.flatMap((rule) => demandsOf(rule, ruleset)))
    byFact.set(demand.line.fact, [...(byFact.get(demand.line.fact) ?? []), demand]);
  return [...byFact.values()].flatMap((demands) =>
    demands.flatMap((one, i) => demands.slice(0, i).flatMap((other) => excluded(one, other))),
  );
}

/** Lines that must all hold, of a rule that is always asked. */
function demandsOf(rule: Rule, ruleset: Ruleset): readonly Demand[] {
  if (rule.applies !== null || (rule.require.join === 'any' && rule.require.parts.length > 1)) return [];
  return rule.require.parts.flatMap((part): readonly Demand[] => {
    if ('parts' in part || comparesMagnitude(part)) return [];
    const { against } = part;
    if (against.kind !== 'limit') return [{ rule, line: part, value: against.value, of: null }];
    const thresholds = ruleset.thresholds.get(thresholdKey(against.name, catalogueByPath.get(part.fact)!.unit));
    const value = thresholds?.value ?? thresholds?.caution ?? null;
    return value === null ? [] : [{ rule, line: part, value, of: thresholds?.of ?? null }];
  });
}

function excluded(one: Demand, other: Demand): readonly Problem[] {
  if (one.of !== other.of || one.rule === other.rule || meet(one, other)) return [];
  return [
    checkProblem(
      'rules-exclude',
      one.rule.place,
      { value: one.rule.id, name: other.rule.id, allowed: `${said(one)}, and ${said(other)}` },
      'warning',
    ),
  ];
}

function meet(one: Demand, other: Demand): boolean {
  const [a, b] = [one.line.compare, other.line.compare];
  if (typeof one.value === 'string' || typeof other.value === 'string')
    return a === 'is' && b === 'is' ? one.value === other.value : !(isPair(a, b) && one.value === other.value);
  const [lower, upper] = isLower(a) ? [one, other] : [other, one];
  if (!isLower(lower.line.compare) || !isUpper(upper.line.compare)) return true;
  const touching = lower.line.compare !== 'above' && upper.line.compare !== 'below';
  return touching ? lower.value <= upper.value : lower.value < upper.value;
}

const isLower = (compare: Line['compare']): boolean =>
  compare === 'at-least' || compare === 'above' || compare === 'is';
const isUpper = (compare: Line['compare']): boolean => compare === 'at-most' || compare === 'below' || compare === 'is';
const isPair = (a: Line['compare'], b: Line['compare']): boolean =>
  (a === 'is' && b === 'is-not') || (a === 'is-not' && b === 'is');

function said({ line, value, of }: Demand): string {
  const unit = catalogueByPath.get(line.fact)!.unit;
  return `${line.fact} ${line.compare} ${of === null ? formatQuantity(value, unit, 'metric') : `${formatQuantity(value, 'ratio', 'metric')} of ${of}`}`;
}
