import { formatQuantity } from '../../base/units-format.js';
import { catalogueByPath } from '../../facts/catalogue.js';
import {
  linesOf,
  type Against,
  type Condition,
  type Limit,
  type LimitAmounts,
  type Line,
  type Rule,
} from '../ruleset.js';
import { lineInWords, byPath, type Naming } from './say.js';

type Limits = ReadonlyMap<string, Limit>;

/** A limit in words: `1/400 of bar.span_mm`, `stop 1.5, caution 2.5`. */
export function limitInWords({ amounts, inches, of }: Limit, named: Naming = byPath): string {
  const said = (one: LimitAmounts): string => ('value' in one ? one.value : `stop ${one.stop}, caution ${one.caution}`);
  const text = inches === null ? said(amounts) : `${said(amounts)} (in inches ${said(inches)})`;
  return of === null ? text : `${text} of ${named(of)}`;
}

/** A condition in words, its parts joined by `and` or `or`; a group inside it stands in brackets. */
export function conditionInWords(condition: Condition, limits: Limits, named: Naming = byPath): string {
  const words = condition.parts.map((part) =>
    'parts' in part
      ? `(${conditionInWords(part, limits, named)})`
      : lineInWords(part, againstInWords(part, part.against, limits, named), named),
  );
  return words.join(condition.join === 'all' ? ', and ' : ', or ');
}

function againstInWords(line: Line, against: Against, limits: Limits, named: Naming): string {
  if (against.kind === 'limit') {
    const limit = limits.get(against.name);
    return `the limit ${against.name}${limit === undefined ? '' : ` (${limitInWords(limit, named)})`}`;
  }
  return formatQuantity(against.value, catalogueByPath.get(line.fact)!.unit, 'metric');
}

/** What follows when a rule's requirement is not met. */
export function otherwiseInWords(rule: Rule, limits: Limits, named: Naming = byPath): string {
  const { otherwise } = rule;
  if (otherwise.kind === 'always') return otherwise.verdict;
  if (otherwise.kind === 'by-limit') return 'caution, or stop beyond the second threshold';
  const line = linesOf(rule.require)[0]!;
  return `caution, or stop unless ${lineInWords(line, againstInWords(line, otherwise.stop, limits, named), named)}`;
}

/** A rule in one sentence: what must hold, when, and what follows otherwise. */
export function ruleInWords(rule: Rule, limits: Limits, named: Naming = byPath): string {
  const when = rule.applies === null ? '' : `when ${conditionInWords(rule.applies, limits, named)}: `;
  return `${when}${conditionInWords(rule.require, limits, named)}; otherwise ${otherwiseInWords(rule, limits, named)}`;
}
