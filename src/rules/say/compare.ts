import type { UnitSystem } from '../../base/names.js';
import { formatQuantity, type QuantityUnit } from '../../base/units-format.js';
import type { Finding, Verdict } from '../../findings/finding.js';
import { compareGravity, worstVerdict } from '../../findings/summary.js';
import { aboutInWords } from './say.js';

/** One verdict that two rulesets give differently. Null = the rule says nothing there. */
export interface VerdictChange {
  readonly rule: string;
  readonly about: string;
  readonly before: Verdict | null;
  readonly after: Verdict | null;
  /** In words: which limit moved, or that the rule is new or gone. */
  readonly why: string;
}

/** What changes for one plan when it is judged by another ruleset. */
export interface VerdictComparison {
  readonly before: Verdict;
  readonly after: Verdict;
  /** Gravest verdict after the change first. */
  readonly changes: readonly VerdictChange[];
}

/** Compares the findings of one plan under two rulesets: which verdicts change, and why. */
export function compareVerdicts(
  before: readonly Finding[],
  after: readonly Finding[],
  units: UnitSystem = 'metric',
  currency = '',
): VerdictComparison {
  const key = ({ rule, about }: Finding): string => `${rule}\n${about}`;
  const old = new Map(before.map((finding) => [key(finding), finding]));
  const now = new Map(after.map((finding) => [key(finding), finding]));
  const changes = [...new Set([...old.keys(), ...now.keys()])].flatMap((one): VerdictChange[] => {
    const a = old.get(one);
    const b = now.get(one);
    const verdicts = { before: a?.verdict ?? null, after: b?.verdict ?? null };
    if (verdicts.before === verdicts.after) return [];
    const { rule, about } = (a ?? b)!;
    return [{ rule, about, ...verdicts, why: whyChanged(a, b, units, currency) }];
  });
  changes.sort(
    (a, b) =>
      compareGravity(b.after ?? 'clear', a.after ?? 'clear') ||
      (a.rule < b.rule ? -1 : a.rule > b.rule ? 1 : a.about < b.about ? -1 : 1),
  );
  return { before: worstVerdict(before), after: worstVerdict(after), changes };
}

/** A change in one line: `bars/inward-bow, the top bar: clear → caution. The limit …`. */
export function changeInWords({ rule, about, before, after, why }: VerdictChange): string {
  return `${rule}, ${aboutInWords(about)}: ${before ?? 'nothing said'} → ${after ?? 'nothing said'}. ${why}`;
}

function whyChanged(a: Finding | undefined, b: Finding | undefined, units: UnitSystem, currency: string): string {
  if (a === undefined) return 'The rule was not asked before.';
  if (b === undefined) return 'The rule is not asked any more.';
  if (a.verdict === 'unknown') return `It was not known before. ${b.say}`;
  if (b.verdict === 'unknown') return b.say;
  const words = (finding: Finding, value: Finding['limit']): string =>
    formatQuantity(value, finding.unit as QuantityUnit, units, currency);
  if (a.fact !== b.fact) return `The rule looks at ${b.fact} where it looked at ${a.fact}.`;
  const actual =
    a.actual === b.actual
      ? `${a.fact} is ${words(b, b.actual)} under both`
      : `${a.fact} was ${words(a, a.actual)} and is ${words(b, b.actual)}`;
  if (a.limit !== b.limit) return `The limit was ${words(a, a.limit)} and is ${words(b, b.limit)}; ${actual}.`;
  return a.actual === b.actual
    ? 'What the rule makes of it has changed; limit and value have not.'
    : `The limit is ${words(b, b.limit)} under both; ${actual}.`;
}
